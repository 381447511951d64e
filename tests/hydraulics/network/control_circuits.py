"""What sets strokes and engine speeds by itself; in the manner of `closed_circuits`."""

import laws
from balance import Balance, Circuit
from laws import BAR, LPM, RPM
from usual_parts import MOTOR, MU, NU, OIL, PUMP, RHO, motor_of, pump_of

# ---- 11 to 14: one loop; its engine, its pump's and motor's controls, and its load vary ----


def loop_text(title, engine="", pump="", motor="", load="150 N.m", travel="50 %"):
    """Attributes more of the parts; at half its travel the pump is at full stroke."""
    return f"""<circuit format="1" title="{title}">
  {OIL}
  <engine id="E1" power="40 kW" speed="2200 rpm" {engine}/>
  <pump id="P1" displacement="71 cm3/rev" variable="yes" flow-directions="2" control="hydraulic"
        drain="external" {PUMP} {pump}/>
  <pump id="P2" displacement="18 cm3/rev" {PUMP}/>
  <shaft id="W1" joins="E1 P1 P2"/>
  <motor id="M1" displacement="80 cm3/rev" min-displacement="28 cm3/rev" variable="yes"
        drain="external" {MOTOR} {motor}/>
  <load id="D1"/> <shaft id="W2" joins="M1 D1"/>
  <reservoir id="T1"><port id="S"/><port id="R"/><port id="L"/><port id="M"/></reservoir>
  <relief-valve id="R1" setting="24 bar"/>
  <relief-valve id="R2" setting="350 bar"/> <relief-valve id="R3" setting="350 bar"/>
  <check-valve id="C1"/> <check-valve id="C2"/>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P C1.A C2.A"/> <line id="G2" joins="R1.T T1.R"/>
  <line id="HA" joins="P1.A M1.A R2.P R3.T C1.B"/> <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B"/>
  <line id="L1" joins="P1.L T1.L"/> <line id="L2" joins="M1.L T1.M"/>
  <command id="Z1" given-by="pedal"> <stage of="P1" from="0 %" to="50 %"/>
  <stage of="M1" from="50 %" to="100 %"/> </command>
  <duty> <point id="a" speed="2200 rpm" travel="{travel}" torque="{load}" oil="40 degC"/> </duty>
</circuit>"""


class Loop:
    """Its laws: strokes of pump and motor, speed of the engine."""

    def __init__(self, x, load, speed=2200 * RPM, stroke=1.0, motor_stroke=1.0):
        low = 24 * BAR
        self.speed, self.load, self.x = speed, load, x
        self.out, into, case, self.pump_torque = laws.pump(pump_of(71), x.pa, low, speed, MU,
                                                           stroke)
        self.taken, given, drain, self.motor_torque = laws.motor(
            motor_of(80), x.pa, low, x.w2, MU, motor_stroke)
        charge, self.charge_torque = laws.inside_drained_pump(pump_of(18), low, 0.0, speed, MU)
        self.make_up, self.charge = into - given, charge
        self.asked = self.pump_torque + self.charge_torque
        over = charge - self.make_up
        self.printed = {
            "S1.pressure": 0.0, "S1.flow": charge, "S1.drop": 0.0,
            "G1.pressure": low, "G1.flow": over, "G1.drop": 0.0,
            "G2.pressure": 0.0, "G2.flow": over, "G2.drop": 0.0,
            "HA.pressure": x.pa, "HA.flow": self.taken, "HA.drop": 0.0,
            "HB.pressure": low, "HB.flow": -given, "HB.drop": 0.0,
            "L1.pressure": 0.0, "L1.flow": case, "L1.drop": 0.0,
            "L2.pressure": 0.0, "L2.flow": drain, "L2.drop": 0.0,
            "P1.torque": self.pump_torque, "P2.torque": self.charge_torque,
            "M1.torque": self.motor_torque,
            "W1.speed": speed, "W1.torque": self.asked, "W2.speed": x.w2, "W2.torque": load}

    def balance(self, **more):
        """With residuals of the controls."""
        torques = [self.motor_torque - self.load] + more.pop("torques", [])
        holds = [(0.0, self.make_up), (self.make_up, self.charge),
                 (self.x.pa - 24 * BAR, 350 * BAR)] + more.pop("holds", [])
        return Balance(flows=[self.out - self.taken], pressures=more.pop("pressures", []),
                       torques=torques, printed=self.printed, holds=holds, **more)


RATED = 40e3 / (2200 * RPM)  # N.m


