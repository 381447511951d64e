"""The rules shorted-ports, dangling-line, isolated-part and double-source: is the drawing itself in order?

The first three are asked of the drawing as it stands, whatever the state.
"""

import kinds
import more
from verdict import Finding, Ledger, Verdict
from ways import pieces

NEVER_ISOLATED = ("plug", "breather", "level-indicator")


def _offenders(rule, subject_type, level, found):
    """A fail for each, or a pass on the circuit."""
    return ([Verdict(rule, subject_type, subject, "fail", level) for subject in found]
            or [Verdict(rule, "circuit", "circuit", "pass")])


def shorted_ports(judged):
    """Does a component's passage begin and end on the same node?"""
    shorted = {way.owner for way in judged.circuit.ways
               if way.tail == way.head and way.kind not in (kinds.LEAKAGE, kinds.BYPASS)}
    return _offenders("shorted-ports", "component", "error",
                      [path for path in judged.circuit.components if path in shorted])


def dangling_line(judged):
    """Does a line or hose join one port alone?"""
    return _offenders("dangling-line", "line", "error",
                      [line for line, ports in more.drawn(judged.circuit).lines if len(ports) == 1])


def isolated_part(judged):
    """Is there a part with ports that neither a line nor a shaft joins with anything?"""
    drawn = more.drawn(judged.circuit)
    joined = {port for _, ports in drawn.lines for port in ports}
    turning = set().union(*(parts for parts in drawn.shafts if len(parts) > 1))
    return _offenders("isolated-part", "component", "warning", [
        part.path for part in judged.circuit.components.values()
        if part.ports and part.kind not in NEVER_ISOLATED and part.path not in turning
        and not any(f"{part.path}.{port}" in joined for port in part.ports)])


def double_source(judged):
    """Do pumps on different drives deliver into one line with no check between them?"""
    ledger = Ledger("double-source")
    found = [(situation, _into_one(judged, situation)) for situation in more.running(judged)]
    ever = {}  # region -> lines that fail in some situation
    for situation, lines in found:
        ever.setdefault(id(situation.region), set()).update(lines)
    for situation, lines in found:
        for line in sorted(ever[id(situation.region)]):
            ledger.note("line", line, situation,
                        Finding("fail", "warning") if line in lines else Finding("pass"))
    return list(ledger.verdicts()) or [Verdict("double-source", "circuit", "circuit", "pass")]


def _into_one(judged, situation):
    """The line of each pump that meets an earlier one on another drive."""
    circuit = judged.circuit
    outlets = []
    for pump in situation.region.of_kind("pump"):
        both = more.ends(situation, pump)
        if pump in circuit.turned and pump not in judged.loop_machines and both:
            outlets.append((pump, both[1]))
    away = situation.on_a_side | situation.region.reservoirs
    nodes = set(range(len(circuit.ports_on))) - away
    plain = [way for way in situation.open_ways
             if way.both and way.kind in (kinds.ELEMENT, kinds.HAND, kinds.SWITCHED)]
    piece = {node: number for number, together in enumerate(pieces(plain, nodes)) for node in together}
    lines = set()
    for count, (pump, outlet) in enumerate(outlets):
        if outlet not in away and any(
                piece.get(other) == piece[outlet] and circuit.drive[earlier] != circuit.drive[pump]
                for earlier, other in outlets[:count]):
            lines.update(_first_line(circuit, outlet))
    return lines


def _first_line(circuit, node):
    """The first line of the file at a node, if any is there."""
    return [line for line, ports in more.drawn(circuit).lines
            if any(circuit.node.get(port) == node for port in ports)][:1]


RULES = {
    "shorted-ports": shorted_ports,
    "dangling-line": dangling_line,
    "isolated-part": isolated_part,
    "double-source": double_source,
}
