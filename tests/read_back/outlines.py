"""Outlines of the symbols, in modules, x right and y down, written from the recipes of the
drawing-standard notes (their ids stand beside each): what must be there for the kind, and what may
be there for an option.

An outline is a list of parts: ("line", p, q, dash), ("circle", centre, radius, filled),
("triangle", apex, direction, side): equilateral, filled, ("arrow", tail, tip): a line with a head,
and ("arc", end, middle, end). Ports are (role, place of the grid point, place where the line meets the body)."""

import math


def line(p, q, dash="solid"):
    return ("line", p, q, dash)


def path(*points, dash="solid"):
    return [line(p, q, dash) for p, q in zip(points, points[1:])]


def box(x0, y0, x1, y1):
    return path((x0, y0), (x1, y0), (x1, y1), (x0, y1), (x0, y0))


def circle(x, y, radius, filled=False):
    return ("circle", (x, y), radius, filled)


def arc(x, y, radius, start, end):
    """Part of a circle, degrees, clockwise from the x axis."""
    def at(angle):
        return (x + radius * math.cos(math.radians(angle)),
                y + radius * math.sin(math.radians(angle)))
    return ("arc", at(start), at((start + end) / 2), at(end))


def bar(x, y):
    """T-bar of a blocked port at the edge of a box (DV5)."""
    return [line((x, y), (x, y * 0.625)), line((x - 0.5, y * 0.625), (x + 0.5, y * 0.625))]


def triangle(apex, direction, side):
    return ("triangle", apex, direction, side)


def dot(x, y):
    """A joint inside a component."""
    return circle(x, y, 0.25, True)


def corners(apex, direction, side):
    """Corners of an equilateral triangle that points in a direction."""
    height = side * math.sqrt(3) / 2
    bx, by = apex[0] - direction[0] * height, apex[1] - direction[1] * height
    sx, sy = -direction[1] * side / 2, direction[0] * side / 2
    return [apex, (bx + sx, by + sy), (bx - sx, by - sy)]


UP, DOWN, LEFT, RIGHT = (0, -1), (0, 1), (-1, 0), (1, 0)
JOINT = 0.375  # radius of a joint's dot on lines (LN1)
CORNER = 2.83  # half the diagonal of a conditioner's diamond

# PU0-PU4, MO1-MO3: circle, flow ports on the vertical axis, triangles outward (pump) or inward
# (motor).
MACHINE = [circle(0, 0, 3)]
MACHINE_TRIANGLES = {
    ("pump", "top"): triangle((0, -3), UP, 2), ("pump", "bottom"): triangle((0, 3), DOWN, 2),
    ("motor", "top"): triangle((0, -1.10), DOWN, 2), ("motor", "bottom"): triangle((0, 1.10), UP,
                                                                                   2),
}
MACHINE_PORTS = [("top", (0, -4), (0, -3)), ("bottom", (0, 4), (0, 3))]
# DR1, and the same in the other quarters for further case ports; the upper right one holds the
# arrow.
MACHINE_DRAINS = [((x, y), (x, math.copysign(2.236, y))) for x in (2, -2) for y in (4, -4)]
# PU3: the arrow of variable machines, always from lower left to upper right of the sheet.
VARIABLE = line((-2.9, 2.9), (2.9, -2.9))
# PC1-PC4: frame of 3 by 2 at the tail of that arrow.
CONTROL_FRAME = box(-6, 2, -3, 4)
CONTROL_TAIL = (-3, 3)
# EN3, and a load as a box of 4 with its word (SH5).
ENGINE = box(-3, -3, 3, 3)
LOAD = box(-2, -2, 2, 2)
# EN2, and a gearbox as a box of 4 with its ratio (SH5).
ELECTRIC_MOTOR = [circle(0, 0, 3)]
GEARBOX = box(-2, -2, 2, 2)


def _shaft(x0, x1):
    return [line((x0, y), (x1, y)) for y in (-0.25, 0.25)]


# SH6, SH7: a shaft that runs through, bars at it, a cylinder below with its piston; a spring holds
# the bars on, pressure that applies them comes in below the piston, which then stands off.
BRAKE = (box(-1.5, 1.5, 1.5, 4.5) + _shaft(-2, 2)
         + [line((x, -1.5), (x, -0.5)) for x in (-0.25, 0.25)])
BRAKE_ON = [line((-1.5, 2.5), (1.5, 2.5))] + [line((x, 0.5), (x, 2.5)) for x in (-0.25, 0.25)]
BRAKE_OFF = ([line((-1.5, 3.5), (1.5, 3.5))] + [line((x, 0.5), (x, 1.5)) for x in (-0.25, 0.25)]
             + [line((x, 2), (x, 3.5)) for x in (-0.25, 0.25)])
BRAKE_SPRING = ((0, 2.5), (0, 4.5))
BRAKE_PORTS = {"spring": [("release", (-4, 2), (-1.5, 2))],
               "pressure": [("apply", (-4, 4), (-1.5, 4))]}
