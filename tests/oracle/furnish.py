"""What a circuit of the pool gets beside its loops and drains: controls, brakes, accumulators, words on
shafts. Some of it is right and some is not; a lot of its own decides, so that the rest of the circuit
stays what it was. Only what stands on the circuit's own level is furnished, whatever was damaged."""

import builder
import damage
from builder import add, line_of, lines, parts, port, position
from pool_drives import MOVING


def _fresh(root, letter):
    taken = {e.get("id") for e in root.iter()}
    return next(f"{letter}{n}" for n in range(700, 10**6) if f"{letter}{n}" not in taken)


def _part(root, kind, letter, children=(), **attributes):
    ident = _fresh(root, letter)
    add(root, kind, ident, children, **attributes)
    return ident


def _join(root, *ports):
    """A line of its own."""
    add(root, "line", _fresh(root, "Y"), joins=" ".join(ports))


def _tee(line, *ports):
    line.set("joins", " ".join([line.get("joins"), *ports]))


def _own(root, *kinds):
    return [e for e in parts(root) if e.tag in kinds]


def _tank(root):
    """A further port of the circuit's first reservoir."""
    tank = _own(root, "reservoir")[0]
    names = {p.get("id") for p in tank}
    name = next(f"p{n}" for n in range(1, 1000) if f"p{n}" not in names)
    tank.append(port(name, level="below"))
    return f"{tank.get('id')}.{name}"


def _gallery(root, lot):
    """A line behind a filter or before a check, as the charge line is."""
    found = [line_of(root, f"{e.get('id')}.{'A' if e.tag == 'check-valve' else 'B'}")
             for e in _own(root, "check-valve", "filter")]
    found = [line for line in found if line is not None]
    return lot.choice(found) if found else None


def _valve(root, rest, *others):
    """A valve with the ports that its positions name."""
    names = sorted({end for paths in (rest, *others) for path in paths for end in path.split("-")})
    return _part(root, "directional-valve", "V", [port(name) for name in names] + [
        position("rest", *rest, rest=True),
        *(position(f"p{n}", *paths, states=MOVING if len(others) == 1 else None)
          for n, paths in enumerate(others))])


def control(root, lot):
    """A loop pump with a control, its pilots behind a valve on the charge line."""
    pumps = [e for e in _own(root, "pump") if e.get("flow-directions") == "2"]
    gallery = _gallery(root, lot)
    if not pumps or gallery is None:
        return
    pump = lot.choice(pumps)
    pump.set("variable", "yes")
    if lot.random() < 0.4:
        pump.set("control", "electric")
        pump.set("rest-displacement", lot.choice(("zero", "zero", "largest")))
        return
    pump.set("control", "hydraulic")
    pump.set("pilot-ports", "2")
    valve = _valve(root, lot.choice((("A-T", "B-T"), ("A-T", "B-T"), ("A-T",))), ("P-A", "B-T"), ("P-B", "A-T"))
    supply = f"{valve}.P"
    what = lot.choice(("line", "line", "orifice", "shut-off-valve", "relief-valve", "nothing"))
    if what == "line":
        _tee(gallery, supply)
    elif what != "nothing":
        ends = "PT" if what == "relief-valve" else "AB"
        between = _part(root, what, "X")
        _tee(gallery, f"{between}.{ends[0]}")
        _join(root, f"{between}.{ends[1]}", supply)
    _join(root, f"{valve}.T", _tank(root))
    _join(root, f"{valve}.A", f"{pump.get('id')}.X1")
    _join(root, f"{valve}.B", f"{pump.get('id')}.X2")


def brake(root, lot):
    """A brake on a load's shaft, its valve on the charge line."""
    loads = [e.get("id") for e in _own(root, "load")]
    shafts = [e for e in root.findall("shaft") if set(e.get("joins").split()) & set(loads)]
    gallery = _gallery(root, lot)
    if not shafts or gallery is None:
        return
    ident = _part(root, "brake", "B", use=lot.choice((None, "parking", "both")),
                  applied=lot.choice((None, "spring", "spring", "pressure")),
                  released_by_hand=lot.choice((None, "yes")))
    _tee(lot.choice(shafts), ident)
    rest = lot.choice((("A-T",), ("A-T",), ("P-A",)))
    valve = _valve(root, rest, ("P-A",) if rest == ("A-T",) else ("A-T",))
    _tee(gallery, f"{valve}.P")
    _join(root, f"{valve}.T", _tank(root))
    pilot = [f"{valve}.A", f"{ident}.Z"]
    if lot.random() < 0.15:
        pilot.append(f"{_part(root, 'accumulator', 'X')}.A")
    _join(root, *pilot)


def towing(root, lot):
    """A vehicle, with a bypass valve between two working lines or without."""
    loads = _own(root, "load")
    if not loads:
        return
    for load in loads:
        load.set("vehicle", "yes")
    motors = [e.get("id") for e in _own(root, "motor")]
    ends = [(line_of(root, f"{m}.A"), line_of(root, f"{m}.B")) for m in motors]
    ends = [both for both in ends if None not in both and both[0] is not both[1]]
    if ends and lot.random() < 0.85:
        kind = lot.choice(("bypass-valve",) * 7 + ("shut-off-valve",))
        valve = _part(root, kind, "X", position="closed")
        for line, name in zip(lot.choice(ends), "AB"):
            _tee(line, f"{valve}.{name}")


