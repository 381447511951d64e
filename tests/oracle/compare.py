"""Where the program's JSON and the second opinion differ, in words."""


def _states(verdict):
    return {(state["name"], tuple(sorted(state.get("positions", {}).items())))
            for state in verdict.get("states", [])}


def _words(states):
    return ", ".join(" ".join([name] + [f"{valve}={place}" for valve, place in positions])
                     for name, positions in sorted(states)) or "none"


def _verdicts(theirs, ours, rules):
    """Rule by rule: who is judged, with what outcome, level, states and missing data."""
    program = {(verdict["rule"], verdict["subject"]["type"], verdict["subject"]["id"]): verdict
               for verdict in theirs["verdicts"] if verdict["rule"] in rules}
    own = {(verdict.rule, verdict.subject_type, verdict.subject): verdict for verdict in ours}
    for key in sorted(program.keys() | own.keys()):
        name = " ".join(key)
        if key not in own:
            yield f"{name}: only the program judges it ({program[key]['outcome']})"
        elif key not in program:
            yield f"{name}: only the second opinion judges it ({own[key].outcome})"
        else:
            their, our = program[key], own[key]
            pairs = [("outcome", their["outcome"], our.outcome),
                     ("level", their.get("level", ""), our.level),
                     ("states", _words(_states(their)), _words(set(our.states))),
                     ("missing", sorted(their.get("missing", [])), sorted(our.missing))]
            for what, program_says, own_says in pairs:
                if program_says != own_says:
                    yield f"{name}: {what}: program {program_says}, second opinion {own_says}"


def _sides(theirs, ours):
    """Role, id and states of each side in words."""
    own = {f"{role} {name} ({', '.join(sorted(states))})"
           for (role, name), states in ours.items()}
    program = {f"{side['role']} {side['id']} ({', '.join(sorted(side['states']))})"
               for side in theirs}
    return program, own


def _loops(theirs, ours):
    """Loops with their pumps, actuators and sides (with the states of each)."""
    program = {loop["id"]: loop for loop in theirs["loops"]}
    own = {loop.id: loop for loop in ours}
    for name in sorted(program.keys() | own.keys()):
        if name not in own:
            yield f"{name}: only the program finds it"
        elif name not in program:
            yield f"{name}: only the second opinion finds it"
        else:
            their, our = program[name], own[name]
            sides, own_sides = _sides(their["sides"], our.sides)
            for what, program_says, own_says in [
                    ("pumps", their["pumps"], our.pumps),
                    ("actuators", their["actuators"], our.actuators),
                    ("sides", sorted(sides - own_sides), sorted(own_sides - sides))]:
                if program_says != own_says:
                    yield f"{name}: {what}: program {program_says}, second opinion {own_says}"


def _open_parts(theirs, ours):
    """The machines of each part outside the loops."""
    program = sorted((part["pumps"], part["actuators"]) for part in theirs["open_parts"])
    own = sorted(ours)
    if program != own:
        yield f"open parts: program {program}, second opinion {own}"


def disagreements(program_json, own_verdicts, own_loops=None, rules=None, own_parts=None):
    """A list of texts, one for each point on which the two differ over one circuit.

    `program_json` is one entry of "circuits" in the program's JSON; the loops are compared where
    `own_loops` is given, the open parts where `own_parts` is; only `rules` are compared where they are given, else those judged here.
    """
    judged = set(rules or {verdict.rule for verdict in own_verdicts})
    found = list(_verdicts(program_json, own_verdicts, judged))
    if own_loops is not None:
        found += _loops(program_json, own_loops)
    if own_parts is not None:
        found += _open_parts(program_json, own_parts)
    return found
