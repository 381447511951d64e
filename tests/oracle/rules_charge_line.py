"""The rules charge-vented, charge-pump-inlet, charge-pump-drive, charge-relief, charge-backflow and
make-up-path: what stands between a charge pump and the checks of the loop.

A candidate is a pump that may be meant as the loop's charge pump (`more.candidates`), a source one that
does deliver charge oil (`rules_charge.Charge`).
"""

import kinds
import more
from rules_charge import FEED
from ways import PLAIN, reach
from verdict import Finding, Ledger

SENSING = ("pressure-switch", "sensor")
#: A hand valve's attributes that say that a switch reports where it stands.
REPORTING = ("position-switch", "switched")


def _decided(fine, level="error"):
    """Pass, or fail with a level."""
    return Finding("pass") if fine else Finding("fail", level)


def charge_vented(judged):
    """Is the line of every charge pump that is turned open to a reservoir, holding no pressure?"""
    ledger = Ledger("charge-vented")
    for situation in judged.loop_situations:
        if situation.loop and not situation.loop.short:
            ledger.note("loop", situation.known.name, situation, _vented(situation))
    return list(ledger.verdicts())


def _vented(situation):
    """One line that holds its pressure is enough."""
    turned = [outlet for pump, outlet in more.candidates(situation)
              if pump in situation.region.circuit.turned]
    if not turned:
        return Finding("not-applicable")
    return _decided(any((more.line_of(situation, outlet) | {outlet}).isdisjoint(situation.vented)
                        for outlet in turned))


def charge_pump_inlet(judged):
    """Does the charge pump draw from a reservoir through nothing that can close or clog unseen?"""
    ledger = Ledger("charge-pump-inlet")
    meant = {}  # loop -> pumps that are a candidate in any of its situations
    for situation in judged.loop_situations:
        meant.setdefault(situation.known.name, set()).update(
            pump for pump, _ in more.candidates(situation))
    for situation in judged.loop_situations:
        for pump in situation.region.in_order(meant[situation.known.name]):
            both = more.ends(situation, pump)
            if both:
                ledger.note("component", pump, situation, _drawing(situation, both[0]))
    return more.in_order(judged, ledger.verdicts())


def _drawing(situation, inlet):
    """What the ways from the reservoirs to a pump's inlet are worth."""
    reservoirs, ways = situation.region.reservoirs, more.feed_ways(situation)
    if reservoirs.isdisjoint(reach(ways, [inlet], backwards=True)):
        return Finding("fail", "error")
    components = situation.region.circuit.components
    seen = [way for way in ways if not _starves(way, components[way.owner])]
    return _decided(not reservoirs.isdisjoint(reach(seen, [inlet], backwards=True)), "warning")


def _starves(way, part):
    """Can it be shut, or clog, with nobody knowing?"""
    if way.kind == kinds.HAND:
        return not way.passage.locked and not any(
            part.attributes.get(name, "no") == "yes" for name in REPORTING)
    return (part.kind in ("filter", "strainer") and way.kind == kinds.ELEMENT
            and "bypass" not in part.attributes
            and part.attributes.get("clogging-indicator", "none") == "none")


def charge_pump_drive(judged):
    """Does what turns the loop's pumps turn a charge pump too, or is loss of its pressure sensed?"""
    ledger = Ledger("charge-pump-drive")
    for situation in judged.loop_situations:
        ledger.note("loop", situation.known.name, situation, _driven(situation))
    return list(ledger.verdicts())


def _driven(situation):
    """One candidate is enough, and so is one switch on the line of any."""
    pumps = more.candidates(situation)
    if not pumps:
        return Finding("not-applicable")
    drive = situation.region.circuit.drive
    return _decided(
        any(more.delivers(situation, pump)
            and all(drive[pump] == drive[other] for other in situation.known.pumps)
            for pump, _ in pumps)
        or any(_sensed(situation, more.line_of(situation, outlet)) for _, outlet in pumps))


def _sensed(situation, line):
    """Does an interlock look at what is measured on a charge line?"""
    circuit = situation.region.circuit
    return any(circuit.components[path].kind in SENSING and circuit.node[f"{path}.P"] in line
               for path in more.drawn(circuit).watched if path in circuit.components)


