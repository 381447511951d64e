"""Open circuits, and a loop with gears and a brake; in the manner of `closed_circuits`."""

import math

import laws
from balance import Balance, Circuit
from laws import BAR, LPM, MM2, RPM, Machine
from usual_parts import MOTOR, MU, NU, OIL, PUMP, RHO, motor_of, pump_of

TANK = ('<reservoir id="T1"><port id="S"/><port id="R"/><port id="B"/><port id="L"/><port id="M"/>'
        '</reservoir>')

# ---- 6: a rotary divider feeds two motors; the light one helps to raise the other's pressure ----

DIVIDER_TEXT = f"""<circuit format="1" title="rotary divider">
  {OIL}
  <electric-motor id="E1" power="15 kW" speed="1450 rpm"/>
  <pump id="P1" displacement="32 cm3/rev" {PUMP}/> <shaft id="W1" joins="E1 P1"/>
  {TANK}
  <relief-valve id="R1" setting="160 bar"/>
  <flow-divider id="V1" design="rotary"><port id="A"/><port id="B"/></flow-divider>
  <motor id="M1" displacement="40 cm3/rev" drain="external" {MOTOR}/> <load id="D1"/>
  <shaft id="W2" joins="M1 D1"/>
  <motor id="M2" displacement="40 cm3/rev" drain="external" {MOTOR}/> <load id="D2"/>
  <shaft id="W3" joins="M2 D2"/>
  <line id="S1" joins="P1.S T1.S" bore="32 mm" length="1.2 m"/>
  <line id="H1" joins="P1.P V1.P R1.P" bore="12 mm" length="4 m"/> <line id="G1" joins="R1.T T1.R"/>
  <line id="H2" joins="V1.A M1.A"/> <line id="H3" joins="V1.B M2.A" bore="10 mm" length="3 m"/>
  <line id="K1" joins="M1.B M2.B T1.B"/>
  <line id="L1" joins="M1.L T1.L"/> <line id="L2" joins="M2.L T1.M"/>
  <duty> <point id="a" speed="1450 rpm" oil="40 degC"> <set of="D1" torque="70 N.m"/>
  <set of="D2" torque="25 N.m"/>
  </point> </duty>
</circuit>"""


def divider(x):
    """Equal flows; twice the pressure before it is the sum of those behind."""
    speed = 1450 * RPM
    flow, torque = laws.inside_drained_pump(pump_of(32), x.p1, x.ps, speed, MU)
    in1, out1, case1, torque1 = laws.motor(motor_of(40), x.pa, 0.0, x.w2, MU)
    in2, out2, case2, torque2 = laws.motor(motor_of(40), x.pm, 0.0, x.w3, MU)
    return Balance(
        flows=[flow / 2.0 - in1, flow / 2.0 - in2],
        pressures=[-x.ps + laws.pipe(-flow, 0.032, 1.2, RHO, NU),
                   x.p1 - x.pv - laws.pipe(flow, 0.012, 4.0, RHO, NU),
                   2.0 * x.pv - x.pa - x.pb,
                   x.pb - x.pm - laws.pipe(in2, 0.010, 3.0, RHO, NU)],
        torques=[torque1 - 70.0, torque2 - 25.0],
        printed={
            "S1.pressure": x.ps, "S1.flow": -flow, "S1.drop": x.ps,
            "H1.pressure": x.p1, "H1.flow": flow, "H1.drop": x.p1 - x.pv,
            "G1.pressure": 0.0, "G1.flow": 0.0, "G1.drop": 0.0,
            "H2.pressure": x.pa, "H2.flow": in1, "H2.drop": 0.0,
            "H3.pressure": x.pb, "H3.flow": in2, "H3.drop": x.pb - x.pm,
            "K1.pressure": 0.0, "K1.flow": -out2, "K1.drop": 0.0,
            "L1.pressure": 0.0, "L1.flow": case1, "L1.drop": 0.0,
            "L2.pressure": 0.0, "L2.flow": case2, "L2.drop": 0.0,
            "P1.torque": torque, "M1.torque": torque1, "M2.torque": torque2,
            "W1.speed": speed, "W1.torque": torque,
            "W2.speed": x.w2, "W2.torque": 70.0, "W3.speed": x.w3, "W3.torque": 25.0},
        holds=[(x.p1, 160 * BAR), (x.pv, x.pa), (x.pb, x.pv)])


