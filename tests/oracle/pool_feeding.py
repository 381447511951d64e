"""What the drives of the pool have and lack for the rules of feeding: a second source, reliefs, a
switch on the charge line, cylinders, and the mistakes in them.

All of it is drawn from a lot of its own, and its parts (their ids begin with Z) are added when the
rest is drawn, so that the rest stays what it was.
"""

import random
import xml.etree.ElementTree as ElementTree

import builder
import damage
from builder import add


class Extras:
    """Parts to be added to a circuit, and the nets of its builder that they are to join."""

    def __init__(self, b, seed):
        self.b = b
        self.lot = random.Random(f"more-{seed}")
        self.parts = []
        self.joins = {}  # net -> ports
        self.shafts = []
        self.series = []  # (net of the charge oil, net of a side, motor)
        self.outlets = []  # nets at charge pumps
        self.apart = False  # is a loop's pump turned by something else than its charge pump?

    def maybe(self, chance):
        """Draws from the lot of these parts."""
        return self.lot.random() < chance

    def part(self, kind, **attributes):
        """A part to be added; gives its id."""
        ident = f"Z{len(self.parts) + 1}"
        self.parts.append((kind, ident, attributes))
        return ident

    def join(self, net, *ports):
        """Ports to be added to a net of the builder, or to a new one."""
        self.joins.setdefault(net, []).extend(ports)

    def between(self, start, end, kind, names="AB", **attributes):
        """A part of two ports between two nets."""
        ident = self.part(kind, **attributes)
        self.join(start, f"{ident}.{names[0]}")
        self.join(end, f"{ident}.{names[1]}")

    def relief(self, start, end, setting):
        """A relief between two nets."""
        self.between(start, end, "relief-valve", "PT", setting=setting)

    def bypasses(self):
        """A relief stands behind the filters that there are: they must not cut it off."""
        for filter_ in self.b.root.iter("filter"):
            filter_.attrib.setdefault("bypass", "3 bar")

    def middle(self, gallery, middle, side):
        """Feeds and limits the line between two motors."""
        self.between(gallery, middle, "check-valve")
        self.relief(middle, side, "250 bar")

    def one_more(self, gallery, side):
        """A second motor in series with the one on this net, ahead of it."""
        if self.maybe(0.3):
            size = self.lot.choice(("80 cm3/rev", "80 cm3/rev", "0.08 L/rev", "56 cm3/rev", None))
            self.series.append((gallery, side, self.part("motor", displacement=size)))

    def _in_series(self, root):
        """Takes the motors off their nets for those in series ahead of them."""
        for number, (gallery, side, ident) in enumerate(self.series, 1):
            port = next(port for port in self.b.nets[side] if port.startswith("M"))
            line = builder.line_of(root, port)
            line.set("joins", " ".join(f"{ident}.A" if other == port else other
                                       for other in line.get("joins").split()))
            middle = f"Zn{number}"
            self.join(middle, port, f"{ident}.B")
            self.middle(gallery, middle, side)

    def cylinder(self, a, c, flushed):
        """A cylinder beside the motors; one rod only where the loop is flushed."""
        if not self.maybe(0.65):
            return
        ratio = self.lot.choice(("1.4", "1.6", "1.6", "1", "100 %")) if flushed else None
        self.between(a, c, "cylinder", area_ratio=ratio, rods=None if flushed else "2")

    def second_source(self, tank, gallery):
        """A second charge pump with a motor of its own, a relief, a filter and a check."""
        if not self.maybe(0.4):
            return
        motor, pump = self.part("electric-motor"), self.part("pump", displacement="12 cm3/rev")
        self.shafts.append(f"{motor} {pump}")
        inlet, outlet, back, ahead = (f"{letter}{pump}" for letter in "sprf")
        self.join(inlet, f"{pump}.S", self.b.tank_port(tank))
        self.join(outlet, f"{pump}.P")
        self.relief(outlet, back, "22 bar")
        self.join(back, self.b.tank_port(tank))
        self.between(outlet, ahead, "filter", clogging_indicator="visual")
        self.between(ahead, gallery, "check-valve")

    def watch(self):
        """A switch on the charge lines where no shaft holds loop and charge pump together."""
        for net in self.outlets if self.apart or self.maybe(0.1) else ():
            self.join(net, f"{self.part('pressure-switch', setting='12 bar')}.P")

    def finish(self, root):
        """Adds it all to the finished circuit."""
        self._in_series(root)
        for kind, ident, attributes in self.parts:
            add(root, kind, ident, **attributes)
        for number, joins in enumerate(self.shafts, 1):
            add(root, "shaft", f"Zw{number}", joins=joins)
        for net, ports in self.joins.items():
            there = self.b.nets.get(net, ())
            lines = [line for line in builder.lines(root)
                     if not set(there).isdisjoint(line.get("joins").split())]
            if lines:
                lines[0].set("joins", " ".join([lines[0].get("joins"), *ports]))
            else:
                add(root, "line", f"Zq{net}", joins=" ".join([*there, *ports]))
        switches = [ident for kind, ident, _ in self.parts if kind == "pressure-switch"]
        engine = root.find("engine").get("id")
        for ident in switches:
            ElementTree.SubElement(root, "interlock", {"when": f"{ident} below 12 bar",
                                                       "prevents": f"start {engine}"})


