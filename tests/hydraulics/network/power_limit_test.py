"""A thousand duties drawn by lot: what spares the engine takes no less back than it must, and no more.

    power_limit_test.py LOOPWRIGHT
"""

import random
import sys
import unittest

import laws
import limits_test
import program
from laws import BAR, CM3

DRIVES, POINTS = 20, 50
CLOSED = 1e-9


class PowerLimit(unittest.TestCase):
    def test_is_never_exceeded(self):
        lot = random.Random("power limit")
        held = 0
        for _ in range(DRIVES):
            drive = limits_test.by_lot(lot)
            points = [(lot.uniform(-1.0, 1.0), lot.uniform(0.0, 400 * BAR) * drive.motor * CM3)
                      for _ in range(POINTS)]
            charge = drive.charge * CM3 * 40 * BAR * drive.speed * laws.RPM
            most = drive.pump * CM3 * 350 * BAR * drive.speed * laws.RPM
            power = charge + lot.uniform(0.05, 0.9) * most
            droop = lot.choice(["", ' droop="4 %"', ' droop="9 %" max-torque="2000 N.m"'])
            text = drive.text(*points).replace('power="55 kW"', f'power="{power!r} W"{droop}')
            text = text.replace('control="hydraulic"', 'control="hydraulic" anti-stall="yes"', 1)
            for (travel, _), point in zip(points, program.solve(text)):
                with self.subTest(drive=drive, point=point["id"]):
                    self.assertTrue(point["solved"], point.get("problem"))
                    got = program.figures(point)
                    wanted = min(1.0, 2.0 * abs(travel))
                    self.assertLessEqual(got["W1.power"], power * (1.0 + CLOSED))
                    if got["P1.stroke"] < wanted - CLOSED:
                        held += 1
                        self.assertGreaterEqual(got["W1.power"], power * (1.0 - 1e-6))
        self.assertGreater(held, DRIVES * POINTS // 10)


if __name__ == "__main__":
    program.PROGRAM = sys.argv.pop(1)
    unittest.main()
