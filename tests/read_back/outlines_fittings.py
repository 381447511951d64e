"""Outlines of actuators, stores, instruments and fittings, as in `outlines`: from the recipes of the
drawing-standard notes where these have figures. What a recipe leaves open is marked as house: the
sheet's own figures, measured."""

from outlines import (DOWN, UP, arc, bar, box, circle, dot, line, path, triangle)


def _both(*points):
    """A path and its mirror image."""
    return path(*points) + path(*((-x, y) for x, y in points))


# MP1: a pump with a lever; where the lever stands is house, its knob as in AC9.
HAND_LEVER = [line((3, 0), (4.735, -1.735)), circle(5, -2, 0.375)]

# MO4: half a circle, its flat side upright, triangles inward at the ports, which stand off the flat
# side (house).
SEMI_ROTARY = ([arc(0, 0, 3, 90, 270), line((0, -3), (0, 3))]
               + [triangle((-1, -1.63), DOWN, 1), triangle((-1, 1.63), UP, 1)]
               + [line((0, y), (3, y)) for y in (-0.25, 0.25)])
SEMI_ROTARY_PORTS = [("one", (-1, -4), (-1, -2.83)), ("other", (-1, 4), (-1, 2.83))]

# CY1 to CY4. The recipe's rod ends at 12; on our grid, where the ports are on whole modules, it ends
# at 11.5.
CYLINDER = (box(0, 0, 9, 3) + [line((x, 0), (x, 3)) for x in (3, 4)]
            + [line((4, y), (11.5, y)) for y in (1.25, 1.75)])
CYLINDER_LENGTH, CYLINDER_ROD_END = 9, 11.5
SECOND_ROD = [line((3, y), (-2.5, y)) for y in (1.25, 1.75)]
RETURN_SPRING, RETURN_SPRING_HALF = ((4, 1.5), (9, 1.5)), 1
# On the piston's face, whose line is a side of it; size: house.
CUSHIONS = {"cap": path((3, 0.9), (2.25, 0.9), (2.25, 2.1), (3, 2.1)),
            "rod": path((4, 0.9), (4.75, 0.9), (4.75, 2.1), (4, 2.1))}
CYLINDER_PORTS = [("cap", (0.5, 4.5), (0.5, 3)), ("rod", (8.5, 4.5), (8.5, 3))]

# AU1 to AU6: always upright; the gas is the open triangle.
CAPSULE = ([line((x, -2), (x, 2)) for x in (-2, 2)]
           + [arc(0, -2, 2, 180, 360), arc(0, 2, 2, 0, 180)])
GAS = path((-0.75, -3), (0.75, -3), (0, -1.7), (-0.75, -3))
# The recipe's curve of the diaphragm is drawn in three strokes (house). The bag hangs from the top of
# the capsule; how far it hangs is house.
SEPARATORS = {"diaphragm": path((-2, 0), (-1, -0.75), (1, -0.75), (2, 0)),
              "bladder": path((-1.25, -3.56), (-1.25, 0), (0, 1), (1.25, 0), (1.25, -3.56)),
              "piston": [line((-2, y), (2, y)) for y in (-0.5, 0.5)]}
LOADING_SPRING, SPRING_PLATE = ((0, -4), (0, -0.5)), [line((-2, -0.5), (2, -0.5))]
ACCUMULATOR_PORTS = [("oil", (0, 6), (0, 4))]

# IN1, IN3, IN4, IN5: upright, the stub below.
DIAL = [circle(0, 0, 2)]
DIALS = {"gauge": [("arrow", (-1.1, 1.1), (1.1, -1.1))],
         "thermometer": [line((0, -1.2), (0, 0.8)), circle(0, 0.8, 0.35, True)],
         "level-indicator": [line((-2, 0), (2, 0))]}
LEVEL_CONTACT = [line((-1, -0.6), (0, -0.6)), line((0, -0.6), (1, -1.1))]
INSTRUMENT_PORTS = [("end", (0, 4), (0, 2))]
# IN6: two arcs face one another across the flow; their size is that of FV1.
FLOW_METER = [circle(0, 0, 2), arc(0, -1.25, 1, 30, 150), arc(0, 1.25, 1, 210, 330)]
FLOW_METER_PORTS = [("one", (-4, 0), (-2, 0)), ("other", (4, 0), (2, 0))]
# IN7: a letter in a circle.
TACHOMETER, TACHOMETER_LETTER = [circle(0, 0, 2)], "n"
# IN9: the contact stands open (house: its strokes).
PRESSURE_SWITCH = box(-2, -2, 2, 2) + [
    line((0, -1.5), (0, -0.5)), line((0, 1), (-0.8, -0.5)), line((0, 1), (0, 1.5))]
