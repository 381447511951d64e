"""The rule flushing-setting: does the flushing relief open before the charge relief does?"""

import kinds
from states import MOVING
from sure import is_sure, senses, sure_ways
from verdict import Finding, Ledger
from ways import arcs, reach

#: How much lower at least (a rule of thumb).
OFFSET = kinds.pressure("2 bar")


def flushing_setting(judged):
    """A verdict for each relief that the oil of a flushing valve meets first."""
    ledger = Ledger("flushing-setting")
    for situation in judged.situations:
        if situation.state not in MOVING or not situation.region.shuttles:
            continue
        flushing = _flushing_reliefs(situation)
        charge = _charge_reliefs(situation, judged.charge(situation).pumped)
        for path in situation.region.in_order({way.owner for way in flushing}):
            own = [way for way in flushing if way.owner == path]
            ledger.note("component", path, situation, _judged(judged.circuit, own, charge))
    return list(ledger.verdicts())


def _flushing_reliefs(situation):
    """The reliefs met from the port F of any flushing valve; none behind another's inlet."""
    region = situation.region
    at = _reliefs_at(situation)
    # What comes from the sides to F leads nothing back to them.
    table = arcs([way for way in situation.open_ways if is_sure(way) and way.passage.shuttle is None])
    found = set()
    for valve in region.shuttles:
        start = region.circuit.node[f"{valve.path}.F"]
        seen, waiting = {start}, [start]
        while waiting:
            node = waiting.pop()
            if node in region.reservoirs:
                continue
            found |= at.get(node, set())
            for _, head in table.get(node, ()) if node not in at else ():
                if head not in seen:
                    seen.add(head)
                    waiting.append(head)
    return found


def _charge_reliefs(situation, outlets):
    """The reliefs out of the charge line, before it gets to a side."""
    starts = [node for node in outlets if node not in situation.on_a_side]
    reached = reach(sure_ways(situation), starts, but=situation.on_a_side | situation.region.reservoirs)
    # One that discharges into the charge line limits nothing.
    return {way for node, ways in _reliefs_at(situation).items() if node in reached
            for way in ways if way.head not in reached}


def _reliefs_at(situation):
    """node -> the relief passages that begin there."""
    found = {}
    for way in situation.open_ways:
        for tail, _ in senses(way) if way.kind == kinds.PRESSURE_OPENED else ():
            found.setdefault(tail, set()).add(way)
    return found


def _judged(circuit, own, charge):
    """The relief's lowest setting against the lowest of the charge line."""
    if not charge:
        return Finding("not-applicable")
    lacking = {way.owner for way in [*own, *charge] if way.passage.opening is None}
    flushed, charged = ([way.passage.opening for way in ways if way.passage.opening is not None]
                        for ways in (own, charge))
    if flushed and charged and min(flushed) >= min(charged):
        return Finding("fail", "error")
    if flushed and charged and min(charged) - min(flushed) < OFFSET:
        return Finding("fail", "warning")
    if lacking:
        return Finding("inconclusive", missing=tuple(sorted(
            f"{owner}.{'opening' if circuit.components[owner].kind == 'device' else 'setting'}"
            for owner in lacking)))
    return Finding("pass")
