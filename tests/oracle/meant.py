"""Charge pumps that might be meant, whether or not they deliver.

The terms read here: "Feed", "Charge source", "Charge line".
"""

import kinds
from states import AT_REST
from sure import CARRIES
from turning import delivers
from ways import arcs, reach


def ends(situation, pump):
    """A pump's (inlet, outlet) as the state's flow has it; None for a two-way pump without any, and where
    both are one node: its oil gets nowhere else."""
    inlet, outlet = situation.region.circuit.displacement_nodes(pump)
    if inlet == outlet:
        return None
    if not situation.region.circuit.components[pump].two_way:
        return inlet, outlet
    if situation.state in AT_REST:
        return None  # without a signal it stands at no stroke
    # Forward is from B to A.
    return {"forward": (outlet, inlet), "reverse": (inlet, outlet)}.get(situation.flow)


def flowing(situation, pump):
    """The same of a pump that is turned, the right way round; None where it delivers nothing."""
    return ends(situation, pump) if delivers(situation, pump) else None


def outside_loops(situation, plays):
    """The pumps (or actuators) of a region that no loop ever holds, in the order of the file."""
    taken = {machine for known in situation.survey.known.values()
             for machine in known.pumps + known.actuators}
    return [path for path in situation.region.of_kind(plays) if path not in taken]


def delivered(situation):
    """Outlets of the pumps outside all loops that deliver."""
    flows_ = [flowing(situation, pump) for pump in outside_loops(situation, "pump")]
    return {both[1] for both in flows_ if both}


def round_actuators(situation):
    """(from, to) of the reliefs round an actuator outside all loops: a feed passes them."""
    circuit = situation.region.circuit
    motors = [set(circuit.displacement_nodes(motor)) for motor in outside_loops(situation, "actuator")]
    return [(way.tail, way.head) for way in situation.open_ways
            if way.kind in (kinds.PRESSURE_OPENED, kinds.BYPASS) and {way.tail, way.head} in motors]


def feed_ways(situation):
    """What is open and may be part of a feed."""
    return [way for way in situation.open_ways if way.kind in CARRIES and way.tail != way.head]


def flows(situation, ways, starts, but=()):
    """Nodes that oil gets to over some ways and past actuators with a relief round them; never into a
    reservoir nor what is in `but`, and from a main side on inside that side only."""
    table = arcs(ways)
    for tail, head in round_actuators(situation):
        table.setdefault(tail, []).append((None, head))
    seen = set(starts)
    waiting = list(seen)
    while waiting:
        node = waiting.pop()
        loop, side = situation.side_of.get(node, (None, None))
        inside = {way.number for way in loop.passages} if loop else ()
        for way, head in table.get(node, ()):
            leaves = loop and (way is None or way.number not in inside or head not in side.nodes)
            if not (head in seen or head in situation.region.reservoirs or head in but or leaves):
                seen.add(head)
                waiting.append(head)
    return seen


def to_be_fed(situation):
    """Nodes of the loop's main sides and their branches, and of its sections."""
    sides = (situation.loop.main_sides if situation.loop else []) + situation.sections
    return frozenset().union(*(side.nodes for side in sides))


def candidates(situation):
    """(pump, outlet) of what may be the loop's charge pump, whether or not it is turned, finds oil or
    keeps it."""
    found = []
    for pump in outside_loops(situation, "pump"):
        both = ends(situation, pump)
        if both and both[1] not in situation.region.reservoirs and not to_be_fed(situation).isdisjoint(
                flows(situation, feed_ways(situation), [both[1]])):
            found.append((pump, both[1]))
    return found


def stores(situation):
    """Nodes of the reservoirs under pressure and the accumulators whose oil gets to a main side
    if nothing on the way is open to a reservoir."""
    region = situation.region
    here = {node for way in region.ways for node in (way.tail, way.head)}
    may = here & (region.circuit.pressurised | (region.circuit.accumulators - region.reservoirs))
    sides = frozenset().union(*(side.nodes for side in situation.loop.main_sides))
    return [node for node in sorted(may) if not sides.isdisjoint(
        flows(situation, feed_ways(situation), [node]))]


def line_of(situation, outlet):
    """The charge line at a pump's outlet, vented nodes and all; empty where that is on a side."""
    if outlet in situation.on_a_side:
        return set()
    plain = [way for way in situation.open_ways if way.kind in (kinds.ELEMENT, kinds.HAND)]
    return reach(plain, [outlet], but=situation.region.reservoirs | situation.on_a_side)
