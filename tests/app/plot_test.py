"""`loopwright solve --plot` read back from the SVG: curves, hyperbola, corner, contours, duty points
and limits are measured against the axes' ticks and held against the JSON of the same sweep.

The reader knows only SVG: texts and strokes in groups, by their ids and titles.
"""

import itertools
import json
import math
import re
import struct
import xml.etree.ElementTree as ET

import program
from program import InAFolder
from solve_test import RPM, WITH_DUTY

SVG = "{http://www.w3.org/2000/svg}"
SI = {"rpm": RPM, "N.m": 1.0, "bar": 1e5, "kW": 1e3, "kN": 1e3, "%": 0.01, "km/h": 1 / 3.6}
ROUNDING = 0.011  # mm, of places on the sheet
RISE = 0.9  # mm from a tick's line down to the baseline of its figure: half of 1.8 mm
SWEEPER = program.CIRCUITS / "street-sweeper" / "street-sweeper.xml"


def numbers(text):
    return [float(number) for number in re.findall(r"-?\d+\.?\d*(?:e-?\d+)?", text)]


def points_of(shape):
    flat = numbers(shape.get("points"))
    return list(zip(flat[::2], flat[1::2]))


def is_number(text):
    return re.fullmatch(r"-?\d+(\.\d+)?", text) is not None


class Panel:
    """One diagram: its axes as two straight scales, measured at the first and the last tick."""

    def __init__(self, sheet, group):
        self.id, self.title = group.get("id"), group.findtext(SVG + "title")
        texts = list(group.iter(SVG + "text"))
        below = [one for one in texts if one.get("text-anchor") == "middle"]
        beside = [one for one in texts
                  if one.get("text-anchor") == "end" and is_number(one.text)]
        self.x_unit, self.y_unit = (
            re.search(r"\((.*)\)$", one.text).group(1)
            for one in (below[-1], next(one for one in texts if one.get("text-anchor") is None)))
        self.x_scale = self.scale([(float(one.get("x")), float(one.text)) for one in below[:-1]],
                                  self.x_unit)
        self.y_scale = self.scale([(float(one.get("y")) - RISE, float(one.text))
                                   for one in beside], self.y_unit)
        self.parts = {one.get("id")[len(self.id) + 1:]: one for one in sheet.iter(SVG + "g")
                      if (one.get("id") or "").startswith(self.id + "-")}

    @staticmethod
    def scale(ticks, unit):
        (a, low), (b, high) = ticks[0], ticks[-1]
        for place, figure in ticks:  # equal steps
            assert abs(low + (place - a) / (b - a) * (high - low) - figure) < 0.01 * abs(high - low)
        slope = (high - low) / (b - a) * SI[unit]
        return lambda place: low * SI[unit] + (place - a) * slope

    def read(self, place):
        return self.x_scale(place[0]), self.y_scale(place[1])

    def off(self):
        """What the rounding of places makes of figures, along both axes."""
        return (abs(self.x_scale(ROUNDING) - self.x_scale(0.0)),
                abs(self.y_scale(ROUNDING) - self.y_scale(0.0)))

    def strokes(self, part):
        return [points_of(one) for one in self.parts[part].iter(SVG + "polyline")]

    def curves(self):
        return {name: part for name, part in self.parts.items() if name.startswith("curve-")}


