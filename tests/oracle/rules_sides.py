"""The rules intermediate-side and unequal-cylinder: is a line between motors fed and limited, and has
the difference in a cylinder's flow a way in and a way out?
"""

from fractions import Fraction

import kinds
from sure import SWITCHED, reliefs, senses, sure_ways
from verdict import Finding, Ledger
from ways import reach

#: Units of displacement in cm3 a turn (inch 2.54 cm, gallon 231 in3), and in cm3 a radian.
A_TURN = {"cm3/rev": Fraction(1), "cc/rev": Fraction(1), "mL/rev": Fraction(1),
          "L/rev": Fraction(1000), "m3/rev": Fraction(10**6), "in3/rev": Fraction("16.387064"),
          "gal/rev": 231 * Fraction("16.387064")}
A_RADIAN = {"cm3/rad": Fraction(1), "in3/rad": Fraction("16.387064"), "m3/rad": Fraction(10**6)}


def intermediate_side(judged):
    """Is every line between motors in series fed and limited?"""
    ledger = Ledger("intermediate-side")
    for situation in judged.moving_loop_situations:
        for side in situation.loop.sides:
            if side.role == "intermediate":
                fine = (not side.nodes.isdisjoint(judged.charge(situation).fed())
                        and _limited(situation, side))
                level = "warning" if _alike(situation, side) else "error"
                ledger.note("side", side.name, situation,
                            Finding("pass") if fine else Finding("fail", level))
    return list(ledger.verdicts())


def _limited(situation, side):
    inlets = reach(sure_ways(situation), side.nodes, but=situation.on_a_side - side.nodes)
    return any(tail in inlets and head not in side.nodes for tail, head in reliefs(situation))


def _alike(situation, side):
    """Do the actuators take the same oil a turn, each with a shaft of its own (as wheels)?"""
    circuit = situation.region.circuit
    on_it = [part for part in circuit.components.values() if part.plays == "actuator"
             and any(circuit.node[port] in side.nodes for port in part.working)]
    sizes = {_displacement(part.attributes.get("displacement")) for part in on_it}
    drives = {circuit.drive[part.path] for part in on_it}
    return len(sizes) == 1 and None not in sizes and len(drives) == len(on_it) > 1


def _displacement(text):
    if text is None:
        return None
    number, unit = text.split()
    if unit in A_RADIAN:
        return "a radian", Fraction(number) * A_RADIAN[unit]
    return "a turn", Fraction(number) * A_TURN[unit]


def unequal_cylinder(judged):
    """Is each side that a cylinder of unequal areas leaves low fed, and can oil get out of it?"""
    ledger = Ledger("unequal-cylinder")
    for situation in judged.moving_loop_situations:
        for path in situation.loop.actuators:
            part = situation.region.circuit.components[path]
            if part.kind == "cylinder":
                ledger.note("component", path, situation, _exchanges(judged, situation, part))
    return list(ledger.verdicts())


def _exchanges(judged, situation, cylinder):
    if kinds.equal_areas(cylinder.attributes):
        return Finding("not-applicable")
    charge = judged.charge(situation)
    fed = charge.fed()
    fine = all(not side.nodes.isdisjoint(fed) and _has_an_exit(charge, side)
               for side in situation.loop.main_sides if situation.is_low_or_neutral(side))
    return Finding("pass") if fine else Finding("fail", "error")


def _has_an_exit(charge, side):
    """Does oil get off the side past neither check nor relief, and on to where it is taken?"""
    situation = charge.situation
    own = {way.number for way in situation.loop.passages}
    walls = frozenset().union(*(other.nodes for other in situation.loop.sides))
    ways = [way for way in situation.open_ways if way.number not in own
            and way.kind not in (kinds.LEAKAGE, kinds.DISPLACEMENT)]
    first = [way for way in ways
             if way.kind in SWITCHED | {kinds.METERING, kinds.LEG, kinds.REDUCED, kinds.ELEMENT}]
    off = {head for way in first for tail, head in senses(way) if tail in side.nodes} - walls
    return not reach(ways, off, but=walls).isdisjoint(charge.line() | situation.region.reservoirs)
