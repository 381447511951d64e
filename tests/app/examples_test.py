"""The example circuits against their pages: circuits/<machine>/README.md.

The tables of a page are read here. `check` finds in each file what the page's findings say and
nothing else. Of the hand calculation each sum is worked out again; it agrees with `solve` within
what the page states, and the page's figures of `solve` are those that it gives today.
"""

import json
import math
import re

import program
from program import CIRCUITS, InAFolder, run
from sums import worked_out

NO_EXAMPLES = {"assemblies", "starting"}  # what comes with the program: new_test.py
PAGES = sorted(page for page in CIRCUITS.glob("*/README.md") if page.parent.name not in NO_EXAMPLES)
RUNNING = ["neutral", "drive-forward", "drive-reverse", "overrun-forward", "overrun-reverse",
           "hold", "lost-signal"]
UNITS = {"bar": 1e5, "L/min": 1e-3 / 60, "rpm": math.pi / 30, "kW": 1e3, "N.m": 1.0, "m/s": 1.0,
         "degC": 1.0}


def table(page, *columns):
    """The rows below the only heading with these columns, each as a dictionary of plain texts."""
    rows, inside = [], False
    for line in page.read_text(encoding="utf-8").splitlines():
        cells = [cell.strip().replace("`", "") for cell in line.strip().strip("|").split("|")]
        if cells == list(columns):
            inside = True
        elif not line.startswith("|"):
            inside = False
        elif inside and set(line) - set("|- :"):
            rows.append(dict(zip(columns, cells)))
            if len(cells) != len(columns):
                raise AssertionError(f"{page}: {line}")
    return rows


def findings(page):
    """What a page says is found: (file, rule, subject, level, states, cause), sorted."""
    found = []
    for row in table(page, "file", "rule", "subject", "level", "states", "follows from"):
        states = row["states"].replace("all running", ", ".join(RUNNING))
        for subject in row["subject"].split(", "):
            found.append((row["file"], row["rule"], subject, row["level"],
                          tuple(filter(None, states.split(", "))), row["follows from"]))
    return sorted(found)


def found_in(file):
    """What `check` finds in a file, likewise."""
    said = json.loads(run("check", "--format", "json", file).out)["circuits"][0]
    if said["diagnostics"]:
        raise AssertionError(said["diagnostics"])
    found = []
    for one in said["verdicts"]:
        if one["outcome"] in ("pass", "not-applicable"):
            continue
        states = dict.fromkeys(state["name"] for state in one.get("states", []))
        cause = one.get("follows")
        found.append((file.name, one["rule"], one["subject"]["id"], one.get("level", "cannot tell"),
                      tuple(states), f"{cause['rule']} {cause['subject']['id']}" if cause else ""))
    return found


def half_a_digit(number):
    """Half of the last digit of a number as it is printed."""
    return 0.5001 * 10.0 ** -len(number.partition(".")[2])


class Solved:
    """Figures of a duty point by the words of the pages: 'M1 drop', 'W1 power', 'R4 flow'."""

    def __init__(self, point):
        self.oil = point["oil"]["value"] - 273.15
        self.machines = {one["id"]: one for one in point["machines"]}
        self.shafts = {one["id"]: one for one in point["shafts"]}
        self.lines = {one["id"]: one for one in point["lines"]}
        self.pressures = {one["line"]: one["pressure"]["value"] for one in point["nodes"]}
        self.losses = {one["id"]: one["power"]["value"] for one in point["heat"]["losses"]}
        self.uses = {}
        for balance in point["charge"]:
            for use in balance["uses"]:
                self.uses[use["where"]] = use["flow"]["value"]

    def figure(self, words):
        name, what = words.split(" ")
        if words == "oil temperature":
            return self.oil
        if what == "loss":
            return self.losses[name]
        if name in self.machines:
            machine = self.machines[name]
            sides = machine["pressure_a"]["value"], machine["pressure_b"]["value"]
            if what == "drop":
                return max(sides) - min(sides)
            if what == "low":
                return min(sides)
            keys = {"leakage": "case_flow", "power": "shaft_power"}
            return abs(machine[keys.get(what, what)]["value"])
        if name in self.shafts:
            return self.shafts[name][what]["value"]
        if name in self.lines:
            if what == "pressure":
                return self.pressures[name]
            return abs(self.lines[name][what]["value"])
        return self.uses[name]


class Examples(InAFolder):
    def test_each_has_its_page_and_each_retrofit_stands_on_it(self):
        self.assertGreaterEqual(len(PAGES), 8)
        folders = {path.parent for path in CIRCUITS.glob("*/*.xml")}
        self.assertEqual({page.parent for page in PAGES},
                         {folder for folder in folders if folder.name not in NO_EXAMPLES})
        for page in PAGES:
            files = {path.name for path in page.parent.glob("*.xml")}
            retrofits = files - {f"{page.parent.name}.xml"}
            self.assertEqual(len(files - retrofits), 1, page)
            self.assertGreaterEqual(len(retrofits), 2, page)
            listed = {row["file"] for row in table(page, "file", "what is wrong")}
            self.assertEqual(listed, retrofits)
            self.assertLessEqual(retrofits, {row[0] for row in findings(page)}, page)

    def test_what_is_found_is_what_the_pages_say(self):
        for page in PAGES:
            with self.subTest(page.parent.name):
                found = []
                for file in sorted(page.parent.glob("*.xml")):
                    found += found_in(file)
                self.assertEqual(sorted(found), findings(page))

    def test_sound_ones_have_nothing_at_warning_or_above(self):
        for page in PAGES:
            ran = run("check", page.parent / f"{page.parent.name}.xml")
            self.assertStatus(ran, 0)
            self.assertIn(" 0 undecided", ran.words)

    def test_hand_calculations_agree_with_solve(self):
        for page in PAGES:
            ran = run("solve", "--format", "json", page.parent / f"{page.parent.name}.xml")
            self.assertStatus(ran, 0)
            said = json.loads(ran.out)
            points = {point["id"]: Solved(point) for point in said["points"]}
            rows = table(page, "point", "figure", "sum", "by hand", "solve", "within")
            self.assertGreaterEqual(len(rows), 8, page)
            for row in rows:
                with self.subTest(page.parent.name, **row):
                    number, unit = row["by hand"].split(" ")
                    by_hand = worked_out(row["sum"])
                    self.assertAlmostEqual(by_hand, float(number), delta=half_a_digit(number))
                    printed, same_unit = row["solve"].split(" ")
                    self.assertEqual(unit, same_unit)
                    solved = points[row["point"]].figure(row["figure"]) / UNITS[unit]
                    self.assertAlmostEqual(solved, float(printed), delta=half_a_digit(printed))
                    share = float(re.fullmatch(r"([\d.]+) %", row["within"])[1]) / 100.0
                    self.assertLessEqual(share, 0.05)
                    self.assertAlmostEqual(by_hand, solved, delta=share * abs(solved))

    def test_nothing_is_beyond_a_limit(self):
        for page in PAGES:
            ran = run("solve", "--format", "json", page.parent / f"{page.parent.name}.xml")
            for point in json.loads(ran.out)["points"]:
                beyond = [one for one in point["limits"] if one["margin"]["value"] < 0.0]
                self.assertEqual(beyond, [], (page.parent.name, point["id"]))


if __name__ == "__main__":
    program.main()
