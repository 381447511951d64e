"""`loopwright readings`: what instruments should show, against closed forms of an ideal drive and
against `solve`; the sheet's form."""

import csv
import io
import json
import math
import re

import jsonschema

import program
from program import CIRCUITS, InAFolder, changed, run

BAR, RPM, LITRE_A_MINUTE = 1e5, math.pi / 30, 1e-3 / 60
EXAMPLES = sorted(path for path in CIRCUITS.glob("*/*.xml") if path.parent.name != "assemblies")

# The mixer drum with oil, a duty and an instrument of every kind. No machine of it loses anything,
# so that what they show has a closed form.
WITH = changed('<engine id="E1" speed="2400 rpm"/>',
               '<fluid grade="VG 46" viscosity-index="105" cleanliness="18/16/13"/>'
               '<engine id="E1" speed="2400 rpm"/>')
WITH = changed('<motor id="M1" ', '<motor id="M1" displacement="80 cm3/rev" ', WITH)
WITH = changed('<measuring-point id="I1"/> ',
               '<gauge id="I1" range="250 bar"/> <flow-meter id="Q1" range="60 L/min"/>'
               '<tachometer id="N1" title="drum speed"/> <thermometer id="H1"/> <thermometer id="H2"/>'
               '<thermometer id="H3"/> <sensor id="Y1" measures="level"/>'
               '<sensor id="Y2" measures="contamination"/> <sensor id="Y3" measures="flow"/>'
               '<gauge id="I9"/> <command id="Z1"> <stage of="P1" from="0 %" to="100 %"/> </command>'
               '<duty cold-start="10 degC">'
               '<point id="full" speed="2400 rpm" travel="100 %" torque="300 N.m" oil="50 degC"/>'
               '<point id="half" speed="2400 rpm" travel="50 %" torque="150 N.m" oil="60 degC"/>'
               '</duty>', WITH)
WITH = changed('joins="M1 D1"', 'joins="M1 D1 N1"', WITH)
WITH = changed('joins="T1.S P2.S"', 'joins="T1.S P2.S H1.P Y1.P Y2.P"', WITH)
WITH = changed('joins="I1.P P1.A', 'joins="H2.P I1.P P1.A', WITH)
WITH = changed('joins="I4.P P1.L', 'joins="H3.P I4.P P1.L', WITH)
WITH = changed('joins="R4.T K1.A"', 'joins="R4.T Q1.A"', WITH)
WITH = changed('joins="K1.B T1.F"', 'joins="K1.B T1.F Y3.P"/> <line id="FD" joins="Q1.B K1.A"', WITH)


