"""The second opinion's own statement of every kind: its ports and its passages.

Read from the table of kinds ("Passages of a kind") and from the table of the circuit file.  Nothing
here is generated from, or copied out of, the program: it is written by hand so that the two can
disagree.
"""

from dataclasses import dataclass
from fractions import Fraction
from typing import Optional

import kinds_valves

# Classes of passages ("Passages" in the terms).
JOINED = "joined"  # ports that are one and the same oil
ONE_WAY = "one-way"  # a check valve
SWITCHED = "switched"  # open in one position of a directional valve
SHUTTLE = "shuttle"  # switched by pressure: a flushing valve's way from the low side to F
HAND = "hand"  # a hand shut-off valve, as it is drawn
METERING = "metering"  # orifice, throttled path, open centre
ELEMENT = "element"  # filter or cooler
BYPASS = "bypass"  # the pressure-opened way beside an element
PRESSURE_OPENED = "pressure-opened"  # a relief
DISPLACEMENT = "displacement"  # pump, motor
REDUCED = "reduced"  # a reducing valve hands oil on up to its setting
LEG = "leg"  # of a flow divider: carries its share of the full flow
HIGHER = "higher"  # a shuttle valve's way from the higher inlet
PILOTED = "piloted"  # open while the pilot is high
UNLOADED = "unloaded"  # open while the pilot is at the setting
LEAKAGE = "leakage"  # from a working port to the housing, or past the pistons
WORKED = "worked"  # displacement of a hand pump: in towing only


@dataclass(frozen=True)
class Passage:
    """One way through a component, between two of its ports (names without the component)."""

    kind: str
    tail: str
    head: str
    both: bool = True
    #: What it takes to open: 0 where nothing holds, None where the datum is missing.
    opening: Optional[Fraction] = Fraction(0)
    #: The position of a directional valve in which it is open.
    position: Optional[str] = None
    #: A shuttle's side, or None; "centre" marks what an open centre lets through.
    shuttle: Optional[str] = None
    drawn_open: bool = True
    locked: bool = False
    #: The port whose pressure opens it, or (a check) keeps it shut.
    pilot: Optional[str] = None
    #: Opened to move the machine with the prime mover stopped.
    for_towing: bool = False


# Exact factors to pascal: the bar is 100 kPa; the psi is a pound-force (0.45359237 kg times
# 9.80665 m/s2) on a square inch (0.0254 m squared).  After NIST SP 811, appendix B, from memory.
_POUND_FORCE = Fraction("0.45359237") * Fraction("9.80665")
PRESSURE_UNITS = {
    "Pa": Fraction(1),
    "mbar": Fraction(100),
    "kPa": Fraction(1000),
    "bar": Fraction(100000),
    "MPa": Fraction(1000000),
    "psi": _POUND_FORCE / (Fraction("0.0254") ** 2),
}
ATMOSPHERE = Fraction(101325)


def pressure(text):
    """Pascal over the atmosphere of a text such as "350 bar"; None where there is no text."""
    if text is None:
        return None
    words = text.split()
    value = Fraction(words[0]) * PRESSURE_UNITS[words[1]]
    value -= ATMOSPHERE if words[2:] == ["abs"] else 0
    return int(value) if value.denominator == 1 else value  # whole numbers are compared sooner


#: The kinds with fixed ports.  Machines add their case ports, the others declare theirs.
FIXED_PORTS = {
    "check-valve": ["A", "B"],
    "relief-valve": ["P", "T"],
    "filter": ["A", "B"],
    "cooler": ["A", "B"],
    "flushing-valve": ["A", "B", "F"],
    "shut-off-valve": ["A", "B"],
    "orifice": ["A", "B"],
    "engine": [],
    "electric-motor": [],
    "gearbox": [],
    "load": [],
    "tachometer": [],
    "brake": ["Z"],
    "strainer": ["A", "B"],
    "heater": ["A", "B"],
    "thermostatic-bypass": ["A", "B", "C"],
    "flow-meter": ["A", "B"],
    "quick-coupling": ["A", "B"],
    "accumulator": ["A"],
    **dict.fromkeys(("gauge", "thermometer", "level-indicator", "pressure-switch", "sensor",
                     "measuring-point", "plug", "breather"), ["P"]),
}
DECLARED_PORTS = {"reservoir", "junction", "directional-valve", "rotary-joint", "device"}
#: Machines with a displacement control, and all that displaces oil.
CONTROLLED = {"pump", "motor", "pump-motor"}
MACHINES = CONTROLLED | {"hand-pump", "cylinder", "semi-rotary-actuator"}
PRIME_MOVERS = {"engine", "electric-motor"}
#: A device's words for how oil can pass.
DEVICE_CLASSES = {"one-way": ONE_WAY, "pressure-opened": PRESSURE_OPENED, "reduced": REDUCED,
                  "metering": METERING, "element": ELEMENT}
