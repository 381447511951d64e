"""The rule trapped-volume: what cannot get rid of its pressure, whatever the state."""

import kinds
from verdict import Verdict

#: What lets oil seep either way, whatever drives it and whatever it stands like.
SEEPS = {kinds.DISPLACEMENT, kinds.WORKED, kinds.REDUCED, kinds.SWITCHED, kinds.SHUTTLE, kinds.HIGHER,
         kinds.UNLOADED}


def _held_open(way):
    """A hand valve drawn open and locked."""
    return way.kind == kinds.HAND and way.passage.locked and way.passage.drawn_open


def _reach(circuit, steps, start):
    """Nodes that oil gets to from one over (from, to); no step leads out of a reservoir."""
    table = {}
    for tail, head in steps:
        table.setdefault(tail, []).append(head)
    seen, waiting = {start}, [start]
    while waiting:
        node = waiting.pop()
        for head in table.get(node, ()) if node not in circuit.reservoirs else ():
            if head not in seen:
                seen.add(head)
                waiting.append(head)
    return seen


def _expands(way):
    """(does oil that gets warm seep forth, does it seep back?) over a passage that is not tight."""
    if way.kind in SEEPS or way.passage.position is not None:
        return True, True  # spools and machines leak both ways
    if way.kind == kinds.HAND:
        return _held_open(way), _held_open(way)
    # A pilot's way back over a check's seat is tight.
    return way.kind != kinds.PILOTED, way.both and way.kind != kinds.PILOTED


def trapped_volume(judged):
    """Is oil shut in, with no way to expand to a reservoir or an accumulator?"""
    circuit = judged.circuit
    steps = []
    for way in circuit.ways:
        forth, back = _expands(way)
        steps += [(way.tail, way.head)] if forth else []
        steps += [(way.head, way.tail)] if back else []
    free = circuit.reservoirs | {circuit.node[f"{part.path}.A"] for part in circuit.components.values()
                                 if part.kind == "accumulator"}
    asked = {}  # node -> the first line on it
    for line, ports in circuit.line_ports.items():
        if len(ports) > 1:
            asked.setdefault(circuit.node[ports[0]], line)
    trapped = [line for node, line in asked.items()
               if free.isdisjoint(_reach(circuit, steps, node))]
    return ([Verdict("trapped-volume", "line", line, "fail", "warning") for line in trapped]
            or ([Verdict("trapped-volume", "circuit", "circuit", "pass")] if asked else []))
