"""Circuits that a seed makes: loops and open drives with options by lot, then parts of every kind
spliced into their lines and onto their shafts until the circuit has its size. They need not make
sense as drives; they must be drawn so that they can be read."""

import random
import xml.etree.ElementTree as ElementTree

import bench
import kinds
import variants

SMALLEST, LARGEST = 10, 120  # components
MOST_ON_A_LINE = 6  # ports that a line gets by splicing

# As in `bench`: what stands in a line or on it.
COMMON = (
    *(("check-valve", options, "<A >B") for options in ({}, dict(opening_pressure="1 bar"))),
    *(("filter", options, "<A >B") for options in (
        {}, dict(bypass="2 bar"), dict(one_way="yes"), dict(clogging_indicator="visual"),
        dict(clogging_indicator="electrical", bypass="2 bar", one_way="yes"))),
    *(("cooler", options, "<A >B") for options in ({}, dict(bypass="1 bar"))),
    *(("shut-off-valve", options, "<A >B") for options in ({}, dict(position="closed"))),
    ("bypass-valve", {}, "<A >B"), ("orifice", {}, "<A >B"), ("measuring-point", {}, "<P"),
    ("relief-valve", dict(setting="200 bar"), "<P >T"),
    ("relief-valve", dict(operation="pilot"), "<P >T"),
    ("junction", {}, "<<a >>b >>c"), ("junction", {}, "<<a >>b"),
    ("flushing-valve", {}, "<A <B >F"), ("flushing-valve", dict(centre="open"), "<A <B >F"),
    ("directional-valve", {}, ""), ("brake", {}, "X:Z"), ("brake", dict(applied="pressure"), "X:Z"),
    ("gearbox", dict(ratio="4.5"), ""), ("clutch", {}, ""), ("clutch", dict(engaged="no"), ""),
    ("clutch", dict(actuation="hydraulic"), "X:Z"), ("clutch", dict(actuation="electric"), ""))


def deck():
    """Every kind with each of its variants: kind -> [(attributes, port words)]."""
    found = {}
    tables = (bench.PRESSURE_VALVES + bench.FLOW_VALVES + bench.ACTUATORS + bench.FITTINGS)
    for kind, attributes, words in [part for _, *parts in tables for part in parts] + list(COMMON):
        found.setdefault(kind, []).append((attributes, words))
    return found


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


