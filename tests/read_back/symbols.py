"""Bodies on shafts, conditioners and single valves: finds them by their outlines and reads their
options."""

import dataclasses

import outlines
import outlines_fittings as fittings
from outlines import Frame, frames, line, path, take, take_if, there
from shapes import NEAR, distance, same


@dataclasses.dataclass(eq=False)
class Port:
    """`role` is what the shape says of it, `place` its grid point, `contact` where a line meets
    the body."""
    role: str
    place: tuple
    contact: tuple
    letter: str = ""


@dataclasses.dataclass(eq=False)
class Symbol:
    kind: str
    box: tuple
    options: dict = dataclasses.field(default_factory=dict)
    ports: list = dataclasses.field(default_factory=list)
    label: str = ""

    def centre(self):
        return ((self.box[0] + self.box[2]) / 2, (self.box[1] + self.box[3]) / 2)


def box_of(frame, x0, y0, x1, y1):
    p, q = frame.out((x0, y0)), frame.out((x1, y1))
    return (min(p[0], q[0]), min(p[1], q[1]), max(p[0], q[0]), max(p[1], q[1]))


def ports_of(frame, ports):
    return [Port(role, frame.out(place), frame.out(contact)) for role, place, contact in ports]


def stubs(pool, frame, ports):
    """Whether a line leads from the body to the place of each port."""
    return all(pool.has_line(frame.out(place), frame.out(contact)) for _, place, contact in ports)


def spring(pool, frame, p, q, half=0.5):
    """Takes a zigzag from p to q (places of the frame): at least four strokes across the axis, to
    both sides of it no farther than `half`."""
    a, b = frame.out(p), frame.out(q)
    found = [s for s in pool.inside(min(a[0], b[0]) - half - 0.05, min(a[1], b[1]) - half - 0.05,
                                    max(a[0], b[0]) + half + 0.05, max(a[1], b[1]) + half + 0.05)
             if not s.horizontal() and not s.vertical() and s.length() < 2 * half + 0.3]
    chain, here = [], a
    while not same(here, b):
        step = [s for s in found if s.ends_at(here) and s not in chain]
        if len(step) != 1:
            return False
        chain.append(step[0])
        here = step[0].other(here)
    if len(chain) < 4:
        return False
    for segment in chain:
        pool.drop(segment)
    return True


def slanted_arrow(pool, centre, reach):
    """Takes the arrow of what can be set: at 45 degrees from lower left to upper right of the
    sheet, crossing the place `centre`, at least `reach` long to both sides. None or its tail."""
    for segment in list(pool.inside(centre[0] - 6, centre[1] - 6, centre[0] + 6, centre[1] + 6)):
        tail, tip = sorted((segment.p, segment.q))
        rise = (tip[0] - tail[0]) + (tip[1] - tail[1])
        if segment.dash == "solid" and abs(rise) < 0.2 and tip[1] < tail[1]:
            off, along = segment.off(centre)
            if off < 0.4 and reach <= along <= segment.length() - reach:
                head = pool.head(tip, tail)
                if head:
                    pool.polygons.discard(head)
                    pool.drop(segment)
                    return tail
    return None


def bodies(pool, texts):
    """Engines, loads and gearboxes: boxes with a word in their middle; electric motors: circles."""
    for circle in [c for c in pool.circles if not c.filled and abs(c.radius - 3) < NEAR]:
        if any(t.words == "M" and distance(t.centre(), circle.centre) < 0.6 for t in texts):
            frame = Frame(circle.centre)
            take(pool, frame, outlines.ELECTRIC_MOTOR)
            yield Symbol("electric-motor", box_of(frame, -3, -3, 3, 3))
    for kind, word, outline, half in (("engine", "M", outlines.ENGINE, 3),
                                      ("load", "load", outlines.LOAD, 2),
                                      ("gearbox", "i", outlines.GEARBOX, 2)):
        for text in [t for t in texts if t.words.partition(" ")[0] == word]:
            x, y = text.centre()
            for corner in {s.p for s in pool.inside(x - half - 1, y - half - 1, x + half + 1,
                                                    y + half + 1)}:
                frame = Frame((corner[0] + half, corner[1] + half))
                if abs(frame.origin[0] - x) < 0.6 and abs(frame.origin[1] - y) < 0.6 and \
                        take_if(pool, frame, outline):
                    symbol = Symbol(kind, box_of(frame, -half, -half, half, half))
                    if kind == "gearbox":
                        symbol.options["in"] = _marked_end(frame.origin, texts)
                    yield symbol
                    break


