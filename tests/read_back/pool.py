"""The shapes not yet explained: asked whether a shape is there, and freed of it once a symbol owns
it."""

import math

import shapes
from shapes import NEAR, distance, same

CELL = 2.0
NOTHING = frozenset()


def cells_between(p, q):
    """Cells of the rectangle with these corners, as a segment's: most are level or upright, the
    others short."""
    (x0, y0), (x1, y1) = p, q
    if x0 > x1:
        x0, x1 = x1, x0
    if y0 > y1:
        y0, y1 = y1, y0
    columns = range(math.floor((x0 - 0.2) / CELL), math.floor((x1 + 0.2) / CELL) + 1)
    rows = range(math.floor((y0 - 0.2) / CELL), math.floor((y1 + 0.2) / CELL) + 1)
    return [(i, j) for i in columns for j in rows]


class Pool:
    """Segments are asked for by coverage: a line may lie in several strokes or be a part of a
    longer one."""

    def __init__(self, drawing):
        self.segments = set()
        self.cells = {}
        for segment in drawing.segments:
            self._add(segment)
        self.circles = set(drawing.circles)
        self.arcs = set(drawing.arcs)
        self.polygons = set(drawing.polygons)

    def _add(self, segment):
        self.segments.add(segment)
        for cell in cells_between(segment.p, segment.q):
            self.cells.setdefault(cell, set()).add(segment)

    def drop(self, segment):
        self.segments.discard(segment)
        for cell in cells_between(segment.p, segment.q):
            self.cells.get(cell, set()).discard(segment)

    def near(self, p, q):
        """Segments that may come into the rectangle with these corners."""
        cells = cells_between(p, q)
        if len(cells) == 1:
            return self.cells.get(cells[0], NOTHING)
        return set().union(*(self.cells.get(cell, NOTHING) for cell in cells))

    def _along(self, p, q, dash):
        """Segments on the line p-q with the stretch (from, to) along it that they share with it."""
        length = distance(p, q)
        (x, y), ux, uy = p, (q[0] - p[0]) / length, (q[1] - p[1]) / length
        found = []
        for segment in self.near(p, q):  # most are not on the line: as few steps as may be
            if dash and segment.dash != dash:
                continue
            dx, dy = segment.p[0] - x, segment.p[1] - y
            if abs(dx * uy - dy * ux) > NEAR:
                continue
            ex, ey = segment.q[0] - x, segment.q[1] - y
            if abs(ex * uy - ey * ux) > NEAR:
                continue
            a, b = dx * ux + dy * uy, ex * ux + ey * uy
            low, high = max(min(a, b), 0.0), min(max(a, b), length)
            if high - low > -NEAR:
                found.append((segment, low, high))
        return found

    def has_line(self, p, q, dash="solid"):
        """Whether strokes of this dash cover p-q wholly."""
        reached = 0.0
        for _, low, high in sorted(self._along(p, q, dash), key=lambda s: s[1]):
            if low > reached + NEAR:
                break
            reached = max(reached, high)
        return reached >= distance(p, q) - NEAR

    def take_line(self, p, q, dash="solid"):
        """Takes the stretch p-q out of all strokes of this dash; what lies beyond stays."""
        ruler = shapes.Segment(p, q)
        for segment, low, high in self._along(p, q, dash):
            if high - low <= NEAR:
                continue
            self.drop(segment)
            (_, a), (_, b) = ruler.off(segment.p), ruler.off(segment.q)
            start, end = (segment.p, segment.q) if a <= b else (segment.q, segment.p)
            a, b = min(a, b), max(a, b)
            if a < -NEAR:
                self._add(shapes.Segment(start, ruler.at(0.0), dash, segment.width))
            if b > ruler.length() + NEAR:
                self._add(shapes.Segment(ruler.at(ruler.length()), end, dash, segment.width))

    def circle(self, centre, radius, filled=False):
        """The circle there, or None."""
        for circle in self.circles:
            if (circle.filled == filled and abs(circle.radius - radius) <= NEAR / 2
                    and same(circle.centre, centre)):
                return circle
        return None

    def arc(self, p, middle, q):
        """The arc with these ends, in whatever order, through this place, or None."""
        for arc in self.arcs:
            if same(arc.middle, middle) and (same(arc.p, p) and same(arc.q, q)
                                             or same(arc.p, q) and same(arc.q, p)):
                return arc
        return None

    def polygon(self, corners, near=NEAR):
        """The filled polygon with these corners in whatever order, or None."""
        for polygon in self.polygons:
            if len(polygon.corners) == len(corners) and all(
                    any(same(c, d, near) for d in polygon.corners) for c in corners):
                return polygon
        return None

    def head(self, tip, tail):
        """The arrow head at the end `tip` of the arrow from `tail`: filled, 1 long and 0.6 wide."""
        length = distance(tip, tail)
        ux, uy = (tip[0] - tail[0]) / length, (tip[1] - tail[1]) / length
        base = (tip[0] - ux, tip[1] - uy)
        return self.polygon([tip, (base[0] - 0.3 * uy, base[1] + 0.3 * ux),
                             (base[0] + 0.3 * uy, base[1] - 0.3 * ux)])

    def inside(self, x0, y0, x1, y1, near=NEAR):
        """Segments wholly in a rectangle."""
        found = set()
        for i in range(math.floor(x0 / CELL), math.floor(x1 / CELL) + 1):
            for j in range(math.floor(y0 / CELL), math.floor(y1 / CELL) + 1):
                found |= self.cells.get((i, j), set())
        return [s for s in found if all(x0 - near <= p[0] <= x1 + near
                                        and y0 - near <= p[1] <= y1 + near
                                        for p in (s.p, s.q))]
