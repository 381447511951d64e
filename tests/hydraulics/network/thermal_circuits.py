"""Whole thermal balances: circuits whose oil is as warm as its heat makes it.

What goes into the oil is what prime movers give, less what loads take and gears lose, whatever the
parts do with it. A loop's oil takes up the friction of its machines (leakage and drag warm their
housings' oil), what its lines lose, and what oil loses on its way in; that comes in at the
reservoir's temperature and goes out at the loop's own.
"""

import laws
from balance import Balance, Circuit
from laws import BAR, LPM, MM2, RPM
from usual_parts import MOTOR, OIL, PUMP, motor_of, pump_of

ZERO = 273.15


class Warm:
    """The usual oil at a temperature, K."""

    def __init__(self, kelvin, specific_heat=None):
        self.rho = laws.density(870.0, kelvin - ZERO)
        self.nu = laws.viscosity(46 * MM2, 6.8 * MM2, kelvin)
        self.mu = self.nu * self.rho
        self.c = specific_heat or laws.specific_heat(870.0, kelvin - ZERO)

    def stream(self, flow):
        """What a flow carries for each kelvin, W/K."""
        return self.rho * self.c * flow


def friction(machine, difference, speed):
    """Power lost to Coulomb friction."""
    return machine.friction * machine.d * abs(difference) * abs(speed)


# ---- 1: a traction loop, flushed over its cooler ----

TRACTION_TEXT = f"""<circuit format="1" title="warm traction loop">
  {OIL}
  <engine id="E1" power="80 kW" speed="2400 rpm"/>
  <pump id="P1" displacement="71 cm3/rev" variable="yes" flow-directions="2" control="hydraulic"
        drain="external" {PUMP}/>
  <pump id="P2" displacement="25 cm3/rev" {PUMP}/>
  <shaft id="W1" joins="E1 P1 P2"/>
  <motor id="M1" displacement="80 cm3/rev" drain="external" {MOTOR}/>
  <load id="D1"/> <shaft id="W2" joins="M1 D1"/>
  <reservoir id="T1" cooling-area="1.3 m2"> <port id="S"/><port id="R"/><port id="K"/><port id="L"/>
  <port id="M"/> </reservoir>
  <relief-valve id="R1" setting="20 bar" full-flow-pressure="23 bar" full-flow="40 L/min"/>
  <check-valve id="C1" opening-pressure="0.2 bar"/>
  <check-valve id="C2" opening-pressure="0.2 bar"/>
  <relief-valve id="R2" setting="380 bar"/> <relief-valve id="R3" setting="380 bar"/>
  <flushing-valve id="V1"/>
  <relief-valve id="R4" setting="14 bar" full-flow-pressure="22 bar" full-flow="30 L/min"/>
  <cooler id="K1" capacity="9 kW" temperature-difference="30 K" flow="30 L/min"
          pressure-drop="0.8 bar" viscosity="30 mm2/s" bypass="3 bar"/>
  <line id="S1" joins="P2.S T1.S"/>
  <line id="G1" joins="P2.P C1.A C2.A R1.P"/>
  <line id="G3" joins="R1.T T1.R"/>
  <line id="HA" joins="P1.A M1.A R2.P R3.T C1.B V1.A" bore="19 mm" length="3 m"/>
  <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B V1.B" bore="19 mm" length="3 m"/>
  <line id="F2" joins="V1.F R4.P"/>
  <line id="L1" joins="R4.T K1.A"/> <line id="L2" joins="K1.B T1.K"/>
  <line id="L3" joins="P1.L T1.L"/> <line id="L4" joins="M1.L T1.M"/>
  <command id="Z1" given-by="pedal"> <stage of="P1" from="0 %" to="100 %"/> </command>
  <duty ambient="25 degC"> <point id="a" speed="2200 rpm" travel="100 %" torque="150 N.m"/> </duty>
</circuit>"""


