"""Faults of computed figures on a sheet: their grounds, and heads on lines."""

from geometry import enters, holds, overlap


def check(checker):
    """Computed figures keep their ground to themselves; heads stand on a run of their net."""
    for region in checker.sheet.regions:
        what = f"{region.sort} of {region.group.name}"
        if region.sort == "ground":
            for s in checker.strokes.near(region.box()):
                if s.sort != "border" and enters(s, region.corners) and not (
                        s.sort == "leader" and s.group is region.group):
                    checker.add("text-line", s.p, f"{what} on {s.sort} {s.group.name}")
        elif region.sort == "head":
            _head(checker, region, what)
        else:
            continue
        for text in checker.texts.near(region.box()):
            if text.group is not region.group and overlap(text.box(), region.box(), 0.02):
                checker.add("text-text", text.box()[:2], f"{what} on text '{text.words}'")
        for other in checker.regions.near(region.box()):
            if other.sort in ("ground", "head", "symbol") and other is not region and overlap(
                    other.box(), region.box(), 0.02) and other.group is not region.group:
                checker.add("text-text", region.corners[0], f"{what} on {other.sort} "
                         f"of {other.group.name}")


def _head(checker, region, what):
    tip, left, right = region.corners
    end = (left[0] + right[0]) / 2, (left[1] + right[1]) / 2
    net = checker.net(region.group)
    near = list(checker.strokes.near(region.box()))
    if not any(s.sort == "line" and checker.net(s.group) == net and holds(s, tip)
               and holds(s, end) for s in near):
        checker.add("text-line", tip, f"{what} on no line of its net")
    for s in near:
        if enters(s, region.corners) and not (s.sort == "line" and checker.net(s.group) == net):
            checker.add("text-line", s.p, f"{what} on {s.sort} {s.group.name}")
    for dot in checker.sheet.dots:
        x, y = dot.centre
        if overlap((x - dot.radius, y - dot.radius, x + dot.radius, y + dot.radius),
                   region.box(), 0.02):
            checker.add("dot", dot.centre, f"{what} on a dot of {dot.group.name}")
