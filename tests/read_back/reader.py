"""The whole reading: from a stripped drawing to components, ports, nets and shafts by
designation."""

import dataclasses

import labels
import nets
import shapes
import sheet
import symbols
import valve_boxes
from pool import Pool
from shapes import in_mm


@dataclasses.dataclass
class Reading:
    symbols: list
    nets: list  # (set of (label, letter), dashes), reservoirs as (label, "")
    shafts: list  # sets of labels
    frames: list  # (name, box) of assemblies
    parts: dict  # designation -> words of its row in the parts list
    problems: list
    doubts: list  # designations that may be taken for another symbol's
    marks: dict  # reservoir symbol -> ends of its own net

    def beside(self, mark):
        """Ends (label, letter) that the line into a reservoir's mark joins."""
        return self.marks.get(mark, frozenset())


def _frames(pool, drawing):
    """Chain-line rectangles with the small word over their upper left corner."""
    chain = [s for s in pool.segments if s.dash == "chain"]
    found = []
    for top in [s for s in chain if s.horizontal()]:
        x0, x1, y = min(top.p[0], top.q[0]), max(top.p[0], top.q[0]), top.p[1]
        for bottom in chain:
            below = bottom.horizontal() and bottom.p[1] > y
            if below and {bottom.p[0], bottom.q[0]} == {x0, x1} and all(
                    any(s.vertical() and s.ends_at((x, y)) and s.ends_at((x, bottom.p[1]))
                        for s in chain)
                    for x in (x0, x1)):
                names = [t for t in drawing.texts if t.size < 3 and -0.5 < t.place[0] - x0 < 1
                         and 0 < y - t.place[1] < 1]
                found.append((names[0].words if names else "", (x0, y, x1, bottom.p[1])))
    for segment in chain:
        pool.drop(segment)
    return found


def read(svg):
    drawing = shapes.read(svg)
    parts = sheet.split(drawing)
    pool = Pool(drawing)
    problems = []
    found = list(symbols.machines(pool))
    found += symbols.bodies(pool, drawing.texts)
    found += valve_boxes.reliefs(pool)
    found += valve_boxes.rows(pool)
    found += symbols.conditioners(pool)
    found += symbols.shut_offs(pool)
    found += symbols.orifices(pool)
    found += symbols.checks(pool)
    found += symbols.reservoirs(pool)
    frames = _frames(pool, drawing)
    turning = nets.shafts(pool, found, problems)
    joined = nets.nets(pool, found, problems)
    problems += [f"a filled shape at {in_mm(p.corners[0])} belongs to nothing"
                 for p in pool.polygons]
    problems += [f"a circle at {in_mm(c.centre)} belongs to nothing" for c in pool.circles]
    problems += [f"a slanted line at {in_mm(s.p)} belongs to nothing" for s in pool.segments
                 if not s.horizontal() and not s.vertical()]
    names = {row[0][0]: [words for words, _ in row[1:]] for row in parts if row and row[0][1] < 1}
    words = labels.letters(found, drawing.texts, names, problems)
    doubts = labels.designations(found, words, names, drawing.rules, problems)
    named, marks = [], {}
    for ports, dashes in joined:
        ends = frozenset((s.label, "" if s.kind == "reservoir" else p.letter) for s, p in ports)
        named.append((ends, dashes))
        marks.update({s: ends for s, _ in ports if s.kind == "reservoir"})
    return Reading(found, named, [frozenset(s.label for s in group) for group in turning], frames,
                   names, problems,
                   doubts, marks)