class Splicer:
    """Adds parts to a circuit."""

    def __init__(self, root, lot):
        self.root, self.lot, self.count, self.cut_already = root, lot, 0, set()
        self.supplies = [e for e in root.findall("line")
                         if any(p.endswith(".P") for p in e.get("joins").split())]

    def _fresh(self, letter):
        self.count += 1
        return f"{letter}{self.count}"

    def add(self, kind, attributes=None, children=(), letter="X"):
        ident = self._fresh(letter)
        part = ElementTree.SubElement(self.root, kind, {"id": ident, **{
            name.replace("_", "-"): str(value) for name, value in (attributes or {}).items()
            if value is not None}})
        part.extend(children)
        return ident

    def join(self, *ports, function=None):
        return self.add("line", dict(joins=" ".join(ports), function=function), letter="Y")

    def _line(self):
        """A line by lot that has room for one port more. None to a reservoir: what is joined to
        nothing else stands alone beside its own mark."""
        tanks = {e.get("id") for e in self.root.findall("reservoir")}
        lines = [(e, e.get("joins").split()) for e in self.root.findall("line")]
        lines = [(e, joins) for e, joins in lines
                 if not tanks & {p.partition(".")[0] for p in joins}]
        short = [e for e, joins in lines if len(joins) < MOST_ON_A_LINE]
        return self.lot.choice(short or [e for e, _ in lines])

    def tee(self, port, line=None):
        """Joins a port to a line, else to one by lot."""
        line = self._line() if line is None else line
        line.set("joins", f"{line.get('joins')} {port}")
        return line

    def cut(self, first, second):
        """Cuts one port off a line and joins it to the one port, the rest to the other; gives the
        line."""
        whole = self._whole_lines()
        if not whole:
            self.service()
            whole = self._whole_lines()
        line = self.lot.choice(whole)
        self.cut_already.add(line.get("id"))
        joins = line.get("joins").split()
        port = joins.pop(self.lot.randrange(len(joins)))
        ends = [first, second]
        self.lot.shuffle(ends)
        line.set("joins", " ".join(joins + [ends[0]]))
        self.cut_already.add(self.join(ends[1], port, function=line.get("function")))
        return line

    def _whole_lines(self):
        """Lines that no cut has made or cut, but for the sides of a loop and what a part has to a
        reservoir for itself: on machines, no line leads through ten parts."""
        return [e for e in self.root.findall("line") if e.get("id") not in self.cut_already
                and len(e.get("joins").split()) > 1 and e.get("function") != "working"]

    def to_tank(self, port, level, function=None):
        tank = self.lot.choice(self.root.findall("reservoir"))
        name = self._fresh("p")
        ElementTree.SubElement(tank, "port", {"id": name, "level": level})
        self.cut_already.add(self.join(port, f"{tank.get('id')}.{name}", function=function))

    def splice(self, kind, attributes, words):
        """Adds a part and joins its ports as their words say, as `bench` has them."""
        if kind == "directional-valve":
            self.valve()
            return
        ports = [w.rpartition(":") for w in words.split()]
        own = [w.lstrip("<>") for _, _, w in ports if w[:2] in ("<<", ">>")]
        children = [ElementTree.Element("port", {"id": name}) for name in own]
        if kind == "device" and "inside" not in attributes:
            children += [ElementTree.Element("passage", {"from": own[0], "to": name,
                                                         "class": "joined"}) for name in own[1:]]
        ident = self.add(kind, attributes, children)
        self._on_shafts(kind, ident)
        inlets = [f"{ident}.{w.lstrip('<')}" for _, _, w in ports if w[0] == "<"]
        outlets = [f"{ident}.{w.lstrip('>')}" for _, _, w in ports if w[0] == ">"]
        line = None
        if kind in ("pump", "hand-pump") or kind in bench.DRIVEN:
            line = self.tee(inlets.pop(), self.lot.choice(self.supplies))
        elif inlets and outlets:
            line = self.cut(inlets.pop(0), outlets.pop(0))
        for port in inlets:
            self.tee(port, line)
        # What is left goes to a reservoir, so that all stays as near together as in a machine.
        for port in outlets:
            self.to_tank(port, "below", "suction" if kind in ("pump", "hand-pump") else "return")
        for role, _, word in ports:
            if (role or word)[0] == "X":
                self.tee(f"{ident}.{word}", line)
            elif (role or word)[0] == "O":
                self.to_tank(f"{ident}.{word}", "above")
            elif (role or word)[0] == "Y":
                self.to_tank(f"{ident}.{word}", self.lot.choice(("above", "below")), "drain")

    def _on_shafts(self, kind, ident):
        shafts = self.root.findall("shaft")
        if kind in bench.DRIVEN:
            load = self.add("load", letter="Q")
            self.add("shaft", dict(joins=f"{ident} {load}"), letter="Z")
        elif kind in ("pump", "tachometer", "brake"):
            moving = [e for e in shafts if not self._reaches_a_rod(e)]
            shaft = self.lot.choice(moving)
            shaft.set("joins", f"{shaft.get('joins')} {ident}")
        elif kind in ("gearbox", "clutch"):
            shaft = self.lot.choice([e for e in shafts if not self._reaches_a_rod(e)])
            joins = shaft.get("joins").split()
            at = self.lot.randint(1, len(joins) - 1)
            shaft.set("joins", " ".join(joins[:at] + [f"{ident}.in"]))
            self.add("shaft", dict(joins=" ".join([f"{ident}.out"] + joins[at:])), letter="Z")

    def _reaches_a_rod(self, shaft):
        """Whether the shaft is the rod of a cylinder, which nothing turns."""
        rods = {e.get("id") for e in self.root.findall("cylinder")}
        return bool(rods & set(shaft.get("joins").split()))

    def _valve(self, names, *positions):
        lot = self.lot
        return self.add("directional-valve", dict(
            actuation=lot.choice(("solenoid", "pilot", "lever", "pedal")),
            detent=lot.choice(("yes", "no", "no"))), [
            ElementTree.Element("port", {"id": name}) for name in names] + [
            ElementTree.fromstring(p) for p in positions])

    def valve(self):
        """A valve of two positions in a line."""
        ident = self._valve("AB", variants.position("through", "A-B", rest=True),
                            variants.position("shut"))
        self.cut(f"{ident}.A", f"{ident}.B")

    def service(self):
        """A valve of three positions and an actuator beside the others."""
        lot = self.lot
        centre = lot.choice(((), ("P-T",), ("A-T", "B-T"), ("A~T", "B~T"), ("P-T", "A-T", "B-T")))
        ident = self._valve("PTAB", variants.position("out", "P-A", "B-T"),
                            variants.position("rest", *centre, rest=True),
                            variants.position("back", "P-B", "A-T"))
        self.tee(f"{ident}.P", lot.choice(self.supplies))
        self.to_tank(f"{ident}.T", "below", "return")
        actuator, attributes = lot.choice((("cylinder", {}), ("cylinder", dict(rods=2)),
                                           ("semi-rotary-actuator", {}), ("motor", {})))
        driven = self.add(actuator, attributes)
        self._on_shafts(actuator, driven)
        for end in "AB":
            self.join(f"{ident}.{end}", f"{driven}.{end}")


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


