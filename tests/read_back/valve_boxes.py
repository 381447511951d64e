"""Rows of position boxes: directional and flushing valves, and dividers (what each box joins)."""

import dataclasses

import outlines
from outlines import Frame, line, take, take_if, there
from shapes import NEAR, Segment, same
from symbols import Port, Symbol, box_of, spring


@dataclasses.dataclass
class Position:
    """What a box joins: (set of places, places with an arrow head, count of throttles); blocked
    places."""
    groups: list = dataclasses.field(default_factory=list)
    blocked: set = dataclasses.field(default_factory=set)
    odd: int = 0  # shapes in the box that mean nothing


def boxes(pool, half):
    """Centres of all position boxes of a half width that are drawn upright."""
    found = []
    for corner in sorted({p for s in pool.segments if s.horizontal() for p in (s.p, s.q)}):
        centre = (corner[0] + half, corner[1] + 2)
        if not any(same(centre, f) for f in found) and there(pool, Frame(centre),
                                                             outlines.POSITIONS[half]):
            # A wide box has no path from top to bottom where the side of a narrower one can be.
            if half == 2 or not any(pool.has_line((centre[0] + x, centre[1] - 2),
                                                  (centre[0] + x, centre[1] + 2))
                                    for x in ((-1, 1) if half == 3 else (-2, 0, 2))):
                found.append(centre)
    return found


def _rows(centres, step, turn):
    """Boxes side by side, `step` from centre to centre."""
    left = list(centres)
    while left:
        row = [left.pop()]
        for one in row:
            for c in [c for c in left if any(same(c, Frame(one, turn).out((s * step, 0)))
                                             for s in (1, -1))]:
                row.append(c)
                left.remove(c)
        yield sorted(row)


def _outside(pool, frame, half):
    """Places of the box from which a line leaves."""
    return [p for p in outlines.PLACES
            if abs(p[0]) < half and any(pool.has_line(frame.out(p), frame.out((p[0], p[1] * 2)), dash)
                   for dash in ("solid", "dashed"))]


UPRIGHT, QUARTER = (1, 0, 0, 1), (0, 1, -1, 0)


def rows(pool):
    """Directional and flushing valves, dividers. Call after all single boxes of other kinds. A row
    of boxes of 4 may stand on end."""
    for half, turn in ((4, UPRIGHT), (3, UPRIGHT), (2, UPRIGHT), (2, QUARTER)):
        for row in list(_rows(boxes(pool, half), 2 * half, turn)):
            stubs = {c: _outside(pool, Frame(c, turn), half) for c in row}
            rest = [c for c in row if stubs[c]]
            if len(rest) == 1:
                yield _row(pool, row, half, Frame(rest[0], turn), stubs[rest[0]])


def _row(pool, row, half, frame, stubs):
    """The valve of a row of boxes; frame: of the box at rest, from which the stubs lead out."""
    positions = [_position(pool, Frame(c, frame.turn), half) for c in row]
    for c in row:
        take(pool, Frame(c, frame.turn), outlines.POSITIONS[half])
    a, b, c, d = frame.turn
    first, last = frame.into(row[0])[0] - half, frame.into(row[-1])[0] + half
    ports = [Port(str(p), frame.out((p[0], 2 * p[1])), frame.out(p)) for p in stubs]
    symbol = Symbol("directional-valve", box_of(frame, first, -2, last, 2), {
        "positions": positions, "rest": row.index(frame.origin),
        "ends": [_end(pool, Frame(frame.out((first, 0)), (-a, -b, c, d))),
                 _end(pool, Frame(frame.out((last, 0)), frame.turn))]}, ports)
    between = [line((first, s * (2 + outlines.BETWEEN)), (last, s * (2 + outlines.BETWEEN)))
               for s in (-1, 1)]
    symbol.options["between"] = take_if(pool, frame, between)
    if any("from" in actuator for end in symbol.options["ends"] for actuator in end):
        symbol.kind = "flushing-valve"
    elif _divides(symbol):
        symbol.kind, symbol.options = "flow-divider", {"design": "spool"}
    return symbol


def _divides(symbol):
    """Whether the row is the one box of a divider (FV8): one port below, a throttle in the way to
    each port above, and nothing that moves it."""
    if len(symbol.options["positions"]) != 1 or any(symbol.options["ends"]):
        return False
    position = symbol.options["positions"][0]
    below = [p for p in symbol.ports if p.place[1] > p.contact[1]]
    return len(below) == 1 and not position.blocked and not position.odd and \
        [(len(places), heads, throttles) for places, heads, throttles, _ in position.groups] == \
        [(len(symbol.ports), set(), len(symbol.ports) - 1)]