def traction(x):
    """Side A is high; the cooler carries off less than its stream brings."""
    oil, over = Warm(x.k), x.k - ZERO - 25.0
    speed, load = 2200 * RPM, 150.0
    out, into, _, pump_torque = laws.pump(pump_of(71), x.pa, x.pb, speed, oil.mu)
    taken, given, _, motor_torque = laws.motor(motor_of(80), x.pma, x.pmb, x.w2, oil.mu)
    charge, charge_torque = laws.inside_drained_pump(pump_of(25), x.pg, 0.0, speed, oil.mu)
    make_up = charge - x.q_relief
    power_in = (pump_torque + charge_torque) * speed
    lines = (x.pa - x.pma) * taken + (x.pmb - x.pb) * given
    loop = (friction(pump_of(71), x.pa - x.pb, speed)
            + friction(motor_of(80), x.pma - x.pmb, x.w2) + lines + make_up * (x.pg - x.pb))
    into_oil, cooler, wall = power_in - load * x.w2, 9000.0 / 30.0 * over, 12.0 * 1.3 * over
    return Balance(
        flows=[out - taken, given + make_up - into - x.q_flush],
        pressures=[x.pg - 20 * BAR - 3 * BAR / (40 * LPM) * x.q_relief,
                   x.pg - x.pb - 0.2 * BAR,
                   x.pa - x.pma - laws.pipe(taken, 0.019, 3.0, oil.rho, oil.nu),
                   x.pmb - x.pb - laws.pipe(given, 0.019, 3.0, oil.rho, oil.nu),
                   x.pb - x.pk - 14 * BAR - 8 * BAR / (30 * LPM) * x.q_flush,
                   x.pk - laws.element(x.q_flush, oil.nu, 30 * LPM, 0.8 * BAR, 30 * MM2)],
        torques=[motor_torque - load],
        heats=[into_oil - cooler - wall],
        printed={"oil": x.k, "into_oil": into_oil, "cooler": cooler, "wall": wall,
                 "loop:P1.heat": loop, "loop:P1.exchange": make_up,
                 "loop:P1.temperature": x.k + loop / oil.stream(make_up)},
        holds=[(cooler, oil.stream(x.q_flush) * over), (0.0, x.q_relief), (0.0, x.q_flush),
               (x.pk, 3 * BAR), (4000.0, laws.reynolds(given, 0.019, oil.nu))])


# ---- 2: two geared motors; the cooler gets no more than a pump's leakage ----

GEARED_TEXT = f"""<circuit format="1" title="geared motors, starved cooler">
  {OIL}
  <engine id="E1" power="55 kW" speed="2000 rpm"/>
  <pump id="P1" displacement="71 cm3/rev" variable="yes" flow-directions="2" control="manual"
        drain="external" {PUMP}/>
  <pump id="P2" displacement="16 cm3/rev" {PUMP}/>
  <shaft id="W1" joins="E1 P1 P2"/>
  <motor id="M1" displacement="45 cm3/rev" drain="external" {MOTOR}/>
  <motor id="M2" displacement="60 cm3/rev" drain="external" {MOTOR}/>
  <gearbox id="X1" ratio="20" efficiency="96 %"/> <gearbox id="X2" ratio="16" efficiency="94 %"/>
  <load id="D1" vehicle="yes" mass="4200 kg" wheel-radius="0.42 m" rolling-resistance="0.03"/>
  <shaft id="W2" joins="M1 X1.in"/> <shaft id="W3" joins="M2 X2.in"/>
  <shaft id="W4" joins="X1.out X2.out D1"/>
  <reservoir id="T1" cooling-area="4 m2" heat-transfer="24 W/(m2.K)"> <port id="S"/><port id="R"/>
  <port id="L"/><port id="M"/><port id="N"/> </reservoir>
  <relief-valve id="R1" setting="22 bar"/>
  <check-valve id="C1"/> <check-valve id="C2"/>
  <relief-valve id="R2" setting="350 bar"/> <relief-valve id="R3" setting="350 bar"/>
  <cooler id="K1" capacity="20 kW" temperature-difference="30 K" flow="20 L/min"
          pressure-drop="0.3 bar" viscosity="30 mm2/s"/>
  <junction id="J1"><port id="A"/><port id="B"/><port id="C"/></junction>
  <junction id="J2"><port id="A"/><port id="B"/><port id="C"/></junction>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P C1.A C2.A"/> <line id="G3" joins="R1.T T1.R"/>
  <line id="A0" joins="P1.A J1.A R2.P R3.T C1.B" bore="12 mm" length="1 m"/>
  <line id="A1" joins="J1.B M1.A"/> <line id="A2" joins="J1.C M2.A"/>
  <line id="B0" joins="P1.B J2.A R3.P R2.T C2.B" bore="12 mm" length="1 m"/>
  <line id="B1" joins="J2.B M1.B"/> <line id="B2" joins="J2.C M2.B"/>
  <line id="L1" joins="P1.L K1.A"/> <line id="L4" joins="K1.B T1.L"/>
  <line id="L2" joins="M1.L T1.M"/> <line id="L3" joins="M2.L T1.N"/>
  <command id="Z1" given-by="pedal"> <stage of="P1" from="0 %" to="100 %"/> </command>
  <duty ambient="30 degC"> <point id="a" speed="2000 rpm" travel="60 %" grade="8 %"/> </duty>
</circuit>"""


