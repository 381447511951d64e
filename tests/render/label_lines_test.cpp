// What stands beside a symbol: ISO 1219-2:2012, 6.4, as the drawing-standard note lists it.

#include <gtest/gtest.h>

#include <loopwright/tests/render/drawn_variant.h>

namespace loopwright::testing {
namespace {

using Lines = std::vector<std::string>;

Lines lines(std::string_view xml) {
    const Circuit circuit = circuit_with(xml);
    return label_lines(circuit, circuit.components.front());
}

TEST(LabelLines, DesignationStandsForTheId) {
    EXPECT_EQ(lines(R"(<orifice id="O1"/>)"), (Lines{"O1"}));
    EXPECT_EQ(lines(R"(<orifice id="O1" designation="1-H2.3" title="bleed" bore="1.2 mm"/>)"),
              (Lines{"1-H2.3", "bleed", "\u00D8 1.2 mm"}));
}

TEST(LabelLines, APartOfAnAssemblyHasItsPath) {
    EXPECT_EQ(lines(R"(<assembly id="U1"><orifice id="O1"/></assembly>)"), (Lines{"U1/O1"}));
}

TEST(LabelLines, Machines) {
    EXPECT_EQ(lines(R"(<pump id="P" displacement="18 cm3/rev"/>)"), (Lines{"P", "18 cm3/rev"}));
    EXPECT_EQ(lines(R"(<pump id="P" displacement="71 cm3/rev" variable="yes"/>)"),
              (Lines{"P", "0 to 71 cm3/rev"}));
    EXPECT_EQ(lines(R"(<pump id="P" displacement="71 cm3/rev" variable="yes"
                        flow-directions="2"/>)"),
              (Lines{"P", "\u00B171 cm3/rev"}));
    EXPECT_EQ(lines(R"(<motor id="M" displacement="80 cm3/rev" min-displacement="28 cm3/rev"
                        variable="yes" rotation="clockwise"/>)"),
              (Lines{"M", "28 to 80 cm3/rev", "clockwise"}));
    EXPECT_EQ(lines(R"(<engine id="E" power="55 kW" speed="2400 rpm"/>)"),
              (Lines{"E", "55 kW", "2400 rpm"}));
    EXPECT_EQ(lines(R"(<load id="D" torque="300 N.m"/>)"), (Lines{"D", "300 N.m"}));
}

TEST(LabelLines, ControlsOfMachines) {
    EXPECT_EQ(lines(R"(<pump id="P" pressure-limiter="380 bar"/>)"),
              (Lines{"P", "limiter 380 bar"}));
    EXPECT_EQ(lines(R"(<pump id="P" control="load-sensing" compensator-setting="210 bar"
                        load-sensing-margin="20 bar"/>)"),
              (Lines{"P", "compensator 210 bar", "margin 20 bar"}));
    EXPECT_EQ(lines(R"(<motor id="M" freewheeling="yes"/>)"), (Lines{"M", "freewheeling"}));
    EXPECT_EQ(lines(R"(<pump-motor id="U" variable="yes" displacement="71 cm3/rev"/>)"),
              (Lines{"U", "\u00B171 cm3/rev", "pump/motor"}));
    EXPECT_EQ(lines(R"(<hand-pump id="P" volume="25 mL"/>)"), (Lines{"P", "0.025 L"}));
}

TEST(LabelLines, CylindersAndWhatStandsOnShafts) {
    EXPECT_EQ(lines(R"(<cylinder id="A" bore="63 mm" rod="36 mm" stroke="500 mm"/>)"),
              (Lines{"A", "\u00D8 63 / \u00D8 36 \u00D7 500 mm"}));
    EXPECT_EQ(lines(R"(<cylinder id="A" bore="63 mm" rod="36 mm" stroke="1.2 m"/>)"),
              (Lines{"A", "\u00D8 63 / \u00D8 36 mm \u00D7 1.2 m"}));
    EXPECT_EQ(lines(R"(<cylinder id="A" bore="63 mm"/>)"), (Lines{"A", "\u00D8 63 mm"}));
    EXPECT_EQ(lines(R"(<cylinder id="A" stroke="500 mm"/>)"), (Lines{"A", "500 mm"}));
    EXPECT_EQ(lines(R"(<semi-rotary-actuator id="A" displacement="200 cm3/rev" angle="180 deg"/>)"),
              (Lines{"A", "200 cm3/rev", "180 deg"}));
    EXPECT_EQ(lines(R"(<brake id="B" torque="400 N.m" release-pressure="12 bar"
                        full-release-pressure="16 bar"/>)"),
              (Lines{"B", "400 N.m", "release 12 to 16 bar"}));
    EXPECT_EQ(lines(R"(<brake id="B" release-pressure="12 bar"/>)"),
              (Lines{"B", "release 12 bar"}));
    EXPECT_EQ(lines(R"(<brake id="B" applied="pressure" apply-pressure="40 bar"/>)"),
              (Lines{"B", "apply 40 bar"}));
    EXPECT_EQ(lines(R"(<gearbox id="G" ratio="24.7"/>)"), (Lines{"G", "i = 24.7"}));
    EXPECT_EQ(lines(R"(<clutch id="K" torque="500 N.m"/>)"), (Lines{"K", "500 N.m"}));
    EXPECT_EQ(lines(R"(<electric-motor id="E" power="15 kW" speed="1450 rpm"/>)"),
              (Lines{"E", "15 kW", "1450 rpm"}));
    EXPECT_EQ(lines(R"(<load id="D" force="12 kN" mass="3 t"/>)"),
              (Lines{"D", "12 kN", "3000 kg"}));
}

TEST(LabelLines, Valves) {
    EXPECT_EQ(lines(R"(<relief-valve id="R" setting="24 bar" full-flow-pressure="28 bar"/>)"),
              (Lines{"R", "24 bar", "full flow 28 bar"}));
    EXPECT_EQ(lines(R"(<check-valve id="C" opening-pressure="0.5 bar"/>)"),
              (Lines{"C", "0.5 bar"}));
    EXPECT_EQ(lines(R"(<shut-off-valve id="H"/>)"), (Lines{"H", "open"}));
    EXPECT_EQ(lines(R"(<shut-off-valve id="H" position="closed" locked="yes"/>)"),
              (Lines{"H", "locked closed"}));
    EXPECT_EQ(lines(R"(<flushing-valve id="V"/>)"), (Lines{"V"}));
}

TEST(LabelLines, Conditioners) {
    EXPECT_EQ(lines(R"(<filter id="F" fineness="10 um" beta="200" bypass="2 bar"/>)"),
              (Lines{"F", "\u03B210(c) = 200", "bypass 2 bar"}));
    EXPECT_EQ(lines(R"(<filter id="F" fineness="10 um"/>)"), (Lines{"F", "10 um"}));
    EXPECT_EQ(lines(R"(<cooler id="K" capacity="12 kW" temperature-difference="30 K"/>)"),
              (Lines{"K", "12 kW at 30 K"}));
    EXPECT_EQ(
        lines(R"(<breather id="X" fineness="3 um" filler="yes" opening-pressure="0.35 bar"/>)"),
        (Lines{"X", "3 um", "filler", "0.35 bar"}));
    // Clause 6.4 asks for a gauge's range.
    EXPECT_EQ(lines(R"(<gauge id="X" range="40 bar"/>)"), (Lines{"X", "0 to 40 bar"}));
    EXPECT_EQ(lines(R"(<tachometer id="X" range="3000 rpm"/>)"), (Lines{"X", "0 to 3000 rpm"}));
    EXPECT_EQ(lines(R"(<reservoir id="T" volume="60 L" breather="yes" level-indicator="yes">
                        <port id="R"/></reservoir>)"),
              (Lines{"T", "60 L", "breather", "level indicator"}));
}

}  // namespace
}  // namespace loopwright::testing
