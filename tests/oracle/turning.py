"""Which pumps a prime mover turns in a situation.

The terms read here: "Turned", and how a prime mover of variable speed or one that reverses stands.
"""


def turns(situation, pump):
    """Is a pump turned, a one-way pump the right way round?"""
    circuit = situation.region.circuit
    if pump not in circuit.turned:
        return False
    movers = circuit.movers[circuit.drive[pump]]
    if circuit.drive[pump] in _standing(situation) and all(
            mover.get("variable-speed") == "yes" for mover in movers):
        return False
    backwards = situation.flow == "reverse" and all(
        mover.get("reversing") == "yes" for mover in movers)
    return circuit.components[pump].two_way or not backwards


def _standing(situation):
    """Drives that stand in neutral if their speed is variable: those with a loop's pump on them."""
    circuit = situation.region.circuit
    if situation.high is not None:
        return ()
    return {circuit.drive[pump] for known in situation.survey.known.values()
            for pump in known.pumps if pump in circuit.turned}