def torque_limiter(x):
    """The pump's shaft takes 150 N.m and no more; its losses are counted."""
    loop = Loop(x, 250.0, stroke=x.s1)
    return loop.balance(torques=[loop.pump_torque - 150.0], holds=[(x.s1, 1.0)])


def anti_stall(x):
    """The engine is down to its setting, and gives rated torque to both pumps."""
    loop = Loop(x, 300.0, stroke=x.s1)
    return loop.balance(torques=[loop.asked - RATED], holds=[(x.s1, 1.0)])


def governed(x):
    """5 % faster without load than under rated torque; a straight line."""
    loop = Loop(x, 120.0, speed=x.w1)
    line = 2200 * RPM * (1.0 + 0.05 * (1.0 - loop.asked / RATED))
    return loop.balance(speeds=[x.w1 - line], holds=[(loop.asked, RATED)])


def overloaded(x):
    """Slower than it is set to, at rated power."""
    loop = Loop(x, 200.0, speed=x.w1)
    return loop.balance(torques=[loop.asked - 40e3 / x.w1],
                        holds=[(RATED, loop.asked), (loop.asked, 230.0)])


def pressure_motor(x):
    """Its displacement rises with the pressure of side A, from 28 to 80 cm3/rev."""
    loop = Loop(x, 190.0, motor_stroke=x.sm)
    line = 28 / 80 + (1 - 28 / 80) * (x.pa - 140 * BAR) / (120 * BAR)
    return loop.balance(strokes=[x.sm - line], holds=[(28 / 80, x.sm), (x.sm, 1.0)])


# ---- 15: a load-sensing pump; two motors, the harder one by a shuttle ----

SENSING_TEXT = f"""<circuit format="1" title="load-sensing">
  {OIL}
  <electric-motor id="E1" power="15 kW" speed="1450 rpm"/>
  <pump id="P1" displacement="45 cm3/rev" variable="yes" control="load-sensing" pilot-ports="1"
        load-sensing-margin="18 bar" compensator-setting="210 bar" drain="external" {PUMP}/>
  <shaft id="W1" joins="E1 P1"/>
  <reservoir id="T1"><port id="S"/><port id="R"/><port id="B"/><port id="L"/><port id="M"/>
  </reservoir>
  <relief-valve id="R1" setting="240 bar"/>
  <orifice id="O1" bore="3.2 mm"/> <orifice id="O2" bore="2.4 mm"/>
  <motor id="M1" displacement="40 cm3/rev" drain="external" {MOTOR}/> <load id="D1"/>
  <shaft id="W2" joins="M1 D1"/>
  <motor id="M2" displacement="32 cm3/rev" drain="external" {MOTOR}/> <load id="D2"/>
  <shaft id="W3" joins="M2 D2"/>
  <line id="S1" joins="T1.S P1.S"/> <line id="G1" joins="R1.T T1.R"/>
  <line id="H1" joins="P1.P J1.a R1.P" bore="12 mm" length="2 m"/>
  <junction id="J1"><port id="a"/><port id="b"/></junction> <line id="H4" joins="J1.b O1.A O2.A"/>
  <line id="H2" joins="O1.B M1.A C1.A"/> <line id="H3" joins="O2.B M2.A C2.A"/>
  <check-valve id="C1"/> <check-valve id="C2"/> <line id="X1" joins="C1.B C2.B P1.X"/>
  <line id="K1" joins="M1.B M2.B T1.B"/> <line id="L1" joins="P1.L T1.L"/>
  <line id="L2" joins="M1.L M2.L T1.M"/>
  <duty> <point id="a" speed="1450 rpm" oil="40 degC"> <set of="D1" torque="50 N.m"/>
  <set of="D2" torque="65 N.m"/> </point> </duty>
</circuit>"""


