"""A drive at its limits, by closed forms; and what must rise or fall with what.

    limits_test.py LOOPWRIGHT

The closed forms follow from Wilson's losses (L-01 to L-03 and L-19 of the published values).
"""

import math
import random
import sys
import unittest
from dataclasses import dataclass, replace

import laws
import program
from laws import BAR, CM3, LPM, RPM

COUNT = 40  # of drives drawn by lot for each rule of rise and fall


@dataclass
class Drive:
    """A closed loop; its low side is fed at the charge relief's setting."""

    pump: float = 71.0  # cm3/rev
    motor: float = 80.0
    charge: float = 18.0
    slip: float = 1.5e-8
    drag: float = 1.68e5
    friction: float = 0.045
    viscosity: float = 46.0  # mm2/s at 40 degC
    speed: float = 2200.0  # rpm
    high: float = 350.0  # bar, of the crossport reliefs
    setting: float = 24.0  # bar
    override: float = 3.0  # bar at 40 L/min

    @property
    def mu(self):
        """Pa.s"""
        return self.viscosity * 1e-6 * laws.density(870.0, 40.0)

    def text(self, *points):
        """`points`: of each travel and torque, as the file has them."""
        losses = (f'slip-coefficient="{self.slip!r}" drag-coefficient="{self.drag!r}" '
                  f'friction-coefficient="{self.friction!r}" drain="external"')
        duty = "".join(f'<point id="p{i}" speed="{self.speed!r} rpm" travel="{travel!r}" '
                       f'torque="{torque!r} N.m" oil="40 degC"/>'
                       for i, (travel, torque) in enumerate(points))
        full = (f' full-flow-pressure="{self.setting + self.override!r} bar" full-flow="40 L/min"'
                if self.override else "")
        return f"""<circuit format="1" title="a drive at its limits">
  <fluid viscosity-40="{self.viscosity!r} mm2/s" viscosity-100="{2 + self.viscosity / 10!r} mm2/s"
         density="870 kg/m3"/>
  <engine id="E1" power="55 kW" speed="{self.speed!r} rpm"/>
  <pump id="P1" displacement="{self.pump!r} cm3/rev" variable="yes" flow-directions="2"
        control="hydraulic" {losses}/>
  <pump id="P2" displacement="{self.charge!r} cm3/rev"/>
  <shaft id="W1" joins="E1 P1 P2"/>
  <motor id="M1" displacement="{self.motor!r} cm3/rev" variable="yes"
         min-displacement="{0.25 * self.motor!r} cm3/rev" {losses}/>
  <load id="D1"/> <shaft id="W2" joins="M1 D1"/>
  <reservoir id="T1"><port id="S"/><port id="R"/><port id="L"/><port id="M"/></reservoir>
  <relief-valve id="R1" setting="{self.setting!r} bar"{full}/>
  <relief-valve id="R2" setting="{self.high!r} bar"/>
  <relief-valve id="R3" setting="{self.high!r} bar"/>
  <check-valve id="C1"/> <check-valve id="C2"/>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P C1.A C2.A"/> <line id="G2" joins="R1.T T1.R"/>
  <line id="HA" joins="P1.A M1.A R2.P R3.T C1.B"/> <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B"/>
  <line id="L1" joins="P1.L T1.L"/> <line id="L2" joins="M1.L T1.M"/>
  <command id="Z1" given-by="pedal"> <stage of="P1" from="0 %" to="50 %"/>
    <stage of="M1" from="50 %" to="100 %"/> </command>
  <duty>{duty}</duty>
</circuit>"""


LOSSLESS = Drive(slip=0.0, drag=0.0, friction=0.0)


def solved(drive, *points):
    """Figures of each point; all must be solved."""
    found = program.solve(drive.text(*points))
    for point in found:
        if not point["solved"]:
            raise AssertionError(point["problem"])
    return [program.figures(point) for point in found]


