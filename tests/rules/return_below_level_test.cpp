// Circuits that differ from the sound drive in the ports of its reservoir: S is drawn from, R is a
// return, D takes the drain and belongs to another rule.
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

const Edit all_below{R"(<port id="S"/><port id="R"/><port id="D"/>)",
                     R"(<port id="S" level="below"/><port id="R" level="below"/><port id="D"/>)"};
const Edit return_above{
    R"(<port id="S"/><port id="R"/><port id="D"/>)",
    R"(<port id="S" level="below"/><port id="R" level="above"/><port id="D"/>)"};
const Edit room{R"(<port id="S"/><port id="R"/><port id="D"/>)",
                R"(<port id="S" level="below"/><port id="R" level="below"/><port id="D"/>
                   <port id="E" level="above"/>)"};

std::string judged(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "return-below-level");
}

TEST(ReturnBelowLevel, AllEndBelow) {
    EXPECT_EQ(judged({all_below}), "return-below-level T1.S pass\nreturn-below-level T1.R pass\n");
    EXPECT_EQ(witness_of(with({all_below}), "return-below-level", "T1.R"), "set: T1.R");
}

TEST(ReturnBelowLevel, OneEndsAbove) {
    EXPECT_EQ(judged({return_above}),
              "return-below-level T1.S pass\nreturn-below-level T1.R fail warning\n");
}

TEST(ReturnBelowLevel, WhetherBelowIsMissing) {
    EXPECT_EQ(judged({}),
              "return-below-level T1.S inconclusive needs T1.S.level\n"
              "return-below-level T1.R inconclusive needs T1.R.level\n");
}

// What passes no oil may stand above the level, and has to.
TEST(ReturnBelowLevel, NotAskedOfInstrumentsBreathersAndPlugs) {
    const std::string passed = "return-below-level T1.S pass\nreturn-below-level T1.R pass\n";
    for (const char* const part : {"level-indicator", "breather", "plug", "thermometer"})
        EXPECT_EQ(judged({room, added(std::string("<") + part +
                                      R"( id="X1"/><line id="X2" joins="T1.E X1.P"/>)")}),
                  passed)
            << part;
    EXPECT_EQ(judged({room}), passed);
    EXPECT_EQ(judged({room, added(R"(<relief-valve id="X1" setting="20 bar"/>
                                     <line id="X2" joins="T1.E X1.T"/>)")}),
              passed + "return-below-level T1.E fail warning\n");
}

}  // namespace
}  // namespace loopwright
