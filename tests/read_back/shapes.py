"""The shapes of a stripped drawing in sheet coordinates, in modules: segments, circles, filled
polygons, texts.

One module is 2.5 mm, a line of the drawing 0.1 module wide, as the table of symbol metrics in the
drawing-standard notes has it. x goes right, y down. Points are pairs of floats."""

import dataclasses
import math
import xml.etree.ElementTree as ElementTree

MODULE = 2.5  # mm
LINE_WIDTH = 0.25  # mm: all that belongs to the diagram
NEAR = 0.06  # modules: what counts as the same place

NAMESPACE = "{http://www.w3.org/2000/svg}"


def distance(p, q):
    return math.hypot(p[0] - q[0], p[1] - q[1])


def in_mm(p):
    """A place as words for a reader of the sheet."""
    return f"{p[0] * MODULE:g},{p[1] * MODULE:g} mm"


def same(p, q, near=NEAR):
    return abs(p[0] - q[0]) <= near and abs(p[1] - q[1]) <= near


@dataclasses.dataclass(eq=False)
class Segment:
    """A straight stroke; `dash` is solid, dashed or chain; width in mm."""
    p: tuple
    q: tuple
    dash: str = "solid"
    width: float = LINE_WIDTH

    def __post_init__(self):
        self._length = distance(self.p, self.q)
        self._ux = (self.q[0] - self.p[0]) / self._length
        self._uy = (self.q[1] - self.p[1]) / self._length

    def length(self):
        return self._length

    def off(self, point):
        """How far a point is from the segment's line, and where its foot is along it, in
        modules."""
        dx, dy = point[0] - self.p[0], point[1] - self.p[1]
        return abs(dx * self._uy - dy * self._ux), dx * self._ux + dy * self._uy

    def at(self, along):
        return (self.p[0] + along * self._ux, self.p[1] + along * self._uy)

    def holds(self, point, near=NEAR):
        """Whether the point lies on the segment, its ends included."""
        off, along = self.off(point)
        return off <= near and -near <= along <= self.length() + near

    def ends_at(self, point, near=NEAR):
        return same(self.p, point, near) or same(self.q, point, near)

    def other(self, point):
        return self.q if same(self.p, point) else self.p

    def horizontal(self):
        return abs(self.p[1] - self.q[1]) <= 1e-3

    def vertical(self):
        return abs(self.p[0] - self.q[0]) <= 1e-3


@dataclasses.dataclass(eq=False)
class Circle:
    centre: tuple
    radius: float
    filled: bool


@dataclasses.dataclass(eq=False)
class Arc:
    """A part of a circle less than half of it or half of it: its ends and its middle."""
    p: tuple
    middle: tuple
    q: tuple
    dash: str = "solid"

    def chord_middle(self):
        return ((self.p[0] + self.q[0]) / 2, (self.p[1] + self.q[1]) / 2)


@dataclasses.dataclass(eq=False)
class Polygon:
    """A filled polygon."""
    corners: list


@dataclasses.dataclass(eq=False)
class Text:
    """Words; `place` is the anchor point on the base line, `box` (x0, y0, x1, y1) what they
    cover."""
    words: str
    place: tuple
    size: float  # mm
    anchor: str
    box: tuple

    def centre(self):
        return ((self.box[0] + self.box[2]) / 2, (self.box[1] + self.box[3]) / 2)


# Share of the em that letters take in the font of ISO 3098 shapes that the sheets are set in,
# measured.
SHARES = {0.22: "'.!:|,", 0.26: "();[]", 0.32: "iIj{}", 0.38: "lJ^\"", 0.44: " ",
          0.48: "+-<=>?_z~t/1",
          0.54: "crafsv023", 0.66: "DPZBOSKTG", 0.71: "NUXHRVQY", 0.76: "mwM%@", 0.88: "W"}
SHARE = {letter: share for share, letters in SHARES.items() for letter in letters}
USUAL = 0.6
CAPITAL = 0.737  # of the em