SWITCH_SPRING, SWITCH_ARROW = ((2, 0), (4.5, 0)), (3.25, 0)
# IN10: what it measures in one half, its signal in the other. Letters: ISO 80000-4 has p for
# pressure and q for volume flow rate, ISO 80000-5 T for temperature (from memory); h for a level and
# c for what is in the oil are house.
SENSOR = box(-2, -2, 2, 2) + [line((-2, 2), (2, -2))]
SENSOR_LETTERS = {"p": "pressure", "T": "temperature", "q": "flow", "h": "level",
                  "c": "contamination"}
SENSOR_MEASURED, SENSOR_SIGNAL = (-1, -1), ((1, 1), ("U", "I"))

# HX4: as the cooler, but the triangles point inward; how deep they stand is house.
HEATER_TRIANGLES = [triangle((0, -1.3), DOWN, 1), triangle((0, 1.3), UP, 1)]
# HX6 as a valve of three ports, which warm oil moves against a spring; drawn cold, past the cooler.
THERMOSTAT = (box(-2, -2, 2, 2) + [("arrow", (0, 2), (1, -2))] + bar(-1, -2)
              + path((-2, -1), (-5, -1), (-5, 1), (-2, 1))
              + [line((-3.5, 0), (-2, 0)), circle(-3.5, 0, 0.35, True)])
THERMOSTAT_SPRING = ((2, 0), (4.5, 0))
THERMOSTAT_PORTS = [("in", (0, 4), (0, 2)), ("past", (1, -4), (1, -2)),
                    ("cooler", (-1, -4), (-1, -2))]
# RS7 with LN5: a filter's diamond of 2, and over it the open triangle by which air goes.
HALF = 1.414
BREATHER = (path((-HALF, 0), (0, -HALF), (HALF, 0), (0, HALF), (-HALF, 0))
            + [line((-HALF, 0), (HALF, 0), "dashed"), line((0, -HALF), (0, -HALF - 0.5))]
            + path((-0.5, -HALF - 0.5), (0.5, -HALF - 0.5), (0, -HALF - 0.5 - 0.866),
                   (-0.5, -HALF - 0.5)))
BREATHER_SPRING = ((HALF, 0), (HALF + 1.5, 0))
BREATHER_PORTS = [("end", (0, 3), (0, HALF))]

# LN4: a small cross on the end of a line.
PLUG = path((-0.5, -0.5), (0.5, 0.5)) + path((-0.5, 0.5), (0.5, -0.5))
PLUG_PORTS = [("end", (0, -2), (0, 0))]

# CV8, CV9: half of a coupling to the left of the joint, its cup's edge at the origin (house: the
# cup's size). A check in it: seat towards the joint, ball on the line's side, on the seat where the
# halves are apart, off it where they are joined.
CUP = path((0, -0.8), (-0.4, -0.4), (-0.4, 0.4), (0, 0.8))
SEAT = path((-1.4, -0.7), (-0.7, 0), (-1.4, 0.7)) + [line((-0.7, 0), (-0.4, 0))]
BALLS = {"no": -1.4, "yes": -1.8}  # by whether it is joined
BALL = 0.5
COUPLING_REACH = 4
APART = {"yes": 0, "no": 0.5}  # from the middle to a cup's edge

# No item of the standard: a box with its ports on the left and on the right, in rows.
DEVICE_HALF, DEVICE_REACH = 2, 4


def device_ports(rows):
    """Where a device with so many rows can have its ports: (place, contact)."""
    return [((s * DEVICE_REACH, 2 * i - rows + 1), (s * DEVICE_HALF, 2 * i - rows + 1))
            for i in range(rows) for s in (-1, 1)]


# CO1 as house: two pairs of bars, one turning in the other, and the lines through them.
JOINT_BARS, JOINT_REACH = (-1, -0.5, 0.5, 1), 4


def rotary_joint(ways):
    return [line((x, -ways), (x, ways)) for x in JOINT_BARS] + [
        line((-JOINT_REACH, y), (JOINT_REACH, y)) for y in range(1 - ways, ways, 2)]


# SH2 with what works it below: a frame of 3 by 2 as at a valve (DV8), its link to the bars; house.
CLUTCH_FRAME = box(-1.5, 2, 1.5, 4) + [line((0, 1), (0, 2))]
CLUTCH_FRAMES = {"hydraulic": [triangle((0, 2), UP, 1)], "electric": [line((-1.5, 4), (1.5, 2))]}
CLUTCH_PORTS = [("release", (0, 5), (0, 4))]

# PC6, PC7: beside the triangle that acts on the arrow a spring, at whose end the load's pressure
# comes in.
COMPENSATOR_SPRING = ((-6, 3), (-4.13, 3))
LOAD_SENSING = [triangle((-5.13, 3), (1, 0), 1)]
LOAD_SENSING_SPRING = ((-5.13, 3), (-3.87, 3))
# PC2: pilot ports, dashed; two of them stand below a frame of 4.
CONTROL_PILOT = ("pilot", (-8, 3), (-6, 3))
WIDE_FRAME = box(-7, 2, -3, 4)
# The one on the left is X1 (house).
WIDE_PILOTS = [("pilot X1", (-6, 5), (-6, 4)), ("pilot X2", (-4, 5), (-4, 4))]
