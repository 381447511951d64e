"""Reads a circuit file on its own and turns it into components, nodes, passages and shafts.

The term read here is "Node": ports joined by lines and junctions; all case ports of a machine are
one node with its housing, all ports of a reservoir are the reservoir.
"""

import os
import xml.etree.ElementTree as ElementTree
from dataclasses import dataclass, field
from functools import cached_property

import kinds
import kinds_valves


@dataclass
class Position:
    """A position of a directional valve: `states` are those its `in` names."""

    name: str
    rest: bool
    states: list
    paths: list


@dataclass
class Component:
    """A part, by its path (`U1/P1`), in the order of the file."""

    path: str
    kind: str
    attributes: dict
    declared: list
    positions: list
    order: int = 0
    plays: str = ""  # what kind of machine it is here (kinds.plays)
    ports: list = field(default_factory=list)

    @property
    def two_way(self):
        """Does a machine take oil in either direction?"""
        return kinds.two_way(self.kind, self.attributes)

    @property
    def working(self):
        """A machine's two working ports with its path (`U1/P1.A`)."""
        return [f"{self.path}.{port}" for port in kinds.working_ports(self.kind, self.attributes)]

    @property
    def rest(self):
        """The positions a valve takes by itself: one, or both of a thermostat."""
        return [position.name for position in self.positions if position.rest]


@dataclass(frozen=True)
class Way:
    """A passage between two nodes of the circuit."""

    number: int
    owner: str
    passage: kinds.Passage
    tail: int
    head: int
    kind: str = field(init=False, compare=False)  #: the class of the passage
    both: bool = field(init=False, compare=False)  #: is it open both ways when it is open?

    def __post_init__(self):
        # Asked for by the million.
        object.__setattr__(self, "kind", self.passage.kind)
        object.__setattr__(self, "both", self.passage.both)

    @property
    def holds(self):
        """Does it hold pressure: a check with a spring, pressure-opened, metering, displacement?"""
        if self.kind == kinds.ONE_WAY:
            return self.passage.opening > 0
        return self.kind in (kinds.METERING, kinds.LEG, kinds.REDUCED, kinds.BYPASS,
                             kinds.PRESSURE_OPENED,
                             kinds.DISPLACEMENT, kinds.LEAKAGE, kinds.WORKED)


class Groups:
    """Names that belong together (a union-find)."""

    def __init__(self):
        self._parent = {}

    def find(self, name):
        """The name that stands for the whole group."""
        self._parent.setdefault(name, name)
        while self._parent[name] != name:
            self._parent[name] = self._parent[self._parent[name]]
            name = self._parent[name]
        return name

    def join(self, names):
        """Makes one group of those that the names are in."""
        for name in names[1:]:
            self._parent[self.find(name)] = self.find(names[0])


class Circuit:
    """Components, nodes (numbers), ways between them and what an engine turns."""

    def __init__(self):
        self.components = {}
        self.node = {}  # port "P1.A" -> number of its node
        self.ports_on = []  # number of a node -> its ports in the order of the file
        self.ways = []
        self.reservoirs = set()  # nodes
        self.lines = {}  # path of a line or hose -> attributes
        self.hoses = {}  # the same of hoses alone
        self.joins = {}  # path of a line or hose -> the parts' own ports on it
        self.joined = set()  # all these ports
        self.shafts = []  # of each shaft the names that it joins ("M1", "G1.in")
        self.levels = {}  # a reservoir's port -> "above" or "below", where it says
        self.interlocks = []  # (words of `when`, words of `prevents`)
        self.staged = set()  # paths of what follows a command
        self.waivers = []  # (rule, subject)
        self.unknown = []  # devices of which nobody knows the inside
        self.turned = set()  # machines that a prime mover turns
        self.drive = {}  # path -> what it turns with
        self.movers = {}  # drive -> attributes of its prime movers
        self.loads = {}  # drive -> attributes of its loads

    def machines(self, kind=None):
        """What displaces oil (or plays one part in it) in the order of the file."""
        return [part for part in self.components.values()
                if kinds.displaces(part.kind, part.attributes) and kind in (None, part.plays)]

    def pull(self, actuators):
        """Which side of a loop is high whatever the state, as its loads always pull one way."""
        loads = [load for motor in actuators for load in self.loads.get(self.drive[motor], ())]
        senses = {load.get("overrunning-sense", "either")
                  if load.get("overrunning", "no") == "yes" else "none" for load in loads}
        return {("forward",): "B", ("reverse",): "A"}.get(tuple(senses), "")

    @property
    def accumulators(self):
        """The nodes at which oil under pressure is stored."""
        return {self.node[f"{part.path}.A"] for part in self.components.values()
                if part.kind == "accumulator"}

    @cached_property
    def pressurised(self):
        """The nodes of reservoirs in which gas keeps a pressure."""
        return {node for node, held in reservoir_pressures(self).items() if held > 0}

    def displacement_nodes(self, path):
        """The two nodes that a machine's working ports stand on."""
        return tuple(self.node[port] for port in self.components[path].working)