def _clipped(pool, frame, half):
    """Solid strokes in the box without its sides, cut at them, in places of the box; taken from
    the pool."""
    found = []
    for segment in pool.near(frame.out((-half, -2)), frame.out((half, 2))):
        p, q = frame.into(segment.p), frame.into(segment.q)
        low, high = 0.0, 1.0
        for a, b, side in ((p[0], q[0], half), (p[1], q[1], 2)):
            if abs(b - a) < 1e-6:
                if abs(a) > side - NEAR:
                    low = 2.0
            else:
                cuts = sorted(((-side - a) / (b - a), (side - a) / (b - a)))
                low, high = max(low, cuts[0]), min(high, cuts[1])
        if segment.dash == "solid" and high - low > 1e-6 and (high - low) * segment.length() > NEAR:
            cut = Segment(*((p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]))
                            for t in (low, high)))
            found.append(cut)
    for cut in found:
        pool.take_line(frame.out(cut.p), frame.out(cut.q))
    return found


def _position(pool, frame, half):
    strokes = _clipped(pool, frame, half)
    position = Position()
    for place in outlines.PLACES:  # T-bars
        foot = (place[0], place[1] * 0.625)
        stem = [s for s in strokes if s.ends_at(place) and s.ends_at(foot)]
        bar = [s for s in strokes if s.ends_at((foot[0] - 0.5, foot[1]))
               and s.ends_at((foot[0] + 0.5, foot[1]))]
        if stem and bar:
            position.blocked.add(place)
            strokes = [s for s in strokes if s not in (stem[0], bar[0])]
    dots = [c for c in pool.circles if c.filled and abs(c.radius - 0.25) < NEAR
            and abs(frame.into(c.centre)[0]) < half and abs(frame.into(c.centre)[1]) < 2]
    joints = [frame.into(c.centre) for c in dots]
    pool.circles -= set(dots)
    throttles = []
    for pieces in _joined(strokes, joints):
        places = {p for p in outlines.PLACES if any(s.ends_at(p) for s in pieces)}
        if not places:
            throttles.append(pieces)
            continue
        heads = set()
        for p in places:
            for s in pieces:
                if s.ends_at(p):
                    head = pool.head(frame.out(p), frame.out(s.other(p)))
                    if head:
                        pool.polygons.discard(head)
                        heads.add(p)
        position.groups.append([frozenset(places), heads, 0, pieces])
    position.odd = _undotted([s for group in position.groups for s in group[3]], joints)
    for chevron in throttles:
        if not _throttle(chevron, position.groups):
            position.odd += 1
    for group in position.groups:
        if group[2] % 2:
            position.odd += 1
        group[2] //= 2
    return position


def _undotted(strokes, joints):
    """How often three strokes end in a place, or one ends on another, without a dot."""
    count = 0
    for s in strokes:
        for end in (s.p, s.q):
            others = [o for o in strokes if o is not s and o.holds(end)]
            if (len(others) > 1 or any(not o.ends_at(end) for o in others)) and \
                    not any(same(end, j) for j in joints):
                count += 1
    return count


def _throttle(chevron, groups):
    """A chevron of two strokes whose point looks at a path: half of a throttle on that path."""
    if len(chevron) != 2:
        return False
    points = [p for p in (chevron[0].p, chevron[0].q) if chevron[1].ends_at(p)]
    if len(points) != 1:
        return False
    tip = points[0]
    back = [s.other(tip) for s in chevron]
    middle = ((back[0][0] + back[1][0]) / 2, (back[0][1] + back[1][1]) / 2)
    aim = (tip[0] - middle[0], tip[1] - middle[1])
    for group in groups:
        for stroke in group[3]:
            off, along = stroke.off(tip)
            foot = stroke.at(along)
            ahead = (foot[0] - tip[0]) * aim[0] + (foot[1] - tip[1]) * aim[1]
            if off < 0.5 and -NEAR < along < stroke.length() + NEAR and ahead > 0:
                group[2] += 1
                return True
    return False