class Plot(InAFolder):
    def plotted(self, path, point, *axes, status=0):
        """Panels by title, and the sweep's rows by axes and column."""
        options = itertools.chain.from_iterable(("--sweep", axis) for axis in axes)
        ran = self.run_here("solve", path, "--point", point, *options, "--plot", "p.svg",
                            "--format", "json")
        self.assertStatus(ran, status)
        sweep = json.loads(ran.out)["sweep"]
        names = [f"{column['quantity']} of {column['id']}" if "id" in column
                 else column["quantity"] for column in sweep["columns"]]
        self.rows = [dict(zip(names, row[len(axes):])) for row in sweep["rows"]]
        self.axes = [row[:len(axes)] for row in sweep["rows"]]
        sheet = ET.parse(self.folder / "p.svg").getroot()
        ids = [one.get("id") for one in sheet.iter() if one.get("id")]
        self.assertEqual(len(ids), len(set(ids)))
        panels = [Panel(sheet, one) for one in sheet.iter(SVG + "g")
                  if re.fullmatch(r"plot-\d+", one.get("id") or "")]
        return panels

    def assertPlace(self, panel, place, x, y):
        found, off = panel.read(place), panel.off()
        self.assertAlmostEqual(found[0], x, delta=2 * off[0], msg=panel.title)
        self.assertAlmostEqual(found[1], y, delta=2 * off[1], msg=panel.title)

    def resurfacer(self):
        return self.plotted(program.RESURFACER, "surfacing", "travel=0%..100%:21",
                            "torque=0N.m..8000N.m:9")

    def test_curves_over_travel_are_the_rows(self):
        panels = self.resurfacer()
        titles = ["speed of M1", "torque of M1", "tractive effort of D1", "pressure of M1",
                  "power of M1", "power in", "efficiency"]
        self.assertEqual([panel.title for panel in panels],
                         titles + ["tractive effort of D1", "torque"])
        for panel in panels[:len(titles)]:
            self.assertEqual(len(panel.curves()), 9)
            for j in range(9):
                name = f"curve-{j + 1}"
                self.assertEqual(panel.parts[name].findtext(SVG + "title"),
                                 f"torque = {1000 * j} N.m")
                wanted = [(axes[0], row[panel.title]) for axes, row in zip(self.axes, self.rows)
                          if axes[1] == 1000 * j and row[panel.title] is not None]
                drawn = [place for stroke in panel.strokes(name) for place in stroke]
                self.assertEqual(len(drawn), len(wanted))
                for place, (x, y) in zip(drawn, wanted):
                    self.assertPlace(panel, place, x, y)

    def test_one_axis_gives_one_curve(self):
        self.file("c.xml", WITH_DUTY)
        panels = self.plotted("c.xml", "full", "travel=50%..100%:6")
        speed, = (panel for panel in panels if panel.title == "speed of M1")
        drawn, = speed.strokes("curve-1")
        self.assertEqual(len(drawn), 6)
        for step, place in enumerate(drawn):
            travel = 0.5 + 0.1 * step
            # n V the same on both sides
            self.assertPlace(speed, place, travel, 2400 * travel * 71 / 80 * RPM)

    def test_effort_over_speed_has_hyperbola_corner_and_duty_points(self):
        plane = self.resurfacer()[7]
        self.assertEqual((plane.x_unit, plane.y_unit), ("km/h", "kN"))
        hyperbola, = plane.strokes("hyperbola")
        for place in hyperbola:  # 55 kW, as the circuit's engine has it
            speed, effort = plane.read(place)
            off = plane.off()
            self.assertAlmostEqual(speed * effort, 55e3,
                                   delta=2 * (off[0] * effort + off[1] * speed))
        # The square itself; the paper under its name comes behind it.
        square = points_of(next(plane.parts["corner"].iter(SVG + "polygon")))
        middle = [sum(place[axis] for place in square) / 4 for axis in (0, 1)]
        fastest = max(abs(row["velocity of D1"]) for row in self.rows)
        strongest = max(row["tractive effort of D1"] for row in self.rows)
        self.assertPlace(plane, middle, fastest, strongest)
        words = "".join(one.text for one in plane.parts["corner"].iter(SVG + "text"))
        self.assertAlmostEqual(numbers(words)[0] * 1e3, fastest * strongest,
                               delta=1e-3 * fastest * strongest)
        # transport: along the road as fast as the shaft W3 turns wheels of 450 mm
        said = json.loads(self.run_here("solve", program.RESURFACER, "--point", "transport",
                                        "--format", "json").out)["points"][0]
        shaft, = (one for one in said["shafts"] if one["id"] == "W3")
        ring = next(plane.parts["point-transport"].iter(SVG + "circle"))
        self.assertPlace(plane, (float(ring.get("cx")), float(ring.get("cy"))),
                         shaft["speed"]["value"] * 0.45, shaft["torque"]["value"] / 0.45)

    def test_duty_points_stand_where_solve_has_them(self):
        panels = self.resurfacer()
        said = json.loads(self.run_here("solve", program.RESURFACER, "--format", "json").out)
        travels = {"surfacing": 0.25, "climb": 0.2, "transport": 1.0, "downhill": 0.333,
                   "standing": 0.0}
        for point in said["points"]:
            if point["id"] not in travels:  # reverse: not on the axis
                self.assertNotIn(f"point-{point['id']}", panels[0].parts)
                continue
            motor, = (one for one in point["machines"] if one["id"] == "M1")
            ring = next(panels[0].parts[f"point-{point['id']}"].iter(SVG + "circle"))
            self.assertPlace(panels[0], (float(ring.get("cx")), float(ring.get("cy"))),
                             travels[point["id"]], motor["speed"]["value"])

    def test_what_is_beyond_a_limit_is_shaded(self):
        panels = {panel.title: panel for panel in self.resurfacer()[:7]}
        # as the circuit gives them
        for title, limit in (("speed of M1", 4500 * RPM), ("pressure of M1", 450e5),
                             ("power in", 55e3)):
            panel = panels[title]
            border, = panel.strokes("limit-1")
            for place in border:
                self.assertAlmostEqual(panel.read(place)[1], limit, delta=2 * panel.off()[1])
            area = points_of(next(panel.parts["limit-1"].iter(SVG + "polygon")))
            self.assertAlmostEqual(min(panel.read(place)[1] for place in area), limit,
                                   delta=2 * panel.off()[1])
        self.assertNotIn("limit-1", panels["torque of M1"].parts)  # 800 N.m is far off

    def test_contours_are_where_the_efficiency_is(self):
        area = self.resurfacer()[8]
        figures = {(round(20 * travel), round(torque / 1000)): row["efficiency"]
                   for (travel, torque), row in zip(self.axes, self.rows)}

        def efficiency(travel, torque):
            """Straight between neighbours along both axes."""
            x, y = (min(max(value, 0.0), most) for value, most in
                    ((20 * travel, 20.0), (torque / 1000, 8.0)))
            i, j = min(int(x), 19), min(int(y), 7)
            corners = [figures[i + di, j + dj] for di in (0, 1) for dj in (0, 1)]
            if None in corners:
                return None
            u, v = x - i, y - j
            weights = [(1 - u) * (1 - v), (1 - u) * v, u * (1 - v), u * v]
            return sum(weight * corner for weight, corner in zip(weights, corners))

        levels = [name for name in area.parts if name.startswith("contour-")]
        self.assertGreater(len(levels), 6)
        for name in levels:
            level = int(name[len("contour-"):]) / 100
            for place in itertools.chain.from_iterable(area.strokes(name)):
                about = [efficiency(*area.read((place[0] + dx, place[1] + dy)))
                         for dx in (-ROUNDING, 0, ROUNDING) for dy in (-ROUNDING, 0, ROUNDING)]
                known = [one for one in about if one is not None]
                self.assertLessEqual(min(known) - 1e-4, level)
                self.assertGreaterEqual(max(known) + 1e-4, level)
        # Between levels that differ there is a contour: none of those that the rows pass is missing.
        most = max(figure for figure in figures.values() if figure is not None)
        self.assertEqual(max(int(name[len("contour-"):]) for name in levels),
                         max(percent for percent in (*range(10, 60, 10), *range(60, 100, 5))
                             if percent < 100 * most))

    def test_rows_without_a_state_are_gaps_and_hatched(self):
        panels = self.plotted(SWEEPER, "climb", "travel=0%..100%:11", "speed=500rpm..2400rpm:9",
                              status=1)
        unsolved = {tuple(axes) for axes, row in zip(self.axes, self.rows)
                    if set(row.values()) == {None}}
        self.assertTrue(unsolved)
        speed = panels[0]
        for j, rpm in enumerate(sorted({axes[1] for axes in self.axes})):
            drawn = [speed.read(place)[0] for stroke in speed.strokes(f"curve-{j + 1}")
                     for place in stroke]
            for travel in sorted({axes[0] for axes in self.axes}):
                near = any(abs(travel - one) < 0.005 for one in drawn)
                dot = list(speed.parts[f"curve-{j + 1}"].iter(SVG + "circle"))
                self.assertEqual(near or bool(dot), (travel, rpm) not in unsolved)
        # Each hatched place is nearer to a row without a state than to any other.
        area = panels[-1]
        travels, speeds = (sorted({axes[axis] for axes in self.axes}) for axis in (0, 1))
        hatched = set()
        for (x1, y1), (x2, y2) in area.strokes("gap"):
            x, y = (x1 + x2) / 2, (y1 + y2) / 2
            travel = area.x_scale(x)
            # the map's second axis is in rpm
            rpm = area.y_scale(y)
            hatched.add((min(travels, key=lambda one: abs(one - travel)),
                         min(speeds, key=lambda one: abs(one - rpm))))
        self.assertEqual(hatched, unsolved)

    def test_pdf_and_png_are_made_as_well(self):
        self.file("c.xml", WITH_DUTY)
        for name in ("p.pdf", "p.png"):
            self.assertStatus(self.run_here("solve", "c.xml", "--sweep", "travel=0%..100%:5",
                                            "--plot", name), 0)
        self.assertTrue((self.folder / "p.pdf").read_bytes().startswith(b"%PDF"))
        png = (self.folder / "p.png").read_bytes()
        wide, high = struct.unpack(">II", png[16:24])
        self.assertAlmostEqual(wide / high, math.sqrt(2), places=2)  # A3 across, ISO 216

    def test_a_plot_that_cannot_be_is_refused(self):
        self.file("c.xml", WITH_DUTY)
        for options, said in (((), "--sweep"),
                              (("--sweep", "travel=0%..100%:3", "--sweep", "torque=0N.m..9N.m:3",
                                "--sweep", "speed=1rpm..9rpm:3"), "one or two axes"),
                              (("--sweep", "travel=0%..100%:600", "--sweep",
                                "torque=0N.m..9N.m:600"), "rows")):
            with self.subTest(options):
                ran = self.run_here("solve", "c.xml", *options, "--plot", "p.svg")
                self.assertStatus(ran, 2)
                self.assertIn(said, ran.messages)
                self.assertEqual(ran.out, b"")
                self.assertEqual(self.names(), ["c.xml"])


if __name__ == "__main__":
    program.main()