def size(circuit):
    """Number of components of a circuit, given as XML or its root element."""
    root = ElementTree.fromstring(circuit) if isinstance(circuit, str) else circuit
    return sum(e.tag in kinds.KINDS or e.tag == "junction" for e in root)


def make(seed, components):
    """XML of a circuit of so many components or a few more."""
    lot = random.Random(seed)
    if components < 16 or (seed % 4 == 3 and components < 45):
        parts = [_open_drive(lot)]
    else:
        loops = max(1, round(components / lot.choice((16, 18, 20))))
        parts = [variants.loop(n + 1, **_options(lot)) for n in range(loops)]
    root = ElementTree.fromstring(variants.circuit(f"seed {seed}", *parts).split("\n", 1)[1])
    if seed % 3 == 2:
        for engine in root.findall("engine"):
            engine.tag = "electric-motor"
    for tank in root.findall("reservoir"):
        if lot.random() < 0.2:
            tank.set("pressure", "0.5 bar")
    splicer, every, cards = Splicer(root, lot), deck(), []
    while size(root) < components:
        cards = cards or lot.sample(sorted(every), len(every))
        kind = cards.pop()
        splicer.splice(kind, *lot.choice(every[kind]))
    # Where a hose finds no room the program widens the whole drawing: the sides of a loop have room.
    for line in root.findall("line[@function='working']"):
        if lot.random() < 0.2:
            line.tag = "hose"
    if lot.random() < 0.3:  # designations as ISO 1219-2 has them, circuit and number
        for number, part in enumerate(e for e in root if e.tag in variants.DESIGNATED):
            part.set("designation", f"{lot.randint(0, 2)}.{number + 1}")
    return ElementTree.tostring(root, encoding="unicode")


def circuits(count):
    """(seed, XML) of so many circuits, their sizes spread evenly."""
    step = (LARGEST - SMALLEST) / (count - 1)
    for seed in range(count):
        yield seed, make(seed, round(SMALLEST + step * seed))
