"""Plants faults in sound sheets: each function yields (class that must be told, what was done,
SVG). `of` is the sheet as the checker reads it, `svg` its text."""

import copy
import re
import xml.etree.ElementTree as ElementTree

import faults
import geometry
import tally
from ink import NAMESPACE

MOST = 6  # plants of one sort on one sheet


def _page(svg):
    ElementTree.register_namespace("", NAMESPACE.strip("{}"))
    root = ElementTree.fromstring(svg)
    return root, list(root.find(NAMESPACE + "g"))


def _groups(svg, sort, name=None):
    """A new page, and its groups of an id that begins so."""
    root, groups = _page(svg)
    return root, [g for g in groups if g.get("id", "").startswith(sort)
                  and name in (None, g.findtext(NAMESPACE + "title"))]


def _text(root):
    return ElementTree.tostring(root, encoding="unicode")


def _move(element, dx, dy):
    """Moves an element and all in it."""
    for e in element.iter():
        for key, by in (("x", dx), ("cx", dx), ("y", dy), ("cy", dy)):
            if e.get(key) is not None:
                e.set(key, f"{float(e.get(key)) + by:g}")
        if e.get("points"):
            pairs = (p.split(",") for p in e.get("points").split())
            e.set("points", " ".join(f"{float(x) + dx:g},{float(y) + dy:g}" for x, y in pairs))
        if e.get("d"):
            def shifted(match):
                x, y = match.groups()
                return f"{float(x) + dx:g} {float(y) + dy:g}"
            start, arc, end = re.match(r"M (.*?) (A \S+ \S+ 0 \d \d) (.*)", e.get("d")).groups()
            place = re.compile(r"(\S+) (\S+)")
            e.set("d", f"M {place.sub(shifted, start)} {arc} {place.sub(shifted, end)}")


def _points(p, q):
    return f"{p[0]:g},{p[1]:g} {q[0]:g},{q[1]:g}"


def _line(svg, name, p, q):
    """The sheet with one more stroke of a line."""
    root, (group,) = _groups(svg, "line-", name)
    like = copy.deepcopy(next(e for e in group if e.tag == NAMESPACE + "polyline"))
    like.set("points", _points(p, q))
    group.append(like)
    return _text(root)


def _middle(box):
    return (box[0] + box[2]) / 2, (box[1] + box[3]) / 2


def _on_grid(point):
    return tuple(round(v / faults.MODULE) * faults.MODULE for v in point)


