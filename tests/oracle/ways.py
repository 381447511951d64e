"""How passages stand in one combination, and plain searches over those that are open.

The terms read here: "Passages", "Holds pressure", "Vented node", and the region: the part of a
circuit that hangs together without its reservoirs.
"""

from dataclasses import dataclass, field

import kinds
from circuit import Groups

#: What carries the full flow without a machine: it may lead oil away without holding pressure.
PLAIN = {kinds.ONE_WAY, kinds.SWITCHED, kinds.SHUTTLE, kinds.HAND, kinds.ELEMENT, kinds.HIGHER,
         kinds.PILOTED, kinds.UNLOADED}
#: What is open both ways when it is open at all (an element may be one-way: see `Way.both`).
OPEN_BOTH_WAYS = {kinds.SWITCHED, kinds.HAND, kinds.ELEMENT, kinds.HIGHER}


@dataclass(frozen=True)
class Standing:
    """Valve positions, and for each flushing valve the port on the low side (none: centred)."""

    positions: dict
    low: dict = field(default_factory=dict)
    #: Number of a way that pressure shifts -> is it open?  Without an entry nothing acts on it.
    shifted: dict = field(default_factory=dict)
    towing: bool = False

    def open(self, way):
        """Is the passage open as everything stands?"""
        passage = way.passage
        if passage.for_towing and self.towing:
            return True
        if passage.shuttle is not None:
            return passage.shuttle == self.low.get(way.owner, "centre")
        if way.number in self.shifted:
            return self.shifted[way.number]
        if way.kind in (kinds.PILOTED, kinds.UNLOADED):
            return False
        if passage.position is not None:
            return passage.position == self.positions[way.owner]
        return passage.drawn_open and passage.kind != kinds.WORKED


class Region:
    """A part of the circuit that hangs together without reservoirs, and its ways to those."""

    def __init__(self, circuit, ways, machines):
        self.circuit = circuit
        self.ways = ways
        self.machines = machines
        self.reservoirs = circuit.reservoirs
        owners = {way.owner for way in ways}
        self.valves = [part for part in circuit.components.values()
                       if part.positions and part.path in owners]
        self.shuttles = [part for part in circuit.components.values()
                         if part.kind == "flushing-valve" and part.path in owners]

    def of_kind(self, kind):
        """Paths of what plays a pump or an actuator in the region, in the order of the file."""
        return [part.path for part in self.machines if part.plays == kind]

    def in_order(self, paths):
        """Some components in the order of the file."""
        return sorted(paths, key=lambda path: self.circuit.components[path].order)

    def first_port(self, nodes, owners):
        """The first port on some nodes, by component, then the kind's order, or None.

        `owners` maps the components asked about to their ports in question.
        """
        best = None
        for node in nodes:
            for port in self.circuit.ports_on[node]:
                path, letters = port.rsplit(".", 1)
                if port not in owners.get(path, ()):
                    continue
                part = self.circuit.components[path]
                key = (part.order, part.ports.index(letters), port)
                best = key if best is None or key < best else best
        return best[2] if best else None


def regions(circuit):
    """All regions; a machine that stands on reservoirs alone makes one of its own."""
    groups = Groups()

    def place(node, way):
        """A node, or for a reservoir a place of the component's own, so that it joins nothing."""
        return ("reservoir", way.owner) if node in circuit.reservoirs else node
    for way in circuit.ways:
        groups.join([place(way.tail, way), place(way.head, way)])
    for part in circuit.components.values():
        nodes = [circuit.node[f"{part.path}.{port}"] for port in part.ports]
        if part.kind in kinds.MACHINES | {"directional-valve", "flushing-valve"} or any(
                passage.pilot for passage in kinds.passages(part.kind, part.attributes,
                                                            part.positions, part.declared)):
            groups.join([node if node not in circuit.reservoirs else ("reservoir", part.path)
                         for node in nodes])
    found = {}
    for way in circuit.ways:
        found.setdefault(groups.find(place(way.tail, way)), []).append(way)
    result = []
    for ways in found.values():
        owners = {way.owner for way in ways}
        result.append(Region(circuit, ways,
                             [part for part in circuit.machines() if part.path in owners]))
    return result


def arcs(ways, backwards=False):
    """node -> [(way, next node)] over the ways given, each in the directions that it has."""
    table = {}
    for way in ways:
        tail, head = (way.head, way.tail) if backwards else (way.tail, way.head)
        table.setdefault(tail, []).append((way, head))
        if way.both:
            table.setdefault(head, []).append((way, tail))
    return table


def reach(ways, starts, backwards=False, but=()):
    """The nodes that oil gets to from the starts (or, backwards, from which it gets there).

    Nodes in `but` are not entered.
    """
    table = arcs(ways, backwards)
    seen = set(starts)
    waiting = list(seen)
    while waiting:
        for _, node in table.get(waiting.pop(), ()):
            if node not in seen and node not in but:
                seen.add(node)
                waiting.append(node)
    return seen


def pieces(ways, nodes):
    """What hangs together, whatever the direction, among the nodes given."""
    table = {}
    for way in ways:
        if way.tail in nodes and way.head in nodes:
            table.setdefault(way.tail, []).append(way.head)
            table.setdefault(way.head, []).append(way.tail)
    left = set(nodes)
    result = []
    while left:
        piece = {left.pop()}
        waiting = list(piece)
        while waiting:
            for node in table.get(waiting.pop(), ()):
                if node not in piece:
                    piece.add(node)
                    waiting.append(node)
        left -= piece
        result.append(frozenset(piece))
    return sorted(result, key=min)


def quiet(region, standing):
    """Open ways that hold no pressure: switched, hand, element, check without a spring."""
    return [way for way in region.ways
            if way.kind in PLAIN and not way.holds and standing.open(way)]


def vented(region, standing, but=frozenset()):
    """Nodes with a directed way to a reservoir, one in `but` apart, that holds no pressure."""
    return reach(quiet(region, standing), region.reservoirs - but, backwards=True)
