"""Pipes, wide ways and shafts as they are drawn, for what hangs on no state.

The terms read here: "pipe", "wide way".
"""

import kinds
from circuit import Groups
from ways import arcs

#: The kinds that only show or measure.
INSTRUMENTS = {"gauge", "thermometer", "level-indicator", "pressure-switch", "sensor",
               "measuring-point", "flow-meter", "tachometer"}
#: Displacement and leakage: what a machine does with the oil.
MACHINE = {kinds.DISPLACEMENT, kinds.WORKED, kinds.LEAKAGE}
#: What opens under its own pressure: reliefs, bypasses.
OPENED = {kinds.PRESSURE_OPENED, kinds.BYPASS}


class Pipes:
    """Ports that lines, hoses and what only joins make one; a reservoir's ports are kept apart."""

    def __init__(self, circuit):
        groups = Groups()
        for ports in circuit.joins.values():
            groups.join(ports)
        for part in circuit.components.values():
            if part.kind != "reservoir":
                for group in kinds.one_oil(part.kind, part.attributes, part.declared):
                    groups.join([f"{part.path}.{port}" for port in group])
        self.circuit = circuit
        #: port -> its pipe
        self.of = {port: groups.find(port) for port in circuit.node}
        #: pipe -> its ports, in the order of the file
        self.ports = {}
        for port, pipe in self.of.items():
            self.ports.setdefault(pipe, []).append(port)
        #: pipes that hold a port of a reservoir
        self.open = {self.of[f"{part.path}.{port}"] for part in circuit.components.values()
                     if part.kind == "reservoir" for port in part.ports}

    def holds(self, pipe, fits):
        """Is there a port in the pipe of which `fits` (component, letters) says yes?"""
        return any(fits(*self.parted(port)) for port in self.ports[pipe])

    def parted(self, port):
        """(component, letters) of a port."""
        path, letters = port.rsplit(".", 1)
        return self.circuit.components[path], letters

    def steps(self, ways):
        """pipe -> the pipes that some ways lead to, each in the directions it has."""
        table = {}
        for way in ways:
            tail = self.of[f"{way.owner}.{way.passage.tail}"]
            head = self.of[f"{way.owner}.{way.passage.head}"]
            table.setdefault(tail, set()).add(head)
            if way.both:
                table.setdefault(head, set()).add(tail)
        return table


def walk(table, starts, ends=()):
    """What a table of steps leads to; of what is in `ends` nothing is left again."""
    seen = set(starts)
    waiting = list(seen)
    while waiting:
        here = waiting.pop()
        if here in ends:
            continue
        for there in table.get(here, ()):
            if there not in seen:
                seen.add(there)
                waiting.append(there)
    return seen


def steps(ways):
    """node -> the nodes that some ways lead to, each in the directions it has."""
    return {node: {head for _, head in onward} for node, onward in arcs(ways).items()}


def is_suction(part, letters):
    """Is it the inlet of a pump?"""
    return part.kind == "pump" and letters == "S"


def is_outlet(part, letters):
    """Is it the outlet of a pump, by hand or not?"""
    return part.kind in ("pump", "hand-pump") and letters == "P"


def is_case(part, letters):
    """Is it a port of a housing that is drained outside?"""
    return part.kind in kinds.MACHINES and letters in kinds.case_ports(part.attributes)


def housings(circuit):
    """(machine, a port of its housing) of every machine drained outside."""
    return [(part, f"{part.path}.{kinds.case_ports(part.attributes)[0]}")
            for part in circuit.machines() if kinds.case_ports(part.attributes)]


def bare_shafts(circuit):
    """Name ("M1", "G1.in") -> the shaft it is on, gearboxes and clutches not passed."""
    groups = Groups()
    for names in circuit.shafts:
        groups.join(names)
    return {name: groups.find(name) for names in circuit.shafts for name in names}
