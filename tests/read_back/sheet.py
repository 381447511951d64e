"""What of a sheet is not the diagram: border, title block and the lists with their headings. Their
places come from the wide rules and large words that a reader sees; the parts list is read for its
designations."""

from shapes import LINE_WIDTH, NEAR

HEADING = 4.0  # mm: letters larger than those of the diagram
ROW = 4.0  # modules: lines of a list stand closer than this


def _near(a, b, by=NEAR):
    return abs(a - b) <= by


def _lists(drawing):
    """(heading, box) of each list: a heading over a wide rule, and all below it in steps of a
    row."""
    heads = []
    for rule in drawing.rules:
        if not (rule.horizontal() and rule.width > LINE_WIDTH + 0.1):
            continue
        x0, x1, y = min(rule.p[0], rule.q[0]), max(rule.p[0], rule.q[0]), rule.p[1]
        for text in drawing.texts:
            if text.size > HEADING and text.place[0] - x0 < 2 and -0.2 < text.place[0] - x0 and \
                    0 < y - text.place[1] < 2:
                heads.append((text, x0, x1))
    for head, x0, x1 in heads:
        stops = [h.place[1] - 3 for h, a, b in heads if h.place[1] > head.place[1] and a < x1
                 and b > x0]
        bottom = head.place[1]
        for text in sorted(drawing.texts, key=lambda t: t.place[1]):
            lowest = min(stops + [bottom + ROW])
            if x0 - 0.2 <= text.place[0] <= x1 and bottom < text.place[1] <= lowest:
                bottom = text.place[1]
        yield head.words, (x0 - 0.5, head.place[1] - 2, x1 + 0.5, bottom + 1.2)


def _frame(drawing):
    """The drawing space: inside the widest rectangle of strokes 0.7 mm wide."""
    wide = [s for s in drawing.rules if _near(s.width, 0.7, 0.01) and s.horizontal()]
    if not wide:
        raise ValueError("the sheet has no frame")
    length = max(s.length() for s in wide)
    sides = [s for s in wide if s.length() > length - 1]
    xs, ys = [[p[axis] for s in sides for p in (s.p, s.q)] for axis in (0, 1)]
    return min(xs), min(ys), max(xs), max(ys)


def _title_block(drawing, frame):
    """The rectangle of wide strokes in the lower right corner of the frame."""
    sides = [s for s in drawing.rules if s.vertical() and _near(s.width, 0.5, 0.01)
             and _near(max(s.p[1], s.q[1]), frame[3], 0.2)]
    left = min((s.p[0] for s in sides), default=frame[2])
    top = min((min(s.p[1], s.q[1]) for s in sides), default=frame[3])
    return left, top, frame[2], frame[3]


def _within(point, box, near=NEAR):
    return box[0] - near <= point[0] <= box[2] + near and box[1] - near <= point[1] <= box[3] + near


def split(drawing):
    """Leaves the diagram in `drawing`; gives the parts list as rows of words (designation
    first)."""
    frame = _frame(drawing)
    lists = list(_lists(drawing))
    away = [box for _, box in lists] + [_title_block(drawing, frame)]
    parts = []
    for name, box in lists:
        if name == "Parts list":
            rows = {}
            for text in drawing.texts:
                if _within(text.place, box) and text.size < HEADING:
                    rows.setdefault(round(text.place[1], 1), []).append(text)
            for _, row in sorted(rows.items()):
                row.sort(key=lambda t: t.place[0])
                parts.append([(t.words, t.place[0] - box[0]) for t in row])

    def kept(*points):
        inside = all(_within(p, frame, -NEAR) for p in points)
        return inside and not any(all(_within(p, box) for p in points) for box in away)

    drawing.segments = [s for s in drawing.segments if kept(s.p, s.q)]
    drawing.rules = [s for s in drawing.rules if kept(s.p, s.q)]
    drawing.circles = [c for c in drawing.circles if kept(c.centre)]
    drawing.arcs = [a for a in drawing.arcs if kept(a.p, a.q)]
    drawing.polygons = [p for p in drawing.polygons if kept(*p.corners)]
    drawing.texts = [t for t in drawing.texts if kept(t.place)]
    return parts
