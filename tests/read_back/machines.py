"""Pumps, motors, pump/motor units and hand pumps, with their case ports and controls."""

import outlines
import outlines_fittings as fittings
from outlines import Frame, frames, line, take, take_if, there
from shapes import NEAR, distance
from symbols import Port, Symbol, box_of, ports_of, slanted_arrow, spring, stubs

# What the triangles at the upper and the lower port make of a machine: its kind, its flow directions
# and whether it is a unit that does both (PM1). One of two flow directions is drawn as a pump (PM2).
TRIANGLES = {(("pump", "top"),): ("pump", 1, "no"), (("motor", "top"),): ("motor", 1, "no"),
             (("pump", "top"), ("pump", "bottom")): ("pump", 2, "no"),
             (("motor", "top"), ("motor", "bottom")): ("motor", 2, "no"),
             (("pump", "bottom"), ("motor", "top")): ("pump", 1, "yes")}


def machines(pool):
    for seed in [c for c in pool.circles if not c.filled and abs(c.radius - 3) < NEAR]:
        for frame in frames(seed.centre):
            found = tuple(key for key, part in outlines.MACHINE_TRIANGLES.items()
                          if there(pool, frame, [part]))
            if found in TRIANGLES and stubs(pool, frame, outlines.MACHINE_PORTS):
                yield _machine(pool, frame, found)
                break


def _machine(pool, frame, found):
    kind, directions, unit = TRIANGLES[found]
    take(pool, frame, outlines.MACHINE + [outlines.MACHINE_TRIANGLES[key] for key in found])
    symbol = Symbol(kind, box_of(frame, -3, -3, 3, 3),
                    {"flow-directions": str(directions), "unit": unit},
                    ports_of(frame, outlines.MACHINE_PORTS))
    if found == (("pump", "top"),) and _lever(pool, frame):
        symbol.kind = "hand-pump"
        return symbol
    for place, contact in outlines.MACHINE_DRAINS:
        if pool.has_line(frame.out(contact), frame.out(place), "dashed"):
            symbol.ports.append(Port("case", frame.out(place), frame.out(contact)))
    symbol.options["drain"] = "external" if len(symbol.ports) > 2 else "internal"
    upright = Frame(frame.origin)
    tail = slanted_arrow(pool, frame.origin, 2.12 + 0.75)
    symbol.options["variable"] = "yes" if tail else "no"
    symbol.options["control"] = _control(pool, upright, symbol) if tail else "none"
    return symbol


def _lever(pool, frame):
    a, b, c, d = frame.turn
    mirrored = Frame(frame.origin, (-a, -b, c, d))
    return take_if(pool, frame, fittings.HAND_LEVER) or take_if(pool, mirrored, fittings.HAND_LEVER)


def _control(pool, upright, symbol):
    """What is in the control's frame: triangles, springs, a diagonal stroke, a lever with its knob,
    or no frame. Adds its pilot ports."""
    wide = take_if(pool, upright, fittings.WIDE_FRAME)
    if not wide and not take_if(pool, upright, outlines.CONTROL_FRAME):
        return "none"
    pilots = fittings.WIDE_PILOTS if wide else [fittings.CONTROL_PILOT]
    symbol.ports += ports_of(upright, [
        (role, place, contact) for role, place, contact in pilots
        if pool.has_line(upright.out(place), upright.out(contact), "dashed")])
    if take_if(pool, upright, [outlines.triangle(outlines.CONTROL_TAIL, outlines.RIGHT, 1)]):
        return _by_pressure(pool, upright)
    if take_if(pool, upright, [line((-6, 2), (-3, 4))]) or take_if(pool, upright,
                                                                   [line((-6, 4), (-3, 2))]):
        return "electric"
    return _by_hand(pool, upright)


def _by_pressure(pool, upright):
    if spring(pool, upright, *fittings.COMPENSATOR_SPRING):
        return "pressure-compensated"
    if spring(pool, upright, *fittings.LOAD_SENSING_SPRING):
        return "load-sensing" if take_if(pool, upright, fittings.LOAD_SENSING) else "unknown"
    return "hydraulic"


def _by_hand(pool, upright):
    x0, y0, x1, y1 = box_of(upright, -7, 0.5, -2, 4)
    for knob in list(pool.circles):
        (x, y), is_knob = knob.centre, abs(knob.radius - 0.375) < NEAR
        if is_knob and x0 <= x <= x1 and y0 <= y <= y1:
            for stroke in pool.inside(x0, y0, x1, y1):
                if min(distance(stroke.p, knob.centre),
                       distance(stroke.q, knob.centre)) < 0.375 + NEAR:
                    pool.circles.discard(knob)
                    pool.drop(stroke)
                    return "manual"
    return "unknown"