def geared(x):
    """What the gears lose warms no oil; the cooler brings the leakage down to the ambient."""
    oil, over = Warm(x.k), x.k - ZERO - 30.0
    speed, slope = 2000 * RPM, 0.08
    wheel = 0.42 * 4200 * laws.GRAVITY * (slope + 0.03) / (1.0 + slope * slope) ** 0.5
    out, into, leaked, pump_torque = laws.pump(pump_of(71), x.pa, x.pb, speed, oil.mu, 0.6, x.pl)
    in1, out1, _, torque1 = laws.motor(motor_of(45), x.pj, x.pk, 20 * x.w4, oil.mu)
    in2, out2, _, torque2 = laws.motor(motor_of(60), x.pj, x.pk, 16 * x.w4, oil.mu)
    charge_torque = laws.inside_drained_pump(pump_of(16), x.pb, 0.0, speed, oil.mu)[1]
    make_up = into - out1 - out2
    power_in = (pump_torque + charge_torque) * speed
    geared_off = (0.04 * 20 * torque1 + 0.06 * 16 * torque2) * x.w4
    loop = (friction(pump_of(71), x.pa - x.pb, speed)
            + friction(motor_of(45), x.pj - x.pk, 20 * x.w4)
            + friction(motor_of(60), x.pj - x.pk, 16 * x.w4)
            + (x.pa - x.pj) * out + (x.pk - x.pb) * (out1 + out2))
    into_oil = power_in - wheel * x.w4 - geared_off
    cooler, wall = oil.stream(leaked) * over, 4 * 24 * over
    return Balance(
        flows=[out - in1 - in2],
        pressures=[x.pb - 22 * BAR,
                   x.pa - x.pj - laws.pipe(out, 0.012, 1.0, oil.rho, oil.nu),
                   x.pk - x.pb - laws.pipe(out1 + out2, 0.012, 1.0, oil.rho, oil.nu),
                   x.pl - laws.element(leaked, oil.nu, 20 * LPM, 0.3 * BAR, 30 * MM2)],
        torques=[(20 * 0.96 * torque1 + 16 * 0.94 * torque2 - wheel) / 20.0],
        heats=[into_oil - cooler - wall],
        printed={"oil": x.k, "into_oil": into_oil, "cooler": cooler, "wall": wall,
                 "loop:P1.heat": loop, "loop:P1.exchange": make_up,
                 "loop:P1.temperature": x.k + loop / oil.stream(make_up)},
        holds=[(cooler, 20e3 / 30.0 * over), (0.0, make_up), (0.0, torque1), (0.0, torque2),
               (4000.0, laws.reynolds(out1 + out2, 0.012, oil.nu))])


# ---- 3: the duty of a fixed pump on an electric motor of variable speed ----

SHARES = {"out": (0.60, 130.0, 0.3), "back": (0.25, 60.0, 0.2)}  # share, N.m, speed below rated

DUTY_TEXT = f"""<circuit format="1" title="a duty, and what it leaves in neutral">
  <fluid viscosity-40="46 mm2/s" viscosity-100="6.8 mm2/s" density="870 kg/m3"
         specific-heat="1900 J/(kg.K)"/>
  <electric-motor id="E1" power="20 kW" speed="3000 rpm" variable-speed="yes" reversing="yes"/>
  <pump id="P1" displacement="25 cm3/rev" flow-directions="2" drain="external" {PUMP}/>
  <shaft id="W1" joins="E1 P1"/>
  <electric-motor id="E2" power="2 kW" speed="1450 rpm"/>
  <pump id="P2" displacement="10 cm3/rev" {PUMP}/>
  <shaft id="W0" joins="E2 P2"/>
  <motor id="M1" displacement="63 cm3/rev" drain="external" {MOTOR}/>
  <load id="D1"/> <shaft id="W2" joins="M1 D1"/>
  <reservoir id="T1" cooling-area="1.5 m2"><port id="S"/><port id="R"/><port id="L"/>
  <port id="M"/></reservoir>
  <relief-valve id="R1" setting="15 bar" full-flow-pressure="17 bar" full-flow="15 L/min"/>
  <check-valve id="C1"/> <check-valve id="C2"/>
  <relief-valve id="R2" setting="250 bar"/> <relief-valve id="R3" setting="250 bar"/>
  <cooler id="K1" capacity="2 kW" temperature-difference="25 K"/>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P C1.A C2.A"/> <line id="G3" joins="R1.T K1.A"/>
  <line id="G4" joins="K1.B T1.R"/>
  <line id="HA" joins="P1.A M1.A R2.P R3.T C1.B" bore="25 mm" length="6 m"/>
  <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B" bore="25 mm" length="6 m"/>
  <line id="L1" joins="P1.L T1.L"/> <line id="L2" joins="M1.L T1.M"/>
  <command id="Z1" given-by="lever"> <stage of="E1" from="0 %" to="100 %" begin="0 %"/> </command>
  <duty ambient="10 degC">
    <point id="out" travel="70 %" torque="130 N.m" share="60 %"> <set of="E2" speed="1450 rpm"/>
    </point>
    <point id="back" travel="-80 %" torque="60 N.m" share="25 %"> <set of="E2" speed="1450 rpm"/>
    </point>
  </duty>
</circuit>"""