# ---- 7: a cylinder, its rod pulled in against a force ----

CYLINDER_TEXT = f"""<circuit format="1" title="cylinder">
  {OIL}
  <electric-motor id="E1" power="15 kW" speed="1450 rpm"/>
  <pump id="P1" displacement="16 cm3/rev" {PUMP}/> <shaft id="W1" joins="E1 P1"/>
  {TANK}
  <relief-valve id="R1" setting="200 bar" full-flow-pressure="220 bar" full-flow="25 L/min"/>
  <directional-valve id="V1"> <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="0" rest="yes"/>
    <position id="a"> <path from="P" to="A"/> <path from="B" to="T"/> </position>
    <position id="b"> <path from="P" to="B"/> <path from="A" to="T"/> </position>
    </directional-valve>
  <cylinder id="Z1" bore="63 mm" rod="36 mm" force-efficiency="93 %" rated-pressure="200 bar"
        cross-leakage="0.2 L/min"/>
  <load id="D1"/> <shaft id="W2" joins="Z1 D1"/>
  <line id="S1" joins="T1.S P1.S"/>
  <line id="H1" joins="P1.P V1.P R1.P" bore="10 mm" length="3 m"/> <line id="G1" joins="R1.T T1.R"/>
  <hose id="H2" joins="V1.B Z1.B" bore="10 mm" length="2 m"/>
  <line id="H3" joins="Z1.A V1.A" bore="10 mm" length="2 m"/>
  <line id="K1" joins="V1.T T1.B" bore="13 mm" length="2 m"/>
  <duty> <point id="a" state="drive-reverse" speed="1450 rpm" force="22 kN" oil="40 degC">
    <set of="V1" position="b"/> </point> </duty>
</circuit>"""


def cylinder(x):
    """x.v: speed at which the rod goes in. The cap side lets more oil out than the pump gives."""
    speed = 1450 * RPM
    cap = math.pi / 4.0 * 0.063 ** 2
    ring = cap - math.pi / 4.0 * 0.036 ** 2
    flow, torque = laws.inside_drained_pump(pump_of(16), x.p1, 0.0, speed, MU)
    past = 0.2 * LPM / (200 * BAR) * (x.pr - x.pc)
    into = ring * x.v + past
    out = cap * x.v + past
    force = 0.93 * (ring * x.pr - cap * x.pc)
    return Balance(
        flows=[flow - into],
        pressures=[x.p1 - x.pv - laws.pipe(flow, 0.010, 3.0, RHO, NU),
                   x.pv - x.pr - laws.pipe(flow, 0.010, 2.0, RHO, NU, laws.SMOOTH_HOSE),
                   x.pc - x.pt - laws.pipe(out, 0.010, 2.0, RHO, NU),
                   x.pt - laws.pipe(out, 0.013, 2.0, RHO, NU)],
        forces=[force - 22e3],
        printed={
            "S1.pressure": 0.0, "S1.flow": flow, "S1.drop": 0.0,
            "H1.pressure": x.p1, "H1.flow": flow, "H1.drop": x.p1 - x.pv,
            "G1.pressure": 0.0, "G1.flow": 0.0, "G1.drop": 0.0,
            "H2.pressure": x.pv, "H2.flow": flow, "H2.drop": x.pv - x.pr,
            "H3.pressure": x.pc, "H3.flow": out, "H3.drop": x.pc - x.pt,
            "K1.pressure": x.pt, "K1.flow": out, "K1.drop": x.pt,
            "P1.torque": torque, "Z1.force": force,
            "W1.speed": speed, "W1.torque": torque, "W2.speed": -x.v, "W2.torque": -22e3},
        holds=[(x.p1, 200 * BAR)])


# ---- 8: a winch lowers its load through a counterbalance valve ----

