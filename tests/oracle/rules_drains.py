"""The rules filter-in-drain and case-drain-return: what stands in the lines that lead the housings' oil away.

Both ask wide ways: whatever can be opened counts as open.
"""

import kinds
from piping import OPENED, housings, is_suction, steps, walk
from sure import SWITCHED
from verdict import Verdict

#: What a drain may lead through.
DRAIN = SWITCHED | OPENED | {kinds.ELEMENT, kinds.ONE_WAY, kinds.METERING, kinds.LEG}


def _drain_ways(circuit):
    return [way for way in circuit.ways if way.kind in DRAIN]


def filter_in_drain(judged):
    """Can a clogged filter shut a housing's oil in?"""
    circuit = judged.circuit
    table = steps(_drain_ways(circuit))
    drained = {part.path: walk(table, [circuit.node[port]], circuit.reservoirs)
               for part, port in housings(circuit)}
    verdicts = []
    for way in circuit.ways:
        part = circuit.components[way.owner]
        if part.kind == "filter" and way.kind == kinds.ELEMENT:
            # One that draws from the reservoir is in no drain; one turned round is, if oil can pass.
            ends = {way.tail, *([way.head] if way.both else [])} - circuit.reservoirs
            before = [path for path, nodes in drained.items() if not ends.isdisjoint(nodes)]
            if before:
                verdicts.append(_held(circuit, part, before))
    return verdicts


def _held(circuit, part, before):
    """The bypass opens before the weakest of the housings suffers."""
    rule, opens = "filter-in-drain", kinds.pressure(part.attributes.get("bypass"))
    limits = {path: kinds.pressure(circuit.components[path].attributes.get("case-pressure"))
              for path in before}
    if opens is None or any(limit is not None and opens > limit for limit in limits.values()):
        return Verdict(rule, "component", part.path, "fail", "warning")
    missing = tuple(sorted(f"{path}.case-pressure" for path, limit in limits.items() if limit is None))
    if missing:
        return Verdict(rule, "component", part.path, "inconclusive", missing=missing)
    return Verdict(rule, "component", part.path, "pass")


def drain_pipes(judged):
    """The pipes that the housings' oil gets to, and end where a reservoir is."""
    pipes = judged.pipes
    return walk(pipes.steps(_drain_ways(judged.circuit)),
                [pipes.of[port] for _, port in housings(judged.circuit)], pipes.open)


def drain_ports(judged):
    """Ports of reservoirs that a drain leads to, in the order of the file."""
    reached = drain_pipes(judged)
    return [f"{part.path}.{letters}" for part in judged.circuit.components.values()
            if part.kind == "reservoir" for letters in part.ports
            if judged.pipes.of[f"{part.path}.{letters}"] in reached]


def case_drain_return(judged):
    """Does a drain end below the oil's level, and apart from what a pump draws?"""
    return [_returned(judged, port) for port in drain_ports(judged)]


def _returned(judged, port):
    rule, pipes = "case-drain-return", judged.pipes
    level = judged.circuit.levels.get(port)
    # Oil that is drawn in again at once is so whatever the level.
    if level == "above" or pipes.holds(pipes.of[port], is_suction):
        return Verdict(rule, "port", port, "fail", "warning")
    if level is None:
        return Verdict(rule, "port", port, "inconclusive", missing=(f"{port}.level",))
    return Verdict(rule, "port", port, "pass")
