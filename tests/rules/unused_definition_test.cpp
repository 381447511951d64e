// Waivers and command stages that are of no use. Ours to decide, so no source.
#include <gtest/gtest.h>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/rules/waivers.h>
#include <loopwright/tests/support/judged.h>

namespace loopwright {
namespace {

using testing::added;
using testing::verdicts_of;
using testing::with;

constexpr std::string_view rule = "unused-definition";

TEST(UnusedDefinition, NothingDefined) {
    EXPECT_EQ(verdicts_of(with({}), rule), "unused-definition circuit not-applicable\n");
}

TEST(UnusedDefinition, StageOfWhatIsFixed) {
    EXPECT_EQ(verdicts_of(with({added(R"(<command id="Z1"><stage of="P1" from="0" to="0.5"/>
                               <stage of="P2" from="0.5" to="1"/></command>)")}),
                          rule),
              "unused-definition P1 pass\nunused-definition P2 fail note\n");
    EXPECT_EQ(verdicts_of(
                  with({added(R"(<command id="Z1"><stage of="P1" from="0" to="0.5"/></command>)")}),
                  rule),
              "unused-definition P1 pass\n");
}

/// What waivers of a circuit without its second make-up check come to, by those rules.
std::string told(const std::string& waivers, std::string_view today,
                 std::span<const Rule* const> by = rules()) {
    const Circuit circuit =
        with({{R"(<check-valve id="C2"/>)", ""}, {" C2.A", ""}, {" C2.B", ""}, added(waivers)});
    CheckResult result = check(circuit, by);
    apply_waivers(circuit, by, *date_of(today), result);
    std::string text;
    for (const Verdict& verdict : result.verdicts) {
        if (verdict.waived != nullptr)
            text += fmt::format("{} waived: {}\n", verdict.rule->id, verdict.waived->reason);
        if (verdict.rule->id == rule)
            text += fmt::format("{}: {}\n", verdict.subject.id, name(verdict.outcome));
    }
    return text;
}

TEST(UnusedDefinition, WaiverHoldsToTheEndOfItsLastDay) {
    const std::string waiver =
        R"(<waiver rule="make-up-check" subject="side:P1.B" reason="a stand" by="owner" until="2026-12-31"/>)";
    EXPECT_EQ(told(waiver, "2026-12-31"),
              "make-up-check waived: a stand\nmake-up-check of side:P1.B: pass\n");
    EXPECT_EQ(told(waiver, "2027-01-01"), "make-up-check of side:P1.B: fail\n");
}

TEST(UnusedDefinition, WaiverThatMeetsNothing) {
    EXPECT_EQ(told(R"(<waiver rule="make-up-check" subject="side:P1.A" reason="r" by="owner"/>)",
                   "2026-12-31"),
              "make-up-check of side:P1.A: fail\n");
}

TEST(UnusedDefinition, WaiverOfARuleThatDidNotRun) {
    const Rule* const only[] = {find_rule(rule)};
    EXPECT_EQ(told(R"(<waiver rule="make-up-check" subject="side:P1.A" reason="r" by="owner"/>)",
                   "2026-12-31", only),
              "circuit: not-applicable\n");
}

}  // namespace
}  // namespace loopwright
