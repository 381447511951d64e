"""The rules crossport-relief and case-drain-path: what can close counts only where locked open."""

import heapq

import kinds
from sure import senses
from verdict import Finding, Ledger
from ways import arcs, pieces, reach

#: By what a relief is reached, and a drain led away; a hand valve only where it is locked open.
SURE = {kinds.ONE_WAY, kinds.SWITCHED, kinds.SHUTTLE, kinds.ELEMENT, kinds.HIGHER, kinds.PILOTED,
        kinds.UNLOADED, kinds.LEG}


def _sure(way):
    return way.kind in SURE or (way.kind == kinds.HAND and way.passage.locked)


def crossport_relief(judged):
    """Is every side limited by a relief that cannot be isolated, to another side or to the charge
    line with make-up onward?"""
    ledger = Ledger("crossport-relief")
    for situation in judged.loop_situations:
        sides = (situation.loop.main_sides if situation.loop else []) + situation.sections
        for side in sides:
            others = frozenset().union(*(other.nodes for other in sides if other is not side))
            fine = all(_limited(judged.charge(situation), side, piece, others)
                       for piece in _pieces(situation, side))
            ledger.note("side", side.name, situation,
                        Finding("pass") if fine else Finding("fail", "error"))
    return list(ledger.verdicts())


def _pieces(situation, side):
    """What stays together of a side when all hand valves that are not locked are shut, as far as a
    machine stands on it: "limited by a relief that cannot be isolated" holds for each."""
    region = situation.region
    firm = [way for way in situation.open_ways if _sure(way) or way.kind == kinds.METERING]
    ends = {node for kind in ("pump", "actuator") for machine in region.of_kind(kind)
            for node in region.circuit.displacement_nodes(machine)}
    return [piece for piece in pieces(firm, side.nodes) if piece & ends]


def _limited(charge, side, piece, others):
    situation = charge.situation
    sure = [way for way in situation.open_ways if _sure(way)]
    inlets = reach(sure, piece, but=situation.region.reservoirs)
    for relief in situation.open_ways:
        if relief.kind != kinds.PRESSURE_OPENED or relief.tail not in inlets:
            continue
        # With both ports on one node it relieves nothing, and a vented outlet does not count.
        if relief.head == relief.tail or relief.head in situation.pressureless | side.nodes:
            continue
        behind = _behind(situation, sure, relief.head, side, charge.line())
        if not behind.isdisjoint(others - situation.pressureless):
            return True
        if not others.isdisjoint(charge.made_up(behind & charge.line())):
            return True
    return False


def _behind(situation, ways, start, side, line):
    """Where a relief's oil gets to. What comes back to the side relieves nothing, and oil ends in a
    reservoir, which counts if it is part of the charge line."""
    reservoirs = situation.region.reservoirs
    if start in reservoirs:
        return {start}
    found = reach(ways, [start], but=situation.pressureless | side.nodes | reservoirs)
    ends = {head for way in ways for tail, head in senses(way) if tail in found and head in reservoirs}
    return found | (ends & line)


def case_drain_path(judged):
    """Does every housing reach a reservoir through nothing that can close or hold too much?"""
    ledger = Ledger("case-drain-path")
    for situation in judged.situations + judged.towing_situations:
        for part in situation.region.machines:
            case = kinds.case_ports(part.attributes)
            if case:
                ledger.note("component", part.path, situation,
                            _drained(situation, part, f"{part.path}.{case[0]}"))
    order = {part.path: part.order for part in judged.circuit.machines()}
    return sorted(ledger.verdicts(), key=lambda verdict: order[verdict.subject])


def _drained(situation, part, housing):
    start = situation.region.circuit.node[housing]
    least = _least_opening(situation, start, with_unknown=False)
    case_pressure = kinds.pressure(part.attributes.get("case-pressure"))
    lacking = (f"{part.path}.case-pressure",)
    if least is None:
        least = _least_opening(situation, start, with_unknown=True)
        if least is None:
            return Finding("fail", "error")
        # Of the ways there are, the one that lacks least: what is missing are its settings.
        return Finding("inconclusive", missing=tuple(f"{relief}.setting" for relief in least[1]))
    if least[0] > 0 and case_pressure is None:
        return Finding("inconclusive", missing=lacking)
    if least[0] > 0 and least[0] > case_pressure:
        return Finding("fail", "error")
    return Finding("pass")


def _least_opening(situation, start, with_unknown):
    """Least sum of opening pressures to a reservoir: (sum, reliefs without a setting) or None."""
    table = arcs([way for way in situation.open_ways
                  if _sure(way) or way.kind == kinds.METERING
                  or (way.kind == kinds.PRESSURE_OPENED
                      and (with_unknown or way.passage.opening is not None))])
    waiting = [(0, 0, start, ())]
    done = set()
    while waiting:
        unknown, total, node, reliefs = heapq.heappop(waiting)
        if node in situation.region.reservoirs:
            return total, reliefs
        if node in done:
            continue
        done.add(node)
        for way, head in table.get(node, ()):
            opening = way.passage.opening
            lacking = (way.owner,) if opening is None else ()
            heapq.heappush(waiting, (unknown + len(lacking), total + (opening or 0), head,
                                     reliefs + lacking))
    return None