def text_box(words, x, y, size, anchor):
    """Box of a text, its width estimated letter by letter."""
    width = size / MODULE * sum(SHARE.get(c, USUAL) for c in words)
    x0 = x - {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * width
    return (x0, y - CAPITAL * size / MODULE, x0 + width, y)


def dash_class(array):
    """solid; dashed (all dashes long); chain (dots between long dashes)."""
    if not array or array == "none":
        return "solid"
    on = [float(v) for v in array.replace(",", " ").split()][0::2]
    return "chain" if min(on) <= 0.2 else "dashed"


@dataclasses.dataclass
class Drawing:
    width: float = 0.0
    height: float = 0.0
    segments: list = dataclasses.field(default_factory=list)
    circles: list = dataclasses.field(default_factory=list)
    arcs: list = dataclasses.field(default_factory=list)
    polygons: list = dataclasses.field(default_factory=list)
    texts: list = dataclasses.field(default_factory=list)
    # Strokes of other widths: frame, lists, leaders.
    rules: list = dataclasses.field(default_factory=list)


def _points(text):
    numbers = [float(v) / MODULE for v in text.replace(",", " ").split()]
    return list(zip(numbers[0::2], numbers[1::2]))


def _polygon(drawing, corners, closed, get):
    black = get("fill", "none") == "#000000"
    if black and closed:
        drawing.polygons.append(Polygon(corners))
        return
    if get("stroke", "none") != "#000000":
        return  # of a finding, or of a computed figure
    width = float(get("stroke-width", "1"))
    dash = dash_class(get("stroke-dasharray"))
    target = drawing.segments if abs(width - LINE_WIDTH) < 1e-3 else drawing.rules
    for p, q in zip(corners, corners[1:] + (corners[:1] if closed else [])):
        if distance(p, q) > 1e-6:
            target.append(Segment(p, q, dash, width))


def _arc(words, dash):
    """The arc of a path M x y A r r 0 large sweep x y; y down, so that a sweep is clockwise."""
    x0, y0, r, large, sweep, x1, y1 = (float(words.split()[i]) for i in (1, 2, 4, 7, 8, 9, 10))
    half = math.hypot(x1 - x0, y1 - y0) / 2
    to_middle = math.sqrt(max(r * r - half * half, 0.0))  # from the centre to the chord
    bulge = r + to_middle if large else r - to_middle
    side = 1 if sweep else -1
    ux, uy = (x1 - x0) / (2 * half), (y1 - y0) / (2 * half)
    middle = ((x0 + x1) / 2 + side * uy * bulge, (y0 + y1) / 2 - side * ux * bulge)
    return Arc(*((x / MODULE, y / MODULE) for x, y in ((x0, y0), middle, (x1, y1))), dash)


def read(svg):
    """Shapes of a stripped SVG. Only black text belongs to the drawing; coloured is a finding's
    number or a computed figure."""
    root = ElementTree.fromstring(svg)
    box = [float(v) / MODULE for v in root.get("viewBox").split()]
    drawing = Drawing(box[2], box[3])
    for element in root:
        name, get = element.tag.removeprefix(NAMESPACE), element.get
        if name in ("polyline", "polygon"):
            _polygon(drawing, _points(get("points")), name == "polygon", get)
        elif name == "line":
            corners = [(float(get("x" + i)) / MODULE, float(get("y" + i)) / MODULE) for i in "12"]
            _polygon(drawing, corners, False, get)
        elif name == "rect":
            x, y, w, h = (float(get(key)) / MODULE for key in ("x", "y", "width", "height"))
            _polygon(drawing, [(x, y), (x + w, y), (x + w, y + h), (x, y + h)], True, get)
        elif name == "circle":
            centre = (float(get("cx")) / MODULE, float(get("cy")) / MODULE)
            filled = get("fill", "none") == "#000000"
            if filled or abs(float(get("stroke-width", "1")) - LINE_WIDTH) < 1e-3:
                drawing.circles.append(Circle(centre, float(get("r")) / MODULE, filled))
        elif name == "path":
            drawing.arcs.append(_arc(get("d"), dash_class(get("stroke-dasharray"))))
        elif name == "text" and get("fill") == "#000000":
            x, y, size = float(get("x")) / MODULE, float(get("y")) / MODULE, float(get("font-size"))
            anchor = get("text-anchor", "start")
            drawing.texts.append(Text(element.text or "", (x, y), size, anchor,
                                      text_box(element.text or "", x, y, size, anchor)))
    return drawing
