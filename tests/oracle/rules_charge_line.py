"""The rules charge-vented and charge-backflow: does what the charge pump delivers keep its pressure, and the
loop its own?

A candidate is a pump that may be meant as the loop's charge pump (`meant.candidates`), a source one that
does deliver charge oil (`rules_charge.Charge`).
"""

import kinds
import meant
from ways import PLAIN, reach
from verdict import Finding, Ledger


def _decided(fine):
    return Finding("pass") if fine else Finding("fail", "error")


def charge_vented(judged):
    """Is the line of every charge pump that is turned open to a reservoir, holding no pressure?"""
    ledger = Ledger("charge-vented")
    for situation in judged.loop_situations:
        if situation.loop and not situation.loop.short:
            ledger.note("loop", situation.known.name, situation,
                        _vented(situation, judged.candidates(situation)))
    return list(ledger.verdicts())


def _vented(situation, candidates):
    """One line that holds its pressure is enough."""
    circuit = situation.region.circuit
    turned = [outlet for pump, outlet in candidates if pump in circuit.turned]
    stores = meant.stores(situation)
    # Of accumulators alone where nothing else may charge the loop.
    givers = turned + [node for node in stores if node in circuit.pressurised] or stores
    if not givers:
        return Finding("not-applicable")
    return _decided(any((meant.line_of(situation, node) | {node}).isdisjoint(situation.pressureless)
                        for node in givers))


def charge_backflow(judged):
    """Can a side's pressure get to the charge line other than through a relief?"""
    ledger = Ledger("charge-backflow")
    for situation in judged.loop_situations:
        sides = (situation.loop.main_sides if situation.loop else []) + situation.sections
        for side in sides:
            # On the low side stands what the charge line has: what the high side opens lets nothing back.
            low = bool(side.letter and situation.high) and side.letter != situation.high
            ledger.note("side", side.name, situation,
                        _held_back(judged.charge(situation), side, {kinds.PILOTED} if low else ()))
    return list(ledger.verdicts())


def _held_back(charge, side, but):
    """Nothing open leads out of the side to charge oil; what throttles or limits does not count, nor do the
    classes in `but`."""
    if not charge.outlets:
        return Finding("not-applicable")
    situation = charge.situation
    own = {way.number for way in situation.loop.passages} if situation.loop else ()
    ways = [way for way in situation.open_ways
            if way.kind in PLAIN and way.kind not in but and way.number not in own]
    charged = charge.line() | set(charge.pumped)
    reached = reach(ways, side.nodes, but=situation.region.reservoirs - charged)
    return _decided(reached.isdisjoint(charged))
