// How rules about figures at work are asked: once for each duty point, the worst deciding; what a
// missing duty or an unsolved point leaves open.
#include <algorithm>

#include <gtest/gtest.h>

#include <loopwright/render/writers/report.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/circuit_text.h>

namespace loopwright {
namespace {

using testing::at_work;
using testing::Edit;
using testing::judged_at_work;

const Edit no_duty{
    R"(<duty altitude="500 m" ambient="25 degC" cold-start="0 degC">
<point id="work" speed="2400 rpm" travel="100 %" torque="200 N.m" oil="50 degC" share="100 %"/>
</duty>)",
    ""};
/// A further point behind "work".
Edit another(const std::string& point) { return {"</duty>", point + "</duty>"}; }

std::size_t count_of(const std::string& text, std::string_view word) {
    std::size_t count = 0;
    for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) ++count;
    return count;
}

std::string report_of(const Circuit& circuit) {
    const CheckResult result = check(circuit, rules());
    return report_text(circuit, result.structure, result.verdicts, {});
}

/// Rules that it has nothing for: its motor is fixed, and its load does not drive.
constexpr std::string_view nothing_to_ask[] = {"displacement-sequence", "engine-braking"};

TEST(AtWork, TheDriveAtWorkIsSound) {
    const Circuit circuit = at_work({});
    std::vector<const Rule*> at_work_rules;
    for (const Rule* rule : rules())
        if (rule->judge_point != nullptr && rule->judge == nullptr) at_work_rules.push_back(rule);
    for (const Verdict& verdict : check(circuit, at_work_rules).verdicts)
        EXPECT_EQ(verdict.outcome, std::find(std::begin(nothing_to_ask), std::end(nothing_to_ask),
                                             verdict.rule->id) == std::end(nothing_to_ask)
                                       ? Outcome::pass
                                       : Outcome::not_applicable)
            << verdict.rule->id << ' ' << verdict.subject.id << ' ' << verdict.message;
}

// 2400 rpm x 71/80 is 2130 rpm.
TEST(AtWork, TheWorstPointDecides) {
    const Edit limit{R"(max-speed="4500 rpm")", R"(max-speed="2000 rpm")"};
    const std::string others = "motor-overspeed P1 pass at work\nmotor-overspeed P2 pass at work\n";
    EXPECT_EQ(judged_at_work({limit}, "motor-overspeed"),
              others + "motor-overspeed M1 fail error at work\n");
    const Edit slower = another(
        R"(<point id="slow" speed="2400 rpm" travel="50 %" torque="200 N.m" oil="50 degC"/>)");
    EXPECT_EQ(judged_at_work({limit, slower}, "motor-overspeed"),
              others + "motor-overspeed M1 fail error at work\n");
    const Edit faster = another(
        R"(<point id="fast" speed="2500 rpm" travel="100 %" torque="200 N.m" oil="50 degC"/>)");
    EXPECT_EQ(judged_at_work({limit, faster}, "motor-overspeed"),
              "motor-overspeed P1 pass at fast\nmotor-overspeed P2 pass at fast\n"
              "motor-overspeed M1 fail error at fast\n");
}

TEST(AtWork, WithoutADutyNothingIsKnown) {
    EXPECT_EQ(judged_at_work({no_duty}, "motor-overspeed"),
              "motor-overspeed circuit inconclusive needs duty\n");
    EXPECT_EQ(judged_at_work({no_duty}, "line-velocity"),
              "line-velocity circuit inconclusive needs duty\n");
}

// A rule that the circuit has nothing for needs no duty.
TEST(AtWork, WithoutSubjectsNoDutyIsMissed) {
    const Circuit circuit =
        testing::circuit_with(R"(<reservoir id="T1"><port id="S"/></reservoir>)");
    EXPECT_EQ(testing::verdicts_of(circuit, "motor-overspeed"),
              "motor-overspeed circuit not-applicable\n");
}

TEST(AtWork, AMissingDutyIsToldOnce) {
    const std::string text = report_of(at_work({no_duty}));
    EXPECT_EQ(count_of(text, "there is no duty"), 1U);
    EXPECT_EQ(count_of(text, "missing  duty"), 1U);
    EXPECT_NE(text.find("rules    charge-flow, charge-pressure, low-side-pressure"),
              std::string::npos)
        << text;
}

