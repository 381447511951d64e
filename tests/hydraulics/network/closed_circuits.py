"""Closed loops: their text, and their equations written down from it by hand.

Checks and reliefs are taken for open or shut beforehand; `holds` says what must then be so.
"""

import laws
from balance import Balance, Circuit
from laws import BAR, LPM, MM2, RPM, Machine
from usual_parts import MOTOR, MU, NU, OIL, PUMP, RHO, motor_of, pump_of

# ---- 1: a traction loop, flushed and filtered, every line with its drop ----

TRACTION_TEXT = f"""<circuit format="1" title="traction loop">
  {OIL}
  <engine id="E1" power="55 kW" speed="2400 rpm"/>
  <pump id="P1" displacement="71 cm3/rev" variable="yes" flow-directions="2" control="hydraulic"
        drain="external" {PUMP}/>
  <pump id="P2" displacement="18 cm3/rev" {PUMP}/>
  <shaft id="W1" joins="E1 P1 P2"/>
  <motor id="M1" displacement="80 cm3/rev" min-displacement="28 cm3/rev" variable="yes"
        drain="external" {MOTOR}/>
  <load id="D1"/> <shaft id="W2" joins="M1 D1"/>
  <reservoir id="T1"> <port id="S"/><port id="R"/><port id="K"/><port id="L"/><port id="M"/>
  </reservoir>
  <relief-valve id="R1" setting="24 bar" full-flow-pressure="27 bar" full-flow="40 L/min"/>
  <filter id="F1" flow="40 L/min" pressure-drop="0.6 bar" viscosity="30 mm2/s"/>
  <check-valve id="C1" opening-pressure="0.2 bar"/>
  <check-valve id="C2" opening-pressure="0.2 bar"/>
  <relief-valve id="R2" setting="380 bar"/> <relief-valve id="R3" setting="380 bar"/>
  <flushing-valve id="V1"/>
  <relief-valve id="R4" setting="18 bar" full-flow-pressure="26 bar" full-flow="30 L/min"/>
  <cooler id="K1" flow="30 L/min" pressure-drop="0.8 bar" viscosity="30 mm2/s" bypass="3 bar"/>
  <line id="S1" joins="P2.S T1.S" bore="38 mm" length="0.8 m"/>
  <line id="G1" joins="P2.P F1.A R1.P"/>
  <line id="G2" joins="F1.B C1.A C2.A"/>
  <line id="G3" joins="R1.T T1.R"/>
  <hose id="HA" joins="P1.A M1.A R2.P R3.T C1.B V1.A" bore="15 mm" length="2.4 m"/>
  <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B V1.B" bore="32 mm" length="2.4 m"/>
  <line id="F2" joins="V1.F R4.P"/>
  <line id="L1" joins="R4.T K1.A"/> <line id="L2" joins="K1.B T1.K"/>
  <line id="L3" joins="P1.L T1.L" bore="16 mm" length="1.5 m"/>
  <line id="L4" joins="M1.L T1.M" bore="16 mm" length="3 m"/>
  <command id="Z1" given-by="pedal"> <stage of="P1" from="0 %" to="33 %"/>
  <stage of="M1" from="33 %" to="100 %"/> </command>
  <duty> <point id="a" speed="2200 rpm" travel="66.5 %" torque="120 N.m" oil="40 degC"/> </duty>
</circuit>"""


