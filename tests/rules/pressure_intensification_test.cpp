// A rotary divider of n equal sections, all outlets but one unloaded, raises the loaded one up to n
// times the inlet pressure: a relief at each outlet (trade article on flow dividers, the project's
// row O-20); a spool divider does not.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::circuit_from;
using testing::verdicts_of;
using testing::witness_of;

/// An open circuit: pump and relief, a divider, two motors; more parts.
std::string divided(const std::string& design, const std::string& more = "") {
    return R"(<circuit format="1"><engine id="E1"/><pump id="P1"/><shaft id="W1" joins="E1 P1"/>
<reservoir id="T1"><port id="S"/><port id="R"/><port id="Q"/><port id="U"/></reservoir>
<relief-valve id="R1" setting="200 bar"/><line id="S1" joins="T1.S P1.S"/>
<flow-divider id="X1" design=")" +
           design + R"("><port id="a"/><port id="b"/></flow-divider>
<motor id="M1"/><motor id="M2"/><relief-valve id="R2" setting="210 bar"/>
<relief-valve id="R3" setting="210 bar"/>
<line id="D1" joins="P1.P R1.P X1.P"/><line id="D2" joins="X1.a M1.A R2.P"/>
<line id="D3" joins="X1.b M2.A R3.P"/><line id="Q1" joins="M1.B M2.B R1.T R2.T R3.T T1.R"/>)" +
           more + "</circuit>";
}

TEST(PressureIntensification, RotaryDividerWithReliefs) {
    const Circuit circuit = circuit_from(divided("rotary"));
    EXPECT_EQ(verdicts_of(circuit, "pressure-intensification"),
              "pressure-intensification X1 pass\n");
    EXPECT_EQ(witness_of(circuit, "pressure-intensification", "X1"), "path: X1>a");
}

TEST(PressureIntensification, OneOutletWithout) {
    const Circuit circuit =
        circuit_from(testing::edited(divided("rotary"), {{"M2.A R3.P", "M2.A"}}));
    EXPECT_EQ(verdicts_of(circuit, "pressure-intensification"),
              "pressure-intensification X1 fail error\n");
    EXPECT_EQ(witness_of(circuit, "pressure-intensification", "X1"), "path: X1>b");
}

TEST(PressureIntensification, ASpoolDividerRaisesNothing) {
    EXPECT_EQ(verdicts_of(circuit_from(divided("spool")), "pressure-intensification"),
              "pressure-intensification circuit not-applicable\n");
}

// The rod end of a cylinder: area ratio 2 doubles the pressure of the cap end where it is held.
TEST(PressureIntensification, RodEndOfACylinder) {
    const auto lifted = [](const std::string& cylinder, const std::string& at_rod) {
        return verdicts_of(
            circuit_from(R"(<circuit format="1"><engine id="E1"/><pump id="P1"/>
<shaft id="W1" joins="E1 P1"/><reservoir id="T1"><port id="S"/><port id="R"/></reservoir>
<relief-valve id="R1" setting="200 bar"/><relief-valve id="R2" setting="200 bar"/>
<throttle id="H1"/><cylinder id="A1" )" +
                         cylinder + R"(/><line id="S1" joins="T1.S P1.S"/>
<line id="D1" joins="P1.P R1.P A1.A"/><line id="D2" joins="A1.B H1.A)" +
                         at_rod + R"("/><line id="Q1" joins="H1.B R1.T R2.T T1.R"/></circuit>)"),
            "pressure-intensification");
    };
    EXPECT_EQ(lifted("", ""), "pressure-intensification A1 fail error\n");
    EXPECT_EQ(lifted("", " R2.P"), "pressure-intensification A1 pass\n");
    EXPECT_EQ(lifted(R"(rods="2")", ""), "pressure-intensification circuit not-applicable\n");
    EXPECT_EQ(lifted(R"(area-ratio="1")", ""), "pressure-intensification circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
