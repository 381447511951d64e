// The charge pump's 18 cm3/rev at 2400 rpm are 43.2 L/min. Leakage is set by figures of leakage
// over pressure (leakage-coefficient), so that it can be told beforehand to within a few per cent.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::figures_at_work;
using testing::judged_at_work;

constexpr double litre_a_minute = 1e-3 / 60.0;

/// The motor leaks that much at the 175 bar or so of its high side.
std::string leaking(const std::string& coefficient) {
    return judged_at_work({{R"(max-speed="4500 rpm" max-torque="500 N.m" slip-coefficient="0")",
                            R"(max-speed="4500 rpm" max-torque="500 N.m")" + coefficient}},
                          "charge-flow");
}

TEST(ChargeFlow, WithoutLeakageAllIsLeft) {
    EXPECT_EQ(judged_at_work({}, "charge-flow"), "charge-flow loop:P1 pass at work\n");
    const Figures figures = figures_at_work({}, "charge-flow", "loop:P1");
    EXPECT_NEAR(figures.measured.si / litre_a_minute, 2.4 * 18.0, 1e-6);
    EXPECT_EQ(testing::witness_of(testing::at_work({}), "charge-flow", "loop:P1"), "set: P2 P1 M1");
}

// 0.05 L/min/bar over 175 bar are some 9 L/min; 0.22 some 40, which leaves less than a tenth; 0.4
// would be some 73.
TEST(ChargeFlow, LeakageUsesItUp) {
    EXPECT_EQ(leaking(R"( leakage-coefficient="0.05 L/min/bar")"),
              "charge-flow loop:P1 pass at work\n");
    EXPECT_EQ(leaking(R"( leakage-coefficient="0.21 L/min/bar")"),
              "charge-flow loop:P1 fail warning at work\n");
    EXPECT_EQ(leaking(R"( leakage-coefficient="0.4 L/min/bar")"),
              "charge-flow loop:P1 fail error at work\n");
}

TEST(ChargeFlow, Missing) {
    EXPECT_EQ(leaking(""),
              "charge-flow loop:P1 inconclusive at work needs M1.volumetric-efficiency\n");
}

// The pump draws from the reservoir that the motor empties into: no loop.
TEST(ChargeFlow, NothingToAskOfAnOpenCircuit) {
    const Circuit circuit = testing::circuit_with(R"(<fluid grade="VG 46" viscosity-index="100"/>
<engine id="E1" speed="1500 rpm"/> <pump id="P1" displacement="20 cm3/rev"/>
<motor id="M1" displacement="40 cm3/rev" flow-directions="1"/> <load id="D1" torque="50 N.m"/>
<shaft id="W1" joins="E1 P1"/> <shaft id="W2" joins="M1 D1"/>
<relief-valve id="R1" setting="150 bar"/>
<reservoir id="T1"> <port id="S"/> <port id="R"/> </reservoir>
<line id="S1" joins="T1.S P1.S"/> <line id="H1" joins="P1.P R1.P M1.A"/>
<line id="L1" joins="M1.B R1.T T1.R"/>
<duty> <point id="work" oil="50 degC"/> </duty>)");
    EXPECT_EQ(testing::verdicts_of(circuit, "charge-flow"), "charge-flow circuit not-applicable\n");
    // The point is solved: another rule is asked there.
    EXPECT_EQ(testing::verdicts_of(circuit, "shaft-torque"),
              "shaft-torque P1 inconclusive at work needs P1.max-torque\n"
              "shaft-torque M1 inconclusive at work needs M1.max-torque\n");
}

}  // namespace
}  // namespace loopwright
