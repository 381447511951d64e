// Circuits that differ from the sound drive in the lines at its housings.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::findings_of;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const Edit pump_alone{"joins=\"R4.T M1.L P1.L K1.A\"", "joins=\"R4.T P1.L K1.A\""};

TEST(MissingDrainPort, EachHousingHasALine) {
    EXPECT_EQ(verdicts_of(with({}), "missing-drain-port"),
              "missing-drain-port P1 pass\nmissing-drain-port M1 pass\n");
}

TEST(MissingDrainPort, NoLineAtTheMotor) {
    const Circuit circuit = with({pump_alone});
    EXPECT_EQ(verdicts_of(circuit, "missing-drain-port"),
              "missing-drain-port P1 pass\nmissing-drain-port M1 fail error\n");
    EXPECT_EQ(witness_of(circuit, "missing-drain-port", "M1"), "set: M1>L");
    // That the housing then has no way to a reservoir follows from it.
    EXPECT_EQ(findings_of(circuit).find("case-drain-path"), std::string::npos);
}

TEST(MissingDrainPort, OneOfSeveralCasePortsIsEnough) {
    const Edit two{R"(displacement="80 cm3/rev" drain="external")",
                   R"(displacement="80 cm3/rev" drain="external" case-ports="2")"};
    EXPECT_EQ(verdicts_of(with({two, {"R4.T M1.L P1.L K1.A", "R4.T M1.L2 P1.L K1.A"}}),
                          "missing-drain-port"),
              "missing-drain-port P1 pass\nmissing-drain-port M1 pass\n");
    EXPECT_EQ(verdicts_of(with({two, pump_alone}), "missing-drain-port"),
              "missing-drain-port P1 pass\nmissing-drain-port M1 fail error\n");
}

TEST(MissingDrainPort, NotAskedOfAMachineDrainedInside) {
    const Edit inside{R"(displacement="80 cm3/rev" drain="external" case-pressure="3 bar")",
                      R"(displacement="80 cm3/rev")"};
    EXPECT_EQ(verdicts_of(with({inside, pump_alone}), "missing-drain-port"),
              "missing-drain-port P1 pass\n");
}

}  // namespace
}  // namespace loopwright