class _Reader:
    def __init__(self, inside):
        self.inside = inside
        self.unknown = []  # devices
        self.parts = []
        self.lines = {}
        self.hoses = {}
        self.joins = {}
        self.levels = {}
        self.rods = []
        self.oil = Groups()
        self.shafts = Groups()
        self.outer = {}  # declared port of an assembly -> the port it stands for

    def port(self, prefix, text):
        """The real port behind a name, through as many assemblies as there are."""
        name = prefix + text
        while name in self.outer:
            name = self.outer[name]
        return name

    def read(self, element, prefix, folder, overrides):
        """Reads the children of a circuit or assembly; assemblies first give their ports names."""
        lines, shafts = [], []
        for child in element:
            if child.tag in ("line", "hose"):
                path = prefix + child.get("id")
                lines.append(path)
                self.joins[path] = child.get("joins").split()
                self.lines[path] = {**child.attrib, **overrides.get(path, {})}
                if child.tag == "hose":
                    self.hoses[path] = self.lines[path]
            elif child.tag == "shaft":
                shafts.append(child.get("joins").split())
            elif child.tag == "assembly":
                self.assembly(child, prefix, child.get("id"), folder, overrides)
            elif child.tag == "use":
                self.use(child, prefix, folder, overrides)
            elif child.tag in kinds.KINDS:
                self.component(child, prefix, overrides)
        for path in lines:
            self.joins[path] = [self.port(prefix, port) for port in self.joins[path]]
            self.oil.join(self.joins[path])
        for joins in shafts:
            self.rods.append([prefix + part for part in joins])
            # A named end ("G1.in") is a name of its own; `component` joins those that turn as one.
            self.shafts.join([prefix + part for part in joins])

    def component(self, element, prefix, overrides):
        """Reads a part, with what a `use` further out sets on it."""
        path = prefix + element.get("id")
        attributes = dict(element.attrib)
        attributes.update(overrides.get(path, {}))
        positions = [Position(place.get("id"), place.get("rest", "no") == "yes",
                              place.get("in", "").split(),
                              [(way.get("from"), way.get("to"), way.get("throttled", "no") == "yes")
                               for way in place.iter("path")])
                     for place in element.iter("position")]
        if element.tag == "thermostatic-bypass":
            positions = [Position(name, True, [], []) for name in ("cold", "warm")]
        if element.tag == "pilot-control-valve":
            positions = [Position(name, name == "released", [], [])
                         for name in kinds_valves.control_positions(attributes)]
        declared = [port.get("id") for port in element.findall("port")]
        if element.tag == "reservoir":
            self.levels.update((f"{path}.{port.get('id')}", port.get("level"))
                               for port in element.findall("port"))
        if element.tag == "device":
            attributes["ways"] = kinds.device_ways(element, self.inside)
            if attributes.get("inside") == "unknown":
                self.unknown.append(path)
        if kinds.couples(element.tag, attributes):
            self.shafts.join([path + ".in", path + ".out"])
        self.parts.append(Component(path, element.tag, attributes, declared, positions))

    def assembly(self, element, prefix, name, folder, overrides):
        """Reads an assembly's inside, then gives its declared ports their meaning."""
        inside = f"{prefix}{name}/"
        self.read(element, inside, folder, overrides)
        for port in element.findall("port"):
            self.outer[f"{prefix}{name}.{port.get('id')}"] = inside + port.get("of")

    def use(self, element, prefix, folder, overrides):
        """Reads an assembly from its own file, with the attributes that are set on its parts."""
        path = os.path.join(folder, element.get("file"))
        inside = f"{prefix}{element.get('id')}/"
        # What stands further out is set last, and so prevails over what the used file says itself.
        merged = {}
        for change in element.findall("set"):
            merged.setdefault(inside + change.get("of"), {})[change.get("attribute")] = \
                change.get("value")
        for part, changes in overrides.items():
            merged.setdefault(part, {}).update(changes)
        self.assembly(ElementTree.parse(path).getroot(), prefix, element.get("id"),
                      os.path.dirname(path), merged)


