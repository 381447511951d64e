"""Drawings damaged in one place each. The tags of the drawing serve here to find the place; the
reader never sees them. Each function takes an SVG and its circuit and gives (what was done, damaged
SVG)."""

import copy
import xml.etree.ElementTree as ElementTree

import compare

SVG = "{http://www.w3.org/2000/svg}"
MODULE = 2.5
TURNED = ("pump", "check-valve", "relief-valve", "flushing-valve", "directional-valve",
          "sequence-valve", "counterbalance-valve", "unloading-valve", "reducing-valve",
          "priority-valve", "pilot-control-valve", "throttle-check", "flow-control", "pump-motor",
          "hand-pump", "cylinder", "accumulator", "breather", "gauge", "thermometer",
          "level-indicator", "pressure-switch", "sensor", "thermostatic-bypass", "plug",
          "measuring-point")


def _groups(root, kind):
    return [g for g in root.iter(SVG + "g") if kind in g.get("class", "").split()]


def _points(element):
    numbers = [float(v) for v in element.get("points").replace(",", " ").split()]
    return list(zip(numbers[0::2], numbers[1::2]))


def _set_points(element, points):
    element.set("points", " ".join(f"{x:g},{y:g}" for x, y in points))


def _text(root):
    return ElementTree.tostring(root, encoding="unicode")


def _each(svg, kind, wanted):
    """A fresh copy of the drawing for every wanted element of groups of a kind: (copy, group,
    element)."""
    places = [(i, j) for i, g in enumerate(_groups(ElementTree.fromstring(svg), kind))
              for j, element in enumerate(g) if wanted(element)]
    for i, j in places:
        root = ElementTree.fromstring(svg)
        group = _groups(root, kind)[i]
        yield root, group, group[j]


def _is(name, cls=None):
    return lambda e: e.tag == SVG + name and (cls is None or e.get("class") == cls)


def _is_stroke(element):
    """A stroke of a line's own; what leads from its id to it is none."""
    return element.tag == SVG + "polyline" and element.get("class") != "value"


def without_a_dot(svg, _):
    for root, group, dot in _each(svg, "line", _is("circle")):
        group.remove(dot)
        yield f"dot at {dot.get('cx')},{dot.get('cy')} of {group[0].text} taken away", _text(root)


def without_a_line(svg, _):
    for root, group, stroke in _each(svg, "line", _is_stroke):
        group.remove(stroke)
        yield f"stroke {stroke.get('points')} of {group[0].text} taken away", _text(root)


def with_a_hose_straight(svg, _):
    """A hose drawn as a line, its dots left out."""
    for root, group, arc in _each(svg, "line", _is("path")):
        words = arc.get("d").split()
        dots = {(e.get("cx"), e.get("cy")): e for e in group if e.tag == SVG + "circle"}
        for place in ((words[1], words[2]), (words[-2], words[-1])):
            group.remove(dots[place])
        style = {k: v for k, v in arc.attrib.items() if k != "d"}
        group.remove(arc)
        ElementTree.SubElement(group, SVG + "polyline", {
            "points": f"{words[1]},{words[2]} {words[-2]},{words[-1]}", **style})
        yield f"hose {group[0].text} drawn straight", _text(root)


def with_a_line_moved(svg, _):
    """A stroke moved by a module across its direction."""
    for root, group, stroke in _each(svg, "line", _is_stroke):
        points = _points(stroke)
        level = points[0][1] == points[-1][1]
        _set_points(stroke, [(x, y + MODULE) if level else (x + MODULE, y) for x, y in points])
        yield f"stroke of {group[0].text} moved to {stroke.get('points')}", _text(root)


def with_a_dash_changed(svg, meant):
    """A stroke of a line with a stated function drawn with the other dash."""
    for root, group, stroke in _each(svg, "line", _is_stroke):
        points = _points(stroke)
        length = sum(abs(a[0] - b[0]) + abs(a[1] - b[1]) for a, b in zip(points, points[1:]))
        if meant.named_lines.get(group[0].text) and length > 3 * MODULE:
            if stroke.attrib.pop("stroke-dasharray", None) is None:
                stroke.set("stroke-dasharray", "3 0.75")
            yield f"dash of {group[0].text} changed", _text(root)


def _alike(meant, label, a, b):
    """Whether nobody could tell two ports apart: case ports, or ports of a device, on one net."""
    kind = next(c.kind for c in meant.components.values() if c.label == label)
    return (kind == "device" or a[0] == b[0] == "L") and \
        any({(label, a), (label, b)} <= net for net in compare.merged(meant.nets()))


