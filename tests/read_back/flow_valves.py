"""Throttles, flow controls, rotary flow dividers and shuttle valves."""

import outlines
from outlines import Frame, frames, line, path, take, take_if, there
from pressure_valves import branch
from shapes import NEAR, distance, same
from symbols import Port, Symbol, box_of, ports_of, slanted_arrow


def valves(pool):
    yield from _throttles(pool)
    yield from _rotary_dividers(pool)
    for seed in [c for c in pool.circles if not c.filled and abs(c.radius - 0.5) < NEAR]:
        for frame in frames(seed.centre):
            # But for the line out of its long side it looks the same upside down.
            if there(pool, frame, outlines.SHUTTLE + [line((0, -1), (0, -2))]):
                take(pool, frame, outlines.SHUTTLE)
                yield Symbol("shuttle-valve", box_of(frame, -2, -1, 2, 1), {},
                             ports_of(frame, outlines.SHUTTLE_PORTS))
                break


def _throttles(pool):
    """Pairs of arcs: in a box, with a check beside them, or bare."""
    for seed in list(pool.arcs):
        if seed not in pool.arcs:
            continue
        for centre in ((seed.middle[0] + x, seed.middle[1] + y)
                       for x, y in ((0.25, 0), (-0.25, 0), (0, 0.25), (0, -0.25))):
            symbol = _throttle(pool, centre)
            if symbol:
                yield symbol
                break


def _throttle(pool, centre):
    for frame in frames(centre):
        if there(pool, frame, outlines.FLOW_CONTROL):
            take(pool, frame, outlines.FLOW_CONTROL)
            check, _ = branch(pool, frame, [outlines.FLOW_CHECK], outlines.FLOW_BRANCH)
            return _flow_symbol(pool, "flow-control", frame, check, 4, 2)
    for frame in frames(centre):
        if not there(pool, frame, outlines.THROTTLE):
            continue
        check, _ = branch(pool, frame, [outlines.FLOW_CHECK], outlines.FLOW_BRANCH)
        if check and take_if(pool, frame, outlines.THROTTLE + [line((0, -4), (0, 4))]):
            return _flow_symbol(pool, "throttle-check", frame, check, 4, 4)
    for frame in frames(centre):
        if take_if(pool, frame, outlines.THROTTLE + [line((0, -3), (0, 3))]):
            return _flow_symbol(pool, "throttle", frame, None, 3, 3)
    return None


def _flow_symbol(pool, kind, frame, check, reach, contact):
    ends = [("in", (0, -reach), (0, -contact)), ("out", (0, reach), (0, contact))]
    half = 2 if kind == "flow-control" else 1.5
    return Symbol(kind, box_of(frame, -half, -half, half, half), {
        "adjustable": "yes" if slanted_arrow(pool, frame.origin, 1.5) else "no",
        "check": check or "no"}, ports_of(frame, ends))


def _rotary_dividers(pool):
    """Circles on one shaft, each with a port above, all joined below."""
    legs = [c.centre for c in pool.circles if not c.filled and abs(c.radius - 2) < NEAR
            and there(pool, Frame(c.centre), outlines.ROTARY_LEG)]
    for first in sorted(legs):
        if any(same(leg, (first[0] - outlines.ROTARY_PITCH, first[1])) and
               there(pool, Frame(leg), outlines.ROTARY_SHAFT) for leg in legs):
            continue
        row = [first]
        while there(pool, Frame(row[-1]), outlines.ROTARY_SHAFT):
            row += [leg for leg in legs if distance(leg, (row[-1][0] + outlines.ROTARY_PITCH,
                                                          row[-1][1])) < NEAR][:1] or [None]
            if row[-1] is None:
                break
        yield from _rotary(pool, row)


def _rotary(pool, row):
    if len(row) < 2 or None in row:
        return
    frame = Frame(((row[0][0] + row[-1][0]) / 2, row[0][1]))
    half = (row[-1][0] - row[0][0]) / 2
    joint = [outlines.dot(0, 4)] + path((-half, 4), (half, 4))
    if not take_if(pool, frame, joint):
        return
    for leg in row:
        take(pool, Frame(leg), outlines.ROTARY_LEG)
    for leg in row[:-1]:
        take(pool, Frame(leg), outlines.ROTARY_SHAFT)
    ports = [Port("leg", (x, y - 4), (x, y - 2)) for x, y in row]
    ports.append(Port("common", frame.out((0, 6)), frame.out((0, 4))))
    yield Symbol("flow-divider", box_of(frame, -half - 2, -2, half + 2, 4), {"design": "rotary"},
                 ports)
