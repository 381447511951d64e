"""The rules unconnected-port, isolated-part and line-function: what nothing is joined to, and lines that say of
themselves what they are not.  None of them hangs on a state."""

from piping import INSTRUMENTS, bare_shafts, is_case, is_outlet, is_suction
from verdict import Verdict

PILOTS = ("X", "X1", "X2", "LS", "Z")


def _offenders(rule, subject_type, asked, found):
    """A fail for each (subject -> level), or a pass on the circuit if there is anything to ask."""
    return ([Verdict(rule, subject_type, subject, "fail", level) for subject, level in found.items()]
            or ([Verdict(rule, "circuit", "circuit", "pass")] if asked else []))


def unconnected_port(judged):
    """Does a line join every port that needs one?"""
    circuit = judged.circuit
    joined = circuit.joined
    levels = {f"{part.path}.{letters}": _level(part, letters, joined)
              for part in circuit.components.values() for letters in part.ports}
    asked = {port: level for port, level in levels.items() if level}
    return _offenders("unconnected-port", "port", asked,
                      {port: level for port, level in asked.items() if port not in joined})


def _level(part, letters, joined):
    """How bad it is to leave a port open; nothing where it may be."""
    if part.kind == "measuring-point":
        return ""
    if part.kind == "quick-coupling" and (part.attributes.get("joined", "yes") == "no"
                                          or part.attributes.get("valves", "both") != "none"):
        return ""
    if part.kind in INSTRUMENTS | {"plug", "breather", "reservoir", "junction"}:
        return "warning"
    if is_case(part, letters):
        # One port drains a housing; the others may stay shut.
        return "warning" if any(is_case(part, other) and f"{part.path}.{other}" in joined
                                for other in part.ports) else "error"
    return "warning" if letters in PILOTS and not part.declared else "error"


def isolated_part(judged):
    """Does a line or a shaft join every component to another?"""
    circuit = judged.circuit
    joined = circuit.joined
    shafts = bare_shafts(circuit)
    on_shaft = {}
    for name, shaft in shafts.items():
        on_shaft.setdefault(shaft, set()).add(_part_of(circuit, name))
    asked = [part for part in circuit.components.values()
             if part.kind not in INSTRUMENTS | {"breather", "plug"}]
    shared = {path for paths in on_shaft.values() if len(paths) > 1 for path in paths}
    alone = {part.path: "warning" for part in asked if part.path not in shared
             and not any(f"{part.path}.{letters}" in joined for letters in part.ports)}
    return _offenders("isolated-part", "component", asked, alone)


def _part_of(circuit, name):
    """The component that a shaft's name means: "G1.in" is an end of G1."""
    return name if name in circuit.components else name.rpartition(".")[0]


def line_function(judged):
    """Does what a line joins contradict the function that it declares?"""
    circuit = judged.circuit
    sides = {node for situation in judged.loop_situations if situation.loop
             for side in situation.loop.main_sides for node in side.nodes}
    declared = {path: attributes["function"] for path, attributes in circuit.lines.items()
                if attributes.get("function")}
    found = {path: "warning" for path, function in declared.items()
             if _contradicted(judged, circuit.joins[path][0], function, sides)}
    return _offenders("line-function", "line", declared, found)


def _contradicted(judged, port, function, sides):
    pipes = judged.pipes
    pipe = pipes.of[port]
    on_side = judged.circuit.node[port] in sides
    at_tank = pipe in pipes.open
    outlet, suction, case = (pipes.holds(pipe, fits) for fits in (is_outlet, is_suction, is_case))
    return {"suction": outlet or on_side or case,
            "drain": outlet or on_side,
            "return": outlet or on_side,
            "charge": on_side or at_tank or case,
            "working": at_tank or case,
            "pilot": suction}[function]
