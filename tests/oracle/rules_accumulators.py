"""The rule accumulator-safety: does what an accumulator stores leave it, or can it be shut in or let off?"""

import kinds
from piping import walk
from sure import is_sure
from verdict import Finding, Ledger, Verdict

RULE = "accumulator-safety"


def accumulator_safety(judged):
    """Discharged, dischargeable or isolated once the machine is stopped; with relief and gauge."""
    ledger, verdicts = Ledger(RULE), []
    for part in judged.circuit.components.values():
        if part.kind != "accumulator":
            continue
        node = judged.circuit.node[f"{part.path}.A"]
        asked = [situation for situation in judged.stopped_situations
                 if node not in judged.circuit.reservoirs
                 and node in _nodes(situation.region)]
        for situation in asked:
            ledger.note("component", part.path, situation,
                        _safe(judged.pipes, part, situation.open_ways, situation.region.ways,
                              node in situation.vented))
        if not asked and node not in judged.circuit.reservoirs:
            found = _safe(judged.pipes, part, [], [], False)
            verdicts.append(Verdict(RULE, "component", part.path, found.outcome, found.level))
    return list(ledger.verdicts()) + verdicts


def _nodes(region):
    """What oil of a region gets to, and what its machines are controlled from."""
    circuit = region.circuit
    controls = {circuit.node[f"{machine.path}.{port}"] for machine in region.machines
                for port in kinds.control_ports(machine.kind, machine.attributes)}
    return controls.union(*((way.tail, way.head) for way in region.ways))


def _safe(pipes, part, open_ways, ways, vented):
    pipe = pipes.of[f"{part.path}.A"]
    sure = [way for way in open_ways if is_sure(way)]
    by_hand = sure + [way for way in ways if way.kind == kinds.HAND]
    discharged = not pipes.open.isdisjoint(walk(pipes.steps(by_hand), [pipe], pipes.open))
    # A relief of its own is asked for below, and shut at rest.
    exits = [way for way in ways if pipe in pipes.steps([way]) and not (
        way.kind == kinds.PRESSURE_OPENED and pipes.of[f"{way.owner}.{way.passage.tail}"] == pipe)]
    isolated = bool(exits) and all(way.kind == kinds.HAND for way in exits)
    if not (vented or discharged or isolated):
        return Finding("fail", "error")
    reached = walk(pipes.steps(sure), [pipe], pipes.open)
    relieved = any(way.kind == kinds.PRESSURE_OPENED
                   and pipes.of[f"{way.owner}.{way.passage.tail}"] in reached for way in ways)
    shown = any(pipes.holds(each, _shows_pressure) for each in reached)
    return Finding("pass") if relieved and shown else Finding("fail", "warning")


def _shows_pressure(part, _):
    return part.kind in ("gauge", "measuring-point") or (
        part.kind == "sensor" and part.attributes.get("measures", "pressure") == "pressure")
