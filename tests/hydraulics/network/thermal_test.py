"""Whole thermal balances: what the program prints against equations of our own, solved by scipy's
`root` with the oil's temperature among their unknowns. Energy over the duty of every example.

    thermal_test.py LOOPWRIGHT
"""

import pathlib
import sys
import unittest

import program
import thermal_circuits

AGREEMENT = 1e-6  # relative; issue 8. Of a temperature: of what it is over the ambient.
CLOSED = 1e-9  # relative; issue 9
EXAMPLES = pathlib.Path(__file__).resolve().parents[3] / "circuits"


def values(entry):
    """Its figures in SI, by name."""
    return {key: one["value"] if isinstance(one, dict) else one for key, one in entry.items()
            if isinstance(one, (dict, float))}


class Thermal(unittest.TestCase):
    def compare(self, printed, expected, ambient):
        self.assertEqual(set(expected) - set(printed), set())
        for name, value in expected.items():
            warm = name == "oil" or name.endswith("temperature")
            size = value - ambient if warm else abs(value)
            with self.subTest(figure=name):
                self.assertGreater(size, 0.0)
                self.assertLessEqual(abs(printed[name] - value), AGREEMENT * size,
                                     f"{printed[name]} against {value}")

    def point(self, circuit, ambient):
        (point,) = program.solve(circuit.text)
        self.assertTrue(point["solved"], point.get("problem"))
        self.assertTrue(point["heat"]["balanced"])
        printed = {"oil": point["oil"]["value"], **values(point["heat"])}
        for loop in point["heat"]["loops"]:
            printed |= {f"{loop['id']}.{key}": one for key, one in values(loop).items()}
        self.compare(printed, circuit.solution().printed, ambient)

    def test_traction_loop_flushed_over_its_cooler(self):
        self.point(thermal_circuits.POINTS["traction loop flushed over its cooler"], 298.15)

    def test_geared_motors_with_a_starved_cooler(self):
        self.point(thermal_circuits.POINTS["geared motors with a starved cooler"], 303.15)

    def test_a_duty_and_what_it_leaves_in_neutral(self):
        circuit = thermal_circuits.DUTY
        self.compare(values(program.duty(circuit.text)), circuit.solution().printed, 283.15)

    def test_energy_over_the_duty_of_every_example(self):
        files = [file for file in sorted(EXAMPLES.glob("*/*.xml"))
                 if file.parent.name != "assemblies" and "retrofit" not in file.name]
        self.assertGreater(len(files), 9)
        for file in files:
            with self.subTest(file=file.name):
                duty = values(program.duty(file.read_bytes()))
                given = duty["power_in"]
                self.assertGreater(given, 1e3)
                self.assertLessEqual(abs(given - duty["power_out"] - duty["lost"]), CLOSED * given)
                carried = duty["cooler"] + duty["wall"]
                self.assertLessEqual(abs(duty["into_oil"] - carried), CLOSED * given)
                # What gears lose goes into no oil.
                self.assertLessEqual(duty["into_oil"], duty["lost"] * (1.0 + CLOSED))


if __name__ == "__main__":
    program.PROGRAM = sys.argv.pop(1)
    unittest.main()