KINDS = kinds_valves.VALVES | set(FIXED_PORTS) | DECLARED_PORTS | MACHINES | {"clutch"}


def plays(kind, turned):
    """What a machine is in the circuit: "pump", "actuator", "hand-pump", or "" for no machine.

    A unit is a pump where a prime mover turns it, else an actuator.
    """
    if kind == "pump-motor":
        return "pump" if turned else "actuator"
    if kind in ("motor", "cylinder", "semi-rotary-actuator"):
        return "actuator"
    return kind if kind in ("pump", "hand-pump") else ""


def couples(kind, attributes):
    """Does a part with two shaft ends turn one when the other turns?"""
    return kind == "gearbox" or (kind == "clutch" and attributes.get("engaged", "yes") == "yes")


def displaces(kind, attributes):
    """Is it a machine with two working ports?  A single-acting cylinder has one."""
    return kind in MACHINES and not (kind == "cylinder" and attributes.get("action") == "single")


def two_way(kind, attributes):
    """A pump delivers one way unless the file says otherwise, an actuator moves both ways."""
    if kind == "hand-pump":
        return False
    return attributes.get("flow-directions", "1" if kind == "pump" else "2") == "2"


def working_ports(kind, attributes):
    """Inlet first where there is one: a one-way pump's are S and P, all other machines' A and B."""
    if kind in ("pump", "hand-pump") and not two_way(kind, attributes):
        return ["S", "P"]
    return ["A", "B"] if displaces(kind, attributes) else ["A"]


def equal_areas(attributes):
    """Do both sides of a cylinder's piston take the same oil?  Its ratio is given as "1.6" or "160 %"."""
    words = attributes.get("area-ratio", "").split()
    ratio = Fraction(words[0]) / (100 if words[1:] else 1) if words else None
    return attributes.get("rods", "1") == "2" or ratio == 1


def control_ports(kind, attributes):
    """The pilots of a displacement control that lead outside."""
    if kind not in CONTROLLED or attributes.get("variable", "no") != "yes":
        return []
    return {"0": [], "1": ["X"], "2": ["X1", "X2"]}[attributes.get("pilot-ports", "0")]


def case_ports(attributes):
    """None unless the machine is drained outside; all of them are one housing."""
    if attributes.get("drain", "internal") != "external":
        return []
    count = int(attributes.get("case-ports", "1"))
    return ["L"] if count == 1 else [f"L{number}" for number in range(1, count + 1)]


def ports(kind, attributes, declared):
    """The ports of a component in the kind's order; `declared` are those its children name."""
    if kind in MACHINES:
        return (working_ports(kind, attributes) + case_ports(attributes)
                + control_ports(kind, attributes))
    if kind in kinds_valves.VALVES:
        return kinds_valves.ports(kind, attributes, declared)
    if kind == "check-valve":
        return ["A", "B"] + (["X"] if attributes.get("pilot", "none") != "none" else [])
    if kind == "relief-valve":
        return ["P", "T"] + (["Y"] if attributes.get("drain", "internal") == "external" else [])
    if kind == "clutch":
        return ["Z"] if attributes.get("actuation", "manual") == "hydraulic" else []
    return list(declared) if kind in DECLARED_PORTS else list(FIXED_PORTS[kind])


def one_oil(kind, attributes, declared):
    """Groups of ports that are one node: a junction, a reservoir, a machine's housing."""
    if kind in ("junction", "reservoir"):
        return [list(declared)]
    if kind == "device":
        return [[tail, head] for tail, head, name, _, _ in attributes["ways"] if name == "joined"]
    if kind == "rotary-joint":
        return [[declared[i], declared[i + 1]] for i in range(0, len(declared), 2)]
    if kind == "flow-meter" or (kind == "quick-coupling" and attributes.get("valves") == "none"
                                and attributes.get("joined", "yes") == "yes"):
        return [["A", "B"]]
    return [case_ports(attributes)] if kind in MACHINES else []


def _machine(kind, attributes):
    if not displaces(kind, attributes):
        return
    first, second = working_ports(kind, attributes)
    if kind == "hand-pump":
        yield Passage(WORKED, first, second, both=False)
        return
    # A one-way machine carries oil from its first port to its second (S to P, A to B).
    yield Passage(DISPLACEMENT, first, second, both=two_way(kind, attributes))
    case = case_ports(attributes)
    if case:
        for port in (first, second):
            yield Passage(LEAKAGE, port, case[0], both=False)
    else:
        yield Passage(LEAKAGE, first, second)


