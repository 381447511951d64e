// Hoses and their burst pressure. Four to one: SAE J517 as a trade article on hose assemblies gives
// it; its figures (20 000 psi of burst pressure for 5 000 psi): a course card on safety that cites
// SAE (published values H-01, H-03).
#include <gtest/gtest.h>

#include <cmath>

#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/judged.h>

namespace loopwright {
namespace {

using testing::added;
using testing::verdicts_of;
using testing::with;

constexpr std::string_view rule = "hose-safety";

/// The sound drive with a hose between two further ports.
Circuit with_hose(const std::string& data) {
    return with({added(R"(<junction id="J1"><port id="a"/><port id="b"/></junction>
                          <hose id="H1" joins="J1.a J1.b" )" +
                       data + "/>")});
}

std::string judged(const std::string& data) { return verdicts_of(with_hose(data), rule); }

TEST(HoseSafety, NoHose) {
    EXPECT_EQ(verdicts_of(with({}), rule), "hose-safety circuit not-applicable\n");
}

TEST(HoseSafety, FourTimesItsRating) {
    EXPECT_EQ(judged(R"(rating="5000 psi" burst-pressure="20000 psi")"), "hose-safety H1 pass\n");
    EXPECT_EQ(judged(R"(rating="5000 psi" burst-pressure="19900 psi")"),
              "hose-safety H1 fail warning\n");
    EXPECT_EQ(judged(R"(rating="420 bar" burst-pressure="168 MPa")"), "hose-safety H1 pass\n");
}

TEST(HoseSafety, DataNotGiven) {
    EXPECT_EQ(judged(R"(rating="420 bar")"), "hose-safety H1 not-applicable\n");
    EXPECT_EQ(judged(R"(burst-pressure="1680 bar")"),
              "hose-safety H1 inconclusive needs H1.rating\n");
}

TEST(HoseSafety, SaysHowFarOff) {
    const Circuit circuit = with_hose(R"(rating="400 bar" burst-pressure="1400 bar")");
    const CheckResult result = check(circuit, rules());
    for (const Verdict& verdict : result.verdicts) {
        if (verdict.rule->id != rule) continue;
        ASSERT_NE(verdict.figures, nullptr);
        EXPECT_DOUBLE_EQ(verdict.figures->measured.si, 3.5);
        EXPECT_DOUBLE_EQ(verdict.figures->required->si, 4.0);
        EXPECT_DOUBLE_EQ(verdict.figures->margin->si, -0.5);
        EXPECT_EQ(
            verdict.message,
            "hose H1 bursts at 1400 bar, 3.5 times the 400 bar that it is rated for; at least "
            "4 times are asked for");
        ASSERT_EQ(verdict.witness.steps.size(), 1U);
        EXPECT_EQ(circuit.lines[verdict.witness.steps[0].index].path, "H1");
        return;
    }
    FAIL() << "no verdict";
}

TEST(HoseSafety, AgainstAnotherThreshold) {
    const Circuit circuit = with_hose(R"(rating="400 bar" burst-pressure="1400 bar")");
    const RuleInfo& info = find_rule(rule)->info;
    Thresholds thresholds;
    thresholds.set(info, info.thresholds[0], 3.0);
    const Rule* const only[] = {find_rule(rule)};
    const CheckResult result = check(circuit, only, thresholds);
    ASSERT_EQ(result.verdicts.size(), 1U);
    EXPECT_EQ(result.verdicts[0].outcome, Outcome::pass);
    EXPECT_DOUBLE_EQ(result.verdicts[0].figures->required->si, 3.0);
}

}  // namespace
}  // namespace loopwright