def _take_out(root, fits):
    """Takes one part that fits off its lines and out of the circuit."""
    for level, part in damage._places(root, "check-valve", "relief-valve", "flushing-valve"):
        if fits(part):
            for port in damage._ports_in_use(level, part.get("id")):
                line = builder.line_of(level, port)
                damage._drop_port(root, level, port)
                if line is not None and len(line.get("joins").split()) < 2 and line in list(level):
                    level.remove(line)
            level.remove(part)
            return


def _own(kind):
    return lambda part: part.tag == kind and part.get("id").startswith("Z")


def _unseen(root, lot):
    """No switch on the hand valves, no indicator on the filters."""
    for part in root.iter():
        if part.tag == "shut-off-valve":
            part.attrib.pop("switched", None)
        elif part.tag == "filter" and part.get("clogging-indicator") != "none":
            part.attrib.pop("clogging-indicator", None)
            if lot.random() < 0.5:
                part.attrib.pop("bypass", None)


def _no_bypass(root, lot):
    for part in root.iter("filter"):
        part.attrib.pop("bypass", None)
        if lot.random() < 0.3:
            part.set("clogging-indicator", "electrical")


def _no_interlock(root, _):
    for interlock in root.findall("interlock"):
        root.remove(interlock)


def _filters_turned(root, lot):
    for level, part in damage._places(root, "filter"):
        if lot.random() < 0.7:
            part.set("one-way", "yes")
            builder.rename_ports(level, part.get("id"), {"A": "B", "B": "A"})


def _own_relief_gone(root, _):
    _take_out(root, _own("relief-valve"))


def _own_check_gone(root, _):
    _take_out(root, _own("check-valve"))


def _valve_ahead_of_a_check(root, lot):
    places = damage._joined(root, damage._of_kind("check-valve", names="A"))
    damage.shut_off(root, lot, places)


def _own_checks_open(root, _):
    for part in [part for part in root.iter("check-valve") if part.get("id").startswith("Z")]:
        part.tag = "orifice"


def _not_flushed(root, _):
    _take_out(root, lambda part: part.tag == "flushing-valve")
    for part in root.iter("cylinder"):
        part.set("area-ratio", "1.6")
        part.attrib.pop("rods", None)


#: (chance, what is done) of each mistake.
MISTAKES = ((0.2, _unseen), (0.15, _no_bypass), (0.3, _no_interlock), (0.15, _filters_turned),
            (0.3, _own_relief_gone), (0.2, _own_check_gone), (0.6, _own_checks_open),
            (0.1, _not_flushed), (0.25, _valve_ahead_of_a_check))


def spoil(root, number):
    """Makes mistakes in a circuit of the pool."""
    lot = random.Random(f"more-damage-{number}")
    for chance, mistake in MISTAKES:
        if lot.random() < chance:
            mistake(root, lot)
