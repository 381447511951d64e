"""The rules control-supply and neutral-on-loss: has a hydraulic control its oil, and does the pump go to
neutral when it is gone?"""

import kinds
from sure import SWITCHED
from meant import delivered
from turning import turns
from verdict import Finding, Ledger
from ways import reach

#: What leads control oil.
CARRIES = SWITCHED | {kinds.ELEMENT, kinds.ONE_WAY, kinds.METERING, kinds.LEG, kinds.REDUCED}


def _decided(fine):
    return Finding("pass") if fine else Finding("fail", "error")


def _pilots(circuit, part):
    """The nodes of the pilots that lead outside."""
    return {circuit.node[f"{part.path}.{port}"]
            for port in kinds.control_ports(part.kind, part.attributes)}


def _hydraulic(part):
    return part.attributes.get("control", "none") == "hydraulic"


def control_supply(judged):
    """Does control oil reach every pilot, the valves that are operated in whatever position?"""
    ledger = Ledger("control-supply")
    for situation in judged.situations:
        circuit = situation.region.circuit
        asked = [part for part in situation.region.machines
                 if _hydraulic(part) and _pilots(circuit, part)]
        if not asked or not any(turns(situation, pump) for pump in situation.region.of_kind("pump")):
            continue
        supplied = _supplied(situation)
        for part in asked:
            ledger.note("component", part.path, situation,
                        _decided(_pilots(circuit, part) <= supplied))
    return list(ledger.verdicts())


def _supplied(situation):
    region = situation.region
    ways = [way for way in region.ways if way.passage.position is not None
            or (way.kind in CARRIES and situation.standing.open(way))]
    givers = set(delivered(situation)) | set(situation.side_of) | region.circuit.accumulators
    return reach(ways, givers - region.reservoirs, but=region.reservoirs)


def neutral_on_loss(judged):
    """Without a signal, do springs bring a loop's pump to no stroke?"""
    ledger = Ledger("neutral-on-loss")
    for situation in judged.situations:
        for part in situation.region.machines:
            if (situation.state == "lost-signal" and part.plays == "pump" and part.two_way
                    and part.attributes.get("variable", "no") == "yes"
                    and part.path in judged.loop_machines):
                ledger.note("component", part.path, situation, _at_rest(situation, part))
    return list(ledger.verdicts())


def _at_rest(situation, part):
    if part.attributes.get("control", "none") in ("none", "manual"):
        return Finding("not-applicable")
    pilots = _pilots(situation.region.circuit, part)
    if _hydraulic(part) and pilots:
        return _decided(pilots <= situation.vented)
    rest = part.attributes.get("rest-displacement")
    if rest is None:
        return Finding("inconclusive", missing=(f"{part.path}.rest-displacement",))
    return _decided(rest == "zero")
