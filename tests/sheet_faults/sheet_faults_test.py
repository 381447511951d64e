"""Counts the faults of finished sheets and holds them against the table beside this file.

    sheet_faults_test.py PROGRAM             the test
    sheet_faults_test.py PROGRAM --table     writes table.txt anew (ELKJS names a folder in which
                                             `npm install elkjs` was run; without it the engine's
                                             columns of the old table stay)
    sheet_faults_test.py PROGRAM --list [SVG FOLDER]   every fault with its place, worst sheet first
"""

import collections
import multiprocessing
import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

import elk
import faults
import ink
import meant
import plant
import pool_of_sheets
import table
import tally

PROGRAM = None


def draw(path, out, *options):
    """Draws a circuit. Findings in it (exit status 1) are no hindrance."""
    run = subprocess.run([PROGRAM, "draw", str(path), "-o", str(out), *options],
                         capture_output=True, text=True, check=False)
    if run.returncode not in (0, 1):
        raise AssertionError(f"{path}: draw: {run.returncode}, {run.stderr}")
    return out.read_text(encoding="utf-8")


def _check(work):
    """(name, faults, tally, graph for the engine) of one (name, path, SVG file)."""
    name, path, out = work
    # Those by lot make no sense as drives: no sheet holds the findings of the larger ones.
    options = ("--without-findings",) if name.startswith("lot ") else ()
    checker = faults.Checker(ink.read(draw(path, out, *options)), meant.load(path))
    found = checker.faults()
    return name, found, tally.of_sheet(checker), elk.graph(checker)


def checked(folder):
    """The result of every circuit, in order; the sheets go to the folder."""
    folder = pathlib.Path(folder)
    work = [(name, path, folder / f"{name.replace('/', '-')}.svg")
            for name, path in pool_of_sheets.circuits(PROGRAM, folder)]
    with multiprocessing.get_context("fork").Pool() as workers:
        return workers.map(_check, work, chunksize=2)


def _planted(work):
    """What one way of planting does on one sheet: (class, what, whether it is told)."""
    make, svg, path = work
    circuit = meant.load(path)
    sound = faults.Checker(ink.read(svg), circuit)
    before = faults.count(sound.faults())
    results = []
    for sort, what, spoilt in make(svg, sound):
        after = faults.count(faults.Checker(ink.read(spoilt), circuit).faults())
        results.append((sort, what, after.get(sort, 0) > before.get(sort, 0)))
    return results


class Sheets(unittest.TestCase):
    def test_no_sheet_is_worse_than_the_table_says(self):
        known = table.read()
        with tempfile.TemporaryDirectory() as folder:
            rows = {name: table.Row(name, faults.count(found), cost)
                    for name, found, cost, _ in checked(folder)}
        self.assertEqual(list(rows), list(known), "write the table anew: see --table")
        for name, row in rows.items():
            with self.subTest(name):
                worse = {c: n for c, n in row.faults.items() if n > known[name].faults.get(c, 0)}
                self.assertEqual(worse, {}, f"the table has {known[name].faults}")
        for group, cost in table.sums(rows.values()).items():
            was = table.sums(known.values())[group]
            with self.subTest(group):
                self.assertLessEqual(cost.crossings, was.crossings)
                self.assertLessEqual(cost.bends, was.bends)
                self.assertLessEqual(cost.length, was.length * table.TOLERANCE)
                self.assertLessEqual(cost.area, was.area * table.TOLERANCE)


def _with_points(path):
    """(circuit, point, what is wrong with its sheet and not with the one without the point), ..."""
    found = []
    circuit = meant.load(path)
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "sheet.svg"
        known = {words for _, _, words in
                 faults.Checker(ink.read(draw(path, out)), circuit).faults()}
        for point in pool_of_sheets.points(path):
            sheet = ink.read(draw(path, out, "--point", point))
            values = sum(group.sort == "value" for group in sheet.groups)
            found.append((path.stem, point, values,
                          [fault for fault in faults.Checker(sheet, circuit).faults()
                           if fault[2] not in known]))
    return found


class Points(unittest.TestCase):
    def test_computed_figures_stand_on_nothing(self):
        paths = [path for _, path in pool_of_sheets.tree() if pool_of_sheets.points(path)]
        self.assertGreaterEqual(len(paths), 20)
        with multiprocessing.get_context("fork").Pool() as workers:
            for found in workers.imap(_with_points, paths):
                for name, point, values, wrong in found:
                    with self.subTest(name, point=point):
                        self.assertGreater(values, 10)
                        self.assertEqual(wrong, [])


class Planted(unittest.TestCase):
    """Every planted fault must be told, in its class."""

    SHEETS = ("ice-resurfacer/ice-resurfacer", "roller/roller", "starting/traction",
              "variant nested-assembly", "variant hoses")

    def test_every_class(self):
        with tempfile.TemporaryDirectory() as folder:
            folder = pathlib.Path(folder)
            paths = dict(pool_of_sheets.circuits(PROGRAM, folder))
            work = [(make, draw(paths[name], folder / "sheet.svg"), paths[name])
                    for name in self.SHEETS for make in plant.ALL]
            count = collections.Counter()
            with multiprocessing.get_context("fork").Pool() as workers:
                for (_, _, path), results in zip(work, workers.imap(_planted, work)):
                    for sort, what, told in results:
                        count[sort] += 1
                        with self.subTest(path.name, planted=what):
                            self.assertTrue(told, sort)
        for sort in faults.CLASSES:
            self.assertGreaterEqual(count[sort], 4, sort)


class Measures(unittest.TestCase):
    """The measures on drawings small enough to be counted by hand."""

    @staticmethod
    def strokes(*ways):
        group = ink.Group("line", "a", 0)
        return [ink.Stroke(p, q, 0.25, group, "line") for p, q in ways]

    def test_crossings_bends_and_ink(self):
        cost = tally.of({"a": self.strokes(((0, 0), (10, 0)), ((5, 0), (20, 0)),
                                           ((20, 0), (20, 10))),
                         "b": self.strokes(((15, -5), (15, 5)))}, [], [(0, 0, 1, 1)])
        self.assertEqual((cost.crossings, cost.bends, cost.length), (1, 1, 40.0))
        self.assertAlmostEqual(cost.area, 20 * 15)

    def test_a_joint_is_neither_crossing_nor_bend(self):
        cost = tally.of({"a": self.strokes(((0, 0), (20, 0)), ((10, 0), (10, 10)))}, [],
                        [(0, 0, 1, 1)])
        self.assertEqual((cost.crossings, cost.bends), (0, 0))


def write_table():
    with tempfile.TemporaryDirectory() as folder:
        results = checked(folder)
    try:
        others = elk.tallies([graph for *_, graph in results])
    except (OSError, RuntimeError) as error:
        print(error, file=sys.stderr)
        known = table.read()
        others = [known[name].engine if name in known else None for name, *_ in results]
    table.write([table.Row(name, faults.count(found), cost, other)
                 for (name, found, cost, _), other in zip(results, others)])


def list_faults(folder):
    for name, found, _, _ in sorted(checked(folder), key=lambda r: -len(r[1])):
        if found:
            print(f"{name}: {faults.count(found)}")
        for sort, (x, y), words in found:
            print(f"    {sort:12} {x:7.1f},{y:<7.1f} {words}")


if __name__ == "__main__":
    os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
    PROGRAM = sys.argv.pop(1)
    if "--table" in sys.argv:
        write_table()
    elif "--list" in sys.argv:
        with tempfile.TemporaryDirectory() as place:
            list_faults(sys.argv[-1] if sys.argv[-1] != "--list" else place)
    else:
        unittest.main()
