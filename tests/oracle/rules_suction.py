"""The rules suction-shut-off and reservoir-balance: can somebody shut off what a pump draws, and does the oil
come back to where it was drawn?

Both ask wide ways: whatever can be opened counts as open.
"""

import kinds
from piping import MACHINE, steps, walk
from verdict import Verdict

SUCTION = {kinds.ELEMENT, kinds.HAND, kinds.SWITCHED, kinds.ONE_WAY, kinds.METERING}


def suction_shut_off(judged):
    """Is a hand valve in a suction line locked open, or does its switch prevent the start?"""
    circuit = judged.circuit
    ways = [way for way in circuit.ways if way.kind in SUCTION]
    return [Verdict("suction-shut-off", "component", valve.owner,
                    *(("pass",) if _secured(circuit, valve) else ("fail", "error")))
            for valve in ways if valve.kind == kinds.HAND and not valve.passage.for_towing
            and _draws_through(judged, [way for way in ways if way is not valve], valve)]


def _draws_through(judged, others, valve):
    """From a reservoir to one end, and from the other to a pump's inlet, the valve itself not passed.

    What a pump of a loop takes in is the loop's own oil."""
    circuit = judged.circuit
    drawn = walk(steps(others), circuit.reservoirs)
    inlets = {circuit.node[f"{part.path}.S"] for part in circuit.components.values()
              if part.kind == "pump" and "S" in part.ports and part.path not in judged.loop_machines}
    for near, far in ((valve.tail, valve.head), (valve.head, valve.tail)):
        if near in drawn and far not in circuit.reservoirs and not inlets.isdisjoint(
                walk(steps(others), [far], circuit.reservoirs) - circuit.reservoirs):
            return True
    return False


def _secured(circuit, valve):
    if valve.passage.locked and valve.passage.drawn_open:
        return True
    return (circuit.components[valve.owner].attributes.get("switched", "no") == "yes"
            and any(when == [valve.owner, "closed"] and _starts(circuit, prevents)
                    for when, prevents in circuit.interlocks))


def _starts(circuit, prevents):
    """Is it the start of a prime mover?"""
    return (len(prevents) == 2 and prevents[0] == "start"
            and circuit.components[prevents[1]].kind in kinds.PRIME_MOVERS)


def reservoir_balance(judged):
    """Does oil that gets over to another reservoir come back?"""
    circuit = judged.circuit
    table = steps(way for way in map(lambda way: _sensed(circuit, way), circuit.ways) if way)
    verdicts = []
    for part in circuit.components.values():
        ports = [f"{part.path}.{letters}" for letters in part.ports]
        if part.kind != "reservoir" or circuit.joined.isdisjoint(ports):
            continue
        here = circuit.node[ports[0]]
        lost = any(here not in walk(table, [other])
                   for other in walk(table, [here]) & circuit.reservoirs)
        verdicts.append(Verdict("reservoir-balance", "component", part.path,
                                *(("fail", "error") if lost else ("pass",))))
    return verdicts


class _Both:
    """A way that counts in both directions."""

    def __init__(self, way):
        self.tail, self.head, self.both = way.tail, way.head, True


def _sensed(circuit, way):
    """The way as oil passes it at work, or None: a pump with one flow direction only where it is
    turned, from inlet to outlet; what else displaces oil both ways; a hand pump not at all."""
    part = circuit.components[way.owner]
    if way.kind not in MACHINE:
        return way
    if way.kind == kinds.WORKED:
        return None
    one_way_pump = part.plays == "pump" and not part.two_way
    if way.kind == kinds.DISPLACEMENT:
        if one_way_pump:
            return way if part.path in circuit.turned else None
        return _Both(way)
    # The inlet of a pump with one flow direction leaks nothing: its outlet does, into it or the housing.
    if one_way_pump and part.kind == "pump":
        return _leaks_back(way)
    return way


def _leaks_back(way):
    if way.both:
        return _Turned(way)
    return way if way.passage.tail == "P" else None


class _Turned:
    """A way from its head to its tail."""

    def __init__(self, way):
        self.tail, self.head, self.both = way.head, way.tail, False