def _element(attributes):
    one_way = attributes.get("one-way", "no") == "yes"
    yield Passage(ELEMENT, "A", "B", both=not one_way)
    if "bypass" in attributes:
        yield Passage(BYPASS, "A", "B", both=False, opening=pressure(attributes["bypass"]))


def _directional(positions):
    for position in positions:
        for tail, head, throttled in position.paths:
            yield Passage(METERING if throttled else SWITCHED, tail, head, position=position.name)


def _valve(kind, attributes, declared):
    for name, tail, head, both, opening, pilot in kinds_valves.passages(kind, attributes, declared):
        held = pressure(attributes.get(opening, "0 bar" if name == ONE_WAY else None)) if opening \
            else Fraction(0)
        yield Passage(name, tail, head, both=both, opening=held, pilot=pilot,
                      drawn_open=name != HAND or attributes.get("position", "closed") == "open",
                      locked=attributes.get("locked", "no") == "yes",
                      for_towing=kind == "bypass-valve")


def _check(attributes):
    # Without an opening pressure there is no spring, and nothing is held.
    opening = pressure(attributes.get("opening-pressure", "0 bar"))
    pilot = attributes.get("pilot", "none")
    yield Passage(ONE_WAY, "A", "B", both=False, opening=opening,
                  pilot="X" if pilot == "shuts" else None)
    if pilot == "opens":
        yield Passage(PILOTED, "B", "A", both=False, pilot="X")


def _control(attributes):
    for position, ways in kinds_valves.control_positions(attributes).items():
        for name, tail, head in ways:
            yield Passage(name, tail, head, both=name == SWITCHED, position=position)


def device_ways(element, inside):
    """(tail, head, class, both ways?, opening) of a device; `inside`: what an unknown one is taken for."""
    if element.get("inside") == "unknown":
        ports = [port.get("id") for port in element.findall("port")]
        return [(tail, head, inside, False, Fraction(0)) for tail in ports for head in ports
                if inside and tail != head]
    ways = []
    for way in element.findall("passage"):
        name, given = way.get("class"), way.get("opening")
        opens = name in ("pressure-opened", "reduced")
        ways.append((way.get("from"), way.get("to"), name, way.get("both-ways", "no") == "yes",
                     pressure(given) if given or opens else Fraction(0)))
    return ways


def passages(kind, attributes, positions, declared=()):
    """The passages of a component; `positions` are a directional valve's, else empty."""
    if kind == "pilot-control-valve":
        yield from _control(attributes)
    elif kind in kinds_valves.VALVES:
        yield from _valve(kind, attributes, declared)
    elif kind in MACHINES:
        yield from _machine(kind, attributes)
    elif kind == "check-valve":
        yield from _check(attributes)
    elif kind == "relief-valve":
        yield Passage(PRESSURE_OPENED, "P", "T", both=False,
                      opening=pressure(attributes.get("setting")))
        if attributes.get("make-up-check", "no") == "yes":
            yield Passage(ONE_WAY, "T", "P", both=False,
                          opening=pressure(attributes.get("check-opening-pressure", "0 bar")))
    elif kind in ("filter", "cooler", "strainer", "heater"):
        yield from _element(attributes)
    elif kind == "thermostatic-bypass":
        # Both ways are asked, one at a time.
        yield Passage(ELEMENT, "A", "C", position="cold")
        yield Passage(ELEMENT, "A", "B", position="warm")
    elif kind == "quick-coupling":
        # Its valves close where somebody parts it.
        if attributes.get("valves") != "none" and attributes.get("joined", "yes") == "yes":
            yield Passage(HAND, "A", "B")
    elif kind == "flushing-valve":
        for side in ("A", "B"):
            yield Passage(SHUTTLE, side, "F", shuttle=side)
            if attributes.get("centre", "closed") == "open":
                yield Passage(METERING, side, "F", shuttle="centre")
    elif kind == "shut-off-valve":
        yield Passage(HAND, "A", "B", drawn_open=attributes.get("position", "open") == "open",
                      locked=attributes.get("locked", "no") == "yes")
    elif kind == "device":
        for tail, head, name, both, opening in attributes["ways"]:
            if name != "joined":
                yield Passage(DEVICE_CLASSES[name], tail, head, both=both, opening=opening)
    elif kind == "orifice":
        yield Passage(METERING, "A", "B")
    elif kind == "directional-valve":
        yield from _directional(positions)
