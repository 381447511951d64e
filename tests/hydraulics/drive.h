#pragma once

#include <string>

#include <gtest/gtest.h>

#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/parser/reader.h>

#include <loopwright/tests/hydraulics/figures.h>

/// A closed loop, and the state of its only duty point.
namespace loopwright::hydraulics::testing {

/// A drive without losses: P1 71 cm3/rev, M1 80 cm3/rev, charge pump 18 cm3/rev into a relief at
/// 24 bar before the make-up checks; no flushing. `duty`: its points; `more`: attributes of parts.
inline std::string drive(const std::string& duty, const std::string& of_motor = "",
                         const std::string& of_pump = "") {
    return R"(<circuit format="1" title="drive">
  <fluid grade="VG 46" viscosity-index="100" density="870 kg/m3"/>
  <engine id="E1" power="55 kW" speed="2400 rpm"/>
  <pump id="P1" displacement="71 cm3/rev" variable="yes" flow-directions="2" control="manual")" +
           of_pump + R"(/>
  <pump id="P2" displacement="18 cm3/rev"/>
  <shaft id="W1" joins="E1 P1 P2"/>
  <motor id="M1" displacement="80 cm3/rev" min-displacement="28 cm3/rev" variable="yes")" +
           of_motor + R"(/>
  <load id="D1"/>
  <shaft id="W2" joins="M1 D1"/>
  <reservoir id="T1" volume="60 L"><port id="S" level="below"/><port id="R" level="below"/></reservoir>
  <relief-valve id="R1" setting="24 bar"/>
  <relief-valve id="R2" setting="350 bar"/>
  <relief-valve id="R3" setting="350 bar"/>
  <check-valve id="C1"/>
  <check-valve id="C2"/>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P C1.A C2.A"/>
  <line id="G2" joins="R1.T T1.R"/>
  <line id="HA" joins="P1.A M1.A R2.P R3.T C1.B"/>
  <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B"/>
  <command id="Z1" given-by="pedal">
    <stage of="P1" from="0 %" to="33 %"/>
    <stage of="M1" from="33 %" to="100 %"/>
  </command>
  <duty>)" +
           duty + "</duty>\n</circuit>\n";
}

inline OperatingPoint only_point(const std::string& xml) {
    const ReadResult read = read_circuit_text(xml, "drive.xml", {}, {});
    EXPECT_TRUE(read.circuit);
    for (const Diagnostic& one : read.diagnostics) ADD_FAILURE() << one.message;
    if (!read.circuit) return {};
    std::vector<OperatingPoint> points = operating_points(*read.circuit);
    EXPECT_EQ(points.size(), 1U);
    EXPECT_LT(points[0].mass_residual, 1e-9);
    EXPECT_LT(points[0].energy_residual, 1e-9);
    // The id is the circuit's own text, which ends here.
    points[0].id = {};
    return points[0];
}

}  // namespace loopwright::hydraulics::testing