HOIST_TEXT = f"""<circuit format="1" title="winch, lowering">
  {OIL}
  <electric-motor id="E1" power="15 kW" speed="1450 rpm"/>
  <pump id="P1" displacement="28 cm3/rev" {PUMP}/> <shaft id="W1" joins="E1 P1"/>
  {TANK}
  <relief-valve id="R1" setting="210 bar"/>
  <directional-valve id="V1"> <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="0" rest="yes"/>
    <position id="raise" in="drive-forward"> <path from="P" to="A"/> <path from="B" to="T"/>
    </position>
    <position id="lower" in="overrun-reverse"> <path from="P" to="B"/> <path from="A" to="T"/>
    </position>
  </directional-valve>
  <counterbalance-valve id="V2" setting="180 bar" pilot="external" pilot-ratio="3"/>
  <motor id="M1" displacement="63 cm3/rev" drain="external" {MOTOR}/>
  <gearbox id="X1" ratio="20" efficiency="95 %"/> <shaft id="W2" joins="M1 X1.in"/>
  <load id="D1" mass="1100 kg" wheel-radius="0.2 m" overrunning="yes" overrunning-sense="reverse"/>
  <shaft id="W3" joins="X1.out D1"/>
  <line id="S1" joins="T1.S P1.S"/>
  <line id="H1" joins="P1.P V1.P R1.P"/> <line id="G1" joins="R1.T T1.R"/>
  <line id="H2" joins="V1.A V2.A" bore="13 mm" length="3 m"/> <line id="H3" joins="M1.A V2.B"/>
  <line id="H4" joins="V1.B M1.B V2.X" bore="13 mm" length="3 m"/>
  <line id="K1" joins="V1.T T1.B" bore="16 mm" length="2 m"/> <line id="L1" joins="M1.L T1.L"/>
  <duty> <point id="a" state="overrun-reverse" speed="1450 rpm" oil="40 degC"/> </duty>
</circuit>"""


def hoist(x):
    """x.w2: speed of lowering. The load's pressure is at A; the valve throttles what leaves."""
    speed = 1450 * RPM
    weight = 1100 * laws.GRAVITY * 0.2  # at the drum
    flow, torque = laws.inside_drained_pump(pump_of(28), x.p1, 0.0, speed, MU)
    # Driven by the load the motor works as a pump, from B to A.
    out, into, case, motor_torque = laws.pump(motor_of(63), x.pa, x.pb, x.w2, MU)
    return Balance(
        flows=[flow - into],
        pressures=[x.p1 - x.pb - laws.pipe(flow, 0.013, 3.0, RHO, NU),
                   # Its spring, with the outlet's pressure on it, against load and pilot.
                   x.pa + 3.0 * x.p1 - 180 * BAR - 4.0 * x.pv,
                   x.pv - x.pt - laws.pipe(out, 0.013, 3.0, RHO, NU),
                   x.pt - laws.pipe(out, 0.016, 2.0, RHO, NU)],
        torques=[motor_torque - 0.95 * weight / 20.0],
        printed={
            "S1.pressure": 0.0, "S1.flow": flow, "S1.drop": 0.0,
            "H1.pressure": x.p1, "H1.flow": flow, "H1.drop": 0.0,
            "G1.pressure": 0.0, "G1.flow": 0.0, "G1.drop": 0.0,
            "H2.pressure": x.pt, "H2.flow": -out, "H2.drop": x.pt - x.pv,
            "H3.pressure": x.pa, "H3.flow": out, "H3.drop": 0.0,
            "H4.pressure": x.p1, "H4.flow": flow, "H4.drop": x.p1 - x.pb,
            "K1.pressure": x.pt, "K1.flow": out, "K1.drop": x.pt,
            "L1.pressure": 0.0, "L1.flow": case, "L1.drop": 0.0,
            "P1.torque": torque, "M1.torque": motor_torque,
            "W1.speed": speed, "W1.torque": torque,
            "W2.speed": -x.w2, "W2.torque": 0.0, "W3.speed": -x.w2 / 20.0, "W3.torque": weight},
        holds=[(x.p1, 210 * BAR), (x.pv, x.pa), (0.0, x.p1)])


# ---- 9: the relief blows what a flow control does not let through ----