def _marked_end(origin, texts):
    """The side of a gearbox at which "in" stands, inside its lower edge."""
    for text in [t for t in texts if t.words == "in"]:
        x, y = text.centre()
        if 0.5 < abs(x - origin[0]) < 2 and 0.5 < y - origin[1] < 2:
            return "left" if x < origin[0] else "right"
    return "none"


def on_shafts(pool):
    """Brakes and clutches, by their bars across a shaft."""
    for bar in list(pool.segments):
        if bar not in pool.segments or not bar.vertical() or bar.dash != "solid":
            continue
        x, (y0, y1) = bar.p[0], sorted((bar.p[1], bar.q[1]))
        for mirror in (1, -1):  # the bar is one of two, its mate to the right or to the left
            found = None
            if abs(y1 - y0 - 1) < NEAR:
                axis = (x + 0.25 * mirror, y0 + 1.5)
                found = _brake(pool, Frame(axis)) or _brake(pool, Frame(axis, (-1, 0, 0, 1)))
            elif abs(y1 - y0 - 2) < NEAR:
                found = _clutch(pool, (x, y0 + 1), mirror)
            if found:
                yield found
                break


def _brake(pool, frame):
    if not there(pool, frame, outlines.BRAKE):
        return None
    def has(applied):
        [(_, place, contact)] = outlines.BRAKE_PORTS[applied]
        return pool.has_line(frame.out(contact), frame.out(place))
    if has("spring") and there(pool, frame, outlines.BRAKE_ON) and \
            spring(pool, frame, *outlines.BRAKE_SPRING):
        applied, more = "spring", outlines.BRAKE_ON
    elif has("pressure") and there(pool, frame, outlines.BRAKE_OFF):
        applied, more = "pressure", outlines.BRAKE_OFF
    else:
        return None
    take(pool, frame, outlines.BRAKE + more)
    return Symbol("brake", box_of(frame, -2, -1.5, 2, 4.5), {"applied": applied},
                  ports_of(frame, outlines.BRAKE_PORTS[applied]))


def _clutch(pool, bar, mirror):
    for engaged, outline in outlines.CLUTCH.items():
        frame = Frame((bar[0] + mirror * (0.25 if engaged == "yes" else 0.75), bar[1]))
        if take_if(pool, frame, outline):
            symbol = Symbol("clutch", box_of(frame, -2, -1, 2, 1),
                            {"engaged": engaged, "actuation": "manual"})
            for side in (frame, Frame(frame.origin, (1, 0, 0, -1))):
                _worked_clutch(pool, side, symbol)
            return symbol
    return None


def _worked_clutch(pool, frame, symbol):
    """The frame that works a clutch, linked to both its bars."""
    half = 0.25 if symbol.options["engaged"] == "yes" else 0.75
    if not take_if(pool, frame, fittings.CLUTCH_FRAME + [line((-half, 1), (half, 1))]):
        return
    found = [word for word, outline in fittings.CLUTCH_FRAMES.items()
             if take_if(pool, frame, outline)]
    symbol.options["actuation"] = " and ".join(found) or "unknown"
    symbol.ports += ports_of(frame, [
        (role, place, contact) for role, place, contact in fittings.CLUTCH_PORTS
        if pool.has_line(frame.out(place), frame.out(contact), "dashed")])


def check_at(pool, frame, sprung):
    """Takes a check whose ball is at the frame's origin. None, or where its outlet begins."""
    if not there(pool, frame, outlines.CHECK):
        return None
    ball, end = outlines.CHECK_BALL, outlines.CHECK_SPRING
    if sprung and not spring(pool, frame, ball, end):
        return None
    take(pool, frame, outlines.CHECK)
    return end if sprung else ball