# A clutch as a pair of bars across the shaft (SH2), apart where it is parted.
CLUTCH = {engaged: [line((s * x, -1), (s * x, 1)) for s in (-1, 1)] + _shaft(-2, -x) + _shaft(x, 2)
          for engaged, x in (("yes", 0.25), ("no", 0.75))}

# CV1, CV2: free flow upward, from the apex of the seat to the ball.
CHECK = [circle(0, 0, 0.5), line((0, 0.71), (0.9, -0.19)), line((0, 0.71), (-0.9, -0.19))]
CHECK_IN, CHECK_BALL, CHECK_SPRING = (0, 0.71), (0, -0.5), (0, -1.5)
CHECK_PORTS = ((0, 2), (0, -2))

# CV3 acts on the side of the seat, CV4 on that of the ball.
CHECK_PILOTS = {"opens": ("pilot", (2, 1), (0.5, 1)), "shuts": ("pilot", (2, -1), (0.5, -1))}
# CV6: two seats that open towards the ball between them.
SHUTTLE = (box(-2, -1, 2, 1) + [circle(0, 0, 0.5)]
           + [part for s in (-1, 1)
              for part in path((0.7 * s, -0.7), (1.4 * s, 0), (0.7 * s, 0.7))])
SHUTTLE_PORTS = [("inlet", (-4, 0), (-1.4, 0)), ("inlet", (4, 0), (1.4, 0)),
                 ("out", (0, -2), (0, -1))]

# IN11: a closed connection on a branch.
MEASURING_POINT = [circle(0, 0, 0.5), line((-0.35, -0.35), (0.35, 0.35)),
                   line((-0.35, 0.35), (0.35, -0.35))]
MEASURING_PORTS = [("end", (0, 2.5), (0, 0.5))]

# PV1, PV3 to PV6: inlet on top; at rest the arrow stands off the middle towards the pilot (closed),
# or in the middle (open).
PRESSURE_ARROWS = {"no": [("arrow", (-1, -2), (-1, 2))], "yes": [("arrow", (0, -2), (0, 2))]}
PRESSURE_PILOTS = {
    end: [dot(0, y)] + path((0, y), (-3, y), (-3, 0), (-2, 0), dash="dashed")
    for end, y in (("in", -3), ("out", 3))}
PRESSURE_X = ("pilot", (-4, 1), (-2, 1))
# From the spring's side to the drain; past the branch of a check it is longer.
PRESSURE_DRAIN, PRESSURE_DRAIN_PORTS = line((2, 1.75), (3, 1.75), "dashed"), (4, 7)
# PV2: the pilot stage between box and spring; its side at the box is the box's own.
PILOT_STAGE = path((2, -1), (5, -1), (5, 1), (2, 1)) + [triangle((2, 0), LEFT, 1)]
# PV5, PV9: a check beside the valve, its free flow from below; where it can stand.
PRESSURE_CHECKS, PRESSURE_BRANCH = (-5, 6), 5
# PV7: reduced on the way from P to A; T shut.
RELIEVING = (box(-2, -2, 2, 2) + [("arrow", (-1, 2), (0, -2))] + bar(1, 2)
             + PRESSURE_PILOTS["in"])
RELIEVING_PORTS = [("reduced", (0, -4), (0, -2)), ("in", (-1, 4), (-1, 2)),
                   ("return", (1, 4), (1, 2))]
# House: the spring leads all to the first outlet, whose pressure works against it.
PRIORITY = (box(-2, -2, 2, 2) + [("arrow", (0, 2), (-1, -2))] + bar(1, -2) + [dot(-1, -3)]
            + path((-1, -3), (-3, -3), (-3, 0), (-2, 0), dash="dashed"))
PRIORITY_PORTS = [("in", (0, 4), (0, 2)), ("first", (-1, -5), (-1, -2)),
                  ("rest", (1, -5), (1, -2))]
VALVE_SPRING = ((2, 0), (4.5, 0))

# FV1, FV3: two arcs that bulge towards the line.
THROTTLE = [arc(-1.25, 0, 1, -60, 60), arc(1.25, 0, 1, 120, 240)]
# FV4: the check beside it lets oil back, from below.
FLOW_CHECK, FLOW_BRANCH = 4, 3
# FV5: a throttle in a box with the mark of compensation beside it.
FLOW_CONTROL = (box(-2, -2, 2, 2) + THROTTLE + [line((0, -2), (0, 2))]
                + [("arrow", (-1.4, -1.5), (-1.4, 0.5))])
# FV10: machines of one size on a shaft, both ways; MO2, drawn with a radius of 2.
ROTARY_LEG = [circle(0, 0, 2), triangle((0, -1.07), DOWN, 1), triangle((0, 1.07), UP, 1),
              line((0, 2), (0, 4))]
ROTARY_PITCH = 6
ROTARY_SHAFT = [line((2, y), (4, y)) for y in (-0.25, 0.25)]

# LN3: a hose sags between two dots; on our sheets its chord may be shorter than the recipe's.
HOSE_CHORDS, HOSE_SAG = (4, 3, 2), 1

