"""Takes from a drawing all but what an eye sees: shapes with stroke width, dashes and fill, and
texts.

Ids, classes, titles, descriptions, data attributes and groups go; transforms and inherited style
are resolved into each element; the elements are shuffled with a seed. What is left is again an
SVG."""

import random
import re
import xml.etree.ElementTree as ElementTree

NAMESPACE = "{http://www.w3.org/2000/svg}"
INHERITED = ("fill", "stroke", "stroke-width", "stroke-dasharray", "font-size", "text-anchor")
GEOMETRY = {
    "polyline": ("points",), "polygon": ("points",), "circle": ("cx", "cy", "r"),
    "path": ("d",), "line": ("x1", "y1", "x2", "y2"), "rect": ("x", "y", "width", "height"), "text": ("x", "y"),
}
SILENT = ("title", "desc", "metadata", "defs", "style")


def _moved(matrix, text):
    """The matrix after a transform of moves only; any other transform would need more than this
    reader."""
    for part in text.replace(",", " ").split(")"):
        name, _, numbers = part.strip().partition("(")
        if not name:
            continue
        values = [float(v) for v in numbers.split()]
        if name != "translate":
            raise ValueError(f"transform {name} is not read")
        matrix = (matrix[0] + values[0], matrix[1] + (values[1] if len(values) > 1 else 0.0))
    return matrix


# Of paths only an arc of a circle: M x y A r r 0 large sweep x y.
ARC = re.compile(r"M (\S+) (\S+) A (\S+) \3 0 ([01]) ([01]) (\S+) (\S+)\Z")


def _shift(name, values, by):
    """Geometry attributes moved by an offset."""
    if name in ("polyline", "polygon"):
        numbers = [float(v) for v in values["points"].replace(",", " ").split()]
        pairs = zip(numbers[0::2], numbers[1::2])
        return {"points": " ".join(f"{x + by[0]:g},{y + by[1]:g}" for x, y in pairs)}
    if name == "path":
        arc = ARC.match(values["d"])
        if not arc:
            raise ValueError(f"path {values['d']} is not read")
        x0, y0, r, large, sweep, x1, y1 = (float(v) for v in arc.groups())
        return {"d": f"M {x0 + by[0]:g} {y0 + by[1]:g} A {r:g} {r:g} 0 {large:g} {sweep:g} "
                     f"{x1 + by[0]:g} {y1 + by[1]:g}"}
    moved = dict(values)
    for key in values:
        if key in ("x", "cx", "x1", "x2"):
            moved[key] = f"{float(values[key]) + by[0]:g}"
        elif key in ("y", "cy", "y1", "y2"):
            moved[key] = f"{float(values[key]) + by[1]:g}"
    return moved


def _walk(element, style, offset, found):
    name = element.tag.removeprefix(NAMESPACE)
    if name in SILENT:
        return
    style = {**style, **{key: element.get(key) for key in INHERITED
                         if element.get(key) is not None}}
    if element.get("style") or element.get("visibility") or element.get("display"):
        raise ValueError(f"style of <{name}> is not read")
    offset = _moved(offset, element.get("transform", ""))
    if name in ("svg", "g"):
        for child in element:
            _walk(child, style, offset, found)
    elif name in GEOMETRY:
        values = {key: element.get(key, "0") for key in GEOMETRY[name]}
        words = "".join(element.itertext()) if name == "text" else None
        found.append((name, {**_shift(name, values, offset), **style}, words))
    else:
        raise ValueError(f"<{name}> is not read")


def strip(svg, seed):
    """The SVG text without anything but geometry, style and words, in an order that the seed
    gives."""
    root = ElementTree.fromstring(svg)
    found = []
    _walk(root, {}, (0.0, 0.0), found)
    random.Random(seed).shuffle(found)
    out = ElementTree.Element(NAMESPACE + "svg", {"viewBox": root.get("viewBox")})
    if root.get("viewBox").split() != ["0", "0", root.get("width").removesuffix("mm"),
                                       root.get("height").removesuffix("mm")]:
        raise ValueError("one unit of the drawing is not one millimetre")
    for name, attributes, words in found:
        ElementTree.SubElement(out, NAMESPACE + name, attributes).text = words
    return ElementTree.tostring(out, encoding="unicode")
