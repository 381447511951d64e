"""The rules loop-flushing, flushing-side and cooling: does hot oil leave the loop, from the right side,
and past a cooler?"""

from dataclasses import replace

import kinds
from piping import MACHINE, steps, walk
from sure import SWITCHED
from verdict import WORST_FIRST, Finding, Ledger
from ways import quiet, reach

#: By what oil may leave a loop at all.
EXITS = SWITCHED | {kinds.METERING, kinds.LEG, kinds.REDUCED, kinds.ELEMENT}


def _decided(fine, level):
    return Finding("pass") if fine else Finding("fail", level)


def _on_main_sides(situation):
    return {node for side in situation.loop.main_sides for node in side.nodes}


def loop_flushing(judged):
    """Does the loop exchange oil?"""
    ledger = Ledger("loop-flushing")
    for situation in judged.moving_loop_situations:
        ledger.note("loop", situation.known.name, situation, _decided(_flushed(situation), "note"))
    return list(ledger.verdicts())


def _flushed(situation):
    """First over something that may lead oil off, then over whatever is open, to a reservoir."""
    reservoirs = situation.region.reservoirs
    own = {way.number for way in situation.loop.passages}
    sides = {node for side in situation.loop.sides for node in side.nodes}
    onward = [way for way in situation.open_ways if way.kind not in MACHINE]
    exits = steps(way for way in onward if way.kind in EXITS and way.number not in own)
    first = {head for node in _on_main_sides(situation) for head in exits.get(node, ())} - sides
    still = quiet(situation.region, situation.standing)
    at_tank = reservoirs | (situation.vented & reach(still, reservoirs))
    return not at_tank.isdisjoint(reach(onward, first, but=sides))


def flushing_side(judged):
    """Does a flushing valve take its oil from the low side?"""
    ledger = Ledger("flushing-side")
    for situation in judged.moving_loop_situations:
        main = _on_main_sides(situation)
        for valve in situation.region.shuttles:
            inlets = [situation.region.circuit.node[f"{valve.path}.{port}"] for port in "AB"]
            # On a line that loops share it flushes the one between whose sides it stands.
            flushed = [loop for loop, _ in situation.loops if _between(loop, inlets)]
            if situation.loop in flushed if flushed else main.intersection(inlets):
                ledger.note("component", valve.path, situation,
                            _decided(_takes_low(situation, valve), "error"))
    return list(ledger.verdicts())


def _between(loop, inlets):
    """Are the two inlets on two main sides of a loop?"""
    on = [[side for side in loop.main_sides if node in side.nodes] for node in inlets]
    return all(on) and any(one is not other for one in on[0] for other in on[1])


def _takes_low(situation, valve):
    low = {node for side in situation.loop.main_sides if side.letter != situation.high
           for node in side.nodes}
    open_ways = [way for way in situation.open_ways if way.owner == valve.path]
    return len(open_ways) == 1 and open_ways[0].tail in low


def cooling(judged):
    """Does hot oil of every loop pass a cooler?"""
    ledgers = {}
    for situation in judged.moving_loop_situations:
        ledgers.setdefault(situation.survey, Ledger("cooling")).note(
            "circuit", "circuit", situation, _decided(_cooled(judged.charge(situation)), "note"))
    verdicts = [verdict for ledger in ledgers.values() for verdict in ledger.verdicts()]
    worst = min((verdict.outcome for verdict in verdicts), key=WORST_FIRST.index, default=None)
    verdicts = [verdict for verdict in verdicts if verdict.outcome == worst]
    if not verdicts:
        return []
    # What a region shares in all positions is said plainly.
    states = [state for verdict in verdicts for state in verdict.states]
    plain = {state for state, positions in states if not positions}
    return [replace(verdicts[0], states=tuple(
        (state, positions) for state, positions in states if not positions or state not in plain))]


def _cooled(charge):
    """In the loop, behind its sides over any open way, or behind the charge feed."""
    situation = charge.situation
    components = situation.region.circuit.components
    coolers = [way for way in situation.open_ways
               if way.kind == kinds.ELEMENT and components[way.owner].kind == "cooler"]
    own = {way.number for way in situation.loop.passages}
    if any(way.number in own for way in coolers):
        return True
    ways = [way for way in situation.open_ways if way.kind != kinds.DISPLACEMENT
            or way.owner not in situation.loop.machines]
    reached = walk(steps(ways), _on_main_sides(situation), situation.region.reservoirs)
    fed = charge.fed()
    return any(way.tail in reached or way.tail in fed for way in coolers)
