"""Which pumps a prime mover turns in a situation, and which of them deliver.

The terms read here: "Turned", and how a prime mover of variable speed or one that reverses stands.
"""


def _movers(situation, pump):
    circuit = situation.region.circuit
    return circuit.movers[circuit.drive[pump]]


def turns(situation, pump):
    """Is a pump turned, either way round?  A prime mover of variable speed that drives a loop's pump
    stands in neutral."""
    circuit = situation.region.circuit
    if pump not in circuit.turned:
        return False
    with_loops = {circuit.drive[other] for known in situation.survey.known.values()
                  for other in known.pumps} if situation.high is None else ()
    return not (circuit.drive[pump] in with_loops and all(
        mover.get("variable-speed") == "yes" for mover in _movers(situation, pump)))


def delivers(situation, pump):
    """Is a pump turned, a one-way pump the right way round?  (A two-way one has a flow only where
    the state has a direction and it gets its signal: `meant.flowing`.)"""
    backwards = situation.flow == "reverse" and not situation.region.circuit.components[pump].two_way
    return turns(situation, pump) and not (backwards and all(
        mover.get("reversing") == "yes" for mover in _movers(situation, pump)))
