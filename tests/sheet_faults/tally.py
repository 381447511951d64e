"""What lines cost a reader: crossings, bends, length of ink and the area that a drawing takes. One
measure for the program's sheets and for a layout engine's answer."""

import collections
import dataclasses
import math

import geometry
from ink import Stroke

PLACES = 2  # decimals of a millimetre: what counts as one line


@dataclasses.dataclass
class Tally:
    crossings: int = 0
    bends: int = 0
    length: float = 0.0  # mm, ink of a net that lies on itself counted once
    area: float = 0.0  # mm2, of the smallest rectangle round symbols and lines


def _merged(strokes):
    """The strokes of one net as longest runs, so that none lies on another: (level, at, from, to)
    of level and upright ones, and all others as they are."""
    rows, others = collections.defaultdict(list), []
    for s in strokes:
        if s.curved or not (s.level() or s.upright()):
            others.append(s)
            continue
        axis = 0 if s.level() else 1
        rows[s.level(), round(s.p[1 - axis], PLACES)].append(sorted((s.p[axis], s.q[axis])))
    runs = []
    for (level, at), stretches in rows.items():
        stretches.sort()
        low, high = stretches[0]
        for a, b in stretches[1:]:
            if a > high + geometry.NEAR:
                runs.append((level, at, low, high))
                low, high = a, b
            high = max(high, b)
        runs.append((level, at, low, high))
    return runs, others


def _as_strokes(runs):
    for level, at, low, high in runs:
        p, q = ((low, at), (high, at)) if level else ((at, low), (at, high))
        yield Stroke(p, q, 0.0, None, "line")


def _ways(strokes, point):
    """Of level and upright strokes: how many leave a point, and whether all on one line."""
    ways = set()
    for s in strokes:
        if geometry.holds(s, point):
            for end in (s.p, s.q):
                if not geometry.same(end, point):
                    ways.add((math.copysign(1, end[0] - point[0]) if s.level() else 0,
                              math.copysign(1, end[1] - point[1]) if not s.level() else 0))
    return ways


def _bends(strokes, stubs):
    """Places where just two ways of a net meet at a right angle; stubs of symbols are ways too."""
    ends = {(round(p[0], PLACES), round(p[1], PLACES)) for s in strokes for p in (s.p, s.q)}
    count = 0
    for end in ends:
        ways = _ways(strokes, end) | _ways([s for at, s in stubs if geometry.same(at, end)], end)
        if len(ways) == 2:
            (ax, ay), (bx, by) = ways
            count += ax * bx + ay * by == 0
    return count


def of(nets, stubs, boxes, dots=None):
    """The tally of drawn nets: name -> strokes. `stubs`: (end, stroke) of symbols where lines may
    meet them; `boxes`: of the symbols; `dots`: places where lines of one net that cross are joined
    (without dots they always are)."""
    tally = Tally()
    straight = [(at, s) for at, s in stubs if s.level() or s.upright()]
    longest = []  # (net, stroke)
    for name, strokes in sorted(nets.items()):
        runs, others = _merged(strokes)
        own = list(_as_strokes(runs))
        tally.length += sum(map(geometry.length, own + others))
        tally.bends += _bends(own, straight)
        longest += [(name, s) for s in own + others]
    owner = {s: name for name, s in longest}
    index = geometry.Index([s for _, s in longest])
    places = set()
    for name, s in longest:
        for other in index.near(s.box()):
            if owner[other] < name or owner[other] == name and dots is None:
                continue
            at = geometry.meet(s, other)
            if at is None or not (geometry.inside(s, at) and geometry.inside(other, at)):
                continue
            if owner[other] != name or not any(geometry.same(at, dot) for dot in dots):
                places.add((round(at[0], 1), round(at[1], 1), name, owner[other]))
    tally.crossings = len(places)
    boxes = list(boxes) + [s.box() for _, s in longest]
    left, top, right, bottom = (f(b[i] for b in boxes) for i, f in enumerate((min, min, max, max)))
    tally.area = (right - left) * (bottom - top)
    return tally


def _box(strokes):
    boxes = [s.box() for s in strokes]
    return tuple(f(b[i] for b in boxes) for i, f in enumerate((min, min, max, max)))


def boxes_of(sheet):
    """Symbol's group -> what its strokes cover, letters left out."""
    own = collections.defaultdict(list)
    for s in sheet.strokes:
        if s.sort == "symbol":
            own[s.group].append(s)
    return {group: _box(strokes) for group, strokes in own.items()}


def of_sheet(checker):
    """The tally of a sheet that has been checked."""
    nets = collections.defaultdict(list)
    for line in checker.lines:
        nets[checker.net(line.group)].append(line)
    stubs = [stub for ends in checker.free.values() for stub in ends]
    return of(nets, stubs, boxes_of(checker.sheet).values(), [d.centre for d in checker.sheet.dots])
