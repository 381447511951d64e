"""Cylinders and semi-rotary actuators."""

import outlines_fittings as fittings
from outlines import frames, take, take_if, there
from shapes import NEAR
from symbols import Symbol, box_of, ports_of, spring, stubs


def actuators(pool):
    yield from _cylinders(pool)
    for seed in list(pool.arcs):
        for frame in frames(seed.chord_middle()):
            if stubs(pool, frame, fittings.SEMI_ROTARY_PORTS) and \
                    take_if(pool, frame, fittings.SEMI_ROTARY):
                yield Symbol("semi-rotary-actuator", box_of(frame, -3, -3, 3, 3), {},
                             ports_of(frame, fittings.SEMI_ROTARY_PORTS))
                break


def _cylinders(pool):
    for side in [s for s in pool.segments if s.dash == "solid"
                 and abs(s.length() - fittings.CYLINDER_LENGTH) < NEAR]:
        for frame in (f for end in (side.p, side.q) for f in frames(end)):
            # That end of its box at which the piston stands tells how it is turned; a port at the
            # cap end on which side of its box its ports are.
            if there(pool, frame, fittings.CYLINDER) and \
                    stubs(pool, frame, fittings.CYLINDER_PORTS[:1]):
                yield _cylinder(pool, frame)
                break


def _cylinder(pool, frame):
    take(pool, frame, fittings.CYLINDER)
    ports = [p for p in fittings.CYLINDER_PORTS if stubs(pool, frame, [p])]
    two_rods = take_if(pool, frame, fittings.SECOND_ROD)
    slowed = [end for end, outline in fittings.CUSHIONS.items() if take_if(pool, frame, outline)]
    sprung = spring(pool, frame, *fittings.RETURN_SPRING, half=fittings.RETURN_SPRING_HALF)
    return Symbol("cylinder", box_of(frame, -2.5 if two_rods else 0, 0,
                                     fittings.CYLINDER_ROD_END, 3), {
        "action": "double" if len(ports) == 2 else "single", "rods": "2" if two_rods else "1",
        "cushion": {0: "none", 1: slowed[0] if slowed else "", 2: "both"}[len(slowed)],
        "spring-return": "yes" if sprung else "no"}, ports_of(frame, ports))