def at_a_point(oil, high, motor_high, motor_low, low, w2, below, load):
    """Of a point of the duty: what is left of flows, pressures, torques; what motors give and the
    load takes; what flows over the charge relief."""
    speed, charged = (1.0 - below) * 3000 * RPM, 1450 * RPM
    out, into, _, pump_torque = laws.pump(pump_of(25), high, low, speed, oil.mu)
    taken, given, _, torque = laws.motor(motor_of(63), motor_high, motor_low, w2, oil.mu)
    charge, charge_torque = laws.inside_drained_pump(pump_of(10), low, 0.0, charged, oil.mu)
    relieved = charge - (into - given)
    return ([out - taken],
            [high - motor_high - laws.pipe(taken, 0.025, 6.0, oil.rho, oil.nu),
             motor_low - low - laws.pipe(given, 0.025, 6.0, oil.rho, oil.nu),
             low - 15 * BAR - 2 * BAR / (15 * LPM) * relieved],
            [torque - load], pump_torque * speed + charge_torque * charged, load * w2, relieved,
            laws.reynolds(taken, 0.025, oil.nu))


def duty(x):
    """Both points at one temperature; in neutral the charge pump alone turns, at its rated speed,
    and all of its oil goes over the charge relief: the checks let in what the machines leak."""
    oil, over = Warm(x.k, 1900.0), x.k - ZERO - 10.0
    points = [at_a_point(oil, x.p1, x.p1m, x.p1n, x.p1b, x.w1, SHARES["out"][2], SHARES["out"][1]),
              at_a_point(oil, x.p2, x.p2m, x.p2n, x.p2b, x.w2, SHARES["back"][2],
                         SHARES["back"][1])]
    # Neutral: both sides stand at the charge pressure and leak into the housings.
    leaks = 2.0 * (pump_of(25).leak(x.p3, oil.mu) + motor_of(63).leak(x.p3, oil.mu))
    charge, charge_torque = laws.inside_drained_pump(pump_of(10), x.p3, 0.0, 1450 * RPM, oil.mu)
    relieved = charge - leaks
    shares = [share for share, _, _ in SHARES.values()]
    rest = 1.0 - sum(shares)
    mean = lambda of, still: sum(s * p[of] for s, p in zip(shares, points)) + rest * still
    power_in = mean(3, charge_torque * 1450 * RPM)
    power_out = mean(4, 0.0)
    conductance = 2000.0 / 25.0
    cooler, wall = conductance * over, 1.5 * 12.0 * over
    flows, pressures, torques = (sum((p[i] for p in points), []) for i in range(3))
    return Balance(
        flows=flows, torques=torques,
        pressures=pressures + [x.p3 - 15 * BAR - 2 * BAR / (15 * LPM) * relieved],
        heats=[power_in - power_out - cooler - wall],
        printed={"oil": x.k, "rest": rest, "power_in": power_in, "power_out": power_out,
                 "lost": power_in - power_out, "into_oil": power_in - power_out, "cooler": cooler,
                 "wall": wall},
        holds=[(conductance, oil.stream(one)) for one in [relieved] + [p[5] for p in points]]
        + [(p[6], 2300.0) for p in points])


POINTS = {
    "traction loop flushed over its cooler": Circuit(
        TRACTION_TEXT,
        {"pa": 200e5, "pma": 199e5, "pb": 24e5, "pmb": 24.5e5, "pg": 24.5e5, "pk": 0.5e5,
         "q_relief": 1e-4, "q_flush": 4e-4, "w2": 190.0, "k": 335.0}, traction),
    "geared motors with a starved cooler": Circuit(
        GEARED_TEXT,
        {"pa": 150e5, "pj": 149e5, "pb": 22e5, "pk": 23e5, "pl": 1e4, "w4": 4.5, "k": 340.0},
        geared),
}
DUTY = Circuit(
    DUTY_TEXT,
    {"p1": 150e5, "p1m": 149e5, "p1n": 16e5, "p1b": 15e5, "w1": 80.0, "p2": 80e5, "p2m": 79e5,
     "p2n": 16e5, "p2b": 15e5, "w2": 90.0, "p3": 16e5, "k": 315.0}, duty)
