// Circuits that differ from the sound drive in how the level of its reservoir is read.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::circuit_from;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const Edit bare{R"( breather="yes" level-indicator="yes")", ""};
const Edit room{R"(<port id="D"/>)", R"(<port id="D"/><port id="E" level="above"/>)"};

std::string judged(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "level-indicator");
}

std::vector<Edit> drawn(const std::string& part) {
    return {bare, room, added(part + R"(<line id="X2" joins="X1.P T1.E"/>)")};
}

TEST(LevelIndicator, GivenOrDrawn) {
    EXPECT_EQ(judged({}), "level-indicator T1 pass\n");
    EXPECT_EQ(judged(drawn(R"(<level-indicator id="X1"/>)")), "level-indicator T1 pass\n");
    EXPECT_EQ(judged(drawn(R"(<sensor id="X1" measures="level"/>)")), "level-indicator T1 pass\n");
    EXPECT_EQ(witness_of(with(drawn(R"(<level-indicator id="X1"/>)")), "level-indicator", "T1"),
              "set: T1 X1");
}

TEST(LevelIndicator, NoneOrAnotherInstrument) {
    EXPECT_EQ(judged({bare}), "level-indicator T1 fail warning\n");
    EXPECT_EQ(judged(drawn(R"(<sensor id="X1" measures="temperature"/>)")),
              "level-indicator T1 fail warning\n");
}

TEST(LevelIndicator, NothingToAskWithoutAReservoir) {
    EXPECT_EQ(verdicts_of(circuit_from(R"(<circuit format="1"><engine id="E1"/></circuit>)"),
                          "level-indicator"),
              "level-indicator circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
