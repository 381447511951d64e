"""A thousand circuits and duties drawn by lot, judged by laws of our own.

    random_test.py LOOPWRIGHT [SHARE]

Each state that is printed must obey the law of every part, and close mass and energy to 1e-9; at
least 95 % must be solved. What is refused must name a balance, and scipy's `root` must find no
state either, from 50 random starts. SHARE: one in so many, for a slow build.
"""

import random
import sys
import unittest

import families
import open_families
import program

# How many of each, by the name that with a number is the lot's seed.
FAMILIES = {"closed loop": (families.closed_loop, 450),
            "open circuit": (open_families.open_circuit, 400),
            "winch": (open_families.winch, 150)}
SOLVED = 0.95
STARTS = 50
BALANCES = ("do not balance", "finds no flow", "do not fit", "finds no displacement")
SHARE = 1


class RandomCircuits(unittest.TestCase):
    def judge(self, family, name):
        """Whether it is solved."""
        case = family(random.Random(name))
        (point,) = program.solve(case.text())
        if point["solved"]:
            self.assertEqual(case.faults(point, program.figures(point)), [])
            return True
        self.assertTrue(any(word in point["problem"] for word in BALANCES), point["problem"])
        self.assertFalse(case.scipy_solves(STARTS, random.Random(name)),
                         f"scipy solves what is refused: {point['problem']}")
        return False

    def test_what_has_no_state_is_refused(self):
        for family in (open_families.runaway, open_families.shut_in):
            for number in range(5):
                with self.subTest(circuit=f"{family.__name__} {number}"):
                    self.assertFalse(self.judge(family, f"{family.__name__} {number}"))

    def test_states_obey_every_law(self):
        solved = total = 0
        for kind, (family, count) in FAMILIES.items():
            for number in range(0, count, SHARE):
                total += 1
                with self.subTest(circuit=f"{kind} {number}"):
                    solved += self.judge(family, f"{kind} {number}")
        print(f"{solved} of {total} solved", file=sys.stderr)
        self.assertGreaterEqual(solved, SOLVED * total)


if __name__ == "__main__":
    program.PROGRAM = sys.argv.pop(1)
    SHARE = int(sys.argv.pop(1)) if len(sys.argv) > 1 else 1
    unittest.main()
