// The sound drive with measuring points. What is expected follows by hand from the design's words:
// one on each side of the loop, on the charge line and at a housing.
#include <gtest/gtest.h>

#include <algorithm>

#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

const Edit on_a{"C1.B V1.A\"", "C1.B V1.A I1.P\""};
const Edit on_b{"C2.B V1.B\"", "C2.B V1.B I2.P\""};
const Edit on_charge{"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.A I3.P\""};
const Edit on_case{"P1.L K1.A\"", "P1.L K1.A I4.P\""};
const std::string parts = R"(<measuring-point id="I1"/><gauge id="I2"/><sensor id="I3"/>)";

std::string rule(const std::vector<Edit>& edits) { return verdicts_of(with(edits), "test-points"); }

const std::string passes = std::string("test-points loop:P1 pass") + all_running;
const std::string fails = std::string("test-points loop:P1 fail note") + all_running;

TEST(TestPoints, OnEveryPlace) {
    const std::vector<Edit> edits = {on_a, on_b, on_charge, on_case,
                                     added(parts + R"(<measuring-point id="I4"/>)")};
    EXPECT_EQ(rule(edits), passes);
    EXPECT_EQ(witness_of(with(edits), "test-points", "loop:P1"), "set: I1 I2 I3 I4");
}

TEST(TestPoints, OneIsMissing) {
    const Edit point = added(parts + R"(<measuring-point id="I4"/>)");
    EXPECT_EQ(rule({on_b, on_charge, on_case, point}), fails);
    EXPECT_EQ(rule({on_a, on_charge, on_case, point}), fails);
    EXPECT_EQ(rule({on_a, on_b, on_case, point}), fails);
    EXPECT_EQ(rule({on_a, on_b, on_charge, point}), fails);
    EXPECT_EQ(rule({}), fails);
}

TEST(TestPoints, AThermometerTellsNoPressure) {
    EXPECT_EQ(rule({on_a, on_b, on_charge, on_case, added(parts + R"(<thermometer id="I4"/>)")}),
              fails);
}

TEST(TestPoints, NamesWhatLacksOne) {
    const CheckResult result = check(with({on_a, on_charge, added(parts)}), rules());
    const auto verdict =
        std::find_if(result.verdicts.begin(), result.verdicts.end(),
                     [](const Verdict& one) { return one.rule->id == "test-points"; });
    ASSERT_NE(verdict, result.verdicts.end());
    EXPECT_EQ(verdict->message, "the pressure cannot be told on: side B, a housing");
}

// Led straight to the reservoir, the drain's own line counts, and no other at the reservoir.
TEST(TestPoints, AtADrainOfItsOwn) {
    const Edit straight{"joins=\"R4.T M1.L P1.L K1.A\"", "joins=\"R4.T K1.A\""};
    const Edit room{R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/>)"};
    const Edit from_return{"joins=\"R1.T T1.R\"", "joins=\"R1.T T1.R I4.P\""};
    const std::string more = parts + R"(<measuring-point id="I4"/>)";
    EXPECT_EQ(rule({on_a, on_b, on_charge, straight, room,
                    added(more + R"(<line id="L9" joins="M1.L P1.L T1.E I4.P"/>)")}),
              passes);
    EXPECT_EQ(rule({on_a, on_b, on_charge, straight, room, from_return,
                    added(more + R"(<line id="L9" joins="M1.L P1.L T1.E"/>)")}),
              fails);
}

}  // namespace
}  // namespace loopwright
