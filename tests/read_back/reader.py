"""The whole reading: from a stripped drawing to components, ports, nets and shafts by
designation."""

import dataclasses

import actuators
import flow_valves
import instruments
import joints
import labels
import machines
import nets
import pressure_valves
import reservoirs
import shapes
import sheet
import symbols
import valve_boxes
from pool import Pool
from shapes import distance, in_mm

LETTER_REACH = 2.4  # modules: farther from where its line passes a frame no port letter stands


@dataclasses.dataclass
class Reading:
    symbols: list
    nets: list  # (set of (label, letter), dashes, hoses), reservoirs as (label, "")
    shafts: list  # sets of labels
    frames: list  # (name, box, small words where lines pass through) of assemblies
    parts: dict  # designation -> words of its row in the parts list
    problems: list
    doubts: list  # designations that may be taken for another symbol's
    marks: dict  # reservoir symbol -> ends of its own net

    def beside(self, mark):
        """Ends (label, letter) that the line into a reservoir's mark joins."""
        return self.marks.get(mark, frozenset())


def _near_edge(word, box):
    """Whether a small word stands right over the upper edge of a box or right under the lower."""
    x, y = word.place
    return box[0] < x < box[2] and (0.3 < box[1] - y < 0.8 or 1.0 < y - box[3] < 1.5)


def _led_to_edge(word, box, leaders):
    """Whether a thin leader line takes the word to an edge of a box."""
    def on_edge(p):
        inside = box[0] - 0.1 < p[0] < box[2] + 0.1 and box[1] - 0.1 < p[1] < box[3] + 0.1
        return inside and min(abs(p[0] - box[0]), abs(p[0] - box[2]), abs(p[1] - box[1]),
                              abs(p[1] - box[3])) < 0.1
    return any(labels.gap(word.box, (*near, *near)) < 1.0 and on_edge(far)
               for rule in leaders for near, far in ((rule.p, rule.q), (rule.q, rule.p)))


def _passings(box, segments):
    """Where lines pass through the edges of a frame."""
    x0, y0, x1, y1 = box
    for s in segments:
        left, right = sorted((s.p[0], s.q[0]))
        top, bottom = sorted((s.p[1], s.q[1]))
        if s.vertical() and x0 < left < x1:
            yield from ((left, y) for y in (y0, y1) if top < y < bottom)
        if s.horizontal() and y0 < top < y1:
            yield from ((x, top) for x in (x0, x1) if left < x < right)


def _is_letter(word, passings, leaders, box):
    """Whether a small word stands outside the frame beside a line that passes through, or is led
    to where it does."""
    x, y = word.centre()
    for p in passings:
        outside = x < p[0] == box[0] or x > p[0] == box[2] or y < p[1] == box[1] or \
            y > p[1] == box[3]
        led = any(labels.gap(word.box, (*near, *near)) < 1.0 and distance(far, p) < 0.3
                  for rule in leaders for near, far in ((rule.p, rule.q), (rule.q, rule.p)))
        if led or outside and distance((x, y), p) < LETTER_REACH:
            return True
    return False


def _frames(pool, drawing):
    """Chain-line rectangles, each with the small words at it: its name, apart from the lines that
    pass through it, and the letters of its ports beside these."""
    chain = [s for s in pool.segments if s.dash == "chain"]
    lines = [s for s in pool.segments if s.dash != "chain"]
    leaders = [r for r in drawing.rules if r.width < 0.24]
    words = [t for t in drawing.texts if t.size < 3]
    found = []
    for top in [s for s in chain if s.horizontal()]:
        x0, x1, y = min(top.p[0], top.q[0]), max(top.p[0], top.q[0]), top.p[1]
        for bottom in chain:
            below = bottom.horizontal() and bottom.p[1] > y
            if below and {bottom.p[0], bottom.q[0]} == {x0, x1} and all(
                    any(s.vertical() and s.ends_at((x, y)) and s.ends_at((x, bottom.p[1]))
                        for s in chain)
                    for x in (x0, x1)):
                box = (x0, y, x1, bottom.p[1])
                passings = list(_passings(box, lines))
                letters = {t.words for t in words if _is_letter(t, passings, leaders, box)}
                names = [t for t in words
                         if (_near_edge(t, box) or _led_to_edge(t, box, leaders))
                         and not _is_letter(t, passings, leaders, box)]
                names.sort(key=lambda t: t.place[0])
                found.append((names[0].words if names else "", box, letters))
    for segment in chain:
        pool.drop(segment)
    return found


def read(svg):
    drawing = shapes.read(svg)
    parts = sheet.split(drawing)
    pool = Pool(drawing)
    problems = []
    found = list(machines.machines(pool))
    found += symbols.bodies(pool, drawing.texts)
    found += symbols.on_shafts(pool)
    found += pressure_valves.valves(pool)
    found += flow_valves.valves(pool)
    found += actuators.actuators(pool)
    found += instruments.instruments(pool, drawing.texts)
    found += joints.joints(pool, drawing.texts)
    found += valve_boxes.rows(pool)
    found += symbols.conditioners(pool)
    found += symbols.shut_offs(pool)
    found += symbols.orifices(pool)
    found += symbols.checks(pool)
    found += reservoirs.marks(pool)
    frames = _frames(pool, drawing)
    turning = nets.shafts(pool, found, problems)
    joined = nets.nets(pool, found, problems)
    problems += [f"a filled shape at {in_mm(p.corners[0])} belongs to nothing"
                 for p in pool.polygons]
    problems += [f"a circle at {in_mm(c.centre)} belongs to nothing" for c in pool.circles]
    problems += [f"an arc at {in_mm(a.middle)} belongs to nothing" for a in pool.arcs]
    problems += [f"a slanted line at {in_mm(s.p)} belongs to nothing" for s in pool.segments
                 if not s.horizontal() and not s.vertical()]
    names = {row[0][0]: [words for words, _ in row[1:]] for row in parts if row and row[0][1] < 2}
    words = labels.letters(found, drawing.texts, names, problems)
    doubts = labels.designations(found, words, names, drawing.rules, problems)
    named, marks = [], {}
    for ports, dashes, hoses in joined:
        ends = frozenset((s.label, "" if s.kind == "reservoir" else p.letter) for s, p in ports)
        named.append((ends, dashes, hoses))
        marks.update({s: ends for s, _ in ports if s.kind == "reservoir"})
    return Reading(found, named, [frozenset(s.label + end for s, end in group) for group in turning], frames,
                   names, problems,
                   doubts, marks)
