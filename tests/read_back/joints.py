"""Couplings, rotary joints, devices and thermostatic bypasses."""

import outlines_fittings as fittings
from outlines import Frame, frames, line, take, take_if, there
from shapes import NEAR, same
from symbols import Port, Symbol, box_of, ports_of, spring
from valve_boxes import boxes


def joints(pool, texts):
    yield from _thermostats(pool)
    yield from _couplings(pool)
    yield from _rotary_joints(pool)
    yield from _devices(pool, texts)


def _thermostats(pool):
    for centre in boxes(pool, 2):
        for frame in frames(centre):
            if take_if(pool, frame, fittings.THERMOSTAT):
                yield Symbol("thermostatic-bypass", box_of(frame, -5, -2, 4.5, 2), {
                    "spring": "yes" if spring(pool, frame, *fittings.THERMOSTAT_SPRING) else "no"},
                    ports_of(frame, fittings.THERMOSTAT_PORTS))
                break


def _half(pool, frame, joined):
    """The half of a coupling whose cup's edge is at the frame's origin, the line to the left: None,
    or (whether it has a check, its parts)."""
    reach = fittings.COUPLING_REACH - fittings.APART[joined]
    if not there(pool, frame, fittings.CUP):
        return None
    ball = fittings.BALLS[joined]
    checked = fittings.SEAT + [("circle", (ball, 0), fittings.BALL, False)]
    end = ball - fittings.BALL
    if there(pool, frame, checked + [line((-reach, 0), (end, 0))]):
        return True, fittings.CUP + checked, end
    if there(pool, frame, [line((-reach, 0), (-0.4, 0))]):
        return False, fittings.CUP, -0.4
    return None


def _couplings(pool):
    """Two halves about a middle, cup to cup."""
    edges = {}
    for segment in pool.segments:
        if abs(segment.length() - 0.4 * 2 ** 0.5) < NEAR:
            for p in (segment.p, segment.q):
                edges.setdefault((round(p[0], 1), round(p[1], 1)), p)
    for edge in sorted(edges.values()):
        symbol = _coupling(pool, edge)
        if symbol:
            yield symbol


def _coupling(pool, edge):
    for joined, apart in fittings.APART.items():
        for along in frames((0, 0))[::2]:
            a, b, c, d = along.turn
            rim = along.out((apart, 0.8))  # from the upper end of the left cup to the middle
            middle = (edge[0] + rim[0], edge[1] + rim[1])
            sides = [Frame(middle, (s * a, s * b, c, d)).moved((-apart, 0)) for s in (1, -1)]
            halves = [_half(pool, side, joined) for side in sides]
            if None in halves:
                continue
            for side, (_, parts, _) in zip(sides, halves):
                take(pool, side, parts)
            ports = [Port("end", side.out((fittings.APART[joined] - fittings.COUPLING_REACH, 0)),
                          side.out((end, 0))) for side, (_, _, end) in zip(sides, halves)]
            count = sum(checked for checked, _, _ in halves)
            return Symbol("quick-coupling", box_of(Frame(middle, along.turn), -2.3, -0.8, 2.3, 0.8),
                          {"joined": joined, "valves": ("none", "one", "both")[count]}, ports)
    return None


def _rotary_joints(pool):
    """Bars across lines that run through; the longest bars first, as shorter ones lie in them."""
    bars = [s for s in pool.segments if s.dash == "solid" and (s.horizontal() or s.vertical())
            and s.length() > 2 - NEAR and abs(s.length() / 2 - round(s.length() / 2)) < NEAR]
    for bar in sorted(bars, key=lambda s: -s.length()):
        ways, middle = round(bar.length() / 2), bar.at(bar.length() / 2)
        for frame in frames(middle)[::2]:
            frame = frame.moved((1, 0))
            outline = fittings.rotary_joint(ways)
            if there(pool, frame, outline):
                take(pool, frame, outline[:len(fittings.JOINT_BARS)])
                yield _rotary_joint(pool, frame, ways)
                break


def _rotary_joint(pool, frame, ways):
    ports = []
    for i, y in enumerate(range(1 - ways, ways, 2)):
        pool.take_line(frame.out((-0.5, y)), frame.out((0.5, y)))
        ports += ports_of(frame, [(f"way {i}", (s * fittings.JOINT_REACH, y), (s * 0.5, y))
                                  for s in (-1, 1)])
    return Symbol("rotary-joint", box_of(frame, -1, -ways, 1, ways), {"ways": ways}, ports)


def _devices(pool, texts):
    """Boxes of 4 by an even number, with nothing in them but a question mark."""
    sides = [s for s in pool.segments if s.dash == "solid" and s.horizontal()
             and s.length() > 2 - NEAR]
    done = []
    for top in sorted(sides, key=lambda s: (min(s.p, s.q), s.length())):
        x0, x1, y0 = *sorted((top.p[0], top.q[0])), top.p[1]
        for bottom in [s for s in sides if abs(min(s.p[0], s.q[0]) - x0) < NEAR
                       and abs(s.length() - top.length()) < NEAR and s.p[1] > y0 + 1]:
            symbol = _device(pool, (x0, y0, x1, bottom.p[1]), texts)
            if symbol and not any(same(symbol.centre(), d) for d in done):
                done.append(symbol.centre())
                yield symbol


def _device(pool, box, texts):
    x0, y0, x1, y1 = box
    width, height = x1 - x0, y1 - y0
    frame = Frame(((x0 + x1) / 2, (y0 + y1) / 2))
    sides = [line((x0, y0), (x1, y0)), line((x1, y0), (x1, y1)), line((x1, y1), (x0, y1)),
             line((x0, y1), (x0, y0))]
    if not there(pool, Frame((0, 0)), sides) or _inside(pool, box):
        return None
    for upright, across, along in ((True, width, height), (False, height, width)):
        rows = round(along / 2)
        if abs(across - 4) > NEAR or abs(along - 2 * rows) > NEAR:
            continue
        turned = frame if upright else Frame(frame.origin, (0, 1, -1, 0))
        ports = [Port("port", turned.out(place), turned.out(contact))
                 for place, contact in fittings.device_ports(rows)
                 if pool.has_line(turned.out(place), turned.out(contact), None)]
        if ports:
            take(pool, Frame((0, 0)), sides)
            return Symbol("device", box, {
                "inside": "unknown" if _question(texts, frame.origin) else "declared"}, ports)
    return None


def _inside(pool, box):
    """Whether anything is drawn in the box."""
    x0, y0, x1, y1 = box
    return any(x0 < x < x1 and y0 < y < y1 for x, y in (
        [s.at(s.length() / 2) for s in pool.inside(*box, near=0)]
        + [c.centre for c in pool.circles] + [p.corners[0] for p in pool.polygons]))


def _question(texts, place):
    return [t for t in texts if t.words == "?" and abs(t.centre()[0] - place[0]) < 0.6
            and abs(t.centre()[1] - place[1]) < 0.8]