def traction(x, pump_stroke=1.0, load=120.0):
    """Half of the motor's way from 80 to 28 cm3/rev is done; side A is high."""
    speed = 2200 * RPM
    stroke = 1.0 + 0.5 * (28.0 / 80.0 - 1.0)
    out, into, pump_case, pump_torque = laws.pump(pump_of(71), x.pa, x.pb, speed, MU,
                                                pump_stroke, x.plp)
    taken, given, motor_case, motor_torque = laws.motor(motor_of(80), x.pma, x.pmb, x.w2, MU,
                                                        stroke, x.plm)
    charge, charge_torque = laws.inside_drained_pump(pump_of(18), x.pg1, x.ps, speed, MU)
    return Balance(
        flows=[charge - x.q_relief - x.q_filter, out - x.q_a, x.q_a - taken, given + x.q_b,
               x.q_filter - x.q_b - into - x.q_flush, pump_case - x.q_lp, motor_case - x.q_lm],
        pressures=[-x.ps + laws.pipe(-charge, 0.038, 0.8, RHO, NU),
                   x.pg1 - (24 * BAR + 3 * BAR / (40 * LPM) * x.q_relief),
                   x.pg1 - x.pg2 - laws.element(x.q_filter, NU, 40 * LPM, 0.6 * BAR, 30 * MM2),
                   x.pg2 - x.pb - 0.2 * BAR,
                   x.pa - x.pma - laws.pipe(x.q_a, 0.015, 2.4, RHO, NU, laws.SMOOTH_HOSE),
                   x.pb - x.pmb - laws.pipe(x.q_b, 0.032, 2.4, RHO, NU),
                   x.pb - x.pk - 18 * BAR - 8 * BAR / (30 * LPM) * x.q_flush,
                   x.pk - laws.element(x.q_flush, NU, 30 * LPM, 0.8 * BAR, 30 * MM2),
                   x.plp - laws.pipe(x.q_lp, 0.016, 1.5, RHO, NU),
                   x.plm - laws.pipe(x.q_lm, 0.016, 3.0, RHO, NU)],
        torques=[motor_torque - load],
        printed={
            "S1.pressure": x.ps, "S1.flow": -charge, "S1.drop": x.ps,
            "G1.pressure": x.pg1, "G1.flow": x.q_filter, "G1.drop": 0.0,
            "G2.pressure": x.pg2, "G2.flow": 0.0, "G2.drop": 0.0,
            "G3.pressure": 0.0, "G3.flow": x.q_relief, "G3.drop": 0.0,
            "HA.pressure": x.pa, "HA.flow": x.q_a, "HA.drop": x.pa - x.pma,
            "HB.pressure": x.pb, "HB.flow": x.q_b, "HB.drop": x.pb - x.pmb,
            "F2.pressure": x.pb, "F2.flow": x.q_flush, "F2.drop": 0.0,
            "L1.pressure": x.pk, "L1.flow": x.q_flush, "L1.drop": 0.0,
            "L2.pressure": 0.0, "L2.flow": x.q_flush, "L2.drop": 0.0,
            "L3.pressure": x.plp, "L3.flow": x.q_lp, "L3.drop": x.plp,
            "L4.pressure": x.plm, "L4.flow": x.q_lm, "L4.drop": x.plm,
            "P1.torque": pump_torque, "P2.torque": charge_torque, "M1.torque": motor_torque,
            "W1.speed": speed, "W1.torque": pump_torque + charge_torque,
            "W2.speed": x.w2, "W2.torque": 120.0},
        holds=[(x.pg2, x.pa), (x.pa - x.pb, 380 * BAR), (x.pk, 3 * BAR), (0.0, x.q_relief),
               (0.0, x.q_filter), (0.0, x.q_flush)])


# ---- 2: two motors in parallel, geared to one axle ----

PARALLEL_TEXT = f"""<circuit format="1" title="two motors in parallel">
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
  <reservoir id="T1"> <port id="S"/><port id="R"/><port id="L"/><port id="M"/><port id="N"/>
  </reservoir>
  <relief-valve id="R1" setting="22 bar"/>
  <check-valve id="C1"/> <check-valve id="C2"/>
  <relief-valve id="R2" setting="350 bar"/> <relief-valve id="R3" setting="350 bar"/>
  <junction id="J1"><port id="A"/><port id="B"/><port id="C"/></junction>
  <junction id="J2"><port id="A"/><port id="B"/><port id="C"/></junction>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P C1.A C2.A"/> <line id="G3" joins="R1.T T1.R"/>
  <line id="A0" joins="P1.A J1.A R2.P R3.T C1.B" bore="19 mm" length="1 m"/>
  <line id="A1" joins="J1.B M1.A" bore="12 mm" length="2 m"/>
  <line id="A2" joins="J1.C M2.A" bore="12 mm" length="2.5 m"/>
  <line id="B0" joins="P1.B J2.A R3.P R2.T C2.B" bore="19 mm" length="1 m"/>
  <line id="B1" joins="J2.B M1.B" bore="12 mm" length="2 m"/>
  <line id="B2" joins="J2.C M2.B" bore="12 mm" length="2.5 m"/>
  <line id="L1" joins="P1.L T1.L"/> <line id="L2" joins="M1.L T1.M"/>
  <line id="L3" joins="M2.L T1.N"/>
  <command id="Z1" given-by="pedal"> <stage of="P1" from="0 %" to="100 %"/> </command>
  <duty> <point id="a" speed="2000 rpm" travel="60 %" grade="8 %" oil="40 degC"/> </duty>
</circuit>"""


