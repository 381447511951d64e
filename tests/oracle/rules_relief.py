"""The rule relief-setting: does a relief act above the work of the side that it limits, and below what
the parts there bear?

A relief is on a main side, a section or a charge line where its inlet is: on its nodes, or over ways
open both ways.
"""

from dataclasses import replace

import kinds
import meant
from ceilings import INFINITE, Ceilings, unknown_data
from rules_rating import subjects
from verdict import Finding, Ledger
from ways import reach

RULE = "relief-setting"
#: How much higher at least than the highest working pressure (the threshold of pressure-limiter).
MARGIN = kinds.pressure("20 bar")

JOINS = (kinds.SWITCHED, kinds.HAND, kinds.ELEMENT)


def relief_setting(judged):
    """A verdict for each relief valve on a main side, a section or the charge line of a loop."""
    rating, margin = Ledger(RULE), Ledger(RULE)
    asked = {}
    for situation in judged.loop_situations:
        region = situation.region
        if id(region) not in asked:
            asked[id(region)] = _reliefs(region), list(subjects(region)), unknown_data(region)
        reliefs, rated, lacking = asked[id(region)]
        for nodes, works, opens in _lines(judged, situation):
            for way in reliefs:
                # What comes back to the line relieves nothing.
                if way.tail not in nodes or way.head in nodes:
                    continue
                if works:
                    margin.note("component", way.owner, situation, _above_work(situation, way))
                if opens:
                    bears = [(bar, name) for _, _, others, bar, name in rated if nodes & set(others)]
                    rating.note("component", way.owner, situation,
                                _below_ratings(judged, situation, way, bears, lacking))
    return _worst(judged.circuit, rating, margin)


def _reliefs(region):
    """The ways of the relief valves from inlet to outlet."""
    return [way for way in region.ways if way.kind == kinds.PRESSURE_OPENED
            and region.circuit.components[way.owner].kind == "relief-valve"]


def _lines(judged, situation):
    """(nodes, does the pump work there?, can a relief open there?) of the loop's main sides, of its
    sections, and of its charge lines."""
    for side in situation.loop.main_sides if situation.loop else ():
        # On the low side no relief opens.
        yield _closed(situation, side.nodes), True, situation.high in (None, side.letter)
    for section in situation.sections:
        yield _closed(situation, section.nodes), False, True
    for line in _charge_lines(judged.charge(situation)):
        yield _closed(situation, line), False, True


def _closed(situation, nodes):
    """What is one pressure with some nodes: over ways open both ways (a shuttle valve's lead to its outlet),
    not past a reservoir or a side."""
    ways = [way for way in situation.open_ways if way.both and way.kind in JOINS]
    return reach(ways, nodes, but=situation.region.reservoirs | situation.on_a_side)


def _charge_lines(charge):
    """The line of each source whose oil gets into the loop; one whose outlet stands on a side has none."""
    situation = charge.situation
    if not situation.loop:
        return
    # What gets to a section alone gets to no loop, as charge-relief has it.
    fed = frozenset().union(*(side.nodes for side in situation.loop.main_sides))
    for outlet in charge.pumped:
        if not fed.isdisjoint(meant.flows(situation, meant.feed_ways(situation), [outlet],
                                          situation.pressureless)):
            yield charge.line([outlet])


def _below_ratings(judged, situation, way, bears, lacking):
    """Does all that is on the line bear what the relief holds at full flow?"""
    given = [bar for bar, _ in bears if bar is not None]
    if not given:
        return Finding("inconclusive", missing=tuple(name for _, name in bears))
    most = judged.ceilings(situation, INFINITE).relieved(way)
    least = judged.ceilings(situation, 0).relieved(way) if lacking else most
    if least > min(given):
        return Finding("fail", "error")
    if most <= min(given):
        return Finding("pass")
    return Finding("inconclusive", missing=tuple(
        name for name in lacking if _matters(judged.charge(situation), way, name)))


def _matters(charge, way, name):
    """Does what a relief holds hang on one of the data that are not given?"""
    return any(Ceilings(charge.situation, charge, rest).relieved(way)
               != Ceilings(charge.situation, charge, rest, {name: other}).relieved(way)
               for rest, other in ((0, INFINITE), (INFINITE, 0)))


def _above_work(situation, way):
    """Does the relief stay shut in normal work? What is solved for the duty would come in here."""
    circuit, pumps = situation.region.circuit, situation.known.pumps
    setting = way.passage.opening
    declared = [_working_pressure(circuit.components[pump]) for pump in pumps]
    declared = [pressure for pressure in declared if pressure is not None]
    missing = [] if declared else [f"{pump}.working-pressure" for pump in pumps]
    missing += [f"{way.owner}.setting"] if setting is None else []
    if missing:
        return Finding("inconclusive", missing=tuple(missing))
    return Finding("fail", "warning") if setting - max(declared) < MARGIN else Finding("pass")


def _working_pressure(pump):
    """As declared, else where the pump's limiter takes it back."""
    given = pump.attributes.get("working-pressure") or pump.attributes.get("pressure-limiter")
    return kinds.pressure(given)


def _worst(circuit, *halves):
    """The worst of all halves for each relief, with what is missing in all that are as bad; it hangs on
    no state."""
    found = {}
    for verdict in (verdict for half in halves for verdict in half.verdicts()):
        found.setdefault(verdict.subject, []).append(verdict)

    def rank(verdict):
        return Finding(verdict.outcome, verdict.level).rank

    worst = []
    for path in circuit.components:
        equal = [one for one in found.get(path, ()) if rank(one) == min(map(rank, found[path]))]
        missing = {name for one in equal for name in one.missing}
        worst += [replace(equal[0], states=(), missing=tuple(sorted(missing)))] if equal else []
    return worst
