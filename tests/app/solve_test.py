"""`loopwright solve` as its user runs it: text, JSON against its schema, CSV, points, exit statuses.

Figures are those of a transmission without losses (2 pi T = V p and n V the same on both sides),
worked out here.
"""

import csv
import io
import json
import math
import re

import jsonschema

import program
from program import InAFolder, SOUND, changed, run
from sums import worked_out

DUTY = """  <fluid grade="VG 46" viscosity-index="105"/>
  <command id="Z1" given-by="lever"><stage of="P1" from="0 %" to="100 %"/></command>
  <duty>
    <point id="full" speed="2400 rpm" travel="100 %" torque="300 N.m" oil="50 degC"/>
    <point id="half" speed="2400 rpm" travel="50 %" torque="300 N.m" oil="50 degC"/>
  </duty>
</circuit>
"""
WITH_DUTY = changed("</circuit>\n", DUTY,
                    changed('<motor id="M1"', '<motor id="M1" displacement="80 cm3/rev"'))
BAR, LITRE_A_MINUTE, RPM = 1e5, 1e-3 / 60, math.pi / 30
# As the working of heat prints them; degC and K alike, as sums have one degC in them only.
UNITS = {"kW": 1e3, "degC": 1.0, "K": 1.0, "m2": 1.0, "W/(m2.K)": 1.0, "kg/m3": 1.0,
         "kJ/(kg.K)": 1e3, "L/min": LITRE_A_MINUTE}


def calculated(figures):
    """What figures come to in SI, their units read and the names behind them left out."""
    for unit in sorted(UNITS, key=len, reverse=True):
        figures = re.sub(rf"([0-9.e-]+) {re.escape(unit)}(?![\w/])", rf"(\1*{UNITS[unit]!r})",
                         figures)
    return worked_out(re.sub(r" \([A-Z]\w*\)", "", figures).replace(" x ", "*"))


