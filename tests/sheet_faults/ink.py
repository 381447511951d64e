"""Reads a finished SVG as ink: strokes, closed outlines, dots, letters, and whose each is.

Ids, classes and titles say only whose ink it is (a net's, a symbol's, a list's); what touches what
is told from the strokes. Lengths in millimetres, y downwards."""

import dataclasses
import itertools
import math
import re
import xml.etree.ElementTree as ElementTree

import glyphs

NAMESPACE = "{http://www.w3.org/2000/svg}"
BAND = 1.0  # mm: wider strokes are the bands of findings, which lie under the lines
ARC_STEPS = 12
ARC = re.compile(r"M (\S+) (\S+) A (\S+) \3 0 ([01]) ([01]) (\S+) (\S+)\Z")


@dataclasses.dataclass(eq=False)
class Group:
    """A group of the drawing. `sort`: line, symbol, shaft, assembly, border, list, mark,
    value."""
    sort: str
    name: str
    number: int


@dataclasses.dataclass(eq=False)
class Stroke:
    p: tuple
    q: tuple
    width: float
    group: Group
    sort: str  # the group's, or `leader`
    end_p: bool = True  # whether the drawn way ends there (and not only bends)
    end_q: bool = True
    curved: bool = False  # a piece of an arc

    def box(self):
        h = self.width / 2
        return (min(self.p[0], self.q[0]) - h, min(self.p[1], self.q[1]) - h,
                max(self.p[0], self.q[0]) + h, max(self.p[1], self.q[1]) + h)

    def level(self):
        return abs(self.p[1] - self.q[1]) < 0.01

    def upright(self):
        return abs(self.p[0] - self.q[0]) < 0.01


@dataclasses.dataclass(eq=False)
class Region:
    """A closed outline; `ground` below a computed figure, `head` on a line that shows its flow."""
    corners: list
    group: Group
    sort: str

    def box(self):
        xs, ys = zip(*self.corners)
        return min(xs), min(ys), max(xs), max(ys)


@dataclasses.dataclass(eq=False)
class Dot:
    centre: tuple
    radius: float
    group: Group


@dataclasses.dataclass(eq=False)
class Text:
    words: str
    boxes: list
    size: float
    group: Group
    sort: str  # label, letter, inner, or the group's

    def box(self):
        return (min(b[0] for b in self.boxes), min(b[1] for b in self.boxes),
                max(b[2] for b in self.boxes), max(b[3] for b in self.boxes))


@dataclasses.dataclass
class Sheet:
    width: float = 0.0
    height: float = 0.0
    groups: list = dataclasses.field(default_factory=list)
    strokes: list = dataclasses.field(default_factory=list)
    regions: list = dataclasses.field(default_factory=list)
    dots: list = dataclasses.field(default_factory=list)
    texts: list = dataclasses.field(default_factory=list)


def _sort_of(element):
    """Of a group, from its id and its class; None: a band, which lies under all lines."""
    name, ident = element.get("class").split()[0], element.get("id", "")
    if name == "finding":
        return {"witness": None, "finding": "mark", "entry": "list"}[ident.partition("-")[0]]
    if name == "sheet":
        return "border" if ident == "sheet" else "list"
    return {"line": "line", "symbol": "symbol", "shaft": "shaft", "frame": "assembly",
            "caution": "list", "computed": "value"}[name]


def _points(text):
    numbers = [float(v) for v in text.replace(",", " ").split()]
    return list(zip(numbers[0::2], numbers[1::2]))


