"""Transmissions of textbooks as circuit files, through the whole program.

    published_test.py LOOPWRIGHT

The rows P-17, P-20, P-21, P-22 and P-31 are those of the project's table of published values. What
a file gives and leaves out stands in it. Tolerances are the rounding of the source.
"""

import math
import pathlib
import sys
import unittest

import program

FOLDER = pathlib.Path(__file__).resolve().parent.parent / "published_circuits"

INCH = 0.0254
PSI = 0.45359237 * 9.80665 / INCH ** 2  # NIST SP 811
GPM = 231 * INCH ** 3 / 60.0
POUND_INCH = PSI * INCH ** 3
HP = 550 * 12 * POUND_INCH
RPM = math.pi / 30.0


class Published(unittest.TestCase):
    def solve(self, name):
        (point,) = program.solve((FOLDER / name).read_bytes())
        self.assertTrue(point["solved"], point.get("problem"))
        self.assertLess(point["residual"]["mass"], 1e-9)
        self.assertLess(point["residual"]["energy"], 1e-9)
        return program.figures(point)

    def test_transmission_in_us_units(self):
        """P-17: 4.71 in3 is rounded to 0.2 %, 674 lbf.in to 0.3 % (63 000, rounded hp)."""
        got = self.solve("transmission-us.xml")
        self.assertAlmostEqual(got["M1.speed"] / RPM, 400.0, delta=400.0 * 0.0022)
        self.assertAlmostEqual(got["HA.pressure"] / PSI, 1000.0, delta=1000.0 * 0.003)
        self.assertAlmostEqual(got["P1.volumetric_efficiency"], 0.82, delta=0.001)
        self.assertAlmostEqual(got["P1.mechanical_efficiency"], 0.88, delta=0.001)
        self.assertAlmostEqual(got["M1.volumetric_efficiency"], 0.92, delta=0.001)
        self.assertAlmostEqual(got["M1.mechanical_efficiency"], 0.90, delta=0.001)

    def test_transmission_in_si(self):
        """P-20, and P-21 for its powers: 0.1 %."""
        got = self.solve("transmission-si.xml")
        self.assertAlmostEqual(got["M1.speed"] / RPM, 400.0, delta=0.4)
        self.assertAlmostEqual(got["HA.pressure"] / 1e5, 70.0, delta=0.07)
        self.assertAlmostEqual(got["P1.torque"], 103.812, delta=0.104)
        self.assertAlmostEqual(got["P1.shaft_power"], 5435.6, delta=5.4)
        self.assertAlmostEqual(got["M1.shaft_power"], 3247.7, delta=3.2)
        self.assertAlmostEqual(got["M1.shaft_power"] / got["P1.shaft_power"], 0.5975, delta=0.0006)

    def test_pump_line_and_motor(self):
        """P-22: flow, pressure and power to 0.1 %; what is exact in SI, to its last digit."""
        got = self.solve("pump-line-motor.xml")
        self.assertAlmostEqual(got["H1.flow"] / GPM, 40.7, delta=0.041)
        self.assertAlmostEqual(got["H1.pressure"] / PSI, 569.0295, delta=0.01)
        self.assertAlmostEqual(got["H1.velocity"], 4.6844, delta=0.0005)
        self.assertAlmostEqual(got["H1.reynolds"], 989.944, delta=0.1)
        self.assertAlmostEqual(got["S2.pressure"] / PSI, -4.0, delta=0.002)
        self.assertAlmostEqual(got["H4.pressure"] / PSI, 500.0, delta=0.02)
        self.assertAlmostEqual(got["K1.pressure"] / PSI, 5.0, delta=1e-4)
        self.assertAlmostEqual(got["P1.shaft_power"] / HP, 15.72874, delta=0.002)
        self.assertAlmostEqual(got["M1.speed"] / RPM, 1057.0, delta=1.06)
        efficiency = got["M1.shaft_power"] / got["P1.shaft_power"]
        self.assertAlmostEqual(efficiency, 0.6185492, delta=0.0001)

    def test_pump_to_motor_with_loop_leakage(self):
        """P-31: 3.896 gpm ideal, 3.40 delivered, 1376.3 rpm, 87.17 %."""
        got = self.solve("loop-leakage.xml")
        self.assertAlmostEqual(got["HA.pressure"] / PSI, 1000.0, delta=0.01)
        self.assertAlmostEqual(got["HA.flow"] / GPM, 3.396104, delta=5e-6)
        self.assertAlmostEqual(got["HA.flow"] / GPM, 3.40, delta=0.005)
        self.assertAlmostEqual(got["M1.speed"] / RPM, 1376.3, delta=0.05)
        self.assertAlmostEqual(got["P1.volumetric_efficiency"], 0.8717, delta=5e-5)
        self.assertAlmostEqual(got["L1.flow"] / GPM, 0.50, delta=1e-5)


if __name__ == "__main__":
    program.PROGRAM = sys.argv.pop(1)
    unittest.main()
