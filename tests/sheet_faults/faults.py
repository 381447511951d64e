"""Counts what a drawing office would send a sheet back for, from its ink (`ink`) and from what the
circuit joins (`meant`). A fault is (class, place in mm, words); each pair of things counts once a
class."""

import collections

import computed
import geometry
from geometry import (INK, NEAR, enters, holds, inside, length, meet, off, overlap, passes, same,
                      shared)

MODULE = 2.5  # mm: the module of ISO 1219-1, from memory
CLEAR = 1.0  # mm: words keep so far from the frame (common practice, no source)
APART = 0.7  # mm: parallel strokes are at least so far apart (ISO 128-20, second hand)
CLASSES = (
    "symbols",      # symbol over symbol
    "through",      # line, shaft or frame through a symbol
    "nets",         # two nets on one another
    "ending",       # a net that ends on another, or a joint without a dot
    "dot",          # a dot where nothing of one net is joined
    "port",         # a port that no line reaches, or a line that ends in the open
    "grid",         # an end or a bend off the module grid
    "close",        # lines of two nets side by side within a module, other strokes within 0.7 mm
    "text-line", "text-symbol", "text-text",  # text on any of these
    "frame",        # anything on the border of the sheet or beyond it
    "lists",        # lists or title block over the drawing
    "leader",       # a leader over a text or a symbol that is not its own, or along a line
    "mark")         # the mark of a finding on anything
DIAGRAM = ("line", "symbol", "shaft", "assembly", "leader")


def on_grid(point):
    return all(abs(v / MODULE - round(v / MODULE)) < 0.01 for v in point)