def with_letters_swapped(svg, meant):
    """Two port letters of a symbol in one another's place."""
    root = ElementTree.fromstring(svg)
    for i, group in enumerate(_groups(root, "symbol")):
        count = sum(1 for e in group if e.get("class") == "port-letter")
        for a in range(count):
            for b in range(a + 1, count):
                again = ElementTree.fromstring(svg)
                own = _groups(again, "symbol")[i]
                letters = [e for e in own if e.get("class") == "port-letter"]
                if _alike(meant, own[0].text, letters[a].text, letters[b].text):
                    continue
                letters[a].text, letters[b].text = letters[b].text, letters[a].text
                yield (f"{letters[b].text} and {letters[a].text} of {own[0].text} swapped",
                       _text(again))


def with_a_word_at_a_frame_changed(svg, _):
    """A frame's name, or the letter of a port where a line passes through."""
    for root, group, word in _each(svg, "frame", _is("text")):
        was, word.text = word.text, "Zz"
        yield f"{was} at the frame {group[0].text} changed", _text(root)


def with_labels_swapped(svg, _):
    """The designations of two symbols in one another's place."""
    count = len([e for e in ElementTree.fromstring(svg).iter() if e.get("class") == "designation"])
    for i in range(count - 1):
        root = ElementTree.fromstring(svg)
        one, other = [e for e in root.iter() if e.get("class") == "designation"][i:i + 2]
        if one.text != other.text:
            one.text, other.text = other.text, one.text
            yield f"{other.text} and {one.text} swapped", _text(root)


def _body(group):
    """Middle of a symbol's first closed shape: its circle, ball or box; else of its strokes."""
    circles = [e for e in group if e.tag == SVG + "circle" and e.get("fill") is None]
    boxes = [e for e in group if e.tag == SVG + "polygon" and e.get("fill") is None]
    if not circles and not boxes:
        boxes = [e for e in group if e.get("points")]
    big = [c for c in circles if float(c.get("r")) > MODULE]
    if big or not boxes:
        return float((big or circles)[0].get("cx")), float((big or circles)[0].get("cy"))
    points = [p for b in boxes for p in _points(b)] if len(boxes) > 2 else _points(boxes[0])
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def with_a_symbol_turned(svg, meant):
    """All shapes of a symbol (not its words) turned by half a turn round its body."""
    kinds = {c.label: c.kind for c in meant.components.values()}
    root = ElementTree.fromstring(svg)
    for i, found in enumerate(_groups(root, "symbol")):
        if kinds.get(found[0].text) not in TURNED:
            continue
        again = copy.deepcopy(root)
        group = _groups(again, "symbol")[i]
        cx, cy = _body(group)
        for element in group:
            if element.get("points"):
                _set_points(element, [(2 * cx - x, 2 * cy - y) for x, y in _points(element)])
            elif element.tag == SVG + "path":
                m, x0, y0, *arc, x1, y1 = element.get("d").split()
                element.set("d", " ".join([m, f"{2 * cx - float(x0):g}", f"{2 * cy - float(y0):g}",
                                           *arc, f"{2 * cx - float(x1):g}",
                                           f"{2 * cy - float(y1):g}"]))
            elif element.tag == SVG + "circle":
                element.set("cx", f"{2 * cx - float(element.get('cx')):g}")
                element.set("cy", f"{2 * cy - float(element.get('cy')):g}")
        yield f"{found[0].text} turned", _text(again)


def without_a_part(svg, _):
    """A symbol without one of its shapes."""
    shapes = (SVG + "polyline", SVG + "polygon", SVG + "circle", SVG + "path")
    for root, group, element in _each(svg, "symbol", lambda e: e.tag in shapes
                                      and e.get("class") is None):
        group.remove(element)
        yield (f"{group[0].text} without its {element.tag.removeprefix(SVG)} "
               f"{element.get('points') or element.get('d') or element.get('cx')}",
               _text(root))


def with_a_dot_on_a_crossing(svg, _):
    """A joint's dot where two lines of different nets only cross."""
    root = ElementTree.fromstring(svg)
    strokes = [(g[0].text, *s) for g in _groups(root, "line") for e in g
               if _is_stroke(e)
               for s in zip(_points(e), _points(e)[1:])]
    level = [s for s in strokes if s[1][1] == s[2][1]]
    upright = [s for s in strokes if s[1][0] == s[2][0]]
    for name, a, b in level:
        for other, c, d in upright:
            if name != other and min(a[0], b[0]) < c[0] < max(a[0], b[0]) and \
                    min(c[1], d[1]) < a[1] < max(c[1], d[1]):
                again = ElementTree.fromstring(svg)
                ElementTree.SubElement(again, SVG + "circle", {
                    "cx": f"{c[0]:g}", "cy": f"{a[1]:g}", "r": "0.938", "fill": "#000000"})
                yield f"dot where {name} and {other} cross", _text(again)
