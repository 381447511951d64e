"""Loops, sides, branches and sections in one combination of flow direction and valve positions.

The terms read here: "Loop", "Side", "Branch", "Section", and "Ways round the pump" as settled
later.
"""

from dataclasses import dataclass, field

import networkx

import kinds
from ways import OPEN_BOTH_WAYS, Standing, pieces, quiet, reach, vented

LETTER = {"A": "A", "P": "A", "B": "B", "S": "B"}


@dataclass(frozen=True)
class Side:
    """A piece of a loop; `letter` says which of high A and high B makes it the high one."""

    role: str  # main, intermediate, branch, section
    name: str
    nodes: frozenset
    letter: str = ""
    branches: tuple = ()


@dataclass
class Loop:
    """A loop in one combination; a short-circuited one has no sides."""

    name: str
    pumps: list
    actuators: list
    ways: list  # all that the loop consists of, displacement included
    short: bool = False
    sides: list = field(default_factory=list)

    @property
    def machines(self):
        """Pumps and actuators."""
        return self.pumps + self.actuators

    @property
    def main_sides(self):
        """The sides that touch a pump and an actuator."""
        return [side for side in self.sides if side.role == "main"]

    @property
    def passages(self):
        """Its ways without displacement."""
        return [way for way in self.ways if way.kind != kinds.DISPLACEMENT]


def find_loops(region, flow, standing):
    """The loops of a region; `flow` is forward, reverse or none, flushing valves are centred."""
    still = quiet(region, standing)
    # A node that opens to a reservoir both ways is taken out with it.
    out = region.reservoirs | (reach(still, region.reservoirs, backwards=True)
                               & reach(still, region.reservoirs))
    kept, metering = [], []
    for way in region.ways:
        if way.tail in out or way.head in out or way.tail == way.head or way.kind == kinds.HIGHER:
            continue
        # What a pilot opens carries a drive's flow, whatever it stands like just now.
        if way.kind != kinds.PILOTED and not standing.open(way):
            continue
        if way.kind in OPEN_BOTH_WAYS or way.kind in (kinds.ONE_WAY, kinds.DISPLACEMENT, kinds.LEG,
                                                      kinds.PILOTED):
            kept.append(way)
        elif way.kind == kinds.METERING and way.passage.shuttle is None:
            metering.append(way)
    loops = {loop.name: loop for loop in _parts(region, kept, flow)}
    lost = set(region.of_kind("pump")) - {pump for loop in loops.values() for pump in loop.pumps}
    if metering and lost:
        # Metering passages count only where no loop closes without them.
        for wider in _parts(region, kept + metering, flow):
            if lost.intersection(wider.pumps):
                # It takes in the loops on its lines that close without them.
                loops = {loop.name: loop for loop in loops.values()
                         if not set(loop.pumps) <= set(wider.pumps)}
                loops[wider.name] = wider
    for loop in loops.values():
        _divide(region, loop)
    return sorted(loops.values(), key=lambda loop: region.circuit.components[loop.pumps[0]].order)


def _directions(region, way, flow):
    """The arcs of a passage; a two-way pump is directed by the flow: forward B to A."""
    part = region.circuit.components[way.owner]
    forth, back = (way.tail, way.head), (way.head, way.tail)
    if way.kind == kinds.DISPLACEMENT and part.plays == "pump" and way.both and flow != "none":
        return [back] if flow == "forward" else [forth]
    return [forth, back] if way.both else [forth]


def _parts(region, ways, flow):
    """Biconnected parts of strong components that hold a pump and an actuator."""
    directed = networkx.DiGraph()
    for way in ways:
        directed.add_edges_from(_directions(region, way, flow))
    found = []
    for strong in networkx.strongly_connected_components(directed):
        inner = [way for way in ways if way.tail in strong and way.head in strong]
        if not _machines(region, inner, "pump") or not _machines(region, inner, "actuator"):
            continue
        split = networkx.Graph()
        for way in inner:  # every edge is split by a vertex: ("way", number)
            split.add_edge(way.tail, ("way", way.number))
            split.add_edge(("way", way.number), way.head)
        for block in networkx.biconnected_components(split):
            members = [way for way in inner if ("way", way.number) in block
                       and way.tail in block and way.head in block]
            pumps = _machines(region, members, "pump")
            actuators = _machines(region, members, "actuator")
            if pumps and actuators:
                found.append(Loop(f"loop:{pumps[0]}", pumps, actuators, members))
    return found


def _machines(region, ways, plays):
    return region.in_order({way.owner for way in ways if way.kind == kinds.DISPLACEMENT
                            and region.circuit.components[way.owner].plays == plays})