def sensing(x):
    """Its outlet stands 18 bar over the harder motor's inlet, which checks lead to X."""
    speed = 1450 * RPM
    out, into, case, torque = laws.pump(pump_of(45), x.p1, 0.0, speed, MU, x.s1)
    in1, out1, case1, torque1 = laws.motor(motor_of(40), x.pa, 0.0, x.w2, MU)
    in2, out2, case2, torque2 = laws.motor(motor_of(32), x.pb, 0.0, x.w3, MU)
    behind = x.p1 - x.pv
    return Balance(
        flows=[out - in1 - in2],
        pressures=[behind - laws.pipe(out, 0.012, 2.0, RHO, NU),
                   x.pv - x.pa - laws.orifice(in1, 0.0032, RHO, NU),
                   x.pv - x.pb - laws.orifice(in2, 0.0024, RHO, NU),
                   x.p1 - x.pb - 18 * BAR],
        torques=[torque1 - 50.0, torque2 - 65.0],
        printed={
            "S1.pressure": 0.0, "S1.flow": into, "S1.drop": 0.0,
            "G1.pressure": 0.0, "G1.flow": 0.0, "G1.drop": 0.0,
            "H1.pressure": x.p1, "H1.flow": out, "H1.drop": behind,
            "H2.pressure": x.pa, "H2.flow": in1, "H2.drop": 0.0,
            "H3.pressure": x.pb, "H3.flow": in2, "H3.drop": 0.0,
            "H4.pressure": x.pv, "H4.flow": in1, "H4.drop": 0.0,
            "X1.pressure": x.pb, "X1.flow": 0.0, "X1.drop": 0.0,
            "K1.pressure": 0.0, "K1.flow": -out2, "K1.drop": 0.0,
            "L1.pressure": 0.0, "L1.flow": case, "L1.drop": 0.0,
            "L2.pressure": 0.0, "L2.flow": -case2, "L2.drop": 0.0,
            "P1.torque": torque, "M1.torque": torque1, "M2.torque": torque2,
            "W1.speed": speed, "W1.torque": torque,
            "W2.speed": x.w2, "W2.torque": 50.0, "W3.speed": x.w3, "W3.torque": 65.0},
        holds=[(x.s1, 1.0), (x.pa, x.pb), (x.p1, 210 * BAR)])


# ---- 16: two loops that go opposite ways, each flushed from its own low side ----

SPIN_TEXT = f"""<circuit format="1" title="a spin turn">
  {OIL}
  <engine id="E1" power="55 kW" speed="2300 rpm"/>
  <pump id="P1" displacement="45 cm3/rev" variable="yes" flow-directions="2" control="manual"
        drain="external" {PUMP}/>
  <pump id="P2" displacement="45 cm3/rev" variable="yes" flow-directions="2" control="manual"
        drain="external" {PUMP}/>
  <pump id="P3" displacement="20 cm3/rev" {PUMP}/>
  <shaft id="W1" joins="E1 P1 P2 P3"/>
  <motor id="M1" displacement="80 cm3/rev" drain="external" {MOTOR}/> <load id="D1"/>
  <shaft id="W2" joins="M1 D1"/>
  <motor id="M2" displacement="80 cm3/rev" drain="external" {MOTOR}/> <load id="D2"/>
  <shaft id="W3" joins="M2 D2"/>
  <reservoir id="T1"><port id="S"/><port id="R"/><port id="L"/><port id="M"/><port id="F"/>
  <port id="G"/></reservoir>
  <relief-valve id="R1" setting="25 bar" full-flow-pressure="28 bar" full-flow="45 L/min"/>
  <check-valve id="C1"/> <check-valve id="C2"/> <check-valve id="C3"/> <check-valve id="C4"/>
  <relief-valve id="R2" setting="350 bar"/> <relief-valve id="R3" setting="350 bar"/>
  <relief-valve id="R4" setting="350 bar"/> <relief-valve id="R5" setting="350 bar"/>
  <flushing-valve id="V1"/> <flushing-valve id="V2"/>
  <orifice id="O1" bore="1.6 mm"/> <orifice id="O2" bore="1.2 mm"/>
  <line id="S1" joins="P3.S T1.S"/>
  <line id="G1" joins="P3.P R1.P C1.A C2.A C3.A C4.A"/> <line id="G3" joins="R1.T T1.R"/>
  <line id="A1" joins="P1.A M1.A R2.P R3.T C1.B V1.A"/>
  <line id="B1" joins="P1.B M1.B R3.P R2.T C2.B V1.B"/>
  <line id="A2" joins="P2.A M2.A R4.P R5.T C3.B V2.A"/>
  <line id="B2" joins="P2.B M2.B R5.P R4.T C4.B V2.B"/>
  <line id="F1" joins="V1.F O1.A"/> <line id="F2" joins="O1.B T1.F"/>
  <line id="F3" joins="V2.F O2.A"/> <line id="F4" joins="O2.B T1.G"/>
  <line id="L1" joins="P1.L P2.L T1.L"/> <line id="L3" joins="M1.L M2.L T1.M"/>
  <command id="Z1" given-by="lever"> <stage of="P1" from="0 %" to="100 %"/> </command>
  <command id="Z2" given-by="lever"> <stage of="P2" from="0 %" to="100 %"/> </command>
  <duty> <point id="a" speed="2300 rpm" oil="40 degC">
    <set of="Z1" travel="60 %"/> <set of="Z2" travel="-60 %"/>
    <set of="D1" torque="160 N.m"/> <set of="D2" torque="120 N.m"/> </point> </duty>
</circuit>"""


