"""Which ports the drawn lines join. A bend is two ends in one place; three ends, or an end on a
line, join only where a dot says so; lines that only cross do not. Shafts are pairs of lines half a
module apart."""

import outlines
from pool import cells_between
from shapes import NEAR, Segment, in_mm, same


LINKS = ("gearbox", "clutch")
ROUND = ("pump", "motor", "electric-motor", "tachometer")
TURNING = ROUND + ("engine", "load", "brake", "cylinder", "semi-rotary-actuator") + LINKS


class Union:
    """Disjoint sets."""

    def __init__(self):
        self.parent = {}

    def find(self, a):
        self.parent.setdefault(a, a)
        while self.parent[a] != a:
            self.parent[a] = self.parent[self.parent[a]]
            a = self.parent[a]
        return a

    def join(self, a, b):
        self.parent[self.find(a)] = self.find(b)

    def sets(self):
        groups = {}
        for a in self.parent:
            groups.setdefault(self.find(a), set()).add(a)
        return list(groups.values())


def shafts(pool, symbols, problems):
    """Takes the double lines; gives the sets of symbols that turn together."""
    solid = [s for s in pool.segments if s.dash == "solid" and (s.horizontal() or s.vertical())]
    double = []
    for axis in (0, 1):
        lines = [s for s in solid if (s.horizontal() if axis == 0 else s.vertical())]
        lines.sort(key=lambda s: s.p[1 - axis])
        for i, one in enumerate(lines):
            for other in lines[i + 1:]:
                gap = other.p[1 - axis] - one.p[1 - axis]
                if gap > 0.5 + NEAR:
                    break
                low = max(min(one.p[axis], one.q[axis]), min(other.p[axis], other.q[axis]))
                high = min(max(one.p[axis], one.q[axis]), max(other.p[axis], other.q[axis]))
                if abs(gap - 0.5) <= NEAR and high - low > 0.4:
                    double += [s for s in (one, other) if s not in double]
    turning = Union()
    for i, one in enumerate(double):
        turning.find(one)
        for other in double[:i]:
            if _touch(one, other):
                turning.join(one, other)
    # Both lines of a pair end on the same bodies, so joining each line to its bodies joins the
    # pair.
    for symbol in symbols:
        if symbol.kind not in TURNING:
            continue
        if symbol.kind not in LINKS:
            turning.find(symbol)
        for one in double:
            for p in (one.p, one.q):
                if _on_edge(p, symbol):
                    # The two sides of a gearbox or clutch are on shafts of their own.
                    left = p[0] < symbol.centre()[0]
                    turning.join(one, (symbol, left) if symbol.kind in LINKS else symbol)
    for one in double:
        pool.drop(one)
        if sum(any(_on_edge(p, s) for s in symbols) or any(o is not one and o.holds(p)
                                                           for o in double)
               for p in (one.p, one.q)) < 2:
            problems.append(f"a shaft ends in nothing near {in_mm(one.p)}")
    groups = [{_end_of(a) for a in group if not isinstance(a, Segment)} for group in turning.sets()]
    return [group for group in groups if len(group) > 1]


def _end_of(turns):
    """(symbol, "") for what a shaft turns; of a gearbox with the name of its end."""
    if not isinstance(turns, tuple):
        return turns, ""
    symbol, left = turns
    if symbol.kind != "gearbox":
        return symbol, ""
    return symbol, ".in" if symbol.options["in"] == ("left" if left else "right") else ".out"


def _touch(one, other):
    """Shafts join end to end, and where one ends on another; there are no dots on them."""
    return any(one.holds(p) for p in (other.p, other.q)) or any(other.holds(p)
                                                                for p in (one.p, one.q))


def _on_edge(p, symbol):
    x0, y0, x1, y1 = symbol.box
    edge = 0.1 if symbol.kind in ROUND else NEAR
    on_side = (min(abs(p[0] - x0), abs(p[0] - x1)) <= edge and y0 <= p[1] <= y1 or
               min(abs(p[1] - y0), abs(p[1] - y1)) <= edge and x0 <= p[0] <= x1)
    return symbol.kind in TURNING and on_side


def _stretches(pool):
    """Strokes of one dash that lie on one line and touch, as one segment each."""
    merged = []
    for dash in ("solid", "dashed"):
        for axis in (0, 1):
            lines = [s for s in pool.segments if s.dash == dash
                     and (s.horizontal() if axis == 0 else s.vertical())]
            groups = {}
            for s in lines:
                groups.setdefault(round(s.p[1 - axis] / NEAR), []).append(
                    (min(s.p[axis], s.q[axis]), max(s.p[axis], s.q[axis]), s.p[1 - axis]))
            for group in groups.values():
                group.sort()
                start, end, level = group[0]
                for low, high, _ in group[1:] + [(1e9, 1e9, 0)]:
                    if low <= end + NEAR / 2:
                        end = max(end, high)
                        continue
                    ends = ((start, level), (end, level)) if axis == 0 else ((level, start),
                                                                             (level, end))
                    merged.append(Segment(*ends, dash))
                    start, end = low, high
    return merged


