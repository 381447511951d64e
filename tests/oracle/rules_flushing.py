"""The rule flushing-setting: does the flushing relief open before the charge relief does?"""

import kinds
from ceilings import sure
from verdict import Verdict
from ways import arcs, reach

#: How much lower at least (a rule of thumb).
OFFSET = kinds.pressure("2 bar")


def flushing_setting(judged):
    """A verdict for each relief that the oil of a flushing valve meets first."""
    verdicts = {}
    for survey in judged.surveys:
        region = survey.region
        if not region.shuttles:
            continue
        flushing, charge = {}, {}
        for situation in survey.all_situations:
            flushing.update(_flushing_reliefs(situation))
            charge.update(_charge_reliefs(situation, judged.charge(situation).outlets))
        for path in {way.owner for way in flushing.values()}:
            own = [way for way in flushing.values() if way.owner == path]
            verdicts[path] = _judged(judged.circuit, path, own, list(charge.values()))
    return [verdicts[path] for path in judged.circuit.components if path in verdicts]


def _flushing_reliefs(situation):
    """Number -> the reliefs met from the port F of any flushing valve; none behind another's inlet."""
    region = situation.region
    at = _reliefs_at(situation)
    # What comes from the sides to F leads nothing back to them.
    table = arcs([way for way in situation.open_ways if sure(way) and way.passage.shuttle is None])
    found = {}
    for valve in region.shuttles:
        start = region.circuit.node[f"{valve.path}.F"]
        seen, waiting = {start}, [start]
        while waiting:
            node = waiting.pop()
            if node in region.reservoirs:
                continue
            found.update(at.get(node, {}))
            for _, head in table.get(node, ()) if node not in at else ():
                if head not in seen:
                    seen.add(head)
                    waiting.append(head)
    return found


def _charge_reliefs(situation, outlets):
    """Number -> the reliefs that charge oil meets before it gets to a side."""
    starts = [node for node in outlets if node not in situation.on_a_side]
    reached = reach([way for way in situation.open_ways if sure(way)], starts,
                    but=situation.on_a_side | situation.region.reservoirs)
    return {number: way for node, ways in _reliefs_at(situation).items() if node in reached
            for number, way in ways.items()}


def _reliefs_at(situation):
    """node -> number -> relief passage that begins there."""
    found = {}
    for way in situation.open_ways:
        if way.kind == kinds.PRESSURE_OPENED:
            for node in (way.tail, way.head) if way.both else (way.tail,):
                found.setdefault(node, {})[way.number] = way
    return found


def _judged(circuit, path, own, charge):
    """The relief's lowest setting against the lowest of the charge line."""
    def verdict(*said, missing=()):
        return Verdict("flushing-setting", "component", path, *said, missing=missing)

    if not charge:
        return verdict("not-applicable")
    lacking = {way.owner for way in own + charge if way.passage.opening is None}
    flushed, charged = ([way.passage.opening for way in ways if way.passage.opening is not None]
                        for ways in (own, charge))
    if flushed and charged and min(flushed) >= min(charged):
        return verdict("fail", "error")
    if flushed and charged and min(charged) - min(flushed) < OFFSET:
        return verdict("fail", "warning")
    if lacking:
        return verdict("inconclusive", missing=tuple(sorted(
            f"{owner}.{'opening' if circuit.components[owner].kind == 'device' else 'setting'}"
            for owner in lacking)))
    return verdict("pass")