def _arc(words):
    """Points on an arc of a circle."""
    x0, y0, r, large, sweep, x1, y1 = (float(v) for v in ARC.match(words).groups())
    mx, my, dx, dy = (x0 + x1) / 2, (y0 + y1) / 2, (x1 - x0) / 2, (y1 - y0) / 2
    half = math.hypot(dx, dy)
    off = math.sqrt(max(r * r - half * half, 0.0)) / half
    if (large == 1) == (sweep == 1):
        off = -off
    cx, cy = mx - dy * off, my + dx * off
    start, end = math.atan2(y0 - cy, x0 - cx), math.atan2(y1 - cy, x1 - cx)
    turn = (end - start) % (2 * math.pi) if sweep else -((start - end) % (2 * math.pi))
    between = [(cx + r * math.cos(start + turn * i / ARC_STEPS),
                cy + r * math.sin(start + turn * i / ARC_STEPS)) for i in range(1, ARC_STEPS)]
    return [(x0, y0), *between, (x1, y1)]


def _circle(x, y, r):
    return [(x + r * math.cos(math.pi * i / ARC_STEPS), y + r * math.sin(math.pi * i / ARC_STEPS))
            for i in range(2 * ARC_STEPS)]


def _add_strokes(sheet, points, element, group, sort, closed=False, curved=False):
    width = float(element.get("stroke-width", "0")) if element.get("stroke") else 0.0
    if width > BAND:
        return
    points = [p for p, before in zip(points, [None, *points]) if p != before]
    ways = list(itertools.pairwise(points + points[:1] if closed else points))
    for i, (p, q) in enumerate(ways):
        sheet.strokes.append(Stroke(p, q, width, group, sort, not closed and i == 0,
                                    not closed and i == len(ways) - 1, curved))


def _add(sheet, element, group):
    tag, role = element.tag.removeprefix(NAMESPACE), (element.get("class") or "").split(" ")[0]
    get = element.get
    leads = tag == "polyline" and (role == "value" or group.sort == "value")
    sort = "leader" if leads else group.sort
    if group.sort == "value" and tag == "polygon":
        corners = _points(get("points"))
        sheet.regions.append(Region(corners, group, "head" if len(corners) == 3 else "ground"))
        return
    if tag == "polyline":
        _add_strokes(sheet, _points(get("points")), element, group, sort)
    elif tag == "path":
        _add_strokes(sheet, _arc(get("d")), element, group, sort, curved=True)
    elif tag == "polygon":
        corners = _points(get("points"))
        _add_strokes(sheet, corners, element, group, sort, closed=True)
        if group.sort in ("symbol", "mark"):
            sheet.regions.append(Region(corners, group, sort))
    elif tag == "circle":
        x, y, r = float(get("cx")), float(get("cy")), float(get("r"))
        if group.sort == "line":
            sheet.dots.append(Dot((x, y), r, group))
            return
        _add_strokes(sheet, _circle(x, y, r), element, group, sort, closed=True, curved=True)
        if group.sort in ("symbol", "mark"):
            sheet.regions.append(Region(_circle(x, y, r), group, sort))
    elif tag == "text":
        words = "".join(element.itertext())
        size = float(get("font-size"))
        found = glyphs.boxes(words, float(get("x")), float(get("y")), size,
                             get("text-anchor", "start"))
        sort = {"designation": "label", "value": "label", "port-letter": "letter"}.get(
            role, "inner" if group.sort == "symbol" else group.sort)
        if found:
            sheet.texts.append(Text(words, found, size, group, sort))
    elif tag not in ("title", "desc"):
        raise ValueError(f"<{tag}> is not read")


def read(svg):
    root = ElementTree.fromstring(svg)
    sheet = Sheet(*(float(root.get(side).removesuffix("mm")) for side in ("width", "height")))
    if root.get("viewBox").split() != ["0", "0", root.get("width")[:-2], root.get("height")[:-2]]:
        raise ValueError("one unit of the drawing is not one millimetre")
    if any(e.get("transform") or e.get("style") for e in root.iter()):
        raise ValueError("transforms and styles are not read")
    for element in root.find(NAMESPACE + "g"):
        sort = _sort_of(element)
        if sort is None:
            continue
        group = Group(sort, element.findtext(NAMESPACE + "title"), len(sheet.groups))
        sheet.groups.append(group)
        for child in element:
            _add(sheet, child, group)
    return sheet