const Edit no_setting{R"(<relief-valve id="R1" setting="24 bar"/>)", R"(<relief-valve id="R1"/>)"};

TEST(AtWork, APointWithoutASolutionLeavesAllOpen) {
    EXPECT_EQ(judged_at_work({no_setting}, "motor-overspeed"),
              "motor-overspeed circuit inconclusive at work needs R1.setting\n");
    const std::string text = report_of(at_work({no_setting}));
    EXPECT_EQ(count_of(text, "the point work is not solved"), 1U) << text;
}

// What fails at one point stays a fail; what passes there may still fail at the other.
TEST(AtWork, APointWithoutASolutionLeavesPassesOpen) {
    const Edit limit{R"(max-speed="4500 rpm")", R"(max-speed="2000 rpm")"};
    const Edit unknown =
        another(R"(<point id="late" speed="2400 rpm" travel="100 %" oil="50 degC"/>)");
    EXPECT_EQ(judged_at_work({limit, unknown}, "motor-overspeed"),
              "motor-overspeed P1 inconclusive at late needs D1.torque\n"
              "motor-overspeed P2 inconclusive at late needs D1.torque\n"
              "motor-overspeed M1 fail error at work\n");
}

/// C2 turned round: nothing makes up what leaks out of side B, low while the motor drives.
std::vector<Edit> not_made_up() {
    return {{"joins=\"F1.B C1.A C2.A\"", "joins=\"F1.B C1.A C2.B\""},
            {"R3.P R2.T C2.B V1.B", "R3.P R2.T C2.A V1.B"},
            {R"(max-torque="500 N.m" through-drive-torque="200 N.m" slip-coefficient="0")",
             R"(max-torque="500 N.m" through-drive-torque="200 N.m" slip-coefficient="5e-9")"}};
}

// Oil bears no pull, so that no figure of such a point is a machine's.
TEST(AtWork, WhereOilWouldStandBelowVacuumWhatDrawsThereFails) {
    EXPECT_EQ(judged_at_work(not_made_up(), "low-side-pressure"),
              "low-side-pressure P1 fail error at work\n"
              "low-side-pressure M1 fail error at work\n");
    EXPECT_EQ(judged_at_work(not_made_up(), "motor-overspeed"),
              "motor-overspeed circuit inconclusive at work\n");
    const Figures figures = testing::figures_at_work(not_made_up(), "low-side-pressure", "P1");
    EXPECT_DOUBLE_EQ(figures.measured.si, -101325.0);  // of the standard atmosphere, ISO 2533
    const std::string text = report_of(at_work(not_made_up()));
    EXPECT_EQ(count_of(text, "the point work does not stand"), 1U) << text;
    EXPECT_NE(text.find("follows  from make-up-check of side:P1.B"), std::string::npos) << text;
}

// Where it is the inlet of the charge pump that is drawn empty, the low sides are not asked.
TEST(AtWork, OnlyWhatDrawsThereFails) {
    const Edit thin{R"( bore="38 mm" length="0.8 m")", R"( bore="20 mm" length="4 m")"};
    EXPECT_EQ(judged_at_work({thin}, "suction-pressure"),
              "suction-pressure P2 fail error at cold-start\n");
    EXPECT_EQ(judged_at_work({thin}, "case-pressure"),
              "case-pressure P1 inconclusive at cold-start\n"
              "case-pressure M1 inconclusive at cold-start\n");
}

TEST(AtWork, TheColdStartIsMissed) {
    const Edit no_cold_start{R"( cold-start="0 degC")", ""};
    EXPECT_EQ(judged_at_work({no_cold_start}, "case-pressure"),
              "case-pressure P1 inconclusive needs duty.cold-start\n"
              "case-pressure M1 inconclusive needs duty.cold-start\n");
    EXPECT_EQ(judged_at_work({no_cold_start}, "motor-overspeed"),
              "motor-overspeed P1 pass at work\nmotor-overspeed P2 pass at work\n"
              "motor-overspeed M1 pass at work\n");
}

}  // namespace
}  // namespace loopwright