class Limits(unittest.TestCase):
    def near(self, got, expected, share=1e-6):
        self.assertAlmostEqual(got, expected, delta=share * abs(expected))

    def test_no_slip(self):
        """The speeds are as the displacements, the pressure as the torque."""
        (got,) = solved(LOSSLESS, (0.25, 300.0))
        self.near(got["W2.speed"], 2200 * RPM * 0.5 * 71 / 80)
        self.near(got["HA.pressure"] - got["HB.pressure"], 300.0 / (80 * CM3))

    def test_no_load(self):
        """Without losses no pressure; with them what drag and friction take."""
        (got,) = solved(LOSSLESS, (0.25, 0.0))
        self.assertAlmostEqual(got["HA.pressure"] - got["HB.pressure"], 0.0, delta=1.0)
        one = Drive()
        (got,) = solved(one, (0.25, 0.0))
        self.near(got["HA.pressure"] - got["HB.pressure"],
                  one.drag * one.mu * got["W2.speed"] / (1.0 - one.friction))

    def test_stalled(self):
        """Without a relief the pressure rises until everything leaks away; with one, to that."""
        one = Drive(high=5000.0)
        (got,) = solved(one, (0.01, 9000.0))
        self.assertLess(abs(got["W2.speed"]), 0.5)
        # Flow of the pump, less both leakages of the high side, is what the motor creeps with.
        out = (0.02 * 71 * CM3 * 2200 * RPM - one.slip * 151 * CM3 / one.mu * got["HA.pressure"])
        self.near(out, 80 * CM3 * got["W2.speed"])
        self.near(got["HA.pressure"], 0.02 * 71 * 2200 * RPM * one.mu / (one.slip * 151), 0.01)
        (got,) = solved(Drive(), (0.5, 2000.0))
        self.assertLess(abs(got["W2.speed"]), 0.5)
        self.near(got["HA.pressure"] - got["HB.pressure"], 350 * BAR)

    def test_zero_stroke(self):
        """Both sides stand at the charge pressure and leak into both housings; the pump drags."""
        one = Drive()
        (got,) = solved(one, (0.0, 100.0))
        self.near(got["HA.pressure"], got["HB.pressure"])
        leak = 2.0 * one.slip * 151 * CM3 / one.mu * got["HA.pressure"]
        self.near(got["L1.flow"] + got["L2.flow"], leak)
        relief = 18 * CM3 * 2200 * RPM - leak
        self.near(got["G2.flow"], relief)
        self.near(got["G1.pressure"], 24 * BAR + 3 * BAR / (40 * LPM) * relief)
        # L-19: 12.600 N.m of drag are those of 100 cm3 at 0.03 Pa.s and 1500 rpm.
        self.near(got["P1.torque"], one.drag * 71 * CM3 * one.mu * 2200 * RPM)
        self.assertLess(abs(got["W2.speed"]), 1e-3)

    def test_zero_stroke_as_published(self):
        """L-19: drag of 100 cm3 with L-05's coefficients at 0.03 Pa.s and 1500 rpm: 12.600 N.m."""
        one = Drive(pump=100.0, speed=1500.0, viscosity=0.03 / laws.density(870.0, 40.0) * 1e6)
        (got,) = solved(one, (0.0, 0.0))
        self.assertAlmostEqual(got["P1.torque"], 12.600, delta=0.0005)

    def test_equal_sides(self):
        """A loop is the same either way."""
        ahead, back = solved(Drive(), (0.8, 120.0), (-0.8, 120.0))
        self.near(back["W2.speed"], -ahead["W2.speed"])
        self.near(back["HB.pressure"], ahead["HA.pressure"])
        self.near(back["HA.pressure"], ahead["HB.pressure"])
        self.near(back["P1.torque"], ahead["P1.torque"])


def by_lot(lot):
    """A drive whose charge pump mostly covers what leaks."""
    return Drive(pump=lot.uniform(20.0, 120.0), motor=lot.uniform(30.0, 200.0),
                 charge=lot.uniform(5.0, 40.0), slip=math.exp(lot.uniform(-20.0, -16.5)),
                 drag=lot.uniform(0.0, 3e5), friction=lot.uniform(0.0, 0.1),
                 viscosity=lot.choice([15.0, 32.0, 46.0, 100.0, 220.0]),
                 speed=lot.uniform(800.0, 2600.0), override=lot.uniform(0.5, 8.0))


class RiseAndFall(unittest.TestCase):
    def setUp(self):
        self.lot = random.Random("rise and fall")

    def in_order(self, values, of):
        """Never rising, but for what rounding leaves."""
        size = max(map(abs, values)) or 1.0
        for one, other in zip(values, values[1:]):
            self.assertLessEqual(other, one + 1e-9 * size, of)

    def test_more_load_is_never_faster(self):
        for _ in range(COUNT):
            one = by_lot(self.lot)
            most = 400 * BAR * one.motor * CM3
            travel = self.lot.uniform(0.05, 1.0)
            found = solved(one, *((travel, most * share)
                                  for share in (0.0, 0.1, 0.3, 0.5, 0.7, 0.85, 1.0)))
            self.in_order([got["W2.speed"] for got in found], one)

    def test_a_smaller_motor_is_faster(self):
        """While less than half of the flow leaks away and the reliefs are shut."""
        compared = 0
        for _ in range(COUNT):
            one = by_lot(self.lot)
            torque = self.lot.uniform(0.0, 60 * BAR) * one.motor * CM3
            found = solved(one, *((travel, torque) for travel in (0.5, 0.6, 0.7, 0.8, 0.9, 1.0)))
            flow = one.pump * CM3 * one.speed * RPM
            for slow, fast in zip(found, found[1:]):
                leaked = one.slip * (one.pump + one.motor) * CM3 / one.mu * fast["HA.pressure"]
                difference = fast["HA.pressure"] - fast["HB.pressure"]
                if leaked < 0.5 * flow and difference < 349.9 * BAR:
                    compared += 1
                    self.assertGreater(fast["W2.speed"], slow["W2.speed"], one)
        self.assertGreater(compared, COUNT)

    def test_more_leakage_never_raises_charge_pressure(self):
        """Until more leaks than the charge pump gives, from where on there is none."""
        compared = 0
        for _ in range(COUNT):
            one = by_lot(self.lot)
            torque = self.lot.uniform(0.0, 150 * BAR) * one.motor * CM3
            point = (self.lot.uniform(-1.0, 1.0), torque)
            found = [solved(replace(one, slip=one.slip * factor), point)[0]["G1.pressure"]
                     for factor in (0.0, 0.5, 1.0, 2.0, 5.0, 20.0)]
            lost = next((i for i, pressure in enumerate(found) if pressure < 0.0), len(found) - 1)
            compared += lost
            self.in_order(found[:lost + 1], one)
        self.assertGreater(compared, COUNT)

    def test_thinner_oil_never_lowers_leakage(self):
        """At one speed, stroke and load; while the charge pump covers it."""
        for _ in range(COUNT):
            one = replace(by_lot(self.lot), drag=0.0, charge=400.0)
            torque = self.lot.uniform(0.0, 150 * BAR) * one.motor * CM3
            point = (self.lot.uniform(0.1, 1.0), torque)
            found = [solved(replace(one, viscosity=viscosity), point)[0]
                     for viscosity in (10.0, 20.0, 40.0, 80.0, 200.0)]
            self.in_order([got["L1.flow"] + got["L2.flow"] for got in found], one)


if __name__ == "__main__":
    program.PROGRAM = sys.argv.pop(1)
    unittest.main()