def parallel(x):
    """Uphill, forward: the motors drive through the gears. The charge relief blows."""
    speed = 2000 * RPM
    slope = 0.08
    weight = 4200 * laws.GRAVITY
    wheel = 0.42 * weight * (slope + 0.03) / (1.0 + slope * slope) ** 0.5
    out, into, pump_case, pump_torque = laws.pump(pump_of(71), x.pa, x.pb, speed, MU, 0.6)
    in1, out1, case1, torque1 = laws.motor(motor_of(45), x.pa1, x.pb1, 20 * x.w4, MU)
    in2, out2, case2, torque2 = laws.motor(motor_of(60), x.pa2, x.pb2, 16 * x.w4, MU)
    charge, charge_torque = laws.inside_drained_pump(pump_of(16), x.pb, 0.0, speed, MU)
    make_up = into - x.q_b
    return Balance(
        flows=[out - x.q_a, x.q_a - x.q_a1 - x.q_a2, x.q_a1 - in1, x.q_a2 - in2, out1 - x.q_b1,
               out2 - x.q_b2, x.q_b1 + x.q_b2 - x.q_b],
        pressures=[x.pb - 22 * BAR,
                   x.pa - x.pj - laws.pipe(x.q_a, 0.019, 1.0, RHO, NU),
                   x.pj - x.pa1 - laws.pipe(x.q_a1, 0.012, 2.0, RHO, NU),
                   x.pj - x.pa2 - laws.pipe(x.q_a2, 0.012, 2.5, RHO, NU),
                   x.pk - x.pb - laws.pipe(x.q_b, 0.019, 1.0, RHO, NU),
                   x.pb1 - x.pk - laws.pipe(x.q_b1, 0.012, 2.0, RHO, NU),
                   x.pb2 - x.pk - laws.pipe(x.q_b2, 0.012, 2.5, RHO, NU)],
        torques=[(20 * 0.96 * torque1 + 16 * 0.94 * torque2 - wheel) / 20.0],
        printed={
            "S1.pressure": 0.0, "S1.flow": charge, "S1.drop": 0.0,
            "G1.pressure": x.pb, "G1.flow": charge - make_up, "G1.drop": 0.0,
            "G3.pressure": 0.0, "G3.flow": charge - make_up, "G3.drop": 0.0,
            "A0.pressure": x.pa, "A0.flow": x.q_a, "A0.drop": x.pa - x.pj,
            "A1.pressure": x.pj, "A1.flow": x.q_a1, "A1.drop": x.pj - x.pa1,
            "A2.pressure": x.pj, "A2.flow": x.q_a2, "A2.drop": x.pj - x.pa2,
            "B0.pressure": x.pb, "B0.flow": -x.q_b, "B0.drop": x.pb - x.pk,
            "B1.pressure": x.pk, "B1.flow": -x.q_b1, "B1.drop": x.pk - x.pb1,
            "B2.pressure": x.pk, "B2.flow": -x.q_b2, "B2.drop": x.pk - x.pb2,
            "L1.pressure": 0.0, "L1.flow": pump_case, "L1.drop": 0.0,
            "L2.pressure": 0.0, "L2.flow": case1, "L2.drop": 0.0,
            "L3.pressure": 0.0, "L3.flow": case2, "L3.drop": 0.0,
            "P1.torque": pump_torque, "P2.torque": charge_torque,
            "M1.torque": torque1, "M2.torque": torque2,
            "W1.speed": speed, "W1.torque": pump_torque + charge_torque,
            "W2.speed": 20 * x.w4, "W2.torque": 0.0, "W3.speed": 16 * x.w4, "W3.torque": 0.0,
            "W4.speed": x.w4, "W4.torque": wheel},
        holds=[(make_up, charge), (x.pa - x.pb, 350 * BAR), (0.0, torque1), (0.0, torque2)])


# ---- 3: two motors in series, the second with a load that drives ----