class Readings(InAFolder):
    def ran(self, text, *options, status=0):
        ran = self.run_here("readings", "-", *options, input=text.encode())
        self.assertStatus(ran, status)
        return ran

    def said(self, text, status=0):
        said = json.loads(self.ran(text, "--format", "json", status=status).words)
        jsonschema.Draft202012Validator(json.loads(run("schema", "readings").out)).validate(said)
        return said

    def values(self, text, status=0):
        """{point or "neutral": {id: (cold, hot)}}, each what is expected in SI or why it is not."""
        def value(one):
            if "expected" in one:
                return one["expected"]["value"]
            return one.get("code") or one["unknown"]
        return {state.get("point", "neutral"): {one["id"]: (value(one["cold"]), value(one["hot"]))
                                                for one in state["readings"]}
                for state in self.said(text, status)["states"]}

    def test_they_are_those_of_an_ideal_transmission(self):
        states = self.values(WITH)
        self.assertEqual(list(states), ["neutral", "full", "half"])
        for point, share in (("full", 1.0), ("half", 0.5)):
            # 2 pi T/V over the motor, the flushing relief's 18 bar on the low side (T = 300 N.m).
            high = 2 * math.pi * 300 * share / 80e-6 / BAR + 18.0
            for k, oil in ((0, 10.0), (1, 50.0 if point == "full" else 60.0)):
                read = {id_: both[k] for id_, both in states[point].items()}
                self.assertAlmostEqual(read["I1"] / BAR, high, places=5)
                self.assertAlmostEqual(read["I2"] / BAR, 18.0, places=5)
                self.assertAlmostEqual(read["I3"] / BAR, 18.0, places=5)
                self.assertAlmostEqual(read["I4"] / BAR, 0.0, places=5)
                self.assertAlmostEqual(read["N1"] / RPM, 2400 * share * 71 / 80, places=5)
                self.assertAlmostEqual(read["Q1"] / LITRE_A_MINUTE, 2.4 * 18, places=5)
                self.assertAlmostEqual(read["Y3"] / LITRE_A_MINUTE, 2.4 * 18, places=5)
                self.assertAlmostEqual(read["H1"] - 273.15, oil, places=6)
        # In neutral the shuttle is centred: all charge oil goes over the relief, at 24 bar.
        for k in (0, 1):
            self.assertAlmostEqual(states["neutral"]["I3"][k] / BAR, 24.0, places=5)
            self.assertAlmostEqual(states["neutral"]["Q1"][k], 0.0, places=9)
        self.assertAlmostEqual(states["neutral"]["H1"][1] - 273.15, 60.0, places=6)

    def test_what_is_not_computed_says_so(self):
        full = self.values(WITH)["full"]
        self.assertIn("only the reservoir's", full["H3"][1])
        self.assertIn("levels are not computed", full["Y1"][0])
        self.assertIn("joined to nothing", full["I9"][0])
        self.assertEqual(full["Y2"], ("18/16/13", "18/16/13"))
        without = self.values(WITH.replace(' cleanliness="18/16/13"', ""))["full"]
        self.assertEqual(without["Y2"][0], "not given: fluid.cleanliness")

    def test_the_loop_has_its_own_temperature(self):
        for example in ("ice-resurfacer", "quay-winch"):
            text = (CIRCUITS / example / f"{example}.xml").read_text()
            text = text.replace('I1.P"', 'I1.P H1.P"', 1).replace("</circuit>", '<thermometer id="H1"/></circuit>')
            self.file("c.xml", text)
            solved = json.loads(self.run_here("solve", "c.xml", "--format", "json").words)["points"]
            states = self.values(text)
            for point in solved:
                loop, = point["heat"]["loops"]
                self.assertEqual(states[point["id"]]["H1"][1], loop["temperature"]["value"])

    def test_without_a_cold_start_the_datum_is_named(self):
        text = changed(' cold-start="10 degC"', "", WITH)
        for state, read in self.values(text).items():
            for id_, (cold, hot) in read.items():
                self.assertEqual(cold, "not given: duty.cold-start", (state, id_))
                if id_ == "I3":
                    self.assertIsInstance(hot, float)
        words = self.ran(text).words
        self.assertIn("cannot tell (1)", words)
        self.assertEqual(words.count("not given: duty.cold-start"), 1)

    def test_hot_is_what_solve_says_and_cold_what_it_says_of_cold_oil(self):
        for example in ("ice-resurfacer", "quay-winch", "gearbox-test-stand", "street-sweeper"):
            text = (CIRCUITS / example / f"{example}.xml").read_text()
            cold_oil = re.search(r'cold-start="([^"]*)"', text)[1]
            states = self.values(text)
            gauges = [(gauge, line)
                      for line, joins in re.findall(r'<line id="(\w+)"[^>]*joins="([^"]*)"', text)
                      for gauge in re.findall(r"\b(I\d)\.P", joins)]
            self.assertGreaterEqual(len(gauges), 4)
            for k, circuit in ((1, text), (0, re.sub(r' oil="[^"]*"', f' oil="{cold_oil}"', text))):
                self.file("c.xml", circuit)
                for point in json.loads(self.run_here("solve", "c.xml", "--format", "json").words)["points"]:
                    nodes = {one["line"]: one["pressure"]["value"] for one in point["nodes"]}
                    if not re.search(r'<point id="%s"[^>]* oil=' % point["id"], circuit):
                        continue
                    for id_, line in gauges:
                        # A gauge behind a line's first port stands at that port.
                        self.assertAlmostEqual(states[point["id"]][id_][k], nodes[line],
                                               delta=1e-6 * abs(nodes[line]) + 1e-3)

    def test_the_range_of_an_instrument(self):
        full = next(state for state in self.said(WITH)["states"] if state.get("point") == "full")
        above = {one["id"] for one in full["readings"] if one["hot"].get("above_range")}
        self.assertEqual(above, {"I1"})  # 253.6 bar on a dial that ends at 250 bar
        self.assertIn("above the range of its instrument, 250 bar", self.ran(WITH).words)

    def test_the_sheet_fits_and_begins_with_order_and_cautions(self):
        for path in EXAMPLES:
            with self.subTest(path.name):
                words = run("readings", path).words
                self.assertLessEqual(max(map(len, words.splitlines())), 100)
                order = [words.index(piece) for piece in (
                    "Beware", "injects through skin", "stays stored", "Hot oil", "unexpectedly",
                    "Lock out", "Local codes", "First start", "Fill the housings",
                    "Fill and bleed", "Low pressure first")]
                self.assertEqual(order, sorted(order))
        words = run("readings", program.RESURFACER).words
        self.assertIn("Fill the housings of P1, M1 through their upper drain ports", words)
        self.assertIn("up to P2; a gauge for low pressure at I3", words)
        self.assertIn("V3 shut, for towing only", words)
        row = next(line for line in words.splitlines() if line.strip().startswith("I1"))
        self.assertTrue(row.endswith("____________"))

    def test_csv_has_a_row_for_each_place_in_each_state(self):
        rows = list(csv.DictReader(io.StringIO(self.ran(WITH, "--format", "csv").words)))
        self.assertEqual(len(rows), 3 * 13)
        self.assertEqual({row["measured"] for row in rows}, {""})
        row, = (one for one in rows if (one["point"], one["id"]) == ("full", "N1"))
        self.assertAlmostEqual(float(row["hot"]) / RPM, 2130.0, places=5)
        self.assertEqual((row["unit"], row["hot as read"], row["at"]), ("rad/s", "2130 rpm", "W2"))

    def test_the_exit_status_is_that_of_solve(self):
        self.ran(changed('<relief-valve id="R1" setting="24 bar"/>', '<relief-valve id="R1"/>', WITH),
                 status=1)
        ran = self.run_here("readings", program.TURNED)
        self.assertStatus(ran, 1)
        self.assertIn("below vacuum", ran.words.replace("\n      ", " "))
        ran = self.ran("<circuit", status=2)
        self.assertEqual(ran.out, b"")
        self.file("c.xml", WITH)
        self.assertStatus(self.run_here("readings", "c.xml", "-o", "c.xml"), 2)
        self.assertStatus(self.run_here("readings", "c.xml", "-o", "out.txt"), 0)
        self.assertEqual((self.folder / "out.txt").read_bytes(), self.run_here("readings", "c.xml").out)

    def test_a_circuit_without_instruments(self):
        words = run("readings", CIRCUITS / "starting" / "traction.xml").words
        self.assertIn("there is nothing to read", words)


if __name__ == "__main__":
    program.main()
