"""Friction factors and pressure drops against python3-fluids, outside the transition band.

    fluids_test.py PIPE_VALUES

PIPE_VALUES answers for our laws. The library takes flow for turbulent from Reynolds number 2040 on and
jumps there; ours is laminar up to 2300 and turbulent from 4000 on, so between those it is not asked.
"""

import math
import random
import subprocess
import sys
import unittest

import fluids
from fluids.friction import Colebrook, friction_laminar

PIPE_VALUES = None

LAMINAR_UNTIL, TURBULENT_FROM = 2300.0, 4000.0


def answers(questions):
    """Our value for each question, a list of a word and numbers."""
    lines = "".join(" ".join(map(str, question)) + "\n" for question in questions)
    run = subprocess.run([PIPE_VALUES], input=lines, capture_output=True, text=True, check=True)
    values = [float(line) for line in run.stdout.splitlines()]
    if len(values) != len(questions):
        raise AssertionError(f"{len(values)} answers to {len(questions)} questions")
    return values


def reynolds_numbers(lot, count):
    """As many laminar as turbulent ones, as likely in each decade."""
    for index in range(count):
        low, high = (1.0, LAMINAR_UNTIL) if index % 2 else (TURBULENT_FROM, 1e7)
        yield math.exp(lot.uniform(math.log(low), math.log(high)))


def factor(reynolds, roughness):
    """Of the library, with our limits."""
    if reynolds <= LAMINAR_UNTIL:
        return friction_laminar(reynolds)
    return Colebrook(reynolds, roughness)


def pipes(lot, count):
    """Pipes with oil in them: keywords of the library's one_phase_dP, flow in m3/s and K."""
    for reynolds in reynolds_numbers(lot, count):
        bore = lot.uniform(0.004, 0.08)
        rho, nu = lot.uniform(780, 950), math.exp(lot.uniform(math.log(3e-6), math.log(1e-3)))
        flow = reynolds * nu * math.pi * bore / 4.0
        yield {"m": rho * flow, "rho": rho, "mu": rho * nu, "D": bore,
               "L": lot.uniform(0.1, 30.0), "roughness": bore * lot.uniform(0.0, 0.05)}, flow, nu


class Fluids(unittest.TestCase):
    def compare(self, got, expected, share):
        self.assertEqual(len(got), len(expected))
        for ours, theirs in zip(got, expected):
            self.assertLess(abs(ours - theirs), share * abs(theirs), (ours, theirs))

    def test_friction_factors(self):
        lot = random.Random(20261130)
        points = [(reynolds, lot.choice([0.0, lot.uniform(0.0, 0.05), 10 ** lot.uniform(-6, -2)]))
                  for reynolds in reynolds_numbers(lot, 2000)]
        self.compare(answers([("factor", *point) for point in points]),
                     [factor(*point) for point in points], 1e-9)

    def test_pipe_drops(self):
        """The library's own choice of law where it agrees on which one it is."""
        cases = [case for case in pipes(random.Random(20261130), 2000)
                 if not 2040.0 <= fluids.Reynolds(D=case[0]["D"], nu=case[2],
                                                  V=4 * case[1] / math.pi / case[0]["D"] ** 2) <= 2300.0]
        self.assertGreater(len(cases), 1900)
        got = answers([("drop", flow, p["D"], p["L"], p["roughness"], 0.0, p["rho"], nu)
                       for p, flow, nu in cases])
        # Its default law for turbulent flow is an explicit formula for Colebrook's, good to 1e-9 or so.
        self.compare(got, [fluids.one_phase_dP(**p) for p, _, _ in cases], 1e-9)

    def test_minor_losses(self):
        lot = random.Random(20261130)
        cases = [(p, flow, nu, lot.uniform(0.0, 12.0)) for p, flow, nu in pipes(lot, 500)]
        got = answers([("drop", flow, p["D"], 0.0, 0.0, loss, p["rho"], nu)
                       for p, flow, nu, loss in cases])
        self.compare(got, [fluids.dP_from_K(K=loss, rho=p["rho"],
                                            V=4 * flow / math.pi / p["D"] ** 2)
                           for p, flow, _, loss in cases], 1e-9)

    def test_the_band_lies_between_both_laws(self):
        points = [(reynolds, roughness) for reynolds in range(2350, 4000, 50)
                  for roughness in (0.0, 1e-4, 1e-2)]
        for (reynolds, roughness), ours in zip(points, answers([("factor", *p) for p in points])):
            self.assertLess(friction_laminar(reynolds), ours)
            self.assertLess(ours, Colebrook(reynolds, roughness))

    def test_a_wrong_factor_is_seen(self):
        with self.assertRaises(AssertionError):
            self.compare([1.0 + 1e-6], [1.0], 1e-9)


if __name__ == "__main__":
    PIPE_VALUES = sys.argv.pop(1)
    unittest.main()