def accumulator(root, lot):
    """An accumulator on the charge line or behind a check, with a way to let it off or without."""
    gallery = _gallery(root, lot)
    if gallery is None:
        return
    ports = [f"{_part(root, 'accumulator', 'X')}.A"]
    if lot.random() < 0.8:
        ports.append(f"{_part(root, lot.choice(('gauge', 'measuring-point', 'sensor')), 'G')}.P")
    if lot.random() < 0.8:
        valve = _part(root, "shut-off-valve", "H", position="closed")
        ports.append(f"{valve}.A")
        _join(root, f"{valve}.B", _tank(root))
    if lot.random() < 0.7:
        relief = _part(root, "relief-valve", "R", setting="30 bar")
        ports.append(f"{relief}.P")
        _join(root, f"{relief}.T", _tank(root))
    if lot.random() < 0.5:
        _tee(gallery, *ports)
    else:
        check = _part(root, "check-valve", "C")
        _tee(gallery, f"{check}.A")
        _join(root, f"{check}.B", *ports)


def drain_filter(root, lot):
    """A filter in a drain, either way round."""
    places = [(level, line, p) for level in builder.levels(root) for line in lines(level)
              if len(line.get("joins").split()) > 1 for p in line.get("joins").split()
              if p.rpartition(".")[2].startswith("L")]
    if not places:
        return
    level, line, joined = lot.choice(places)
    ident = _fresh(root, "F")
    add(level, "filter", ident, bypass=lot.choice((None, "1 bar", "1 bar", "1.5 bar", "5 bar")))
    near, far = lot.sample("AB", 2)
    line.set("joins", " ".join([p for p in line.get("joins").split() if p != joined] + [f"{ident}.{near}"]))
    add(level, "line", _fresh(root, "Y"), joins=f"{ident}.{far} {joined}")


def reservoir_level(root, lot):
    """A reservoir's port above the level, or of no stated level."""
    ports = [p for tank in root.iter("reservoir") for p in tank]
    for declared in lot.sample(ports, min(len(ports), 2)):
        if lot.random() < 0.75:
            declared.set("level", "above")
        else:
            declared.attrib.pop("level", None)


def words_on_shafts(root, lot):
    """Which way prime movers and pumps turn."""
    for part in root.iter():
        if part.tag == "engine":
            part.set("rotation", "clockwise")
        elif part.tag == "pump" and lot.random() < 0.8:
            part.set("rotation", lot.choice(("counter-clockwise",) * 3 + ("clockwise",)))


def alone(root, lot):
    """A part that nothing is joined to."""
    _part(root, lot.choice(("motor", "shut-off-valve", "gearbox", "gauge", "plug")), "X")


def apart(root, lot):
    """A line that ends in a reservoir of its own."""
    found = [(line, p) for line in lines(root) for p in line.get("joins").split()
             if p.split(".")[0] in {e.get("id") for e in _own(root, "reservoir")}]
    if found:
        line, joined = lot.choice(found)
        tank = _part(root, "reservoir", "T", [port("p", level="below")])
        line.set("joins", " ".join(f"{tank}.p" if p == joined else p for p in line.get("joins").split()))


def switched(root, lot):
    """A hand valve's switch, and what it prevents."""
    for valve in _own(root, "shut-off-valve"):
        if lot.random() < 0.5:
            valve.set("switched", "yes")
            engines = _own(root, "engine")
            if engines and lot.random() < 0.7:
                root.append(_interlock(valve.get("id"), engines[0].get("id")))


def _interlock(valve, engine):
    made = port("")
    made.tag = "interlock"
    made.attrib.clear()
    made.set("when", f"{valve} closed")
    made.set("prevents", f"start {engine}")
    return made


FURNISHINGS = {  # how often, and what does it to a tree with a lot
    control: 0.5, brake: 0.5, towing: 0.55, accumulator: 0.35, drain_filter: 0.35,
    reservoir_level: 0.3, words_on_shafts: 0.5, alone: 0.12, switched: 0.2, apart: 0.1,
}


def furnish(root, lot):
    """Everything as often as the table says, and now and then a flushing valve that is turned."""
    for what, chance in FURNISHINGS.items():
        if lot.random() < chance:
            what(root, lot)
    if lot.random() < 0.12:
        damage.flushing_turned(root, lot)


def complete(root):
    """Takes from a sound circuit what is a finding beside its loops and drains: loads that nothing holds,
    pumps of which nobody knows where they go without a signal, valves that could be shut, open ports."""
    for load in root.iter("load"):
        load.set("overrunning", "no")
    for pump in root.iter("pump"):
        if pump.get("flow-directions") == "2":
            pump.set("rest-displacement", "zero")
    for valve in root.iter("shut-off-valve"):
        if valve.get("position", "open") == "open":
            valve.set("locked", "yes")
    for level in builder.levels(root):
        used = {p for line in lines(level) for p in line.get("joins").split()}
        used |= {p.get("of") for p in level.findall("port")}
        for part in parts(level):
            for name in _may_be_plugged(part):
                joined = f"{part.get('id')}.{name}"
                if joined not in used:
                    plug = _fresh(root, "X")
                    add(level, "plug", plug)
                    add(level, "line", _fresh(root, "Y"), joins=f"{joined} {plug}.P")


def _may_be_plugged(part):
    """Further ports of a housing, and a reservoir's."""
    if part.tag == "reservoir":
        return [p.get("id") for p in part]
    count = int(part.get("case-ports", "1")) if part.get("drain") == "external" else 1
    return [f"L{n}" for n in range(1, count + 1)] if count > 1 else []