class Solve(InAFolder):
    def solve(self, text, *options, status=0):
        ran = self.run_here("solve", "-", *options, input=text.encode())
        self.assertStatus(ran, status)
        return ran

    def points(self, text, status=0):
        said = json.loads(self.solve(text, "--format", "json", status=status).out)
        schema = json.loads(run("schema", "solve").out)
        jsonschema.Draft202012Validator(schema).validate(said)
        return {point["id"]: point for point in said["points"]}

    def test_the_figures_are_those_of_an_ideal_transmission(self):
        for name, share in (("full", 1.0), ("half", 0.5)):
            point = self.points(WITH_DUTY)[name]
            machines = {one["id"]: one for one in point["machines"]}
            motor = machines["M1"]
            # What is flushed at 18 bar is made up, so that no more leaves the loop on its high side.
            self.assertAlmostEqual(motor["speed"]["value"] / RPM, 2400 * share * 71 / 80, places=6)
            difference = motor["pressure_a"]["value"] - motor["pressure_b"]["value"]
            self.assertAlmostEqual(difference / BAR, 2 * math.pi * 300 / 80e-6 / BAR, places=6)
            self.assertAlmostEqual(motor["pressure_b"]["value"] / BAR, 18.0, places=6)
            self.assertAlmostEqual(machines["P1"]["torque"]["value"], 300 * share * 71 / 80, places=6)
            flows = {one["id"]: one["flow"]["value"] / LITRE_A_MINUTE for one in point["lines"]
                     if "flow" in one}
            self.assertAlmostEqual(flows["S1"], 2.4 * 18, places=6)
            self.assertAlmostEqual(flows["FC"], 2.4 * 18, places=6)
            self.assertLess(point["residual"]["mass"], 1e-9)
            self.assertLess(point["residual"]["energy"], 1e-9)

    def test_the_text_says_the_same(self):
        said = self.solve(WITH_DUTY, "--point", "half").words
        self.assertIn("Point half: drive-forward, oil 50 degC", said)
        self.assertNotIn("Point full", said)
        machine = next(line.split() for line in said.splitlines() if line.strip().startswith("M1"))
        self.assertEqual(machine[:3], ["M1", "motor", "1065"])
        self.assertIn("support a review by a competent person", said)
        self.assertLessEqual(max(map(len, said.splitlines())), 100)

    def test_the_working_can_be_done_again_with_a_calculator(self):
        said = self.solve(WITH_DUTY, "--point", "half", "--working").words
        self.assertIn("71 cm3/rev x 2400 rpm x 0.5 = 85.2 L/min", said)
        # M1 under 300 N.m: 2 pi T/V = 235.6 bar
        self.assertIn("80 cm3/rev x -1 x 235.6 bar / (2 pi) = -300 N.m", said)
        self.assertNotIn("2400 rpm x 0.5", self.solve(WITH_DUTY, "--point", "half").words)

    def worked(self, said, of):
        """The equations below a heading of `--working`: (name, figures, result)."""
        (block,) = [part for part in said.split("\n\n") if part.startswith(f"  {of}\n")
                    and "heat" in part]
        lines = block.splitlines()[1:]
        return [(name.strip(), *figures.strip().rsplit(" = ", 1))
                for name, figures in zip(lines[::2], lines[1::2])]

    def test_the_working_of_heat_can_be_done_again_with_a_calculator(self):
        """Every figure with its unit, to the digits that are printed."""
        file = program.CIRCUITS / "salt-conveyor" / "salt-conveyor.xml"
        ran = self.run_here("solve", file, "--point", "all-day", "--working")
        self.assertStatus(ran, 0)
        done = [one for of in ("loop:P1", "K1", "T1", "oil") for one in self.worked(ran.words, of)
                if not one[0].startswith("drop")]
        self.assertEqual(len(done), 3 + 1 + 1 + 2)
        for name, figures, result in done:
            with self.subTest(equation=name):
                # Differences are as exact as their terms.
                terms = [calculated(term) for term in re.findall(r"[0-9.e-]+ kW", figures)]
                size = max([abs(calculated(result)), *terms] if name.endswith("P in - P out")
                           else [abs(calculated(result))])
                self.assertAlmostEqual(calculated(figures), calculated(result), delta=2e-3 * size)
        self.assertEqual(done[-1][2], "0 kW")  # the heat balances at that point

    def test_what_a_starved_cooler_carries_off_is_what_its_oil_brings(self):
        """The same, with a cooler that could do a hundred times as much."""
        file = program.CIRCUITS / "salt-conveyor" / "salt-conveyor.xml"
        text = changed('capacity="5 kW"', 'capacity="500 kW"', file.read_text(encoding="utf-8"))
        said = self.solve(text, "--point", "full", "--working").words
        ((name, figures, result),) = [one for one in self.worked(said, "K1")
                                      if one[0].startswith("heat")]
        self.assertIn("rho c q (T - Ta)", name)
        self.assertAlmostEqual(calculated(figures) / calculated(result), 1.0, delta=2e-3)

    def test_csv_has_a_row_for_each_figure(self):
        rows = list(csv.DictReader(io.StringIO(self.solve(WITH_DUTY, "--format", "csv").words)))
        speed, = (row for row in rows if (row["point"], row["id"], row["quantity"]) ==
                  ("half", "M1", "speed"))
        self.assertEqual(speed["unit"], "rad/s")
        self.assertAlmostEqual(float(speed["value"]) / RPM, 1065.0, places=6)

    def test_what_is_missing_is_named_and_the_status_says_so(self):
        without = WITH_DUTY.replace('<relief-valve id="R1" setting="24 bar"/>',
                                    '<relief-valve id="R1"/>')
        point = self.points(without, status=1)["full"]
        self.assertEqual(point["missing"], ["R1.setting"])
        self.assertIn("R1.setting", self.solve(without, status=1).words)
        no_oil = WITH_DUTY.replace('<fluid grade="VG 46" viscosity-index="105"/>', "")
        self.assertEqual(self.points(no_oil, status=1)["full"]["missing"], ["fluid.grade"])

    def test_oil_below_vacuum_is_no_state_of_a_machine(self):
        ran = self.run_here("solve", program.TURNED, "--point", "downhill")
        self.assertStatus(ran, 1)
        self.assertIn("BEWARE", ran.words)
        self.assertIn("below vacuum", ran.words)

    def test_an_unknown_point_is_told_with_the_likely_one(self):
        ran = self.solve(WITH_DUTY, "--point", "ful", status=2)
        self.assertEqual(ran.out, b"")
        self.assertIn("perhaps 'full'", ran.messages)

    def test_the_result_goes_to_a_file_whole(self):
        self.file("c.xml", WITH_DUTY)
        self.assertStatus(self.run_here("solve", "c.xml", "-o", "out.txt"), 0)
        self.assertEqual((self.folder / "out.txt").read_bytes(),
                         self.run_here("solve", "c.xml").out)
        ran = self.run_here("solve", "c.xml", "-o", "c.xml")
        self.assertStatus(ran, 2)

    def test_bad_input_writes_nothing(self):
        ran = self.solve(WITH_DUTY.replace("2400 rpm", "2400 bar", 1), status=2)
        self.assertEqual(ran.out, b"")

    def test_the_same_input_gives_the_same_bytes(self):
        self.assertEqual(self.solve(WITH_DUTY).out, self.solve(WITH_DUTY).out)


if __name__ == "__main__":
    program.main()