RELIEF_TEXT = f"""<circuit format="1" title="relief blowing">
  {OIL}
  <electric-motor id="E1" power="15 kW" speed="1450 rpm"/>
  <pump id="P1" displacement="25 cm3/rev" {PUMP}/> <shaft id="W1" joins="E1 P1"/>
  {TANK}
  <strainer id="F1" flow="50 L/min" pressure-drop="30 mbar" viscosity="30 mm2/s"/>
  <filter id="F2" flow="60 L/min" pressure-drop="0.8 bar" viscosity="30 mm2/s" bypass="0.3 bar"/>
  <relief-valve id="R1" setting="120 bar" full-flow-pressure="135 bar" full-flow="36 L/min"/>
  <flow-control id="V1" flow="18 L/min" pressure-drop="8 bar"/>
  <throttle id="O1" bore="4 mm" length="120 mm"/>
  <motor id="M1" displacement="50 cm3/rev" drain="external" {MOTOR}/> <load id="D1"/>
  <shaft id="W2" joins="M1 D1"/>
  <line id="S1" joins="T1.S F1.A"/> <line id="S2" joins="F1.B P1.S"/>
  <line id="H1" joins="P1.P V1.A R1.P" bore="12 mm" length="2 m"/> <line id="H2" joins="V1.B M1.A"/>
  <line id="K1" joins="M1.B O1.A"/> <line id="K2" joins="O1.B R1.T F2.A"/>
  <line id="K3" joins="F2.B T1.B"/>
  <line id="L1" joins="M1.L T1.L"/>
  <duty> <point id="a" speed="1450 rpm" torque="40 N.m" oil="40 degC"/> </duty>
</circuit>"""


def relief(x):
    """The filter's bypass stands open as well: it takes what the element cannot."""
    speed = 1450 * RPM
    kept = 18 * LPM
    flow, torque = laws.inside_drained_pump(pump_of(25), x.p1, x.ps, speed, MU)
    into, out, case, motor_torque = laws.motor(motor_of(50), x.pm, x.pb, x.w2, MU)
    through = x.q_relief + out
    by_element = 0.3 * BAR / (0.8 * BAR) * 60 * LPM * 30 * MM2 / NU
    return Balance(
        flows=[flow - x.q_relief - kept, kept - into],
        pressures=[x.p1 - 120 * BAR - 15 * BAR / (36 * LPM) * x.q_relief - x.pf,
                   x.pf - 0.3 * BAR,
                   -x.ps - laws.element(flow, NU, 50 * LPM, 0.03 * BAR, 30 * MM2),
                   x.pv - x.p1 + laws.pipe(kept, 0.012, 2.0, RHO, NU),
                   x.pb - x.pf - laws.pipe(out, 0.004, 0.12, RHO, NU, minor=1.5)],
        torques=[motor_torque - 40.0],
        printed={
            "S1.pressure": 0.0, "S1.flow": flow, "S1.drop": 0.0,
            "S2.pressure": x.ps, "S2.flow": flow, "S2.drop": 0.0,
            "H1.pressure": x.p1, "H1.flow": kept, "H1.drop": x.p1 - x.pv,
            "H2.pressure": x.pm, "H2.flow": kept, "H2.drop": 0.0,
            "K1.pressure": x.pb, "K1.flow": out, "K1.drop": 0.0,
            "K2.pressure": x.pf, "K2.flow": -x.q_relief, "K2.drop": 0.0,
            "K3.pressure": 0.0, "K3.flow": through, "K3.drop": 0.0,
            "L1.pressure": 0.0, "L1.flow": case, "L1.drop": 0.0,
            "P1.torque": torque, "M1.torque": motor_torque,
            "W1.speed": speed, "W1.torque": torque, "W2.speed": x.w2, "W2.torque": 40.0},
        holds=[(0.0, x.q_relief), (x.pm + 8 * BAR, x.pv), (by_element, through)])


# ---- 10: a loop drives wheels through gears; a brake on them drags ----

BRAKE_TEXT = f"""<circuit format="1" title="gearbox and brake">
  {OIL}
  <engine id="E1" power="55 kW" speed="2000 rpm"/>
  <pump id="P1" displacement="45 cm3/rev" variable="yes" flow-directions="2" control="manual"
        drain="external" {PUMP}/>
  <pump id="P2" displacement="14 cm3/rev"/> <shaft id="W1" joins="E1 P1 P2"/>
  <motor id="M1" displacement="45 cm3/rev" drain="external" {MOTOR}/>
  <gearbox id="X1" ratio="4.2" efficiency="97 %" sense="opposite"/>
  <gearbox id="X2" ratio="6" efficiency="95 %"/>
  <brake id="B1" applied="pressure" use="service" torque="900 N.m" apply-pressure="40 bar"/>
  <load id="D1"/>
  <shaft id="W2" joins="M1 X1.in"/> <shaft id="W3" joins="X1.out X2.in B1"/>
  <shaft id="W4" joins="X2.out D1"/>
  {TANK}
  <relief-valve id="R1" setting="24 bar"/> <reducing-valve id="V1" setting="10 bar"/>
  <check-valve id="C1"/> <check-valve id="C2"/>
  <relief-valve id="R2" setting="350 bar"/> <relief-valve id="R3" setting="350 bar"/>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P C1.A C2.A V1.P"/> <line id="G3" joins="R1.T T1.R"/>
  <line id="N1" joins="V1.A B1.Z"/> <line id="N2" joins="V1.Y T1.B"/>
  <line id="HA" joins="P1.A M1.A R2.P R3.T C1.B"/> <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B"/>
  <line id="L1" joins="P1.L T1.L"/> <line id="L2" joins="M1.L T1.M"/>
  <command id="Z1" given-by="pedal"> <stage of="P1" from="0 %" to="100 %"/> </command>
  <duty> <point id="a" speed="2000 rpm" travel="50 %" torque="1500 N.m" oil="40 degC"/> </duty>
</circuit>"""