SERIES_TEXT = f"""<circuit format="1" title="two motors in series">
  {OIL}
  <engine id="E1" power="55 kW" speed="1800 rpm"/>
  <pump id="P1" displacement="40 cm3/rev" variable="yes" flow-directions="2" control="manual"
        drain="external" {PUMP}/>
  <pump id="P2" displacement="12 cm3/rev"/>
  <shaft id="W1" joins="E1 P1 P2"/>
  <motor id="M1" displacement="50 cm3/rev" drain="external" {MOTOR}/> <load id="D1"/>
  <shaft id="W2" joins="M1 D1"/>
  <motor id="M2" displacement="32 cm3/rev" drain="external" {MOTOR}/> <load id="D2"/>
  <shaft id="W3" joins="M2 D2"/>
  <reservoir id="T1"> <port id="S"/><port id="R"/><port id="L"/><port id="M"/><port id="N"/>
  </reservoir>
  <relief-valve id="R1" setting="20 bar" full-flow-pressure="24 bar" full-flow="25 L/min"/>
  <check-valve id="C1" opening-pressure="0.3 bar"/>
  <check-valve id="C2" opening-pressure="0.3 bar"/>
  <check-valve id="C3" opening-pressure="0.3 bar"/>
  <relief-valve id="R2" setting="300 bar"/> <relief-valve id="R3" setting="300 bar"/>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P C1.A C2.A C3.A"/> <line id="G3" joins="R1.T T1.R"/>
  <line id="A1" joins="P1.A M1.A R2.P R3.T C1.B"/>
  <line id="AB" joins="M1.B M2.A C3.B" bore="16 mm" length="2 m"/>
  <line id="B1" joins="P1.B M2.B R3.P R2.T C2.B"/>
  <line id="L1" joins="P1.L T1.L"/> <line id="L2" joins="M1.L T1.M"/>
  <line id="L3" joins="M2.L T1.N"/>
  <command id="Z1" given-by="lever"> <stage of="P1" from="0 %" to="100 %"/> </command>
  <duty> <point id="a" speed="1800 rpm" travel="80 %" oil="40 degC">
    <set of="D1" torque="90 N.m"/> <set of="D2" torque="40 N.m"/> </point> </duty>
</circuit>"""


def series(x):
    """What leaves the first motor drives the second; less comes back than the pump takes."""
    speed = 1800 * RPM
    out, into, pump_case, pump_torque = laws.pump(pump_of(40), x.pa, x.pb, speed, MU, 0.8)
    in1, out1, case1, torque1 = laws.motor(motor_of(50), x.pa, x.pm1, x.w2, MU)
    in2, out2, case2, torque2 = laws.motor(motor_of(32), x.pm2, x.pb, x.w3, MU)
    charge, charge_torque = laws.inside_drained_pump(Machine(12), x.pg, 0.0, speed, MU)
    make_up = into - out2
    return Balance(
        flows=[out - in1, out1 - in2, charge - make_up - x.q_relief],
        pressures=[x.pg - 20 * BAR - 4 * BAR / (25 * LPM) * x.q_relief, x.pg - x.pb - 0.3 * BAR,
                   x.pm1 - x.pm2 - laws.pipe(in2, 0.016, 2.0, RHO, NU)],
        torques=[torque1 - 90.0, torque2 - 40.0],
        printed={
            "S1.pressure": 0.0, "S1.flow": charge, "S1.drop": 0.0,
            "G1.pressure": x.pg, "G1.flow": x.q_relief, "G1.drop": 0.0,
            "G3.pressure": 0.0, "G3.flow": x.q_relief, "G3.drop": 0.0,
            "A1.pressure": x.pa, "A1.flow": in1, "A1.drop": 0.0,
            "AB.pressure": x.pm1, "AB.flow": out1, "AB.drop": x.pm1 - x.pm2,
            "B1.pressure": x.pb, "B1.flow": -out2, "B1.drop": 0.0,
            "L1.pressure": 0.0, "L1.flow": pump_case, "L1.drop": 0.0,
            "L2.pressure": 0.0, "L2.flow": case1, "L2.drop": 0.0,
            "L3.pressure": 0.0, "L3.flow": case2, "L3.drop": 0.0,
            "P1.torque": pump_torque, "P2.torque": charge_torque,
            "M1.torque": torque1, "M2.torque": torque2,
            "W1.speed": speed, "W1.torque": pump_torque + charge_torque,
            "W2.speed": x.w2, "W2.torque": 90.0, "W3.speed": x.w3, "W3.torque": 40.0},
        holds=[(0.0, make_up), (0.0, x.q_relief), (x.pa - x.pb, 300 * BAR),
               (x.pg, x.pm1 + 0.3 * BAR)])