def spin(x):
    """Side A of the first loop and side B of the second are high; both low sides are fed."""
    speed, low = 2300 * RPM, x.pg
    out1, in1, case1, pump1 = laws.pump(pump_of(45), x.pa, low, speed, MU, 0.6)
    taken1, given1, drain1, torque1 = laws.motor(motor_of(80), x.pa, low, x.w2, MU)
    out2, in2, case2, pump2 = laws.pump(pump_of(45), x.pb, low, speed, MU, 0.6)
    taken2, given2, drain2, torque2 = laws.motor(motor_of(80), x.pb, low, x.w3, MU)
    charge, charge_torque = laws.inside_drained_pump(pump_of(20), low, 0.0, speed, MU)
    fed = in1 - given1 + x.q_1 + in2 - given2 + x.q_2
    return Balance(
        flows=[out1 - taken1, out2 - taken2, charge - x.q_relief - fed],
        pressures=[low - 25 * BAR - 3 * BAR / (45 * LPM) * x.q_relief,
                   low - laws.orifice(x.q_1, 0.0016, RHO, NU),
                   low - laws.orifice(x.q_2, 0.0012, RHO, NU)],
        torques=[torque1 - 160.0, torque2 - 120.0],
        printed={
            "S1.pressure": 0.0, "S1.flow": -charge, "S1.drop": 0.0,
            "G1.pressure": low, "G1.flow": x.q_relief, "G1.drop": 0.0,
            "G3.pressure": 0.0, "G3.flow": x.q_relief, "G3.drop": 0.0,
            "A1.pressure": x.pa, "A1.flow": taken1, "A1.drop": 0.0,
            "B1.pressure": low, "B1.flow": -given1, "B1.drop": 0.0,
            "A2.pressure": low, "A2.flow": -given2, "A2.drop": 0.0,
            "B2.pressure": x.pb, "B2.flow": taken2, "B2.drop": 0.0,
            "F1.pressure": low, "F1.flow": x.q_1, "F1.drop": 0.0,
            "F2.pressure": 0.0, "F2.flow": x.q_1, "F2.drop": 0.0,
            "F3.pressure": low, "F3.flow": x.q_2, "F3.drop": 0.0,
            "F4.pressure": 0.0, "F4.flow": x.q_2, "F4.drop": 0.0,
            "L1.pressure": 0.0, "L1.flow": -case2, "L1.drop": 0.0,
            "L3.pressure": 0.0, "L3.flow": -drain2, "L3.drop": 0.0,
            "P1.torque": pump1, "P2.torque": pump2, "P3.torque": charge_torque,
            "M1.torque": torque1, "M2.torque": torque2,
            "W1.speed": speed, "W1.torque": pump1 + pump2 + charge_torque,
            "W2.speed": x.w2, "W2.torque": 160.0, "W3.speed": -x.w3, "W3.torque": -120.0},
        holds=[(0.0, x.q_relief), (low, x.pa), (low, x.pb)])


START = {"pa": 180e5, "w2": 200.0}
DROOP = 'droop="5 %" max-torque="230 N.m"'

CIRCUITS = {
    "torque limiter": Circuit(
        loop_text("torque limiter", pump='torque-limiter="150 N.m"', load="250 N.m"),
        {**START, "s1": 0.7}, torque_limiter),
    "anti-stall": Circuit(
        loop_text("anti-stall", DROOP, 'anti-stall="yes"', load="300 N.m"),
        {**START, "s1": 0.6}, anti_stall),
    "governed engine": Circuit(
        loop_text("governed engine", DROOP, load="120 N.m"), {**START, "w1": 230.0}, governed),
    "overloaded engine": Circuit(
        loop_text("overloaded engine", DROOP, load="200 N.m"), {**START, "w1": 200.0}, overloaded),
    "motor under pressure": Circuit(
        loop_text("motor under pressure", motor='begin-pressure="140 bar" end-pressure="260 bar"',
                  load="190 N.m", travel="100 %"), {**START, "sm": 0.7}, pressure_motor),
    "load-sensing pump": Circuit(
        SENSING_TEXT, {"p1": 150e5, "pv": 149e5, "pa": 80e5, "pb": 130e5, "w2": 80.0, "w3": 60.0,
                       "s1": 0.7}, sensing),
    "spin turn": Circuit(
        SPIN_TEXT, {"pa": 150e5, "pb": 120e5, "pg": 25e5, "q_relief": 2e-4, "q_1": 8e-5,
                    "q_2": 5e-5, "w2": 120.0, "w3": 120.0}, spin),
}
