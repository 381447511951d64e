"""The rules trapped-volume and pressure-intensification: what cannot get rid of its pressure.

Both ask what hangs together whatever the state; a reservoir ends every way.
"""

import kinds
from verdict import Verdict

#: What lets oil seep either way, whatever drives it and whatever it stands like.
SEEPS = {kinds.DISPLACEMENT, kinds.WORKED, kinds.LEAKAGE, kinds.REDUCED, kinds.SWITCHED,
         kinds.SHUTTLE, kinds.HIGHER, kinds.UNLOADED}


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
    for line, ports in circuit.joins.items():
        if len(ports) > 1:
            asked.setdefault(circuit.node[ports[0]], line)
    trapped = [line for node, line in asked.items()
               if free.isdisjoint(_reach(circuit, steps, node))]
    return ([Verdict("trapped-volume", "line", line, "fail", "warning") for line in trapped]
            or ([Verdict("trapped-volume", "circuit", "circuit", "pass")] if asked else []))


def _raises(judged, part):
    """The ports at which a part can raise a pressure: the legs of a rotary divider, the rod end of a
    cylinder with unequal areas that no loop holds."""
    if part.kind == "flow-divider":
        return part.declared if part.attributes.get("design", "spool") == "rotary" else []
    if part.kind != "cylinder" or not kinds.displaces(part.kind, part.attributes):
        return []
    equal = kinds.equal_areas(part.attributes)
    return [] if equal or part.path in judged.loop_machines else ["B"]


def pressure_intensification(judged):
    """Does a relief stand where a rotary divider or an area ratio can raise the pressure?"""
    circuit = judged.circuit
    steps, reliefs = [], set()
    for way in circuit.ways:
        if way.kind == kinds.PRESSURE_OPENED:
            reliefs.add(way.tail)
            reliefs.update([way.head] if way.both else [])
        elif way.kind in (kinds.ELEMENT, kinds.SWITCHED, kinds.ONE_WAY) or _held_open(way):
            steps.append((way.tail, way.head))
            steps += [(way.head, way.tail)] if way.both else []
    found = []
    for part in circuit.components.values():
        ports = _raises(judged, part)
        if ports:
            fine = all(reliefs & _reach(circuit, steps, circuit.node[f"{part.path}.{port}"])
                       for port in ports)
            found.append(Verdict("pressure-intensification", "component", part.path,
                                 *(("pass",) if fine else ("fail", "error"))))
    return found