def _spread(things):
    """Some of many, from all over the sheet."""
    things = list(things)
    return things[::max(len(things) // MOST, 1)][:MOST]


def symbols(svg, of):
    """A symbol set onto another one."""
    boxes = list(tally.boxes_of(of.sheet).items())
    for (one, a), (other, b) in _spread(zip(boxes, boxes[1:])):
        root, groups = _groups(svg, "component-", one.name)
        (ax, ay), (bx, by) = _on_grid(_middle(a)), _on_grid(_middle(b))
        _move(groups[0], bx - ax, by - ay)
        yield "symbols", f"{one.name} on {other.name}", _text(root)


def lines_through_symbols(svg, of):
    """A line drawn across a symbol's middle, or along its whole side."""
    for group, box in _spread(tally.boxes_of(of.sheet).items()):
        x, y = _on_grid(_middle(box))
        # One of its own lines may well end at its side.
        name = next(s.group.name for s in of.lines
                    if group.name not in of.meant.ports[of.net(s.group)])
        yield "through", f"{name} across {group.name}", _line(
            svg, name, (box[0] - 5, y), (box[2] + 5, y))
        yield "through", f"{name} beside {group.name}", _line(
            svg, name, (box[0], box[1] - 5), (box[0], box[3] + 5))


def frames_through_symbols(svg, of):
    boxes = tally.boxes_of(of.sheet)
    for stroke in [s for s in of.sheet.strokes if s.sort == "assembly" and s.upright()][:1]:
        for group, box in _spread(boxes.items()):
            root, groups = _groups(svg, "assembly-", stroke.group.name)
            frame = next(e for e in groups[0] if e.tag == NAMESPACE + "polygon")
            _move(frame, _middle(box)[0] - stroke.p[0], box[1] - stroke.p[1] - 5)
            yield "through", f"frame through {group.name}", _text(root)


def _of_other_nets(of):
    """Pairs of strokes of two nets, the one level, the other upright."""
    level = [s for s in of.lines if s.level() and geometry.length(s) >= 10]
    upright = [s for s in of.lines if s.upright() and geometry.length(s) >= 10]
    return [(a, b) for a in _spread(level) for b in _spread(upright)
            if of.net(a.group) != of.net(b.group)]


def nets(svg, of):
    """A line drawn on a line of another net, or half a module beside it."""
    for a, b in _spread(_of_other_nets(of)):
        x, y = a.p
        name = b.group.name
        yield "nets", f"{name} on {a.group.name}", _line(svg, name, (x, y), (x + 7.5, y))
        yield "close", f"{name} beside {a.group.name}", _line(
            svg, name, (x, y + 1.25), (x + 7.5, y + 1.25))


def ends(svg, of):
    """A line led to a line of another net, ended in the open, off the grid."""
    for a, b in _spread(_of_other_nets(of)):
        name, (x, y) = b.group.name, _on_grid(_middle((*a.p, *a.q)))
        yield "ending", f"{name} led to {a.group.name}", _line(svg, name, (x, y), (x, y - 5))
        x, y = _on_grid(_middle((*b.p, *b.q)))
        for sort in ("grid", "port"):
            yield sort, f"{name} into the open", _line(svg, name, (x, y), (x - 1.25, y))


def dots(svg, of):
    """Dots taken away, and set on crossings and bare lines."""
    for dot in _spread(d for d in of.sheet.dots):
        root, (group,) = _groups(svg, "line-", dot.group.name)
        for e in [e for e in group if e.get("class") == "joint"
                  and abs(float(e.get("cx")) - dot.centre[0]) < 0.01
                  and abs(float(e.get("cy")) - dot.centre[1]) < 0.01]:
            moved = copy.deepcopy(e)
            group.remove(e)
            yield "ending", f"no dot at {dot.centre}", _text(root)
            _move(moved, 2.5, 2.5)
            group.append(moved)
            yield "dot", f"dot at {dot.centre} moved", _text(root)
    for a, b in _of_other_nets(of):
        at = geometry.meet(a, b)
        if at and geometry.inside(a, at) and geometry.inside(b, at):
            root, (group,) = _groups(svg, "line-", a.group.name)
            ElementTree.SubElement(group, NAMESPACE + "circle", {
                "class": "joint", "cx": f"{at[0]:g}", "cy": f"{at[1]:g}", "r": "0.938",
                "fill": "#000000"})
            yield "dot", f"dot on the crossing {at}", _text(root)


def missing_lines(svg, of):
    """A line's last stroke before a port taken away, or made shorter."""
    for (_, group, place), _ in _spread(of.contacts.items()):
        line = next(s for s in of.lines if geometry.same(s.p, place, 0.1)
                    or geometry.same(s.q, place, 0.1))
        near, far = (line.p, line.q) if geometry.same(line.p, place, 0.1) else (line.q, line.p)
        words = {_points(line.p, line.q), _points(line.q, line.p)}
        middle = _on_grid(_middle((*near, *far)))
        for shorter in (False, True) if not geometry.same(middle, near) else (False,):
            root, (lines,) = _groups(svg, "line-", line.group.name)
            drawn = [e for e in lines if e.get("points") in words]
            for e in drawn:
                lines.remove(e)
                if shorter:
                    e.set("points", _points(far, middle))
                    lines.append(e)
            if drawn:
                yield "port", f"{group.name} not reached", _text(root)


def words(svg, of):
    """Designations, values and port letters set on a line, a symbol, another text, the border."""
    stroke = max(of.lines, key=geometry.length)
    boxes = list(tally.boxes_of(of.sheet).items())
    border = next(s for s in of.sheet.strokes if s.sort == "border" and s.width > 0.6)
    foreign = [t for t in of.sheet.texts if t.sort in ("label", "letter", "line")]
    for text in _spread(foreign):
        x, y = _middle(text.box())
        symbol = next(b for g, b in boxes if g is not text.group)
        other = next(t for t in foreign if t.group is not text.group)
        for sort, (to_x, to_y) in (
                ("text-line", _middle((*stroke.p, *stroke.q))),
                ("text-symbol", (_middle(symbol)[0], symbol[1])),
                ("text-symbol", _middle(symbol)),
                ("text-text", _middle(other.box())), ("frame", border.p), ("frame", (3.0, 100.0))):
            root, groups = _groups(svg, "", text.group.name)
            for e in [e for g in groups for e in g.iter(NAMESPACE + "text")]:
                if e.text == text.words:
                    _move(e, to_x - x, to_y - y)
            yield sort, f"'{text.words}' at {to_x:g},{to_y:g}", _text(root)


def lists(svg, of):
    """A symbol under the title block, a list on the diagram."""
    text = next(t for t in of.sheet.texts if t.group.name == "title block and lists"
                and t.words == "Title")
    for group, box in _spread(tally.boxes_of(of.sheet).items()):
        (x, y), (to_x, to_y) = _on_grid(_middle(box)), _on_grid(text.box()[:2])
        root, groups = _groups(svg, "component-", group.name)
        _move(groups[0], to_x - x, to_y - y)
        yield "lists", f"{group.name} in the title block", _text(root)
        root, groups = _groups(svg, "caution")
        one = next(t for t in of.sheet.texts if t.group.name == "cautions")
        _move(groups[0], x - one.box()[0], y - one.box()[1])
        yield "lists", f"cautions at {x:g},{y:g}", _text(root)


def leaders(svg, of):
    """A leader that passes another symbol's label."""
    labels = [t for t in of.sheet.texts if t.sort == "label"]
    for text in _spread(labels):
        other = next(t for t in labels if t.group.name != text.group.name)
        box = other.box()
        root, groups = _groups(svg, "component-", text.group.name)
        ElementTree.SubElement(groups[0], NAMESPACE + "polyline", {
            "class": "value", "stroke": "#000000", "stroke-width": "0.18",
            "points": _points((box[0] - 2, _middle(box)[1]), (box[2] + 2, _middle(box)[1]))})
        yield "leader", f"leader of {text.group.name} on '{other.words}'", _text(root)


def marks(svg, of):
    """The mark of a finding set on a line and on a text."""
    line = max(of.lines, key=geometry.length)
    label = next(t for t in of.sheet.texts if t.sort == "label")
    region = next((r for r in of.sheet.regions if r.sort == "mark"), None)
    if region is None:
        return
    for to_x, to_y in (_middle((*line.p, *line.q)), _middle(label.box())):
        root, groups = _groups(svg, "finding-", region.group.name)
        x, y = _middle(region.box())
        _move(groups[0], to_x - x, to_y - y)
        yield "mark", f"mark at {to_x:g},{to_y:g}", _text(root)


ALL = (symbols, lines_through_symbols, frames_through_symbols, nets, ends, dots, missing_lines,
       words, lists, leaders, marks)