def _split_at_contacts(stretches, contacts):
    """Cuts a stretch where it touches a body: two lines that meet in one contact are not one
    line."""
    out = []
    for s in stretches:
        cuts = sorted(along for off, along in (s.off(c) for c in contacts)
                      if off <= NEAR and NEAR < along < s.length() - NEAR)
        places = [0.0] + cuts + [s.length()]
        out += [Segment(s.at(a), s.at(b), s.dash) for a, b in zip(places, places[1:])]
    return out


def hoses(pool):
    """Takes the arcs that sag between two dots; gives their chords."""
    dots = [c for c in pool.circles if c.filled and abs(c.radius - outlines.JOINT) < 0.02]
    chords = []
    for arc in list(pool.arcs):
        chord = Segment(arc.p, arc.q, arc.dash)
        sag, along = chord.off(arc.middle)
        ends = [d for d in dots if chord.ends_at(d.centre)]
        if len(ends) == 2 and (chord.horizontal() or chord.vertical()) and \
                any(abs(chord.length() - c) < NEAR for c in outlines.HOSE_CHORDS) and \
                abs(sag - outlines.HOSE_SAG) < NEAR and abs(along - chord.length() / 2) < NEAR:
            chords.append(chord)
            pool.arcs.discard(arc)
            pool.circles -= set(ends)
    return chords


def nets(pool, symbols, problems):
    """Sets of (symbol, port) joined by lines, with the dashes of their lines but for the symbols'
    own stubs, and the number of hoses among them."""
    ports = [(s, p) for s in symbols for p in s.ports]
    bends = hoses(pool)
    dots = [c for c in pool.circles if c.filled and abs(c.radius - outlines.JOINT) < 0.02]
    lines = _split_at_contacts(_stretches(pool), [p.contact for _, p in ports]) + bends
    joined = Union()
    for s in lines:
        joined.find(s)
    for pair in ports:
        joined.find(pair)
    for dot in dots:
        there = [s for s in lines if s.holds(dot.centre)]
        branches = sum(1 if s.ends_at(dot.centre) else 2 for s in there)
        branches += sum(same(p.contact, dot.centre) for _, p in ports)
        if branches < 3:
            problems.append(f"a dot at {in_mm(dot.centre)} joins nothing")
        for s in there:
            joined.join(s, there[0])
    centres = [d.centre for d in dots]
    # Lines and ports by the cell that they are in, as there are too many to ask them all.
    crossed, standing = {}, {}
    for s in lines:
        for cell in cells_between(s.p, s.q):
            crossed.setdefault(cell, []).append(s)
    for pair in ports:
        for point in (pair[1].contact, pair[1].place):
            for cell in cells_between(point, point):
                standing.setdefault(cell, []).append(pair)
    for s in lines:
        for end in (s.p, s.q):
            cell = cells_between(end, end)[0]
            _meet(s, end, crossed[cell], centres, standing.get(cell, ()), joined, problems)
    pool.circles -= set(dots)
    result = []
    for group in joined.sets():
        found = frozenset(a for a in group if isinstance(a, tuple))
        strokes = [a for a in group if isinstance(a, Segment)]
        if not found:
            problems.append(f"a line at {in_mm(strokes[0].p)} leads to no port")
        result.append((found, {s.dash for s in strokes if not any(
            s.ends_at(p.contact) and s.ends_at(p.place) for _, p in ports)},
                       sum(s in bends for s in strokes)))
    return result


def _meet(s, end, lines, dots, ports, joined, problems):
    """What the end of a line meets: a port's body, another line's end, a dot, or nothing."""
    for pair in ports:
        if same(pair[1].contact, end):
            joined.join(s, pair)
            return
    if any(same(end, d) for d in dots):
        return
    others = [o for o in lines if o is not s and o.ends_at(end)]
    passing = [o for o in lines if o is not s and o.holds(end) and not o.ends_at(end)]
    if passing or len(others) > 1:
        problems.append(f"lines meet at {in_mm(end)} without a dot")
    elif others:
        joined.join(s, others[0])
    elif not any(same(pair[1].place, end) for pair in ports):
        problems.append(f"a line ends in nothing at {in_mm(end)}")