# ---- 4: a fixed pump on an electric motor of variable speed, in reverse ----

ELECTRIC_TEXT = f"""<circuit format="1" title="fixed pump, variable speed">
  {OIL}
  <electric-motor id="E1" power="20 kW" speed="3000 rpm" variable-speed="yes" reversing="yes"/>
  <pump id="P1" displacement="25 cm3/rev" flow-directions="2" drain="external" {PUMP}/>
  <shaft id="W1" joins="E1 P1"/>
  <electric-motor id="E2" power="2 kW" speed="1450 rpm"/>
  <pump id="P2" displacement="10 cm3/rev" {PUMP}/>
  <shaft id="W0" joins="E2 P2"/>
  <motor id="M1" displacement="63 cm3/rev" drain="external" case-leakage-share="40 %" {MOTOR}/>
  <load id="D1"/> <shaft id="W2" joins="M1 D1"/>
  <reservoir id="T1"
        pressure="0.5 bar"><port id="S"/><port id="R"/><port id="L"/><port id="M"/></reservoir>
  <relief-valve id="R1" setting="15 bar"/>
  <check-valve id="C1"/> <check-valve id="C2"/>
  <relief-valve id="R2" setting="250 bar"/> <relief-valve id="R3" setting="250 bar"/>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P C1.A C2.A"/> <line id="G3" joins="R1.T T1.R"/>
  <line id="HA" joins="P1.A M1.A R2.P R3.T C1.B" bore="16 mm" length="6 m"/>
  <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B" bore="16 mm" length="6 m"/>
  <line id="L1" joins="P1.L T1.L"/> <line id="L2" joins="M1.L T1.M" bore="10 mm" length="4 m"/>
  <command id="Z1" given-by="lever"> <stage of="E1" from="0 %" to="100 %" begin="0 %"/> </command>
  <duty> <point id="a" travel="-45 %" torque="130 N.m" oil="40 degC">
  <set of="E2" speed="1450 rpm"/> </point> </duty>
</circuit>"""


def electric(x):
    """The pump turns backwards: side B is high, and the motor turns backwards, too."""
    speed = 0.45 * 3000 * RPM
    fixed = 1450 * RPM
    tank = 0.5 * BAR
    out, into, pump_case, pump_torque = laws.pump(pump_of(25), x.pb, x.pa, speed, MU, 1.0, tank)
    # 40 % of its leakage conductance leads to the housing, the rest from port to port.
    one = motor_of(63)
    through = one.d * x.w2
    across = 0.6 * one.leak(x.pmb - x.pma, MU)
    taken = through + 0.4 * one.leak(x.pmb - x.pl, MU) + across
    given = through - 0.4 * one.leak(x.pma - x.pl, MU) + across
    torque = one.d * (x.pmb - x.pma) - one.torque_lost(x.pmb - x.pma, x.w2, MU)
    charge, charge_torque = laws.inside_drained_pump(pump_of(10), x.pa, tank, fixed, MU)
    make_up = into - given
    return Balance(
        flows=[out - taken],
        pressures=[x.pa - 15 * BAR - tank,
                   x.pb - x.pmb - laws.pipe(taken, 0.016, 6.0, RHO, NU),
                   x.pma - x.pa - laws.pipe(given, 0.016, 6.0, RHO, NU),
                   x.pl - tank - laws.pipe(taken - given, 0.010, 4.0, RHO, NU)],
        torques=[torque - 130.0],
        printed={
            "S1.pressure": tank, "S1.flow": charge, "S1.drop": 0.0,
            "G1.pressure": x.pa, "G1.flow": charge - make_up, "G1.drop": 0.0,
            "G3.pressure": tank, "G3.flow": charge - make_up, "G3.drop": 0.0,
            "HA.pressure": x.pa, "HA.flow": -given, "HA.drop": x.pa - x.pma,
            "HB.pressure": x.pb, "HB.flow": taken, "HB.drop": x.pb - x.pmb,
            "L1.pressure": tank, "L1.flow": pump_case, "L1.drop": 0.0,
            "L2.pressure": x.pl, "L2.flow": taken - given, "L2.drop": x.pl - tank,
            "P1.torque": pump_torque, "P2.torque": charge_torque, "M1.torque": torque,
            "W1.speed": -speed, "W1.torque": -pump_torque,
            "W0.speed": fixed, "W0.torque": charge_torque,
            "W2.speed": -x.w2, "W2.torque": -130.0},
        holds=[(make_up, charge), (0.0, make_up), (x.pb - x.pa, 250 * BAR)])