def brake(x):
    """The load resists forward motion of its own shaft, which turns against the motor."""
    speed = 2000 * RPM
    out, into, pump_case, pump_torque = laws.pump(pump_of(45), x.pa, x.pb, speed, MU, 0.5)
    taken, given, case, motor_torque = laws.motor(motor_of(45), x.pa, x.pb, x.w2, MU)
    charge, charge_torque = laws.inside_drained_pump(Machine(14), x.pb, 0.0, speed, MU)
    dragged = 900.0 * 10.0 / 40.0
    between = 4.2 * 0.97 * motor_torque - dragged
    make_up = into - given
    return Balance(
        flows=[out - taken], pressures=[x.pb - 24 * BAR],
        torques=[6.0 * 0.95 * between - 1500.0],
        printed={
            "S1.pressure": 0.0, "S1.flow": charge, "S1.drop": 0.0,
            "G1.pressure": x.pb, "G1.flow": charge - make_up, "G1.drop": 0.0,
            "G3.pressure": 0.0, "G3.flow": charge - make_up, "G3.drop": 0.0,
            "N1.pressure": 10 * BAR, "N1.flow": 0.0, "N1.drop": 0.0,
            "N2.pressure": 0.0, "N2.flow": 0.0, "N2.drop": 0.0,
            "HA.pressure": x.pa, "HA.flow": taken, "HA.drop": 0.0,
            "HB.pressure": x.pb, "HB.flow": -given, "HB.drop": 0.0,
            "L1.pressure": 0.0, "L1.flow": pump_case, "L1.drop": 0.0,
            "L2.pressure": 0.0, "L2.flow": case, "L2.drop": 0.0,
            "P1.torque": pump_torque, "P2.torque": charge_torque, "M1.torque": motor_torque,
            "W1.speed": speed, "W1.torque": pump_torque + charge_torque,
            "W2.speed": x.w2, "W2.torque": 0.0, "W3.speed": -x.w2 / 4.2, "W3.torque": -dragged,
            "W4.speed": -x.w2 / 25.2, "W4.torque": -1500.0},
        holds=[(0.0, make_up), (make_up, charge), (x.pa - x.pb, 350 * BAR), (0.0, between)])


CIRCUITS = {
    "rotary divider": Circuit(
        DIVIDER_TEXT, {"p1": 90e5, "pv": 85e5, "pa": 120e5, "pb": 50e5, "pm": 48e5, "ps": -1e3,
                       "w2": 58.0, "w3": 60.0}, divider),
    "cylinder": Circuit(
        CYLINDER_TEXT, {"p1": 120e5, "pv": 118e5, "pr": 116e5, "pc": 4e5, "pt": 2e5, "v": 0.17},
        cylinder),
    "hoist overrunning": Circuit(
        HOIST_TEXT, {"p1": 40e5, "pb": 38e5, "pa": 100e5, "pv": 4e5, "pt": 2e5, "w2": 62.0}, hoist),
    "open circuit with its relief blowing": Circuit(
        RELIEF_TEXT, {"p1": 130e5, "pv": 129e5, "pm": 60e5, "pb": 5e5, "pf": 1e5, "ps": -2e3,
                      "q_relief": 3e-4, "w2": 36.0}, relief),
    "gearbox and brake": Circuit(BRAKE_TEXT, {"pa": 150e5, "pb": 24e5, "w2": 100.0}, brake),
}
