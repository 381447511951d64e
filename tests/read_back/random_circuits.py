"""Circuits that a seed makes: loops with options by lot, then parts spliced into their lines. They
need not make sense as drives; they must be drawn so that they can be read."""

import random
import xml.etree.ElementTree as ElementTree

import variants

INSERTS = ("check-valve", "orifice", "shut-off-valve", "filter", "cooler", "junction",
           "relief-valve",
           "directional-valve")


def _options(lot):
    """Arguments for `variants.loop`."""
    def one_of(*values):
        return lot.choice(values)

    def machine():
        external = lot.random() < 0.8
        return {"variable": one_of("yes", "no"), "control": "none", "drain": "external" if external
                else "internal",
                **({"case_ports": lot.randint(1, 3)} if external else {})}

    pump, motor = machine(), machine()
    for options in (pump, motor):
        if options["variable"] == "yes":
            options["control"] = one_of("none", "manual", "hydraulic", "electric")
    bypass = {"bypass": "2 bar"}
    return dict(
        pump=pump, motor=motor, check=one_of({}, {"opening_pressure": "1 bar"}),
        relief={"operation": one_of("direct", "pilot"), "adjustable": one_of("yes", "no")},
        filter_={**one_of({}, bypass), "clogging_indicator": one_of("none", "visual", "electrical"),
                 "one_way": one_of("yes", "no")},
        cooler=one_of({}, bypass), flushing={"centre": one_of("open", "closed")},
        suction=lot.random() < 0.3)


def _insert(root, lot, number):
    """Cuts one port off a line and puts a part of two ports between."""
    lines = [e for e in root.findall("line") if len(e.get("joins").split()) > 1]
    line = lot.choice(lines)
    joins = line.get("joins").split()
    port = joins.pop(lot.randrange(len(joins)))
    kind, ident = lot.choice(INSERTS), f"X{number}"
    part = ElementTree.SubElement(root, kind, {"id": ident})
    names = ["P", "T"] if kind == "relief-valve" else ["A", "B"]
    if kind in ("check-valve", "filter", "cooler") and lot.random() < 0.5:
        part.set("opening-pressure" if kind == "check-valve" else "bypass", "1 bar")
    if kind == "shut-off-valve":
        part.set("position", lot.choice(("open", "closed")))
    if kind in ("junction", "directional-valve"):
        for name in names:
            ElementTree.SubElement(part, "port", {"id": name})
    if kind == "directional-valve":
        part.set("actuation", lot.choice(("solenoid", "pilot", "lever", "pedal")))
        part.append(ElementTree.fromstring(variants.position("through", "A-B", rest=True)))
        part.append(ElementTree.fromstring(variants.position("shut")))
    lot.shuffle(names)
    line.set("joins", " ".join(joins + [f"{ident}.{names[0]}"]))
    new = ElementTree.SubElement(root, "line",
                                 {"id": f"Y{number}", "joins": f"{ident}.{names[1]} {port}"})
    if line.get("function"):
        new.set("function", line.get("function"))


def _open_drive(lot):
    """A pump, a directional valve whose positions join what they will, and a motor."""
    ports = lot.choice(("PA", "PTA", "PTAB", "PTAB"))
    count = lot.randint(1, 4)
    rest, positions = lot.randrange(count), []
    for i in range(count):
        left, paths = lot.sample(ports, len(ports)), []
        while len(left) > 1 and lot.random() < 0.8:
            paths.append(left.pop() + lot.choice("--~") + left.pop())
        if left and paths and lot.random() < 0.3:  # three ports joined
            paths.append(left.pop() + "-" + paths[0][0])
        positions.append(variants.position(f"p{i}", *paths, rest=i == rest))
    return variants.open_drive(
        ports, positions, actuation=lot.choice(("solenoid", "pilot", "lever", "pedal")),
        detent=lot.choice(("yes", "no")), motor={"flow_directions": lot.choice((1, 2))})


def make(seed):
    lot = random.Random(seed)
    if seed % 4 == 3:
        parts = [_open_drive(lot)]
    else:
        parts = [variants.loop(n + 1, **_options(lot)) for n in range(lot.choice((1, 1, 1, 2)))]
    root = ElementTree.fromstring(variants.circuit(f"seed {seed}", *parts).split("\n", 1)[1])
    if lot.random() < 0.3:  # designations as ISO 1219-2 has them, circuit and number
        for number, part in enumerate(e for e in root if e.tag in variants.DESIGNATED):
            part.set("designation", f"{lot.randint(0, 2)}.{number + 1}")
    for number in range(lot.randint(0, 6)):
        _insert(root, lot, number + 1)
    return ElementTree.tostring(root, encoding="unicode")
