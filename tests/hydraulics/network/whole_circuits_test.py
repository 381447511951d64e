"""Whole circuits: what the program prints against equations of our own, solved by scipy's `root`.

    whole_circuits_test.py LOOPWRIGHT
"""

import sys
import unittest

import closed_circuits
import control_circuits
import open_circuits
import program

AGREEMENT = 1e-6  # relative; issue 8
# Where a figure is about nothing, the same share of these: 100 Pa, 0.06 L/min, 1e-3 rad/s, 0.1 N.m.
FLOOR = {"pressure": 100.0, "drop": 100.0, "flow": 1e-6, "speed": 1e-3, "torque": 0.1, "force": 1.0}
COMPARED = {"lines": ("pressure", "flow", "drop"), "shafts": ("speed", "torque"),
            "machines": ("torque", "force")}


class WholeCircuits(unittest.TestCase):
    def compare(self, circuit):
        (point,) = program.solve(circuit.text)
        self.assertTrue(point["solved"], point.get("problem"))
        self.assertLess(point["residual"]["mass"], 1e-9)
        self.assertLess(point["residual"]["energy"], 1e-9)
        printed = program.figures(point)
        for name, value in printed.items():  # how laminar goes over into turbulent has no source
            if name.endswith(".reynolds"):
                self.assertFalse(2300.0 < value < 4000.0, f"{name} {value}")
        expected = circuit.solution().printed
        wanted = {f"{one['id']}.{key}" for kind, keys in COMPARED.items() for one in point[kind]
                  for key in keys if f"{one.get('id')}.{key}" in printed}
        self.assertEqual(wanted, set(expected))  # every figure is held against something
        for name, value in expected.items():
            floor = FLOOR[name.rpartition(".")[2]]
            with self.subTest(figure=name):
                self.assertLessEqual(abs(printed[name] - value), AGREEMENT * max(abs(value), floor),
                                     f"{printed[name]} against {value}")

    def test_commands_of_one_loop_that_go_both_ways_are_refused(self):
        """A pump has one stroke."""
        text = closed_circuits.TWO_LOOPS_TEXT.replace('travel="90 %"', 'travel="-90 %"')
        text = text.replace('<stage of="P2"',
                            '<stage of="M1" from="0 %" to="100 %"/> <stage of="P2"')
        text = text.replace('<motor id="M1"', '<motor id="M1" variable="yes"')
        (point,) = program.solve(text)
        self.assertFalse(point["solved"])
        self.assertIn("both senses at once", point["problem"])

    def test_a_spin_turn_is_told_by_loop(self):
        """Each loop with its own state, and a flushing valve where its low side is."""
        (point,) = program.solve(control_circuits.SPIN_TEXT)
        self.assertEqual([(one["id"], one["state"]) for one in point["loop_states"]],
                         [("loop:P1", "drive-forward"), ("loop:P2", "drive-reverse")])


def _test_of(circuit):
    return lambda self: self.compare(circuit)


for _name, _circuit in {**closed_circuits.CIRCUITS, **open_circuits.CIRCUITS,
                        **control_circuits.CIRCUITS}.items():
    _name = _name.replace(",", "").replace(" ", "_").replace("-", "_")
    setattr(WholeCircuits, "test_" + _name, _test_of(_circuit))

if __name__ == "__main__":
    program.PROGRAM = sys.argv.pop(1)
    unittest.main()