def charge_relief(judged):
    """Is every charge line limited by a relief that cannot be isolated, with a free outlet?"""
    ledger = Ledger("charge-relief")
    for situation in judged.loop_situations:
        sources = more.feeding(judged, situation)
        finding = Finding("not-applicable") if not sources else _decided(
            all(_limited(situation, outlet) for outlet in sources))
        ledger.note("loop", situation.known.name, situation, finding)
    return list(ledger.verdicts())


def _limited(situation, outlet):
    """Is a relief met whose outlet gets to a reservoir?"""
    if outlet in situation.on_a_side:
        return False
    reservoirs = situation.region.reservoirs
    sure = [way for way in situation.open_ways if more.is_sure(way)]
    onward = sure + [way for way in situation.open_ways
                     if way.kind in (kinds.METERING, kinds.PRESSURE_OPENED)]
    inlets = reach([way for way in sure if not _clogs(situation, way)], [outlet], but=reservoirs)
    return any(way.kind == kinds.PRESSURE_OPENED and way.tail in inlets and way.head != way.tail
               and not reservoirs.isdisjoint(reach(onward, [way.head]))
               for way in situation.open_ways)


def _clogs(situation, way):
    """A filter without bypass: what lies behind it is cut off when it clogs."""
    part = situation.region.circuit.components[way.owner]
    return part.kind == "filter" and "bypass" not in part.attributes


def charge_backflow(judged):
    """Can a side's pressure get to the charge line other than through a relief?"""
    ledger = Ledger("charge-backflow")
    for situation in judged.loop_situations:
        sides = (situation.loop.main_sides if situation.loop else []) + situation.sections
        for side in sides:
            ledger.note("side", side.name, situation, _held_back(judged.charge(situation), side))
    return list(ledger.verdicts())


def _held_back(charge, side):
    """Nothing open leads out of the side to charge oil; what throttles or limits does not count."""
    if not charge.outlets:
        return Finding("not-applicable")
    situation = charge.situation
    own = {way.number for way in situation.loop.passages} if situation.loop else ()
    ways = [way for way in situation.open_ways if way.kind in PLAIN and way.number not in own]
    reached = reach(ways, side.nodes, but=situation.region.reservoirs)
    return _decided(reached.isdisjoint(charge.line() | set(charge.outlets)))


def make_up_path(judged):
    """Is the way from the charge line to each check free of anything that can close?"""
    ledger = Ledger("make-up-path")
    for situation in judged.loop_situations:
        checks = _make_up_checks(situation)
        outlets = judged.charge(situation).outlets
        if not checks or not outlets:
            continue
        might = more.flows(situation, _with_all_open(situation), outlets)
        does = more.flows(situation, [way for way in situation.open_ways if more.is_sure(way)
                                      or way.kind in (kinds.METERING, kinds.REDUCED)], outlets)
        for way in checks:
            if way.tail in might:
                ledger.note("component", way.owner, situation, _decided(way.tail in does))
    return more.in_order(judged, ledger.verdicts())


def _make_up_checks(situation):
    """Ways of check valves that end on a side and are no part of a loop."""
    components, fed = situation.region.circuit.components, more.to_be_fed(situation)
    own = {way.number for loop, _ in situation.loops for way in loop.ways}
    return [way for way in situation.region.ways
            if components[way.owner].kind == "check-valve" and way.kind == kinds.ONE_WAY
            and way.head in fed and way.head != way.tail and way.number not in own]


def _with_all_open(situation):
    """Ways of a feed, with everything that a hand or a position opens."""
    return [way for way in situation.region.ways if way.kind in FEED and way.tail != way.head
            and (way.kind == kinds.HAND or way.passage.position is not None
                 or situation.standing.open(way))]


RULES = {
    "charge-vented": charge_vented,
    "charge-pump-inlet": charge_pump_inlet,
    "charge-pump-drive": charge_pump_drive,
    "charge-relief": charge_relief,
    "charge-backflow": charge_backflow,
    "make-up-path": make_up_path,
}
