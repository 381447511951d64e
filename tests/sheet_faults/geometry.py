"""Touching and crossing of strokes, boxes and closed outlines; millimetres, y downwards."""

import collections
import math

NEAR = 0.05  # mm: less is the same place, a fifth of a stroke's width
INK = 0.2  # mm: nearer than this two strokes of 0.25 mm run into each other
CELL = 10.0  # mm


def same(p, q, near=NEAR):
    return abs(p[0] - q[0]) <= near and abs(p[1] - q[1]) <= near


def length(s):
    return math.hypot(s.q[0] - s.p[0], s.q[1] - s.p[1])


def off(s, point):
    """How far a point is from the stroke's line, and how far along it its foot is."""
    size = length(s) or 1e-9
    ux, uy = (s.q[0] - s.p[0]) / size, (s.q[1] - s.p[1]) / size
    dx, dy = point[0] - s.p[0], point[1] - s.p[1]
    return abs(dx * uy - dy * ux), dx * ux + dy * uy


def holds(s, point, near=NEAR):
    """Whether the point lies on the stroke's middle line, its ends included."""
    away, along = off(s, point)
    return away <= near and -near <= along <= length(s) + near


def inside(s, point):
    """The same, its ends left out."""
    return holds(s, point) and not same(s.p, point) and not same(s.q, point)


def shared(a, b, near=NEAR):
    """Length that two strokes have in common if they lie on one line, else 0."""
    (away_p, p), (away_q, q) = off(a, b.p), off(a, b.q)
    if away_p > near or away_q > near:
        return 0.0
    return max(min(max(p, q), length(a)) - max(min(p, q), 0.0), 0.0)


def meet(a, b, near=NEAR):
    """The point that two strokes not on one line have in common, or None."""
    ax, ay, bx, by = a.q[0] - a.p[0], a.q[1] - a.p[1], b.q[0] - b.p[0], b.q[1] - b.p[1]
    cross = ax * by - ay * bx
    for point in (b.p, b.q):
        if holds(a, point, near):
            return point
    for point in (a.p, a.q):
        if holds(b, point, near):
            return point
    if abs(cross) < 1e-9:
        return None
    dx, dy = b.p[0] - a.p[0], b.p[1] - a.p[1]
    t, u = (dx * by - dy * bx) / cross, (dx * ay - dy * ax) / cross
    if not (0.0 <= t <= 1.0 and 0.0 <= u <= 1.0):
        return None
    return a.p[0] + t * ax, a.p[1] + t * ay


def overlap(a, b, by=0.0):
    """Whether two boxes overlap by more than `by` (less than nothing: stand so near)."""
    return (a[0] < b[2] - by and b[0] < a[2] - by and a[1] < b[3] - by and b[1] < a[3] - by)


def passes(s, box, by=0.02):
    """Whether a stroke in its width covers some of a box, `by` more than touches it."""
    by = s.width / 2 - by
    if _cuts(s, (box[0] - by, box[1] - by, box[2] + by, box[3] + by)) and not _cuts(s, box):
        # Near, and perhaps only past a corner.
        corners = [(x, y) for x in (box[0], box[2]) for y in (box[1], box[3])]
        return any(_from_stroke(s, c) < by for c in corners) or any(
            _from_box(box, p) < by for p in (s.p, s.q))
    return _cuts(s, box)


def _from_stroke(s, point):
    away, along = off(s, point)
    return math.hypot(away, max(-along, along - length(s), 0.0))


def _from_box(box, p):
    return math.hypot(max(box[0] - p[0], p[0] - box[2], 0.0),
                      max(box[1] - p[1], p[1] - box[3], 0.0))


def _cuts(s, box):
    """Whether the middle line of a stroke cuts a box: cut side by side (Liang, Barsky 1984)."""
    left, top, right, bottom = box
    start, end = 0.0, 1.0
    for at, step, low, high in ((s.p[0], s.q[0] - s.p[0], left, right),
                                (s.p[1], s.q[1] - s.p[1], top, bottom)):
        if abs(step) < 1e-9:
            if not low < at < high:
                return False
            continue
        a, b = sorted(((low - at) / step, (high - at) / step))
        start, end = max(start, a), min(end, b)
    return start < end


def within(corners, point):
    """Whether a point is inside a closed outline (even-odd rule)."""
    x, y = point
    result = False
    for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1]):
        if (y0 > y) != (y1 > y) and x < (x1 - x0) * (y - y0) / (y1 - y0) + x0:
            result = not result
    return result


def _depth(corners, point):
    """How far a point is from an outline."""
    least = math.inf
    for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1]):
        dx, dy = x1 - x0, y1 - y0
        t = ((point[0] - x0) * dx + (point[1] - y0) * dy) / (dx * dx + dy * dy or 1e-9)
        t = min(max(t, 0.0), 1.0)
        least = min(least, math.hypot(point[0] - x0 - t * dx, point[1] - y0 - t * dy))
    return least


def enters(s, corners, depth=0.2, step=0.5):
    """A point of the stroke that is inside the outline by more than `depth`, or None."""
    count = max(int(length(s) / step), 1)
    for i in range(count + 1):
        t = i / count
        point = s.p[0] + t * (s.q[0] - s.p[0]), s.p[1] + t * (s.q[1] - s.p[1])
        if within(corners, point) and _depth(corners, point) > depth:
            return point
    return None


class Index:
    """Things with boxes, found by place."""

    def __init__(self, things, margin=0.0):
        self.margin = margin
        self.cells = collections.defaultdict(list)
        self.boxes = {}
        for thing in things:
            box = self.boxes[thing] = thing.box()
            for cell in self._cells(box):
                self.cells[cell].append(thing)

    def _cells(self, box):
        m = self.margin
        for i in range(math.floor((box[0] - m) / CELL), math.floor((box[2] + m) / CELL) + 1):
            for j in range(math.floor((box[1] - m) / CELL), math.floor((box[3] + m) / CELL) + 1):
                yield i, j

    def near(self, box, margin=0.1):
        """Each thing whose box is not farther than `margin` from the box, once."""
        seen = set()
        for cell in self._cells(box):
            for thing in self.cells.get(cell, ()):
                if thing not in seen and overlap(self.boxes[thing], box, -margin):
                    seen.add(thing)
                    yield thing