class Checker:
    def __init__(self, sheet, meant):
        self.sheet, self.meant = sheet, meant
        self.found = {}
        self.strokes = geometry.Index(sheet.strokes)
        self.regions = geometry.Index(sheet.regions)
        self.texts = geometry.Index(sheet.texts)
        self.lines = [s for s in sheet.strokes if s.sort == "line"]
        # Symbol's group -> free ends of its strokes on the grid, which may be ports; the strokes.
        self.free = {}
        for group in sheet.groups:
            if group.sort == "symbol":
                self.free[group] = self._free_ends(group)
        self.reached = collections.defaultdict(set)  # (net, component) -> places
        self.contacts = {}  # (net, symbol's group, place) -> stroke of the symbol that ends there

    def net(self, group):
        """The net of a line's group."""
        return self.meant.net_of[group.name]

    def add(self, sort, place, words, *key):
        self.found.setdefault((sort, words, *key), (sort, place, words))

    def faults(self):
        self.ports()
        self.joints()
        self.side_by_side()
        self.symbols()
        self.words()
        self.border()
        self.lists()
        self.leaders()
        self.marks()
        computed.check(self)
        return list(self.found.values())

    def _free_ends(self, group):
        strokes = [s for s in self.sheet.strokes if s.group is group and s.sort == "symbol"]
        ends = []
        for s in strokes:
            for end, is_end in ((s.p, s.end_p), (s.q, s.end_q)):
                if is_end and on_grid(end) and not any(o is not s and holds(o, end)
                                                       for o in strokes):
                    ends.append((end, s))
        return ends

    # Lines and the ports of symbols.

    def ports(self):
        for line in self.lines:
            net = self.net(line.group)
            for other in self.strokes.near(line.box()):
                if other.sort == "symbol":
                    self._line_at_symbol(line, net, other)
            for region in self.regions.near(line.box()):
                if region.sort == "symbol" and (at := enters(line, region.corners)):
                    self.add("through", at, f"line {line.group.name} through {region.group.name}",
                             region.group)
        self._ports_on_ports()
        for net, components in self.meant.ports.items():
            for component, count in components.items():
                missing = count - len(self.reached[net, component])
                if sum(components.values()) > 1:
                    for i in range(missing):
                        self.add("port", self._place(component),
                                 f"no line reaches {component}, net {net}", i)

    def _place(self, component):
        return next((s.p for s in self.sheet.strokes if s.group.name == component
                     and s.sort == "symbol"), (0.0, 0.0))

    def _line_at_symbol(self, line, net, other):
        """A line may meet a symbol's stroke at the free end of that stroke, a port."""
        component = other.group.name
        if shared(line, other, INK) > INK:
            self.add("through", line.p, f"line {line.group.name} on a stroke of {component}",
                     other.group)
            return
        at = meet(line, other, INK)
        if at is None:
            return
        if any(same(at, end) for end, _ in self.free[other.group]):
            if component in self.meant.ports[net]:
                place = round(at[0], 1), round(at[1], 1)
                self.reached[net, component].add(place)
                self.contacts[net, other.group, place] = other
                return
        self.add("through", at, f"line {line.group.name} meets {component}", other.group)

    def _ports_on_ports(self):
        """Stubs of two symbols that end in one point join without a line."""
        ends = [(end, group) for group, found in self.free.items() for end, _ in found]
        at = collections.defaultdict(set)
        for end, group in ends:
            at[round(end[0], 1), round(end[1], 1)].add(group)
        for place, groups in at.items():
            if len(groups) < 2:
                continue
            for net, components in self.meant.ports.items():
                names = {g.name for g in groups if g.name in components}
                if len(names) > 1:
                    for name in names:
                        self.reached[net, name].add(place)

    # Joints, ends, dots, the grid.

    def joints(self):
        ends = {}
        for line in self.lines:
            for end, is_end in ((line.p, line.end_p), (line.q, line.end_q)):
                if line.curved and not is_end:
                    continue
                ends.setdefault((round(end[0], 1), round(end[1], 1), self.net(line.group)),
                                (end, line))
                if not on_grid(end):
                    self.add("grid", end, f"line {line.group.name} ends off the grid", end)
        for (_, _, net), (end, line) in ends.items():
            self._end(end, line, net)
        for dot in self.sheet.dots:
            self._dot(dot)

    def _at(self, point):
        reach = (point[0], point[1], point[0], point[1])
        return [s for s in self.strokes.near(reach) if s.sort == "line" and holds(s, point)]

    def _branches(self, point, net):
        """Directions in which ink of a net, stubs of symbols included, leaves a point."""
        found = []
        stubs = [s for _, ends in self.free.items() for end, s in ends if same(end, point)]
        for s in [s for s in self._at(point) if self.net(s.group) == net] + stubs:
            for end in (s.p, s.q):
                if not same(end, point):
                    size = max(abs(end[0] - point[0]), abs(end[1] - point[1]))
                    way = (end[0] - point[0]) / size, (end[1] - point[1]) / size
                    if not any(same(way, w, 0.1) for w in found):
                        found.append(way)
        return found

    def _end(self, end, line, net):
        for other in self._at(end):
            if self.net(other.group) != net:
                self.add("ending", end, f"line {line.group.name} ends on {other.group.name}")
        branches = self._branches(end, net)
        dotted = any(same(d.centre, end) and self.net(d.group) == net for d in self.sheet.dots)
        if len(branches) > 2 and not dotted:
            self.add("ending", end, f"joint of {line.group.name} without a dot", end)
        if len(branches) < 2 and sum(self.meant.ports[net].values()) > 1:
            self.add("port", end, f"line {line.group.name} ends in the open", end)

    def _dot(self, dot):
        net = self.net(dot.group)
        x, y = dot.centre
        box = (x - dot.radius, y - dot.radius, x + dot.radius, y + dot.radius)
        for s in self.strokes.near(box):
            if s.sort == "line" and self.net(s.group) != net and passes(s, box):
                self.add("dot", dot.centre, f"dot of {dot.group.name} on {s.group.name}")
        hose = any(s.curved and (same(s.p, dot.centre) or same(s.q, dot.centre))
                   for s in self._at(dot.centre))
        if not hose and len(self._branches(dot.centre, net)) < 3:
            self.add("dot", dot.centre, f"dot of {dot.group.name} joins nothing", dot.centre)

    # Lines side by side.

    def side_by_side(self):
        for a in self.lines:
            for b in self.strokes.near(a.box(), MODULE):
                if b.sort == "shaft" and shared(a, b) > NEAR:
                    self.add("nets", a.p, f"line {a.group.name} on shaft {b.group.name}")
                if b.sort != "line" or self.net(a.group) >= self.net(b.group):
                    continue
                names = f"{a.group.name} and {b.group.name}"
                if shared(a, b) > NEAR:
                    self.add("nets", b.p, f"lines {names} on one another")
                elif self._apart(a, b) < MODULE - NEAR:
                    self.add("close", b.p, f"lines {names} {self._apart(a, b):g} mm apart")
        for a in self.sheet.strokes:
            if a.sort in ("line", "shaft", "assembly"):
                self._beside(a)

    def _beside(self, a):
        """Two strokes that run along each other so near that they blur."""
        for b in self.strokes.near(a.box(), APART):
            if b.group is a.group or b.sort not in ("line", "shaft", "assembly", "symbol"):
                continue
            if b.sort == a.sort == "line" or b.sort != "symbol" and a.group.number > b.group.number:
                continue  # told by `side_by_side`, or the other way round
            if self._apart(a, b) < APART:
                self.add("close", b.p, f"{a.sort} {a.group.name} along {b.sort} {b.group.name}")

    @staticmethod
    def _apart(a, b):
        """Between two parallel strokes, if they run side by side; of others a great length."""
        if not (a.level() and b.level() or a.upright() and b.upright()):
            return 1e9
        away, p = off(a, b.p)
        q = off(a, b.q)[1]
        beside = min(max(p, q), length(a)) - max(min(p, q), 0.0)
        return away if beside > NEAR else 1e9

    # Symbols.

    def symbols(self):
        for s in self.sheet.strokes:
            if s.sort in ("symbol", "shaft", "assembly"):
                self._on_symbols(s)

    def _on_symbols(self, s):
        sort = "symbols" if s.sort == "symbol" else "through"
        for other in self.strokes.near(s.box()):
            if other.sort != "symbol" or other.group is s.group:
                continue
            at = s.p if shared(s, other, INK) > INK else meet(s, other, INK)
            if at is not None and not self._may_meet(s, other, at):
                self._over(sort, at, s, other)
        for region in self.regions.near(s.box()):
            if region.sort == "symbol" and region.group is not s.group:
                if at := enters(s, region.corners):
                    self._over(sort, at, s, region)

    def _over(self, sort, at, s, other):
        names = sorted((f"{s.sort} {s.group.name}", f"symbol {other.group.name}"))
        self.add(sort, at, " over ".join(names))

    def _may_meet(self, s, other, at):
        """Shafts end at symbols; stubs of joined symbols may meet at their ends."""
        if s.sort == "shaft":
            return not inside(s, at) and not shared(s, other, INK) > INK
        if s.sort != "symbol" or shared(s, other, INK) > INK:
            return False
        return all(any(same(at, end) for end, _ in self.free[g]) for g in (s.group, other.group)) \
            and any({s.group.name, other.group.name} <= set(c) for c in self.meant.ports.values())

    # Words.

    def words(self):
        for text in self.sheet.texts:
            what = f"text '{text.words}' of {text.group.name}"
            for s in self.strokes.near(text.box()):
                if s.sort == "border" and text.sort != "border" or s.sort == "leader":
                    continue  # told by `border` and `leaders`
                if s.sort == "mark" and s.group is not text.group:
                    continue  # told by `marks`
                if not any(passes(s, b) for b in text.boxes):
                    continue
                sort = "text-symbol" if s.sort == "symbol" else "text-line"
                self.add(sort, s.p, f"{what} on {s.sort} {s.group.name}")
            self._words_in_symbols(text, what)
            for other in self.texts.near(text.box()):
                if other is text:
                    continue
                if any(overlap(a, b, 0.02) for a in text.boxes for b in other.boxes):
                    names = sorted((what, f"text '{other.words}' of {other.group.name}"))
                    self.add("text-text", text.box()[:2], " on ".join(names))

    def _words_in_symbols(self, text, what):
        left, top, right, bottom = text.box()
        points = [((left + right) / 2, (top + bottom) / 2), (left, top), (right, bottom)]
        for region in self.regions.near(text.box()):
            if region.sort != "symbol" or text.sort == "inner" and region.group is text.group:
                continue
            if any(geometry.within(region.corners, p) for p in points):
                self.add("text-symbol", points[0], f"{what} in symbol {region.group.name}")

    # The sheet.

    def border(self):
        """The drawing space is what the longest wide strokes enclose (ISO 5457: 0.7 mm)."""
        wide = [s for s in self.sheet.strokes if s.sort == "border" and s.width > 0.6]
        most = max((length(s) for s in wide), default=0.0)
        sides = [s for s in wide if length(s) > most - 1] + [
            s for s in wide if s.upright() and length(s) > most / 3]
        if not sides:
            self.add("frame", (0.0, 0.0), "the sheet has no frame")
            return
        xs, ys = zip(*[p for s in sides for p in (s.p, s.q)])
        space = min(xs), min(ys), max(xs), max(ys)
        strokes = [s for s in self.sheet.strokes if s.sort != "border"]
        for thing in strokes + [t for t in self.sheet.texts if t.sort != "border"]:
            # Words that touch the frame with nothing between read as part of it.
            by = thing.width / 2 if hasattr(thing, "width") else -CLEAR
            # A list may stand on the frame, its strokes on those of the frame.
            by += 0.35 if thing.sort == "list" and hasattr(thing, "width") else 0.0
            box = thing.box()
            if (box[0] + by < space[0] or box[1] + by < space[1] or box[2] - by > space[2]
                    or box[3] - by > space[3]):
                words = f"'{thing.words}'" if hasattr(thing, "words") else ""
                self.add("frame", box[:2], f"{thing.sort} {thing.group.name} {words} "
                         "on the frame or outside")

    def lists(self):
        boxes = [s.box() for s in self.sheet.strokes + self.sheet.texts if s.sort == "list"]
        for box in merged(boxes):
            for thing in list(self.strokes.near(box, 0.0)) + list(self.texts.near(box, 0.0)):
                if thing.sort in ("list", "border", "mark"):
                    continue
                if hasattr(thing, "words") or passes(thing, box):
                    self.add("lists", thing.box()[:2],
                             f"{thing.sort} of {thing.group.name} under a list")

    def leaders(self):
        for s in self.sheet.strokes:
            if s.sort != "leader":
                continue
            for text in self.texts.near(s.box()):
                if text.group is not s.group and any(passes(s, b) for b in text.boxes):
                    self.add("leader", text.box()[:2],
                             f"leader of {s.group.name} on text '{text.words}'")
            for other in self.strokes.near(s.box()):
                if other.sort == "symbol" and other.group.name != s.group.name and meet(s, other):
                    self.add("leader", meet(s, other),
                             f"leader of {s.group.name} through {other.group.name}")
                if other.sort == "line" and shared(s, other) > NEAR:
                    self.add("leader", other.p, f"leader of {s.group.name} along a line")

    def marks(self):
        for region in self.sheet.regions:
            if region.sort != "mark":
                continue
            for s in self.strokes.near(region.box()):
                if s.group is region.group:
                    continue
                if enters(s, region.corners) or any(
                        meet(s, o) for o in self.sheet.strokes if o.group is region.group):
                    self.add("mark", region.corners[0],
                             f"mark {region.group.name} on {s.sort} {s.group.name}")
            for text in self.texts.near(region.box()):
                if text.group is not region.group and any(
                        geometry.within(region.corners, ((b[0] + b[2]) / 2, (b[1] + b[3]) / 2))
                        or any(passes(o, b) for o in self.sheet.strokes
                               if o.group is region.group) for b in text.boxes):
                    self.add("mark", region.corners[0],
                             f"mark {region.group.name} on text '{text.words}'")


def merged(boxes, gap=4.5):
    """Boxes that stand nearer than the pitch of a list's rows, taken together."""
    boxes = list(boxes)
    while True:
        out = []
        for box in boxes:
            for i, other in enumerate(out):
                if overlap(box, other, -gap):
                    out[i] = (min(box[0], other[0]), min(box[1], other[1]),
                              max(box[2], other[2]), max(box[3], other[3]))
                    break
            else:
                out.append(box)
        if len(out) == len(boxes):
            return out
        boxes = out


def count(faults):
    """Class -> number, of the classes that have any."""
    counts = collections.Counter(sort for sort, _, _ in faults)
    return {c: counts[c] for c in CLASSES if counts[c]}


