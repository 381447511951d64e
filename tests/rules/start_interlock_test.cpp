// The sound drive with a command and interlocks. What is expected follows by hand from the design's
// words: the prime mover starts in neutral only.
#include <gtest/gtest.h>

#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

std::string rule(const Circuit& circuit) { return verdicts_of(circuit, "start-interlock"); }

Circuit commanded(const std::string& parts) {
    return with(
        {added(R"(<command id="Z1"><stage of="P1" from="0 %" to="100 %"/></command>)" + parts)});
}

TEST(StartInterlock, InNeutralOnly) {
    const Circuit circuit = commanded(R"(<interlock when="Z1 off-neutral" prevents="start E1"/>)");
    EXPECT_EQ(rule(circuit), "start-interlock E1 pass\n");
    EXPECT_EQ(witness_of(circuit, "start-interlock", "E1"), "set: E1 P1");
}

TEST(StartInterlock, None) {
    EXPECT_EQ(rule(commanded("")), "start-interlock E1 fail warning\n");
    EXPECT_EQ(rule(commanded(R"(<interlock when="Z1 neutral" prevents="start E1"/>)")),
              "start-interlock E1 fail warning\n");
}

TEST(StartInterlock, OfAnotherPrimeMover) {
    EXPECT_EQ(rule(commanded(R"(<engine id="E2"/>
                                <interlock when="Z1 off-neutral" prevents="start E2"/>)")),
              "start-interlock E1 fail warning\n");
}

TEST(StartInterlock, NotAskedWhereNothingIsCommanded) {
    EXPECT_EQ(rule(with({})), "start-interlock E1 not-applicable\n");
    EXPECT_EQ(rule(with({{"variable=\"yes\"", ""}})), "start-interlock circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
