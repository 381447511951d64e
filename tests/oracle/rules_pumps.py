"""The rules blocked-pump, double-source and filter-reversal: what do the pumps deliver into, with whom,
and which way through the filters?

A pump that is turned the right way round has a flow; a two-way pump only while a signal gives it a
direction (`meant.flowing`).
"""

from itertools import combinations

import kinds
import meant
from circuit import Groups
from sure import ONWARD, SWITCHED, reliefs, sure_and
from verdict import Finding, Ledger, Verdict
from ways import reach

#: Controls that take the displacement back when the pressure rises.
GIVES_WAY = ("pressure-compensated", "load-sensing")


def blocked_pump(judged):
    """Can a pump in no loop just then be driven against a closed outlet with no relief?"""
    ledger = Ledger("blocked-pump")
    for situation in judged.situations:
        for pump in situation.region.of_kind("pump"):
            ends = meant.flowing(situation, pump)
            if ends and pump not in situation.loop_machines:
                fine = _gives_way(situation, pump) or _has_a_way(situation, *ends)
                ledger.note("component", pump, situation,
                            Finding("pass") if fine else Finding("fail", "error"))
    return list(ledger.verdicts())


def _gives_way(situation, pump):
    return situation.region.circuit.components[pump].attributes.get("control") in GIVES_WAY


def _has_a_way(situation, inlet, outlet):
    """Does oil get to a reservoir or past a relief?  Back to its own inlet it goes round freely."""
    reached = reach(sure_and(situation, ONWARD), [outlet])
    return (not reached.isdisjoint(situation.region.reservoirs | {inlet})
            or any(tail in reached and head not in reached for tail, head in reliefs(situation)))


def double_source(judged):
    """Do pumps on different drives deliver into one line with no check between them?"""
    ledger = Ledger("double-source")
    for situation in judged.situations:
        pumps = meant.outside_loops(situation, "pump")
        flows = [(pump, meant.flowing(situation, pump)) for pump in pumps]
        flows = [(pump, ends[1]) for pump, ends in flows if ends]
        joined = _joined(situation) if len(flows) > 1 else None
        walls = situation.region.reservoirs | situation.on_a_side
        drive = judged.circuit.drive
        for (first, one), (second, other) in combinations(flows, 2):
            if (drive[first] != drive[second] and walls.isdisjoint((one, other))
                    and joined.find(one) == joined.find(other)):
                line = _line_at(judged.circuit, second, other)
                ledger.note("line", line, situation, Finding("fail", "warning"))
    asked = [part for part in judged.circuit.machines("pump")
             if part.path in judged.circuit.turned and part.path not in judged.loop_machines]
    passed = [Verdict("double-source", "circuit", "circuit", "pass")] if len(asked) > 1 else []
    return list(ledger.verdicts()) or passed


def _joined(situation):
    """Nodes that hang together over what lets oil through both ways."""
    walls = situation.region.reservoirs | situation.on_a_side
    joined = Groups()
    for way in situation.open_ways:
        if (way.both and way.kind in SWITCHED | {kinds.ELEMENT, kinds.METERING, kinds.LEG}
                and walls.isdisjoint((way.tail, way.head))):
            joined.join([way.tail, way.head])
    return joined


def _line_at(circuit, pump, outlet):
    """The first line in the file that joins a pump's outlet port."""
    port = next(port for port in circuit.components[pump].working if circuit.node[port] == outlet)
    return next(path for path, ports in circuit.joins.items() if port in ports)


def filter_reversal(judged):
    """Is a filter that may be passed one way only mounted against the flow?"""
    filters = [part.path for part in judged.circuit.components.values()
               if part.kind == "filter" and part.attributes.get("one-way", "no") == "yes"]
    ledger = Ledger("filter-reversal")
    for situation in judged.situations:
        owners = {way.owner for way in situation.region.ways} if filters else ()
        for path in filters:
            forward = path in owners and _forward(situation, path)
            if forward:
                ledger.note("component", path, situation, forward)
    return list(ledger.verdicts())


def _forward(situation, path):
    """Pass or fail as oil gets from A to B or back with the filter taken out; None if neither."""
    circuit, reservoirs = situation.region.circuit, situation.region.reservoirs
    flows = [meant.flowing(situation, pump) for pump in situation.region.of_kind("pump")]
    givers = {ends[1] for ends in flows if ends} | reservoirs
    takers = {ends[0] for ends in flows if ends} | reservoirs
    ways = [way for way in situation.open_ways if way.owner != path and _passes(circuit, way)]
    up = reach(ways, givers, but=reservoirs)
    down = reach(ways, takers, backwards=True, but=reservoirs)
    start, end = circuit.node[f"{path}.A"], circuit.node[f"{path}.B"]
    if start in up and end in down:
        return Finding("pass")
    return Finding("fail", "error") if end in up and start in down else None


def _passes(circuit, way):
    if way.kind == kinds.DISPLACEMENT:
        return circuit.components[way.owner].plays == "actuator"
    return way.kind not in (kinds.LEAKAGE, kinds.PRESSURE_OPENED, kinds.BYPASS)
