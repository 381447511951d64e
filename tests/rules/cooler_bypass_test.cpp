// Circuits that differ from the sound drive in how oil gets past its cooler.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const Edit no_bypass{R"(<cooler id="K1" bypass="1.5 bar"/>)", R"(<cooler id="K1"/>)"};
const Edit before{"joins=\"R4.T M1.L P1.L K1.A\"", "joins=\"R4.T M1.L P1.L K1.A X1.A\""};
const Edit behind{"joins=\"K1.B T1.D\"", "joins=\"K1.B T1.D X1.B\""};

std::string judged(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "cooler-bypass");
}

TEST(CoolerBypass, ABypassOfItsOwn) {
    EXPECT_EQ(judged({}), "cooler-bypass K1 pass\n");
    EXPECT_EQ(witness_of(with({}), "cooler-bypass", "K1"), "set: K1");
}

TEST(CoolerBypass, ACheckBesideIt) {
    const std::vector<Edit> check{no_bypass, before, behind,
                                  added(R"(<check-valve id="X1" opening-pressure="1 bar"/>)")};
    EXPECT_EQ(judged(check), "cooler-bypass K1 pass\n");
    EXPECT_EQ(witness_of(with(check), "cooler-bypass", "K1"), "set: K1 X1");
}

TEST(CoolerBypass, AThermostatBeforeIt) {
    EXPECT_EQ(judged({no_bypass,
                      {"joins=\"R4.T M1.L P1.L K1.A\"", "joins=\"R4.T M1.L P1.L X1.A\""},
                      {"joins=\"K1.B T1.D\"", "joins=\"K1.B T1.D X1.C\""},
                      added(R"(<thermostatic-bypass id="X1"/><line id="X2" joins="X1.B K1.A"/>)")}),
              "cooler-bypass K1 pass\n");
}

TEST(CoolerBypass, NoWayPast) {
    EXPECT_EQ(judged({no_bypass}), "cooler-bypass K1 fail warning\n");
    EXPECT_EQ(judged({no_bypass, before, added(R"(<check-valve id="X1"/>)")}),
              "cooler-bypass K1 fail warning\n");
    // A machine's chambers and its leakage are no way past.
    EXPECT_EQ(judged({no_bypass, before, behind, added(R"(<motor id="X1"/>)")}),
              "cooler-bypass K1 fail warning\n");
}

TEST(CoolerBypass, NothingToAskWithoutACooler) {
    EXPECT_EQ(judged({{R"(<cooler id="K1" bypass="1.5 bar"/>)", R"(<heater id="K1"/>)"}}),
              "cooler-bypass circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
