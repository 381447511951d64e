"""Which pumps turn in a situation, and where those outside all loops deliver."""

import meant


def _movers(situation, pump):
    circuit = situation.region.circuit
    return circuit.movers.get(circuit.drive[pump], [])


def turns(situation, pump):
    """Is the pump turned, either way?  A prime mover of variable speed that drives a loop's pump stands
    in neutral."""
    circuit = situation.region.circuit
    if pump not in circuit.turned:
        return False
    in_loops = {circuit.drive[other] for known in situation.survey.known.values()
                for other in known.pumps}
    return not (situation.high is None and circuit.drive[pump] in in_loops
                and all(mover.get("variable-speed") == "yes" for mover in _movers(situation, pump)))


def delivered(situation):
    """Outlets of the pumps outside all loops that turn ahead; a two-way one has an outlet only where
    the state has a direction and it gets its signal."""
    found = []
    for pump in meant.outside_loops(situation, "pump"):
        ends = meant.ends(situation, pump)
        backwards = (not situation.region.circuit.components[pump].two_way
                     and situation.flow == "reverse"
                     and all(mover.get("reversing") == "yes" for mover in _movers(situation, pump)))
        if ends and turns(situation, pump) and not backwards:
            found.append(ends[1])
    return found


def accumulators(circuit):
    """The nodes at which oil under pressure is stored."""
    return {circuit.node[f"{part.path}.A"] for part in circuit.components.values()
            if part.kind == "accumulator"}