# ---- 5: two loops, one charge pump ----

TWO_LOOPS_TEXT = f"""<circuit format="1" title="two loops, one charge pump">
  {OIL}
  <engine id="E1" power="55 kW" speed="2300 rpm"/>
  <pump id="P1" displacement="45 cm3/rev" variable="yes" flow-directions="2" control="manual"
        drain="external" {PUMP}/>
  <pump id="P2" displacement="28 cm3/rev" variable="yes" flow-directions="2" control="manual"
        drain="external" {PUMP}/>
  <pump id="P3" displacement="20 cm3/rev" {PUMP}/>
  <shaft id="W1" joins="E1 P1 P2 P3"/>
  <motor id="M1" displacement="55 cm3/rev" drain="external" {MOTOR}/> <load id="D1"/>
  <shaft id="W2" joins="M1 D1"/>
  <motor id="M2" displacement="80 cm3/rev" drain="external" {MOTOR}/> <load id="D2"/>
  <shaft id="W3" joins="M2 D2"/>
  <reservoir id="T1"><port id="S"/><port id="R"/><port id="L"/><port id="M"/></reservoir>
  <relief-valve id="R1" setting="25 bar" full-flow-pressure="28 bar" full-flow="45 L/min"/>
  <check-valve id="C1"/> <check-valve id="C2"/> <check-valve id="C3"/> <check-valve id="C4"/>
  <relief-valve id="R2" setting="350 bar"/> <relief-valve id="R3" setting="350 bar"/>
  <relief-valve id="R4" setting="280 bar"/> <relief-valve id="R5" setting="280 bar"/>
  <orifice id="O1" bore="2 mm"/>
  <line id="S1" joins="P3.S T1.S" bore="32 mm" length="1 m"/>
  <line id="G1" joins="P3.P R1.P C1.A C2.A O1.A"/> <line id="G2" joins="O1.B C3.A C4.A"/>
  <line id="G3" joins="R1.T T1.R"/>
  <line id="A1" joins="P1.A M1.A R2.P R3.T C1.B"/> <line id="B1" joins="P1.B M1.B R3.P R2.T C2.B"/>
  <line id="A2" joins="P2.A M2.A R4.P R5.T C3.B"/> <line id="B2" joins="P2.B M2.B R5.P R4.T C4.B"/>
  <line id="L1" joins="P1.L P2.L T1.L"/> <line id="L3" joins="M1.L M2.L T1.M"/>
  <command id="Z1" given-by="lever"> <stage of="P1" from="0 %" to="100 %"/> </command>
  <command id="Z2" given-by="lever"> <stage of="P2" from="0 %" to="100 %"/> </command>
  <duty> <point id="a" speed="2300 rpm" oil="40 degC">
    <set of="Z1" travel="70 %"/> <set of="Z2" travel="90 %"/>
    <set of="D1" torque="160 N.m"/> <set of="D2" torque="-70 N.m"/> </point> </duty>
</circuit>"""


