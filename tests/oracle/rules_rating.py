"""The rule pressure-rating: does everything bear the highest pressure that it can see?

Lines and hoses are held against their rating, components against their `max-pressure`, at the
highest of the ceilings of their ports; a housing has its own rule.
"""

import kinds
from ceilings import INFINITE, unknown_data
from circuit import sealed
from verdict import Finding, Ledger

#: The kinds with a `max-pressure` that says what they bear. (A pilot control valve's is a setting.)
BEARS = {"accumulator", "brake", "clutch", "cooler", "cylinder", "filter", "hand-pump", "motor", "pump",
         "pump-motor", "quick-coupling", "reservoir", "semi-rotary-actuator"}


def pressure_rating(judged):
    """Is each line and component rated for the highest ceiling in the running states?"""
    ledger = Ledger("pressure-rating")
    asked = {}
    for situation in judged.situations:
        region = situation.region
        if id(region) not in asked:
            asked[id(region)] = list(subjects(region)), unknown_data(region)
        rated, lacking = asked[id(region)]
        high = judged.ceilings(situation, INFINITE)
        low = judged.ceilings(situation, 0) if lacking else high
        for subject_type, path, nodes, rating, name in rated:
            most, least = (max(map(found.at, nodes), default=0) for found in (high, low))
            ledger.note(subject_type, path, situation, _rated(most, least, rating, name, lacking))
    return list(ledger.verdicts())


def _rated(most, least, rating, name, lacking):
    """`most` takes as infinite what is unknown, `least` as 0."""
    if least == INFINITE:
        return Finding("fail", "error")  # nothing limits the pressure
    if most == 0:
        return Finding("pass")
    if rating is None:
        return Finding("inconclusive", missing=(name,))
    if most <= rating:
        return Finding("pass")
    if least > rating:
        return Finding("fail", "error")
    return Finding("inconclusive", missing=tuple(lacking))


def _nodes(region):
    """The nodes of a region: of its ways, and of all ports of what hangs together as a whole."""
    circuit = region.circuit
    found = {node for way in region.ways for node in (way.tail, way.head)}
    for path in {way.owner for way in region.ways}:
        part = circuit.components[path]
        if part.kind in kinds.MACHINES | {"directional-valve", "flushing-valve"} or any(
                way.passage.pilot for way in region.ways if way.owner == path):
            found.update(circuit.node[f"{path}.{port}"] for port in part.ports)
    return found


def subjects(region):
    """(type, id, nodes, what it bears, name of that datum) of all that the region holds."""
    circuit, here = region.circuit, _nodes(region)
    for line, ports in circuit.joins.items():
        if circuit.node[ports[0]] in here:
            yield ("line", line, [circuit.node[ports[0]]],
                   kinds.pressure(circuit.lines[line].get("rating")), f"{line}.rating")
    own = {way.owner for way in region.ways}
    with_ways = {way.owner for way in circuit.ways}
    for path, part in circuit.components.items():
        if part.kind not in BEARS or (part.kind == "reservoir" and not sealed(part)):
            continue
        housing = kinds.case_ports(part.attributes) if part.kind in kinds.MACHINES else []
        nodes = {circuit.node[f"{path}.{port}"] for port in part.ports
                 if port not in housing and f"{path}.{port}" in circuit.joined}
        # What has no ways of its own is where its lines are.
        if path in own or (path not in with_ways and nodes & (here - circuit.reservoirs)):
            yield ("component", path, nodes & here,
                   kinds.pressure(part.attributes.get("max-pressure")), f"{path}.max-pressure")