def read(path, inside=None):
    """The circuit in the file at `path`; the file must be one that the format allows.

    `inside`: the class of passage that all ports of a device with an unknown inside have to each
    other; without it they have none.
    """
    reader = _Reader(inside)
    reader.read(ElementTree.parse(path).getroot(), "", os.path.dirname(path), {})
    circuit = Circuit()
    circuit.unknown = reader.unknown
    root = ElementTree.parse(path).getroot()
    circuit.lines, circuit.hoses, circuit.joins = reader.lines, reader.hoses, reader.joins
    circuit.joined = {port for ports in reader.joins.values() for port in ports}
    circuit.shafts = reader.rods
    circuit.levels = reader.levels
    circuit.interlocks = [(lock.get("when").split(), lock.get("prevents").split())
                          for lock in root.findall("interlock")]
    circuit.staged = {stage.get("of") for stage in root.iterfind("command/stage")}
    circuit.waivers = [(waiver.get("rule"), waiver.get("subject")) for waiver in root.findall("waiver")]
    movers = {reader.shafts.find(part.path) for part in reader.parts
              if part.kind in kinds.PRIME_MOVERS}
    for order, part in enumerate(reader.parts):
        part.order = order
        circuit.drive[part.path] = reader.shafts.find(part.path)
        for kind, found in (("load", circuit.loads), *((mover, circuit.movers)
                                                       for mover in kinds.PRIME_MOVERS)):
            if part.kind == kind:
                found.setdefault(circuit.drive[part.path], []).append(part.attributes)
        if reader.shafts.find(part.path) in movers:
            circuit.turned.add(part.path)
        part.plays = kinds.plays(part.kind, part.path in circuit.turned)
        part.ports = kinds.ports(part.kind, part.attributes, part.declared)
        circuit.components[part.path] = part
        for group in kinds.one_oil(part.kind, part.attributes, part.declared):
            reader.oil.join([f"{part.path}.{port}" for port in group])
    _number_nodes(circuit, reader.oil)
    for part in circuit.components.values():
        if part.kind == "reservoir":
            circuit.reservoirs.update(circuit.node[f"{part.path}.{port}"] for port in part.ports)
        for passage in kinds.passages(part.kind, part.attributes, part.positions, part.declared):
            circuit.ways.append(Way(len(circuit.ways), part.path, passage,
                                    circuit.node[f"{part.path}.{passage.tail}"],
                                    circuit.node[f"{part.path}.{passage.head}"]))
    return circuit


def _number_nodes(circuit, oil):
    numbers = {}
    for part in circuit.components.values():
        for port in part.ports:
            name = f"{part.path}.{port}"
            number = numbers.setdefault(oil.find(name), len(numbers))
            if number == len(circuit.ports_on):
                circuit.ports_on.append([])
            circuit.node[name] = number
            circuit.ports_on[number].append(name)


def sealed(part):
    """Does gas keep a pressure in a reservoir? Not where it breathes, whatever the file says of one."""
    return "pressure" in part.attributes and part.attributes.get("breather", "no") != "yes"


def reservoir_pressures(circuit):
    """Reservoir's node -> what gas keeps in it; 0 in a vented one."""
    found = {}
    for part in circuit.components.values():
        if part.kind == "reservoir":
            held = kinds.pressure(part.attributes["pressure"] if sealed(part) else "0 bar")
            for port in part.ports:
                node = circuit.node[f"{part.path}.{port}"]
                found[node] = min(held, found.get(node, held))
    return found
