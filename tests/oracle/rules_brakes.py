"""The rules load-holding, parking-brake and towing-bypass: what holds a load at rest, and what lets it go."""

import kinds
from piping import MACHINE, OPENED, bare_shafts
from meant import delivered
from verdict import Finding, Ledger, Verdict
from ways import reach


def _on_drive(circuit, kind, drive):
    return [part for part in circuit.components.values()
            if part.kind == kind and circuit.drive[part.path] == drive]


def _by_spring(brake):
    return brake.attributes.get("applied", "spring") == "spring"


def load_holding(judged):
    """A load that can drive its motor: is it held when loop, hose or drive fails?"""
    return [Verdict("load-holding", "component", load.path,
                    *(("pass",) if _held(judged, load) else ("fail", "error")))
            for load in judged.circuit.components.values()
            if load.kind == "load" and load.attributes.get("overrunning", "no") == "yes"]


def _held(judged, load):
    circuit = judged.circuit
    drive = circuit.drive[load.path]
    if any(_by_spring(brake) and brake.attributes.get("use") != "service"
           for brake in _on_drive(circuit, "brake", drive)):
        return True
    # A load that no actuator stands on is held by none.
    actuators = [part for part in circuit.components.values()
                 if part.plays == "actuator" and circuit.drive[part.path] == drive]
    shut = _shut_in(judged)
    return bool(actuators) and all(any(judged.pipes.of[port] in shut for port in part.working)
                                   for part in actuators)


def _shut_in(judged):
    """Pipes into which a component lets oil freely, and out of which only under pressure or by its pilot:
    the actuator's end of a counterbalance valve or a piloted check.  A relief or sequence valve
    with a check holds no load: its side is open to the pump."""
    circuit, pipes = judged.circuit, judged.pipes
    free, opened, other = {}, {}, {}
    for way in circuit.ways:
        if circuit.components[way.owner].kind in ("relief-valve", "sequence-valve"):
            continue
        tail, head = (pipes.of[f"{way.owner}.{end}"]
                      for end in (way.passage.tail, way.passage.head))
        for start, end in [(tail, head)] + ([(head, tail)] if way.both else []):
            if start != end:
                if way.kind == kinds.ONE_WAY:
                    free.setdefault(end, set()).add(way.owner)
                holds = way.kind in (kinds.PRESSURE_OPENED, kinds.PILOTED, kinds.UNLOADED)
                (opened if holds else other).setdefault(start, set()).add(way.owner)
    return {pipe for pipe, owners in free.items()
            if (owners & opened.get(pipe, set())) - other.get(pipe, set())}


def _reached(situation, starts):
    """Over open ways that are neither a machine's nor opened by pressure, past no reservoir."""
    ways = [way for way in situation.open_ways if way.kind not in MACHINE | OPENED]
    reservoirs = situation.region.reservoirs
    return reach(ways, set(starts) - reservoirs, but=reservoirs)


def _surveys_of(judged, node):
    """The surveys of the region that a node is in: one, or none for a reservoir or a dead end."""
    return [survey for survey in judged.surveys
            if node not in judged.circuit.reservoirs
            and any(node in (way.tail, way.head) for way in survey.region.ways)]


def parking_brake(judged):
    """Does the pressure that releases a brake vanish with supply and signal?"""
    ledger, verdicts = Ledger("parking-brake"), []
    for brake in judged.circuit.components.values():
        use = brake.attributes.get("use")
        if brake.kind != "brake" or use == "service" or (use is None and not _by_spring(brake)):
            continue
        if not _by_spring(brake):
            verdicts.append(Verdict("parking-brake", "component", brake.path, "fail", "error"))
            continue
        node = judged.circuit.node[f"{brake.path}.Z"]
        surveys = _surveys_of(judged, node)
        for situation in judged.situations + judged.stopped_situations:
            if situation.survey in surveys and situation.state in ("lost-signal", "stopped"):
                fine = _by_spring(brake) and _let_go(judged, situation, brake, node)
                ledger.note("component", brake.path, situation,
                            Finding("pass") if fine else Finding("fail", "error"))
        if not surveys:
            fine = _by_spring(brake) and (node in judged.circuit.reservoirs or not _joined(judged, brake)
                                          or node not in judged.circuit.accumulators)
            verdicts.append(Verdict("parking-brake", "component", brake.path,
                                    *(("pass",) if fine else ("fail", "error"))))
    return list(ledger.verdicts()) + verdicts


def _joined(judged, brake):
    return f"{brake.path}.Z" in judged.circuit.joined


def _let_go(judged, situation, brake, node):
    """Does nothing keep the brake released?"""
    if node in situation.vented or not _joined(judged, brake):
        return True
    givers = judged.circuit.accumulators
    if situation.state == "lost-signal":
        givers = givers | set(delivered(situation)) | situation.on_a_side
    return node not in _reached(situation, givers)


def towing_bypass(judged):
    """Is there a way to move a vehicle with the prime mover off?"""
    circuit = judged.circuit
    ledger = Ledger("towing-bypass")
    for situation in judged.towing_situations:
        known = situation.known
        # What is meant for towing may lead the oil to a motor that no running state has in the loop.
        motors = sorted({*known.actuators, *situation.loop.actuators}) if known and situation.loop else []
        if any(load.get("vehicle", "no") == "yes" for motor in motors
               for load in circuit.loads.get(circuit.drive[motor], ())):
            fine = ((_turns_freely(situation) or _behind_clutches(circuit, motors))
                    and all(_released(judged, situation, brake)
                            for drive in sorted({circuit.drive[motor] for motor in motors})
                            for brake in _on_drive(circuit, "brake", drive) if _by_spring(brake)))
            ledger.note("loop", known.name, situation,
                        Finding("pass") if fine else Finding("fail", "warning"))
    return list(ledger.verdicts())


def _turns_freely(situation):
    """Do the two sides hang together?  Where the loop is not there, what its motors stand on counts."""
    loop = situation.loop
    if loop and loop.short:
        return True
    if loop:
        ends = [[side.nodes for side in loop.main_sides]]
    else:
        circuit = situation.region.circuit
        ends = [[{node} for node in circuit.displacement_nodes(motor)]
                for motor in situation.known.actuators]
    return all(len(each) > 1 and all(not other.isdisjoint(_reached(situation, start))
                                     for start in each for other in each) for each in ends)


def _behind_clutches(circuit, actuators):
    shafts = bare_shafts(circuit)
    clutched = {shafts.get(f"{part.path}.{end}") for part in circuit.components.values()
                if part.kind == "clutch" for end in ("in", "out")}
    return all(shafts.get(motor) is not None and shafts[motor] in clutched for motor in actuators)


def _released(judged, situation, brake):
    """By hand, or by a hand pump; its pipework may be a region of its own."""
    if brake.attributes.get("released-by-hand", "no") == "yes":
        return True
    circuit = judged.circuit
    node = circuit.node[f"{brake.path}.Z"]
    outlets = {circuit.node[f"{part.path}.P"] for part in circuit.components.values()
               if part.kind == "hand-pump"} - circuit.reservoirs
    surveys = _surveys_of(judged, node)
    if situation.survey in surveys or not surveys:
        return node in _reached(situation, outlets)
    return all(node in _reached(other, outlets) for other in judged.towing_situations
               if other.survey in surveys)