def _joined(strokes, joints):
    """Groups of strokes that meet in their ends, or on one another where a dot says so."""
    left, groups = list(strokes), []
    while left:
        group = [left.pop()]
        for one in group:
            for other in list(left):
                meet = any(one.ends_at(p) for p in (other.p, other.q)) or any(
                    one.holds(j) and other.holds(j) for j in joints)
                if meet:
                    group.append(other)
                    left.remove(other)
        groups.append(group)
    return groups


def _end(pool, frame):
    """Actuators at one end of a row, the end's middle at the frame's origin and x outward. The row
    may be turned over, so each stands above or below the middle."""
    actuators = []
    for y in (0, 1, -1):
        if spring(pool, frame, (0, y), (2.5, y)):
            actuators.append({"is": "spring"})
    for y in (-1, -1.25, 0, 1.25, 1):
        pilot = _hydraulic_pilot(pool, frame, y)
        if pilot:
            actuators.append(pilot)
        # DV8: the frame of 3 by 2 stands on the row's end, the side at the row is the row's own.
        sides = outlines.path((0, y - 1), (3, y - 1), (3, y + 1), (0, y + 1))
        if there(pool, frame, sides):
            take(pool, frame, sides)
            inner = "unknown"
            if take_if(pool, frame, [line((3, y - 1), (0, y + 1))]) or \
                    take_if(pool, frame, [line((3, y + 1), (0, y - 1))]):
                inner = "solenoid"
            elif take_if(pool, frame, [outlines.triangle((0, y), outlines.LEFT, 1)]):
                inner = "pilot"
            actuators.append({"is": inner})
    for y in (0, -1, 1):
        actuators += _by_hand(pool, frame, y)
    return actuators


def _hydraulic_pilot(pool, frame, y):
    """A triangle on the row's end, fed by a dashed line that starts at a dot on a port's line."""
    triangle = outlines.triangle((0, y), outlines.LEFT, 1)
    if not there(pool, frame, [triangle]):
        return None
    here, chain = frame.out((0.866, y)), []
    while True:
        step = [s for s in pool.segments if s.dash == "dashed" and s.ends_at(here)
                and s not in chain]
        if len(step) != 1:
            break
        chain.append(step[0])
        here = step[0].other(here)
    dot = pool.circle(here, 0.25, True)
    if not chain or not dot:
        return None
    take(pool, frame, [triangle])
    pool.circles.discard(dot)
    for segment in chain:
        pool.drop(segment)
    return {"is": "pilot", "from": here}


def _by_hand(pool, frame, y):
    """Lever (a stroke with a knob), pedal (a slanted bar with a foot), detent (a line with
    notches)."""
    x0, y0, x1, y1 = box_of(frame, 0, y - 2.3, 4.2, y + 2.3)
    near = [s for s in pool.inside(x0, y0, x1, y1) if s.dash == "solid"]
    cluster = [s for s in near if s.ends_at(frame.out((0, y)))]
    for one in cluster:
        cluster += [s for s in near if s not in cluster and any(
            one.holds(p) for p in (s.p, s.q)) or s not in cluster and any(s.holds(p)
                                                                          for p in (one.p, one.q))]
    if not cluster:
        return []
    slanted = [s for s in cluster if not s.horizontal() and not s.vertical()]
    knobs = [c for c in pool.circles if not c.filled and abs(c.radius - 0.375) < NEAR
             and any(min(_gap(s.p, c), _gap(s.q, c)) < NEAR for s in slanted)]
    for segment in cluster:
        pool.drop(segment)
    pool.circles -= set(knobs)
    if len(knobs) == 1:
        return [{"is": "lever"}]
    if len(slanted) == 1 and slanted[0].length() > 2:
        return [{"is": "pedal"}]
    if len(slanted) >= 2 and len(slanted) % 2 == 0 and all(s.length() < 0.6 for s in slanted):
        upright = [abs(frame.into(s.p)[0] - frame.into(s.q)[0]) < NEAR for s in cluster]
        ticks = [s for s, is_upright in zip(cluster, upright) if is_upright]
        if len(ticks) == 1 and sum(o.ends_at(p) for o in slanted
                                   for p in (ticks[0].p, ticks[0].q)) == 2:
            return [{"is": "detent", "notches": len(slanted) // 2}]
    return [{"is": "unknown"}]


def _gap(p, knob):
    return abs(((p[0] - knob.centre[0]) ** 2 + (p[1] - knob.centre[1]) ** 2) ** 0.5 - knob.radius)