def _divide(region, loop):
    """Finds out whether the loop is short-circuited, and its sides if it is not."""
    nodes = {node for way in loop.ways for node in (way.tail, way.head)}
    left_out = set()
    for pump in loop.pumps:
        ends = region.circuit.displacement_nodes(pump)
        ways_round = _ways_round(region, loop, ends)
        if any(len(ways) == 2 for ways in ways_round):
            loop.short = True
            return
        for start, end in {way for ways in ways_round for way in ways}:
            # Ways round the pump that are not open at once: their one-way passages are left out and
            # the loop is sound.
            after = reach(loop.passages, [start])
            before = reach(loop.passages, [end], backwards=True)
            left_out |= {way.number for way in loop.passages
                         if not way.both and way.tail in after and way.head in before}
    loop.ways = [way for way in loop.ways if way.number not in left_out]
    found = pieces(loop.passages, nodes)
    for pump in loop.pumps:
        first, second = region.circuit.displacement_nodes(pump)
        if any(first in piece and second in piece for piece in found):
            loop.short = True
            return
    loop.sides = [side for side in (_side(region, loop, piece) for piece in found) if side]


def _ways_round(region, loop, ends):
    """With one end of a pump high, then with the other: the (start, end) between which oil gets past no
    machine. A pilot at the end that is low opens nothing; one that is at neither may."""
    plain = [way for way in loop.passages if way.both and way.kind in OPEN_BOTH_WAYS]
    found = []
    for low in ends:
        at_rest = reach(plain, [low])
        passages = [way for way in loop.passages if way.kind != kinds.PILOTED
                    or region.circuit.node[f"{way.owner}.{way.passage.pilot}"] not in at_rest]
        found.append([(start, end) for start, end in (ends, ends[::-1])
                      if end in reach(passages, [start])])
    return found


def _owned(region, paths):
    """machine -> its working ports."""
    return {path: region.circuit.components[path].working for path in paths}


def _side(region, loop, piece):
    pump = region.first_port(piece, _owned(region, loop.pumps))
    actuator = region.first_port(piece, _owned(region, loop.actuators))
    if pump is None and actuator is None:
        return None
    if pump is None or actuator is None:
        # After the first port of a machine of the loop: no edit elsewhere changes that name.
        return Side("intermediate", f"side:{pump or actuator}", piece)
    return Side("main", f"side:{pump}", piece, _letter(region, loop, piece, pump),
                tuple(_branches(region, loop, piece)))


def _letter(region, loop, piece, name):
    """The first pump's port decides where it stands on the side, else the naming port does."""
    own = region.first_port(piece, _owned(region, loop.pumps[:1]))
    path, port = (own or name).rsplit(".", 1)
    part = region.circuit.components[path]
    if part.kind == "pump-motor" and not part.two_way:
        port = {"A": "S", "B": "P"}[port]  # it takes oil in at A and delivers at B
    return LETTER[port]


def _branches(region, loop, piece):
    """Pieces at an actuator and at no pump when one-way and metering passages are taken out."""
    plain = [way for way in loop.passages
             if way.kind not in (kinds.ONE_WAY, kinds.METERING, kinds.LEG, kinds.PILOTED)]
    for part in pieces(plain, piece):
        actuator = region.first_port(part, _owned(region, loop.actuators))
        if actuator and not region.first_port(part, _owned(region, loop.pumps)):
            yield Side("branch", f"side:{actuator}", part)


def find_sections(region, loops, positions, known):
    """loop name -> the sections of its actuators that are in no loop in this combination.

    `loops` are those with flow none; `known` maps a loop's name to (pumps, actuators) of any state.
    """
    standing = Standing(positions)
    busy = {actuator for loop in loops for actuator in loop.actuators}
    plain = [way for way in region.ways
             if way.both and way.kind in OPEN_BOTH_WAYS and standing.open(way)]
    open_to_reservoir = vented(region, standing)
    ends = {motor: region.circuit.displacement_nodes(motor) for motor in region.of_kind("actuator")}
    result = {}
    for name, (pumps, actuators) in known.items():
        pump_nodes = {node for pump in pumps for node in region.circuit.displacement_nodes(pump)}
        found = {}
        for actuator in actuators:
            if actuator in busy:
                continue
            for node in ends[actuator]:
                if node in region.reservoirs:
                    continue
                piece = frozenset(reach(plain, [node], but=region.reservoirs))
                turning = [motor for motor in ends if not piece.isdisjoint(ends[motor])]
                if (piece & pump_nodes or piece & open_to_reservoir
                        or all(piece.issuperset(ends[motor]) for motor in turning)):
                    continue
                first = region.first_port(piece, _owned(region, actuators))
                found[piece] = Side("section", f"side:{first}", piece)
        result[name] = list(found.values())
    return result
