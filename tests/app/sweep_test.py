"""`loopwright solve --sweep`: what its rows say against `solve` at the same figures, one core
against all of them, and what is refused.

Figures of the transmission without losses (2 pi T = V p and n V the same on both sides) are worked
out here.
"""

import csv
import io
import itertools
import json
import math
import os
import random
import xml.etree.ElementTree as ET

import jsonschema

import program
from program import InAFolder, run
from solve_test import BAR, RPM, WITH_DUTY

SWEEPER = program.CIRCUITS / "street-sweeper" / "street-sweeper.xml"
CONVEYOR = program.CIRCUITS / "salt-conveyor" / "salt-conveyor.xml"
HOIST = program.CIRCUITS / "starting" / "hoist.xml"


def with_point(path, point, **figures):
    """The circuit with other figures at a duty point; of None the point has none."""
    tree = ET.parse(path)
    one, = (one for one in tree.iter("point") if one.get("id") == point)
    for name, figure in figures.items():
        one.attrib.pop(name, None)
        if figure is not None:
            one.set(name, figure)
    return ET.tostring(tree.getroot(), encoding="unicode")


class Sweep(InAFolder):
    def swept(self, text, point, *axes, status=0, form="json", before=None):
        options = itertools.chain.from_iterable(("--sweep", axis) for axis in axes)
        ran = self.run_here("solve", "-", "--point", point, *options, "--format", form,
                            input=text.encode(), preexec_fn=before)
        if status is not None:
            self.assertStatus(ran, status)
        return ran

    def test_a_sweep_goes_through_a_datum_in_equal_steps(self):
        said = json.loads(self.swept(WITH_DUTY, "full", "travel=25%..100%:4",
                                     "torque=100N.m..300 N.m:3").out)
        jsonschema.Draft202012Validator(json.loads(run("schema", "solve").out)).validate(said)
        sweep = said["sweep"]
        self.assertEqual([axis["datum"] for axis in sweep["axes"]], ["travel", "torque"])
        self.assertEqual([row[:2] for row in sweep["rows"]],
                         [[travel, torque] for travel in (0.25, 0.5, 0.75, 1.0)
                          for torque in (100, 200, 300)])
        names = [(column.get("id"), column["quantity"]) for column in sweep["columns"]]
        speed = 2 + names.index(("M1", "speed"))
        pressure = 2 + names.index(("M1", "pressure"))
        for row in sweep["rows"]:
            # n V the same on both sides; 2 pi T/V over the flushing relief's 18 bar
            self.assertAlmostEqual(row[speed] / RPM, 2400 * row[0] * 71 / 80, places=6)
            self.assertAlmostEqual(row[pressure] / BAR,
                                   18 + 2 * math.pi * row[1] / 80e-6 / BAR, places=6)

    def test_a_datum_of_a_part_can_be_swept(self):
        said = self.swept(WITH_DUTY, "full", "M1.displacement=60 cm3/rev..80 cm3/rev:2",
                          form="csv").words
        rows = list(csv.DictReader(io.StringIO(said)))
        self.assertEqual([round(float(row["M1 speed (rad/s)"]) / RPM) for row in rows],
                         [round(2400 * 71 / 60), round(2400 * 71 / 80)])

    samples = 10

    def agrees(self, path, point, axes, figures, **other):
        """Rows of a sweep against `solve` with their figures in the point."""
        text = with_point(path, point, **other)
        sweep = json.loads(self.swept(text, point, *axes, status=None).out)["sweep"]
        names = [(column.get("id"), column["quantity"]) for column in sweep["columns"]]
        units = [axis["unit"] for axis in sweep["axes"]]
        largest = {}
        for row in sweep["rows"]:
            for (_, quantity), figure in zip(names, row[len(axes):]):
                largest[quantity] = max(largest.get(quantity, 0.0), abs(figure or 0.0))
        path = self.file("swept.xml", text)
        solved = 0
        for row in random.Random(9).sample(sweep["rows"], self.samples):
            given = {name: f"{100 * figure!r} %" if unit == "1" else f"{figure!r} {unit}"
                     for name, figure, unit in zip(figures, row, units)}
            alone = self.run_here("solve", "-", "--point", point, "--format", "json",
                                  input=with_point(path, point, **given).encode())
            self.assertIn(alone.status, (0, 1), alone.err)
            said, = json.loads(alone.out)["points"]
            cells = dict(zip(names, row[len(axes):]))
            with self.subTest(f"{path} {point} {given}"):
                if "problem" in said:
                    self.assertEqual(set(cells.values()), {None}, said["problem"])
                    continue
                solved += 1
                for machine in said["machines"]:
                    found = {"pressure": max(machine["pressure_a"]["value"],
                                             machine["pressure_b"]["value"]),
                             "power": machine["shaft_power"]["value"]}
                    for quantity in ("speed", "torque", "flow"):
                        found[quantity] = machine[quantity]["value"]
                    for quantity, figure in found.items():
                        # What is but rounding beside the other figures of its kind has no digits.
                        self.assertLess(abs(cells[machine["id"], quantity] - figure),
                                        1e-9 * max(abs(figure), 1e-3 * largest[quantity]),
                                        (machine["id"], quantity))
                if "oil temperature" in largest:
                    self.assertAlmostEqual(cells[None, "oil temperature"], said["oil"]["value"],
                                           delta=1e-6)
        return solved

    def test_rows_are_those_that_solve_gives(self):
        self.assertEqual(
            self.agrees(program.RESURFACER, "surfacing",
                        ("travel=0%..100%:31", "torque=0N.m..8000N.m:31"),
                        ("travel", "torque")), self.samples)
        self.assertEqual(
            self.agrees(program.RESURFACER, "downhill",
                        ("travel=-100%..100%:21", "grade=-15%..15%:11"),
                        ("travel", "grade")), self.samples)
        self.assertEqual(
            self.agrees(CONVEYOR, "full", ("torque=0N.m..3000N.m:150",), ("torque",)),
            self.samples)

    def test_rows_with_a_heat_balance_are_those_that_solve_gives(self):
        self.assertEqual(
            self.agrees(program.RESURFACER, "surfacing",
                        ("travel=0%..100%:15", "torque=0N.m..4000N.m:15"),
                        ("travel", "torque"), oil=None), self.samples)

    def test_brakes_that_a_slow_charge_pump_barely_lifts_are_found_alike(self):
        self.assertGreater(
            self.agrees(SWEEPER, "climb", ("travel=0%..100%:15", "speed=500rpm..2400rpm:15"),
                        ("travel", "speed")), self.samples // 2)
        self.assertGreater(
            self.agrees(HOIST, "raise", ("travel=0%..100%:15", "speed=500rpm..2400rpm:15"),
                        ("travel", "speed")), self.samples // 2)

    def test_one_core_and_all_give_the_same_bytes(self):
        resurfacer = with_point(program.RESURFACER, "surfacing", oil=None)
        one_core = lambda: os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
        for text, point, axes in (
                (WITH_DUTY, "full", ("travel=0%..100%:9", "torque=0N.m..300 N.m:5")),
                (WITH_DUTY, "full", ("travel=0%..100%:1000",)),
                (resurfacer, "surfacing", ("travel=0%..100%:41", "torque=0N.m..4000N.m:41")),
                (resurfacer, "surfacing", ("travel=0%..100%:3", "torque=0N.m..4000N.m:90",
                                           "speed=900rpm..2400rpm:3"))):
            for form in ("json", "csv", "text"):
                with self.subTest(axes=axes, form=form):
                    one = self.swept(text, point, *axes, form=form, before=one_core)
                    self.assertEqual(self.swept(text, point, *axes, form=form).out, one.out)

    def test_what_is_written_to_a_file_is_what_is_printed(self):
        self.file("c.xml", WITH_DUTY)
        options = ("solve", "c.xml", "--sweep", "travel=0%..100%:300")
        printed = self.run_here(*options)
        self.assertStatus(printed, 0)
        ran = self.run_here(*options, "-o", "table.txt")
        self.assertStatus(ran, 0)
        self.assertEqual(ran.out, b"")
        self.assertEqual((self.folder / "table.txt").read_bytes(), printed.out)
        self.assertEqual(self.names(), ["c.xml", "table.txt"])

    def test_a_reader_that_has_seen_enough_ends_it(self):
        self.file("c.xml", WITH_DUTY)
        reading, writing = os.pipe()
        os.close(reading)
        try:
            ran = self.run_here("solve", "c.xml", "--sweep", "travel=0%..100%:2000",
                                stdout=writing)
        finally:
            os.close(writing)
        self.assertEqual(ran.err, b"")

    def test_a_row_without_a_state_has_no_figures(self):
        said = json.loads(self.swept(SWEEPER.read_text(encoding="utf-8"), "climb",
                                     "speed=500rpm..2400rpm:9", status=1).out)
        empty = [row for row in said["sweep"]["rows"] if row[1:] == [None] * (len(row) - 1)]
        self.assertTrue(empty)
        self.assertLess(len(empty), 9)

    def test_a_sweep_that_cannot_be_is_refused(self):
        for axis, said in (("travl=0%..100%:4", "perhaps 'travel'"),
                           ("travel=0%..100%", "DATUM=FROM..TO:COUNT"),
                           ("travel=0%..200%:4", "outside"), ("travel=0 bar..1:4", "unit"),
                           ("M9.displacement=1 cm3/rev..2 cm3/rev:2", "no component 'M9'"),
                           ("travel=0%..100%:0", "whole number")):
            with self.subTest(axis):
                ran = self.swept(WITH_DUTY, "full", axis, status=2)
                self.assertIn(said, ran.messages)
                self.assertEqual(ran.out, b"")


if __name__ == "__main__":
    program.main()
