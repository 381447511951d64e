"""The rules charge-pump-inlet, charge-pump-drive, charge-relief and make-up-path: does the charge oil
come from a reservoir, does it come whenever the loop's pump turns, is it limited, and does it get to the
checks?

A candidate is a pump that may be meant as the loop's charge pump (`meant.candidates`), a source one
that does deliver charge oil (`rules_charge.Charge`).
"""

import kinds
import meant
from sure import CARRIES, ONWARD, is_free, is_mesh, is_sure, reliefs, senses, sure_and
from turning import delivers
from verdict import Finding, Ledger
from ways import reach


def _decided(fine):
    return Finding("pass") if fine else Finding("fail", "error")


def _sound(judged):
    """The situations of a loop that is there and not short-circuited."""
    return [situation for situation in judged.loop_situations
            if situation.loop and not situation.loop.short]


def charge_pump_inlet(judged):
    """Does the charge pump draw from a reservoir through nothing that can shut or clog unseen?"""
    ledger = Ledger("charge-pump-inlet")
    for situation in _sound(judged):
        for pump, _ in judged.candidates(situation):
            inlet, _ = meant.ends(situation, pump)
            ledger.note("component", pump, situation, _draws(situation, inlet))
    return list(ledger.verdicts())


def _draws(situation, inlet):
    ways = [way for way in situation.open_ways if way.kind in CARRIES | {kinds.BYPASS}]
    kept = [way for way in ways if not _unseen(situation, way)]
    if situation.region.reservoirs.isdisjoint(reach(ways, [inlet], backwards=True)):
        return Finding("fail", "error")
    if situation.region.reservoirs.isdisjoint(reach(kept, [inlet], backwards=True)):
        return Finding("fail", "warning")
    return Finding("pass")


def _unseen(situation, way):
    """Can somebody shut it, or dirt clog it, and nobody notice?"""
    attributes = situation.region.circuit.components[way.owner].attributes
    if way.kind == kinds.HAND:
        return "yes" not in (attributes.get("locked"), attributes.get("switched"))
    return is_mesh(situation, way) and "bypass" not in attributes and attributes.get(
        "clogging-indicator", "none") == "none"


def charge_pump_drive(judged):
    """Does what turns the loop's pumps turn the charge pump, or is the loss of its pressure sensed?"""
    ledger = Ledger("charge-pump-drive")
    for situation in _sound(judged):
        pumps = judged.candidates(situation)
        if pumps:
            fine = any(_driven_with(situation, pump) or _sensed(situation, outlet)
                       for pump, outlet in pumps)
            ledger.note("loop", situation.known.name, situation, _decided(fine))
        else:
            ledger.note("loop", situation.known.name, situation, Finding("not-applicable"))
    return list(ledger.verdicts())


def _driven_with(situation, pump):
    drive = situation.region.circuit.drive
    return delivers(situation, pump) and all(drive[other] == drive[pump] for other in situation.loop.pumps)


def _sensed(situation, outlet):
    """Does an interlock watch the pressure of the line at a pump's outlet?"""
    circuit = situation.region.circuit
    line = meant.line_of(situation, outlet) | {outlet}
    watched = [circuit.components.get(words[0]) for words, _ in circuit.interlocks
               if words[1:2] in (["below"], ["above"])]
    return any(part and _feels_pressure(part) and circuit.node[f"{part.path}.P"] in line
               for part in watched)


def _feels_pressure(part):
    return part.kind == "pressure-switch" or (
        part.kind == "sensor" and part.attributes.get("measures", "pressure") == "pressure")


def charge_relief(judged):
    """Is the line of every source limited by a relief that neither a hand nor dirt cuts off?"""
    ledger = Ledger("charge-relief")
    for situation in _sound(judged):
        main = set().union(*(side.nodes for side in situation.loop.main_sides))
        sources = {outlet for outlet in judged.charge(situation).pumped if not main.isdisjoint(
            meant.flows(situation, meant.feed_ways(situation), [outlet], situation.pressureless))}
        finding = (_decided(all(_limited(situation, outlet) for outlet in sources)) if sources
                   else Finding("not-applicable"))
        ledger.note("loop", situation.known.name, situation, finding)
    return list(ledger.verdicts())


def _limited(situation, outlet):
    reservoirs, sides = situation.region.reservoirs, situation.on_a_side
    if outlet in reservoirs | sides:
        return False
    ways = [way for way in situation.open_ways if is_sure(way) and is_free(situation, way)]
    inlets = reach(ways, [outlet], but=reservoirs | sides)
    ways = sure_and(situation, ONWARD - {kinds.REDUCED} | {kinds.PRESSURE_OPENED, kinds.BYPASS})
    return any(head in reservoirs or not reservoirs.isdisjoint(reach(ways, [head], but=sides))
               for tail, head in reliefs(situation) if tail in inlets and head not in sides)


def make_up_path(judged):
    """Can nothing shut the way from the charge line to a make-up check?

    Every one-way passage that leads into the loop, whatever opens or shuts it, is asked about for
    itself, and the worst of a component's decides.
    """
    ledger = Ledger("make-up-path")
    for situation in judged.loop_situations:
        starts = set(judged.charge(situation).at_lines)
        walls = situation.region.reservoirs | situation.on_a_side
        past = _past_actuators(situation)
        wide = [way for way in situation.region.ways if way.kind in CARRIES]
        could = reach(wide + past, starts, but=walls)
        does = reach(sure_and(situation, ONWARD) + past, starts, but=walls)
        fed = meant.to_be_fed(situation)
        for way in situation.region.ways:
            for tail, head in senses(way) if way.kind == kinds.ONE_WAY else ():
                if tail in could and head in fed:
                    ledger.note("component", way.owner, situation,
                                _decided(situation.standing.open(way) and tail in does))
    return list(ledger.verdicts())


def _past_actuators(situation):
    """Reliefs round an actuator outside all loops: they let a feed through ("Passages")."""
    ends = set(meant.round_actuators(situation))
    return [way for way in situation.open_ways if (way.tail, way.head) in ends
            and way.kind in (kinds.PRESSURE_OPENED, kinds.BYPASS)]
