#include <loopwright/tests/render/turning_circuits.h>

namespace loopwright::testing {

std::vector<std::pair<std::string, std::string>> turning_circuits() {
    return {
        {"clutch, gearboxes and a brake",
         R"(<circuit format="1" title="Sweeper traction drive">
  <engine id="E1" power="55 kW" speed="2400 rpm" idle-speed="900 rpm"/>
  <clutch id="K2" actuation="manual"/>
  <gearbox id="G1" ratio="0.8" sense="opposite"/>
  <pump id="P1" displacement="71 cm3/rev" variable="yes" flow-directions="2"
 control="hydraulic" pilot-ports="2" drain="external"/>
  <pump id="P2" title="charge pump" displacement="18 cm3/rev"/>
  <motor id="M1" displacement="80 cm3/rev" drain="external"/>
  <brake id="B1" torque="400 N.m" release-pressure="12 bar" full-release-pressure="16
 bar"/>
  <gearbox id="G2" ratio="24.7"/>
  <load id="D1" title="axle" vehicle="yes" mass="3.5 t"/>
  <shaft id="W1" joins="E1 K2.in"/> <shaft id="W2" joins="K2.out G1.in"/> <shaft
 id="W3" joins="G1.out P1 P2"/>
  <shaft id="W4" joins="M1 B1 G2.in"/> <shaft id="W5" joins="G2.out D1"/>
  <reservoir id="T1" volume="60 L"><port id="S" level="below"/>
<port id="R" level="below"/><port id="D" level="below"/></reservoir>
  <filter id="F1" fineness="10 um" beta="200"/>
  <relief-valve id="R1" setting="24 bar"/><relief-valve id="R2" setting="350 bar"/>
<relief-valve id="R3" setting="350 bar"/>
  <check-valve id="C1"/><check-valve id="C2"/>
  <directional-valve id="V3"><port id="P"/><port id="T"/><port id="A"/>
    <position id="0" rest="yes"><path from="A" to="T"/></position><position id="a">
<path from="P" to="A"/></position></directional-valve>
  <line id="HA" joins="P1.A M1.A R2.P R3.T C1.B"/>
  <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B"/>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1a" joins="P2.P F1.A R1.P"/><line id="G2a" joins="F1.B C1.A C2.A V3.P"/>
  <line id="BR" joins="V3.A B1.Z"/>
  <line id="N" joins="R1.T T1.R V3.T"/>
  <line id="L" joins="P1.L M1.L T1.D"/>
</circuit>)"},
        {"a cylinder in a loop",
         R"(<circuit format="1" title="lift platform">
<electric-motor id="E1" power="15 kW" speed="1450 rpm" reversing="yes"
 variable-speed="yes"/>
<pump id="P1" displacement="28 cm3/rev" flow-directions="2" drain="external"/>
<pump id="P2" title="charge pump" displacement="6 cm3/rev"/>
<cylinder id="A1" bore="63 mm" rod="36 mm" stroke="500 mm" rods="2" title="bow thruster
 door"/><load id="D1" title="door" force="20 kN"/>
<shaft id="W1" joins="E1 P1 P2"/><shaft id="W2" joins="A1 D1"/>
<relief-valve id="R1" setting="24 bar"/><relief-valve id="R2" setting="250 bar"/>
<relief-valve id="R3" setting="250 bar"/><check-valve id="C1"/><check-valve id="C2"/>
<reservoir id="T1"><port id="S"/><port id="R"/><port id="D"/></reservoir>
<line id="HA" joins="P1.A A1.A R2.P R3.T C1.B"/>
<line id="HB" joins="P1.B A1.B R3.P R2.T C2.B"/>
<line id="S1" joins="T1.S P2.S"/><line id="G1" joins="P2.P R1.P C1.A C2.A"/>
<line id="N" joins="R1.T T1.R"/><line id="L" joins="P1.L T1.D"/>
</circuit>)"},
        {"cylinders and a semi-rotary actuator",
         R"(<circuit format="1" title="open cylinder">
<electric-motor id="E1" power="15 kW" speed="1450 rpm"/>
<pump id="P1" displacement="28 cm3/rev" variable="yes" control="pressure-compensated"
 compensator-setting="180 bar"/>
<cylinder id="A1" bore="63 mm" rod="36 mm" stroke="500 mm" cushion="both"/>
<cylinder id="A2" action="single" spring-return="yes"/>
<semi-rotary-actuator id="A3" angle="180 deg"/><load id="D3"/><load id="D1"/>
<shaft id="W1" joins="E1 P1"/><shaft id="W2" joins="A1 D1"/>
<shaft id="W3" joins="A3 D3"/>
<reservoir id="T1"><port id="S"/><port id="R"/></reservoir>
<directional-valve id="V1"><port id="A"/><port id="B"/><port id="P"/><port id="T"/>
<position id="a"><path from="P" to="A"/><path from="B" to="T"/></position>
<position id="r" rest="yes"/><position id="b"><path from="P" to="B"/>
<path from="A" to="T"/></position></directional-valve>
<directional-valve id="V2"><port id="A"/><port id="P"/><port id="T"/><position id="a">
<path from="P" to="A"/></position><position id="r" rest="yes"><path from="A" to="T"/>
</position></directional-valve>
<line id="S1" joins="T1.S P1.S"/><line id="G1" joins="P1.P V1.P V2.P"/>
<line id="H1" joins="V1.A A1.A A3.A"/><line id="H2" joins="V1.B A1.B A3.B"/>
<line id="H3" joins="V2.A A2.A"/><line id="N1" joins="V1.T V2.T T1.R"/>
</circuit>)"},
        {"pump/motor units",
         R"(<circuit format="1" title="units">
<engine id="E1"/>
<pump-motor id="U1" displacement="71 cm3/rev" variable="yes" drain="external"
 control="electric"/><pump id="P2"/>
<pump-motor id="U2" displacement="80 cm3/rev" drain="external"/>
<clutch id="K1" actuation="hydraulic" engaged="yes"/>
<brake id="B2" applied="pressure"/><gearbox id="G1" ratio="12"/><load id="D1"/>
<shaft id="W1" joins="E1 U1 P2"/><shaft id="W2" joins="U2 K1.in"/>
<shaft id="W3" joins="K1.out B2 G1.in"/><shaft id="W4" joins="G1.out D1"/>
<relief-valve id="R1" setting="24 bar"/><relief-valve id="R2" setting="250 bar"/>
<relief-valve id="R3" setting="250 bar"/><check-valve id="C1"/><check-valve id="C2"/>
<reservoir id="T1"><port id="S"/><port id="R"/><port id="D"/></reservoir>
<directional-valve id="V2"><port id="A"/><port id="P"/><port id="T"/><position id="a">
<path from="P" to="A"/></position><position id="r" rest="yes"><path from="A" to="T"/>
</position></directional-valve>
<directional-valve id="V3"><port id="A"/><port id="P"/><port id="T"/><position id="a">
<path from="P" to="A"/></position><position id="r" rest="yes"><path from="A" to="T"/>
</position></directional-valve>
<line id="HA" joins="U1.A U2.A R2.P R3.T C1.B"/>
<line id="HB" joins="U1.B U2.B R3.P R2.T C2.B"/>
<line id="S1" joins="T1.S P2.S"/><line id="G1a" joins="P2.P R1.P C1.A C2.A V2.P V3.P"/>
<line id="N" joins="R1.T V2.T V3.T T1.R"/><line id="L" joins="U1.L U2.L T1.D"/>
<line id="X" joins="V2.A K1.Z"/><line id="X2" joins="V3.A B2.Z"/>
</circuit>)"},
        {"two motors with brakes",
         R"(<circuit format="1" title="two motors with brakes">
<engine id="E1"/><gearbox id="G0" ratio="1.2"/>
<pump id="P1" flow-directions="2" variable="yes" control="hydraulic" drain="external"/>
<pump id="P2"/>
<motor id="M1" drain="external"/><motor id="M2" drain="external"/><brake id="B1"/>
<brake id="B2"/><gearbox id="G1" ratio="20"/><gearbox id="G2" ratio="20"/>
<load id="D1"/><load id="D2"/>
<shaft id="W0" joins="E1 G0.in"/><shaft id="W1" joins="G0.out P1 P2"/>
<shaft id="W2" joins="M1 B1 G1.in"/><shaft id="W3" joins="G1.out D1"/>
<shaft id="W4" joins="M2 B2 G2.out"/><shaft id="W5" joins="G2.in D2"/>
<relief-valve id="R1" setting="24 bar"/><relief-valve id="R2" setting="250 bar"/>
<relief-valve id="R3" setting="250 bar"/><check-valve id="C1"/><check-valve id="C2"/>
<reservoir id="T1"><port id="S"/><port id="R"/><port id="D"/></reservoir>
<hand-pump id="P9" volume="25 cm3"/><check-valve id="C9"/><check-valve id="C8"/>
<directional-valve id="V2"><port id="A"/><port id="P"/><port id="T"/><position id="a">
<path from="P" to="A"/></position><position id="r" rest="yes"><path from="A" to="T"/>
</position></directional-valve>
<line id="HA" joins="P1.A M1.A M2.A R2.P R3.T C1.B"/>
<line id="HB" joins="P1.B M1.B M2.B R3.P R2.T C2.B"/>
<line id="S1" joins="T1.S P2.S P9.S"/><line id="G1a" joins="P2.P R1.P C1.A C2.A V2.P"/>
<line id="N" joins="R1.T V2.T T1.R"/><line id="L" joins="P1.L M1.L M2.L T1.D"/>
<line id="X" joins="V2.A B1.Z B2.Z C9.B"/><line id="X2" joins="P9.P C9.A"/>
</circuit>)"},
        {"two loops behind gearboxes",
         R"(<circuit format="1" title="winch two loops one engine">
<engine id="E1"/><gearbox id="GA" ratio="1"/><gearbox id="GB" ratio="1.3"/>
<pump id="P1" flow-directions="2" variable="yes"/><motor id="M1"/>
<pump id="P2" flow-directions="2" variable="yes"/><motor id="M2"/><brake id="B2"/>
<load id="D1"/><load id="D2"/><pump id="P3"/>
<shaft id="W0" joins="E1 GA.in GB.in P3"/><shaft id="W1" joins="GA.out P1"/>
<shaft id="W2" joins="GB.out P2"/><shaft id="W3" joins="M1 D1"/>
<shaft id="W4" joins="M2 B2 D2"/>
<reservoir id="T1"><port id="S"/><port id="R"/></reservoir>
<relief-valve id="R1" setting="24 bar"/>
<check-valve id="C1"/><check-valve id="C2"/><check-valve id="C3"/><check-valve id="C4"/>
<line id="HA" joins="P1.A M1.A C1.B"/><line id="HB" joins="P1.B M1.B C2.B"/>
<line id="JA" joins="P2.A M2.A C3.B"/><line id="JB" joins="P2.B M2.B C4.B"/>
<line id="S1" joins="T1.S P3.S"/>
<line id="G1" joins="P3.P R1.P C1.A C2.A C3.A C4.A B2.Z"/>
<line id="N" joins="R1.T T1.R"/>
</circuit>)"},
    };
}

}  // namespace loopwright::testing
