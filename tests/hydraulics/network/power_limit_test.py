"""Duties drawn by lot: controls take back what they must, never more, and miss no limit.

    power_limit_test.py LOOPWRIGHT
"""

import random
import sys
import unittest

import limits_test
import program
from laws import BAR, CM3, RPM

DRIVES, POINTS = 20, 50
CLOSED = 1e-9  # of a limit
NEAR = 1e-6  # of one that holds a stroke


def by_lot(lot):
    """A drive, its points, and figures in Pa, N.m, W about what it can ask for."""
    drive = limits_test.by_lot(lot)
    points = [(lot.uniform(-1.0, 1.0), lot.uniform(0.0, 400 * BAR) * drive.motor * CM3)
              for _ in range(POINTS)]
    pressure = lot.uniform(100.0, 300.0) * BAR
    torque = drive.pump * CM3 * lot.uniform(60.0, 250.0) * BAR
    charge = drive.charge * CM3 * 40 * BAR * drive.speed * RPM
    power = charge + lot.uniform(0.05, 0.9) * drive.pump * CM3 * 350 * BAR * drive.speed * RPM
    return drive, points, pressure, torque, power


def controlled(text, pump, engine, motor=""):
    """With attributes more."""
    text = text.replace('control="hydraulic"', f'control="hydraulic" {pump}', 1)
    text = text.replace('power="55 kW"', engine)
    return text.replace('<motor id="M1"', f'<motor id="M1" {motor}')


class Limits(unittest.TestCase):
    def setUp(self):
        self.lot = random.Random("power limit")

    def test_the_power_limit_is_never_exceeded(self):
        """In a thousand duties."""
        held = 0
        for _ in range(DRIVES):
            drive, points, _, _, power = by_lot(self.lot)
            droop = self.lot.choice(["", 'droop="4 %"', 'droop="9 %" max-torque="2000 N.m"'])
            text = controlled(drive.text(*points), 'anti-stall="yes"',
                              f'power="{power!r} W" {droop}')
            for (travel, _), point in zip(points, program.solve(text)):
                with self.subTest(drive=drive, point=point["id"]):
                    self.assertTrue(point["solved"], point.get("problem"))
                    got = program.figures(point)
                    self.assertLessEqual(got["W1.power"], power * (1.0 + CLOSED))
                    if got["P1.stroke"] < min(1.0, 2.0 * abs(travel)) - CLOSED:
                        held += 1
                        self.assertGreaterEqual(got["W1.power"], power * (1.0 - NEAR))
        self.assertGreater(held, DRIVES * POINTS // 10)

    def test_all_controls_at_once(self):
        """The stroke is what the tightest of the limits leaves; the motor's is on its line."""
        held = {"pressure": 0, "torque": 0, "power": 0, "motor": 0}
        for _ in range(DRIVES):
            drive, points, pressure, torque, power = by_lot(self.lot)
            begin = self.lot.uniform(60.0, 200.0) * BAR
            end = begin + self.lot.choice([20.0, 100.0, 200.0]) * BAR
            text = controlled(
                drive.text(*points), f'anti-stall="yes" pressure-limiter="{pressure!r} Pa" '
                f'torque-limiter="{torque!r} N.m"', f'power="{power!r} W" droop="5 %"',
                f'begin-pressure="{begin!r} Pa" end-pressure="{end!r} Pa"')
            for (travel, _), point in zip(points, program.solve(text)):
                with self.subTest(drive=drive, point=point["id"]):
                    self.assertTrue(point["solved"], point.get("problem"))
                    got = program.figures(point)
                    high = max(got["HA.pressure"], got["HB.pressure"])
                    stroke, wanted = got["P1.stroke"], min(1.0, 2.0 * abs(travel))
                    used = {"pressure": high / pressure, "torque": got["P1.torque"] / torque,
                            "power": got["W1.power"] / power}
                    if stroke > 0.0:
                        self.assertLessEqual(max(used.values()), 1.0 + CLOSED)
                    if stroke < wanted - CLOSED:
                        tightest = max(used, key=used.get)
                        held[tightest] += 1
                        self.assertGreaterEqual(used[tightest], 1.0 - NEAR)
                    commanded = 1.0 - 0.75 * max(0.0, 2.0 * abs(travel) - 1.0)
                    asked = 0.25 + 0.75 * (high - begin) / (end - begin)
                    held["motor"] += asked > commanded
                    self.assertAlmostEqual(got["M1.stroke"], max(commanded, min(1.0, asked)),
                                           delta=NEAR)
        self.assertGreater(min(held.values()), DRIVES, held)


if __name__ == "__main__":
    program.PROGRAM = sys.argv.pop(1)
    unittest.main()
