"""What the random circuits have for the rules about ceilings: ratings, and now and then a press or a
rotary divider beside the drive. All is drawn from a lot of its own, so that the rest stays what it is."""

import random

import builder
from builder import add, port, position

BEARS = ("pump", "motor", "filter", "cooler", "cylinder", "accumulator", "brake", "quick-coupling")
ENOUGH = ("450 bar", "480 bar", "7000 psi")


def enrich(root, seed):
    """Ratings for the lines and parts of a sound drive, and what stands beside it."""
    lot = random.Random(f"ceilings-{seed}")
    _rate(root, lot)
    if lot.random() < 0.35:
        lot.choice((_press, _divided))(root, lot)


def spoil(root, seed):
    """A rating, a flushing relief's setting, or the reliefs beside the drive changed, each now and
    then, in a circuit that is damaged already."""
    lot = random.Random(f"ceilings damage-{seed}")
    if lot.random() < 0.5:
        complete(root, seed)
    if lot.random() < 0.4:
        _set_flushing(root, lot.choice(("22 bar", "23 bar", "24 bar", "30 bar")))
    if lot.random() < 0.6:
        _drop_relief(root, lot)
    if lot.random() < 0.12:
        rated = [e for e in root.iter() if e.get("rating") and not e.get("burst-pressure")]
        if rated:
            _rerate(lot.choice(rated), "rating", lot)
    if lot.random() < 0.12:
        rated = [e for e in root.iter() if e.get("max-pressure")]
        if rated:
            _rerate(lot.choice(rated), "max-pressure", lot)


def complete(root, seed):
    """Ratings for all that has none, and hoses that bear what a sound drive sees."""
    lot = random.Random(f"ratings-{seed}")
    for element in root.iter():
        if element.tag in BEARS and not element.get("max-pressure"):
            element.set("max-pressure", lot.choice(ENOUGH))
        elif element.tag == "hose":
            element.set("rating", "460 bar")
            if element.get("burst-pressure"):
                element.set("burst-pressure", "1900 bar")
        elif element.tag == "line" and not element.get("rating"):
            element.set("rating", "460 bar")


def _rate(root, lot):
    """Enough for all that the drives see; hoses of which something is said already keep it."""
    for element in root.iter():
        if element.tag in BEARS:
            element.set("max-pressure", lot.choice(ENOUGH))
        elif element.tag in builder.LINES and not (element.get("rating") or
                                                   element.get("burst-pressure")):
            element.set("rating", lot.choice(("450 bar", "460 bar", "6600 psi")))


def _rerate(element, name, lot):
    """Gone, too little for a side, or too little for the charge line."""
    rating = lot.choice((None, "374 bar", "350 bar", "24 bar", "20 bar"))
    if rating is None:
        del element.attrib[name]
    else:
        element.set(name, rating)


def _line(root, ident, *ports):
    add(root, "line", ident, joins=" ".join(ports), rating="200 bar")


def _supply(root):
    """A pump of its own that draws from a reservoir of its own, with its relief."""
    add(root, "electric-motor", "E950")
    add(root, "reservoir", "T950", [port(p, level="below") for p in "SRTU"], volume="40 L",
        breather="yes", level_indicator="yes")
    add(root, "pump", "P950", displacement="11 cm3/rev", max_pressure="200 bar")
    add(root, "shaft", "W950", joins="E950 P950")
    add(root, "relief-valve", "R950", setting="160 bar")
    _line(root, "Q950", "T950.S", "P950.S")
    _line(root, "Q951", "R950.T", "T950.R")


def _press(root, lot):
    """A cylinder behind a valve, with a relief at its rod end."""
    _supply(root)
    add(root, "directional-valve", "V950", [port(p) for p in "PTAB"] + [
        position("idle", "P-T", rest=True), position("out", "P-A", "B-T"),
        position("in", "P-B", "A-T")])
    add(root, "cylinder", "Z950", bore="80 mm", rod="45 mm", max_pressure="250 bar")
    add(root, "relief-valve", "R951", setting=lot.choice(("180 bar", "190 bar")))
    _line(root, "Q952", "P950.P", "R950.P", "V950.P")
    _line(root, "Q953", "V950.A", "Z950.A")
    if lot.random() < 0.5:
        _line(root, "Q954", "V950.B", "Z950.B", "R951.P")
    else:
        add(root, "check-valve", "C950")
        _line(root, "Q954", "V950.B", "Z950.B", "C950.A")
        _line(root, "Q957", "C950.B", "R951.P")
    _line(root, "Q955", "R951.T", "T950.U")
    _line(root, "Q956", "V950.T", "T950.T")


def _divided(root, lot):
    """Two motors behind a rotary divider, a relief at each leg."""
    _supply(root)
    add(root, "flow-divider", "X950", [port(p) for p in "AB"], design="rotary")
    _line(root, "Q952", "P950.P", "R950.P", "X950.P")
    for number, leg in enumerate("AB"):
        motor, relief = f"M{950 + number}", f"R{951 + number}"
        add(root, "motor", motor, flow_directions="1", displacement="9 cm3/rev", max_pressure="200 bar")
        add(root, "relief-valve", relief, setting=lot.choice(("120 bar", "150 bar")))
        _line(root, f"Q{953 + number}", f"X950.{leg}", f"{motor}.A", f"{relief}.P")
    _line(root, "Q955", "M950.B", "M951.B", "R951.T", "R952.T", "T950.T")


def _set_flushing(root, setting):
    """The reliefs that the sound drives have at 18 bar are those of flushing valves."""
    for relief in root.iter("relief-valve"):
        if relief.get("setting") == "18 bar":
            relief.set("setting", setting)


def _drop_relief(root, lot):
    """The inlet of a relief beside the drive taken off its line."""
    relief = lot.choice(("R951.P", "R951.P", "R951.P", "R950.P"))
    for line in builder.lines(root):
        ports = line.get("joins").split()
        if relief in ports and len(ports) > 1:
            line.set("joins", " ".join(p for p in ports if p != relief))