def two_loops(x):
    """The first drives; the load of the second drives its pump, so that its side B is high."""
    speed = 2300 * RPM
    out1, in1, case1, pump1 = laws.pump(pump_of(45), x.pa1, x.pb1, speed, MU, 0.7)
    taken1, given1, drain1, torque1 = laws.motor(motor_of(55), x.pa1, x.pb1, x.w2, MU)
    # Overrunning: the motor pumps into B, which drives the pump.
    out2, in2, drain2, torque2 = laws.pump(motor_of(80), x.pb2, x.pa2, x.w3, MU)
    taken2, given2, case2, pump2 = laws.motor(pump_of(28), x.pb2, x.pa2, speed, MU, 0.9)
    charge, charge_torque = laws.inside_drained_pump(pump_of(20), x.pg, x.ps, speed, MU)
    make_up1 = in1 - given1
    make_up2 = in2 - given2
    return Balance(
        flows=[out1 - taken1, out2 - taken2, charge - x.q_relief - make_up1 - make_up2],
        pressures=[-x.ps + laws.pipe(-charge, 0.032, 1.0, RHO, NU),
                   x.pg - 25 * BAR - 3 * BAR / (45 * LPM) * x.q_relief,
                   x.pg - x.pb1,
                   x.pg - x.pa2 - laws.orifice(make_up2, 0.002, RHO, NU)],
        torques=[torque1 - 160.0, torque2 - 70.0],
        printed={
            "S1.pressure": x.ps, "S1.flow": -charge, "S1.drop": x.ps,
            "G1.pressure": x.pg, "G1.flow": x.q_relief, "G1.drop": 0.0,
            "G2.pressure": x.pa2, "G2.flow": make_up2, "G2.drop": 0.0,
            "G3.pressure": 0.0, "G3.flow": x.q_relief, "G3.drop": 0.0,
            "A1.pressure": x.pa1, "A1.flow": taken1, "A1.drop": 0.0,
            "B1.pressure": x.pb1, "B1.flow": -given1, "B1.drop": 0.0,
            "A2.pressure": x.pa2, "A2.flow": in2, "A2.drop": 0.0,
            "B2.pressure": x.pb2, "B2.flow": -out2, "B2.drop": 0.0,
            "L1.pressure": 0.0, "L1.flow": -case2, "L1.drop": 0.0,
            "L3.pressure": 0.0, "L3.flow": -drain2, "L3.drop": 0.0,
            "P1.torque": pump1, "P2.torque": pump2, "P3.torque": charge_torque,
            "M1.torque": torque1, "M2.torque": torque2,
            "W1.speed": speed, "W1.torque": pump1 - pump2 + charge_torque,
            "W2.speed": x.w2, "W2.torque": 160.0, "W3.speed": x.w3, "W3.torque": -70.0},
        holds=[(0.0, x.q_relief), (0.0, make_up1), (0.0, make_up2), (x.pb1, x.pa1),
               (x.pa2, x.pb2), (x.pb2 - x.pa2, 280 * BAR)])


CIRCUITS = {
    "traction loop": Circuit(
        TRACTION_TEXT,
        {"pa": 150e5, "pma": 148e5, "pb": 22e5, "pmb": 22.5e5, "pg1": 25e5, "pg2": 24e5, "ps": -1e3,
         "pk": 1e5, "plp": 1e4, "plm": 1e4, "q_a": 2.4e-3, "q_b": -2.3e-3, "q_relief": 1e-4,
         "q_filter": 5e-4, "q_flush": 2e-4, "q_lp": 1e-4, "q_lm": 1e-4, "w2": 280.0}, traction),
    "two motors in parallel": Circuit(
        PARALLEL_TEXT,
        {"pa": 150e5, "pj": 148e5, "pa1": 147e5, "pa2": 147e5, "pb": 22e5, "pk": 23e5, "pb1": 24e5,
         "pb2": 24e5, "q_a": 1.4e-3, "q_a1": 7e-4, "q_a2": 7e-4, "q_b": 1.4e-3, "q_b1": 7e-4,
         "q_b2": 7e-4, "w4": 4.0}, parallel),
    "motors in series": Circuit(
        SERIES_TEXT,
        {"pa": 220e5, "pm1": 105e5, "pm2": 100e5, "pb": 20e5, "pg": 20.5e5, "q_relief": 2e-4,
         "w2": 110.0, "w3": 170.0}, series),
    "fixed pump with variable speed": Circuit(
        ELECTRIC_TEXT,
        {"pa": 15e5, "pma": 16e5, "pb": 150e5, "pmb": 149e5, "pl": 1e5, "w2": 55.0}, electric),
    "two loops, one charge pump": Circuit(
        TWO_LOOPS_TEXT,
        {"pa1": 220e5, "pb1": 25e5, "pa2": 20e5, "pb2": 80e5, "pg": 25e5, "ps": -1e3,
         "q_relief": 2e-4, "w2": 135.0, "w3": 76.0}, two_loops),
}