# FI1, HX1: diamond, flow along x. The oil parts of the two tell them apart.
DIAMOND = path((-CORNER, 0), (0, -CORNER), (CORNER, 0), (0, CORNER), (-CORNER, 0))
FILTER = DIAMOND + [line((0, -CORNER), (0, CORNER), "dashed")]
COOLER = DIAMOND + [triangle((0, -CORNER), UP, 1), triangle((0, CORNER), DOWN, 1)]
# FI3, FI4: taps before and behind the element, an instrument of 2 or a contact in a box of 2.
TAPS = [part for x in (-1, 1) for part in
        [dot(3.4 * x, 0)] + path((3.4 * x, 0), (3.4 * x, 4), (x, 4), dash="dashed")]
VISUAL = [circle(0, 4, 1)]
ELECTRICAL = box(-1, 3, 1, 5)

# SV1: bow-tie, and filled where it is drawn closed.
SHUT_OFF_HALVES = [[(-1, 1.5), (0, 0), (1, 1.5)], [(-1, -1.5), (0, 0), (1, -1.5)]]
SHUT_OFF_PORTS = [("first", (0, 3), (0, 1.5)), ("second", (0, -3), (0, -1.5))]

# FV2: two chevrons with their points towards the line.
ORIFICE = [part for s in (-1, 1) for part in path((s, -0.75), (0.2 * s, 0), (s, 0.75))]
ORIFICE_PORTS = [("first", (0, 2), (0, 2)), ("second", (0, -2), (0, -2))]

# RS1: open on top, and upright always.
RESERVOIR = path((-1, 0), (-1, 1), (1, 1), (1, 0))
# RS6, as large as a local mark: closed, with round ends.
SEALED = ([line((-1, y), (1, y)) for y in (0, 1)]
          + [arc(-1, 0.5, 0.5, 90, 270), arc(1, 0.5, 0.5, -90, 90)])
BELOW, ABOVE = (0, 1), (0, 1 / 3)  # RS4, RS3: where the line ends

# DV1: one position, by half its width: 2 up to four ports, 3 with five or six, 4 with more. DV2:
# where its ports can be.
POSITIONS = {half: box(-half, -2, half, 2) for half in (2, 3, 4)}
PLACES = [(x, y) for y in (-2, 2) for x in (-3, -2, -1, 0, 1, 2, 3)]
# DV6: lines along a row that takes every position between its own, off the boxes.
BETWEEN = 0.5


class Frame:
    """Where a symbol stands and how it is turned: one of eight ways, by quarter turns and a
    mirror."""

    TURNS = [(a, b, -b * m, a * m) for a, b in ((1, 0), (0, 1), (-1, 0), (0, -1)) for m in (1, -1)]

    def __init__(self, origin, turn=(1, 0, 0, 1)):
        self.origin = origin
        self.turn = turn

    def out(self, p):
        """A place of the symbol on the sheet."""
        a, b, c, d = self.turn
        return (self.origin[0] + a * p[0] + c * p[1], self.origin[1] + b * p[0] + d * p[1])

    def into(self, p):
        """A place of the sheet in the symbol."""
        a, b, c, d = self.turn
        x, y = p[0] - self.origin[0], p[1] - self.origin[1]
        return (a * x + b * y, c * x + d * y)

    def moved(self, p):
        return Frame(self.out(p), self.turn)


def frames(origin):
    return [Frame(origin, turn) for turn in Frame.TURNS]


def _polygon(pool, frame, part):
    return pool.polygon([frame.out(c) for c in corners(part[1], part[2], part[3])])


def there(pool, frame, outline):
    """Whether every part of the outline is drawn."""
    for part in outline:
        if part[0] == "line" and not pool.has_line(frame.out(part[1]), frame.out(part[2]), part[3]):
            return False
        if part[0] == "circle" and not pool.circle(frame.out(part[1]), part[2], part[3]):
            return False
        if part[0] == "arc" and not pool.arc(*map(frame.out, part[1:])):
            return False
        if part[0] == "triangle" and not _polygon(pool, frame, part):
            return False
        if part[0] == "arrow":
            tail, tip = frame.out(part[1]), frame.out(part[2])
            if not (pool.has_line(tail, tip) and pool.head(tip, tail)):
                return False
    return True


def take(pool, frame, outline):
    """Takes the parts of an outline that is there out of the pool."""
    for part in outline:
        if part[0] == "line":
            pool.take_line(frame.out(part[1]), frame.out(part[2]), part[3])
        elif part[0] == "circle":
            pool.circles.discard(pool.circle(frame.out(part[1]), part[2], part[3]))
        elif part[0] == "arc":
            pool.arcs.discard(pool.arc(*map(frame.out, part[1:])))
        elif part[0] == "triangle":
            pool.polygons.discard(_polygon(pool, frame, part))
        elif part[0] == "arrow":
            tail, tip = frame.out(part[1]), frame.out(part[2])
            pool.polygons.discard(pool.head(tip, tail))
            pool.take_line(tail, tip)


def take_if(pool, frame, outline):
    if not there(pool, frame, outline):
        return False
    take(pool, frame, outline)
    return True