def any_check_at(pool, frame):
    """Takes a check whose ball is at the frame's origin, with spring ("yes") or without ("no").
    None, or that and where its outlet begins."""
    for sprung in ("yes", "no"):
        outlet = check_at(pool, frame, sprung == "yes")
        if outlet:
            return sprung, outlet
    return None


def checks(pool):
    for seed in [c for c in pool.circles if not c.filled and abs(c.radius - 0.5) < NEAR]:
        for frame in frames(seed.centre)[::2]:
            found = any_check_at(pool, frame)
            if found:
                sprung, outlet = found
                place_in, place_out = outlines.CHECK_PORTS
                symbol = Symbol("check-valve", box_of(frame, -0.9, -1.5 if sprung == "yes" else
                                                      -0.5, 0.9, 0.71),
                                {"spring": sprung, "pilot": "none"},
                                ports_of(frame, [("in", place_in, outlines.CHECK_IN),
                                                 ("out", place_out, outlet)]))
                _check_pilot(pool, seed.centre, frame, symbol)
                yield symbol
                break


def _check_pilot(pool, centre, frame, symbol):
    """The pilot comes in on either side of the check."""
    a, b, c, d = frame.turn
    for side in (frame, Frame(centre, (-a, -b, c, d))):
        for acts, (role, place, contact) in outlines.CHECK_PILOTS.items():
            if pool.has_line(side.out(place), side.out(contact), "dashed"):
                symbol.options["pilot"] = acts
                symbol.ports += ports_of(side, [(role, place, contact)])


CONDITIONERS = {"filter": outlines.FILTER, "cooler": outlines.COOLER,
                "heater": outlines.DIAMOND + fittings.HEATER_TRIANGLES}


def conditioners(pool):
    """Filters, coolers and heaters, with one-way check, bypass and clogging indicator."""
    seeds = {s.p for s in pool.segments} | {s.q for s in pool.segments}
    for seed in sorted(seeds):
        frame = Frame((seed[0] + outlines.CORNER, seed[1]))
        if not there(pool, frame, outlines.DIAMOND):
            continue
        best = None
        for turned in frames(frame.origin):
            for kind, outline in CONDITIONERS.items():
                if there(pool, turned, outline) and pool.has_line(turned.out((-4, 0)),
                                                                  turned.out((-2.83, 0))):
                    score = _features(pool, turned)
                    if best is None or sum(score) > best[0]:
                        best = (sum(score), kind, turned, outline, score)
        if best:
            yield _conditioner(pool, *best[1:])


def _rise(pool, frame):
    """Height at which a bypass runs above the element, and whether it opens along the frame's x."""
    for ball in pool.circles:
        x, y = frame.into(ball.centre)
        if abs(ball.radius - 0.5) < NEAR and not ball.filled and -5 <= y <= -3.9 and abs(x) <= 2:
            return ball, y
    return None, None


def _turned(frame, place):
    """A check's frame whose free flow runs along the frame's x."""
    a, b, c, d = frame.turn
    return Frame(frame.out(place), (c, d, -a, -b))


def _features(pool, frame):
    one_way = there(pool, _turned(frame, (4.6, 0)), outlines.CHECK) and \
        there(pool, frame, [line((outlines.CORNER, 0), (3.89, 0))])
    ball, y = _rise(pool, frame)
    bypass = ball is not None and there(pool, _turned(frame, (frame.into(ball.centre)[0], y)),
                                        outlines.CHECK)
    return one_way, bypass, there(pool, frame, outlines.TAPS)


