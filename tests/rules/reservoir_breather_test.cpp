// Circuits that differ from the sound drive in how its reservoir breathes.
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

const Edit bare{R"( breather="yes" level-indicator="yes")", ""};
const Edit room{R"(<port id="D"/>)", R"(<port id="D"/><port id="E" level="above"/>)"};

std::string judged(const std::vector<Edit>& edits) {
    return verdicts_of(with(edits), "reservoir-breather");
}

TEST(ReservoirBreather, GivenOrDrawn) {
    EXPECT_EQ(judged({}), "reservoir-breather T1 pass\n");
    const std::vector<Edit> drawn{bare, room,
                                  added(R"(<breather id="X1"/><line id="X2" joins="X1.P T1.E"/>)")};
    EXPECT_EQ(judged(drawn), "reservoir-breather T1 pass\n");
    EXPECT_EQ(witness_of(with(drawn), "reservoir-breather", "T1"), "set: T1 X1");
}

TEST(ReservoirBreather, NoneOrOneOnAnotherReservoir) {
    EXPECT_EQ(judged({bare}), "reservoir-breather T1 fail warning\n");
    EXPECT_EQ(judged({bare, room,
                      added(R"(<reservoir id="T2"><port id="E"/></reservoir><breather id="X1"/>
                               <line id="X2" joins="X1.P T2.E"/>)")}),
              "reservoir-breather T1 fail warning\nreservoir-breather T2 pass\n");
}

TEST(ReservoirBreather, NotAskedOfASealedOne) {
    EXPECT_EQ(judged({{R"( breather="yes")", R"( pressure="0.5 bar")"}}),
              "reservoir-breather circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
