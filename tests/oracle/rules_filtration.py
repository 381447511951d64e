"""The rule filtration: does all oil that enters a loop from outside pass a filter first?"""

import kinds
from verdict import Finding, Ledger
from ways import reach


def filtration(judged):
    """Oil paths lead from the reservoirs by every passage as it stands, up to the loop's sides."""
    ledger = Ledger("filtration")
    for situation in judged.loop_situations:
        # A loop that is not there, or is short-circuited, has no sides to judge in this situation.
        if situation.loop and situation.loop.sides:
            ledger.note("loop", situation.known.name, situation, _filtered(situation))
    return list(ledger.verdicts())


def _filtered(situation):
    region = situation.region
    targets = set().union(*(side.nodes for side in situation.loop.sides))
    ways, straight = [], []
    for way in situation.open_ways:
        if way.kind == kinds.LEAKAGE:
            # Leakage counts from a working port to the housing, not past the pistons.
            ways += [] if way.both else [way]
        elif way.kind != kinds.DISPLACEMENT:
            ways.append(way)
        elif way.owner not in situation.loop_machines:
            (straight if _directed(situation, way) else ways).append(way)
    if not targets & _oil(situation, ways, straight):
        return Finding("not-applicable")
    filters = {part.path for part in region.circuit.components.values() if part.kind == "filter"}
    ways = [way for way in ways if way.owner not in filters]
    if targets & _oil(situation, ways, straight):
        return Finding("fail", "error")
    return Finding("pass")


def _directed(situation, way):
    """A two-way pump outside the loops delivers as the state's flow says, if that says anything."""
    part = situation.region.circuit.components[way.owner]
    return part.plays == "pump" and way.both and situation.flow != "none"


def _oil(situation, ways, straight):
    """Nodes that oil reaches from all reservoirs."""
    seen = set(situation.region.reservoirs)
    while True:
        more = reach(ways, seen)
        for way in straight:
            start, end = way.tail, way.head
            if situation.flow == "forward":  # from B to A
                start, end = end, start
            if start in more:
                more.add(end)
        if more == seen:
            return seen
        seen = more