def _conditioner(pool, kind, frame, outline, features):
    one_way, bypass, taps = features
    take(pool, frame, outline)
    options, start, end = {}, -outlines.CORNER, outlines.CORNER
    if one_way:
        check_at(pool, _turned(frame, (4.6, 0)), False)
        take(pool, frame, [line((outlines.CORNER, 0), (3.89, 0))])
        end = 5.1
    if taps:
        take(pool, frame, outlines.TAPS)
    right = 6 if one_way else 4
    top = -outlines.CORNER
    if bypass:
        ball, y = _rise(pool, frame)
        x = frame.into(ball.centre)[0]
        outlet = check_at(pool, _turned(frame, (x, y)), True)
        way = ([outlines.dot(-4, 0), outlines.dot(right, 0)]
               + path((-4, 0), (-4, y), (x - 0.71, y)) + path((x + 1.5, y), (right, y), (right, 0)))
        bypass = bool(outlet) and take_if(pool, frame, way)
        top = y - 0.9
    options["bypass"] = "yes" if bypass else "no"
    if kind == "filter":
        options["one-way"] = "yes" if one_way else "no"
        options["clogging-indicator"] = _indicator(pool, frame) if taps else "none"
    far = 1 if bypass else 0
    roles = ("in", "out") if one_way or bypass else ("first", "second")
    ports = ports_of(frame, [(roles[0], (-4 - far, 0), (start, 0)),
                             (roles[1], (right + far, 0), (end, 0))])
    return Symbol(kind, box_of(frame, -4, top, right, 5 if taps else outlines.CORNER), options,
                  ports)


def _indicator(pool, frame):
    if take_if(pool, frame, outlines.VISUAL):
        pointer = [s for s in pool.inside(*box_of(frame, -1, 3, 1, 5)) if not s.horizontal()
                   and not s.vertical()]
        heads = [p for p in pool.polygons if len(p.corners) == 3 and any(
            s.ends_at(p.corners[0]) and distance(p.corners[0],
                                                 frame.out((0, 4))) < 1 for s in pointer)]
        for segment in pointer:
            pool.drop(segment)
        pool.polygons -= set(heads)
        return "visual" if len(pointer) == len(heads) == 1 else "unknown"
    if take_if(pool, frame, outlines.ELECTRICAL):
        # The contact: two stubs on one axis and the tongue between them, standing off the second.
        contact = pool.inside(*box_of(frame, -1, 3, 1, 5))
        for segment in contact:
            pool.drop(segment)
        slanted = [s for s in contact if not s.horizontal() and not s.vertical()]
        return "electrical" if len(contact) == 3 and len(slanted) == 1 else "unknown"
    return "unknown"


def shut_offs(pool):
    """Hand valves: two triangles that meet in a point, filled where the valve stands closed."""
    seeds = {p for s in pool.segments for p in (s.p, s.q)} | {c for t in pool.polygons
                                                              for c in t.corners}
    taken = []
    for seed in sorted(seeds):
        for frame in frames(seed)[::2][:2]:
            halves = [[frame.out(c) for c in half] for half in outlines.SHUT_OFF_HALVES]
            drawn = [line(half[i], half[(i + 1) % 3]) for half in halves for i in range(3)]
            filled = [pool.polygon(half) for half in halves]
            if any(same(seed, t) for t in taken) or not (all(filled)
                                                         or there(pool, Frame((0, 0)), drawn)):
                continue
            taken.append(seed)
            take(pool, Frame((0, 0)), drawn)
            pool.polygons -= set(filled)
            yield Symbol("shut-off-valve", box_of(frame, -1, -1.5, 1, 1.5),
                         {"position": "closed" if all(filled) else "open"},
                         ports_of(frame, outlines.SHUT_OFF_PORTS))


def orifices(pool):
    for seed in sorted({p for s in pool.segments for p in (s.p, s.q)}):
        for frame in frames((seed[0], seed[1]))[::2][:2]:
            frame = frame.moved((-0.2, 0))
            if there(pool, frame, outlines.ORIFICE + [line((0, -2), (0, 2))]):
                take(pool, frame, outlines.ORIFICE + [line((0, -2), (0, 2))])
                yield Symbol("orifice", box_of(frame, -1, -0.75, 1, 0.75), {},
                             ports_of(frame, outlines.ORIFICE_PORTS))
                break
