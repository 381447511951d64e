// A drain that narrows: by Hagen and Poiseuille the loss goes with d^-4. At 50 degC the drain's
// 43.2 L/min lose some 0.15 bar over 2 m of 20 mm and 1 m behind the cooler.
#include <gtest/gtest.h>

#include <loopwright/tests/support/at_work.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::Edit;
using testing::judged_at_work;

constexpr const char* drain = R"(R4.T" function="drain" bore="20 mm" length="2 m")";

std::string drained_by(const std::string& line) {
    return judged_at_work({{drain, R"(R4.T" function="drain")" + line}}, "case-pressure");
}

TEST(CasePressure, Borne) {
    const std::string verdicts = judged_at_work({}, "case-pressure");
    EXPECT_EQ(verdicts.find("fail"), std::string::npos) << verdicts;
    EXPECT_EQ(verdicts.find("inconclusive"), std::string::npos) << verdicts;
    EXPECT_EQ(testing::witness_of(testing::at_work({}), "case-pressure", "M1"), "set: M1>L");
}

// L2 carries all that leaves the housings. Through 6 mm it loses more than 3 bar.
TEST(CasePressure, TooMuch) {
    EXPECT_EQ(judged_at_work({{R"(T1.D" function="drain" bore="20 mm" length="1 m")",
                               R"(T1.D" function="drain" bore="6 mm" length="1 m")"}},
                             "case-pressure"),
              "case-pressure P1 fail error at work\ncase-pressure M1 fail error at work\n");
}

// Without flushing only the leakage is drained: cold, 0.05 L/min/bar at the charge pressure on both
// sides, some 2.3 L/min, lose some 6 bar in 8 m of 10 mm (Hagen and Poiseuille, VG 46 at 0 degC
// some 0.5 Pa.s); hot the some 10 L/min lose 1.4 bar.
TEST(CasePressure, AtTheColdStartThePeakCounts) {
    const Edit leaks{R"(max-torque="500 N.m" through-drive-torque="200 N.m" slip-coefficient="0")",
                     R"(leakage-coefficient="0.05 L/min/bar")"};
    const Edit narrow{R"(T1.D" function="drain" bore="20 mm" length="1 m")",
                      R"(T1.D" function="drain" bore="10 mm" length="8 m")"};
    const Edit no_flushing{R"(R4" setting="18 bar")", R"(R4" setting="40 bar")"};
    EXPECT_EQ(judged_at_work({leaks, narrow, no_flushing}, "case-pressure"),
              "case-pressure P1 fail error at cold-start\n"
              "case-pressure M1 fail error at cold-start\n");
    const Edit peak{
        R"(case-pressure="3 bar" low-side-pressure="12 bar")",
        R"(case-pressure="3 bar" peak-case-pressure="9 bar" low-side-pressure="12 bar")"};
    EXPECT_EQ(judged_at_work({leaks, narrow, no_flushing, peak}, "case-pressure"),
              "case-pressure P1 pass at cold-start\n"
              "case-pressure M1 fail error at cold-start\n");
}

TEST(CasePressure, Missing) {
    EXPECT_EQ(drained_by(""),
              "case-pressure P1 inconclusive at work needs L1.bore needs L1.length\n"
              "case-pressure M1 inconclusive at work needs L1.bore needs L1.length\n");
    EXPECT_EQ(judged_at_work({{R"(case-pressure="3 bar" low-side-pressure="10 bar")",
                               R"(low-side-pressure="10 bar")"}},
                             "case-pressure"),
              "case-pressure P1 pass at work\n"
              "case-pressure M1 inconclusive at work needs M1.case-pressure\n");
    EXPECT_EQ(judged_at_work({{R"(bypass="1.5 bar" flow="60 L/min" pressure-drop="0.5 bar")",
                               R"(bypass="1.5 bar" flow="60 L/min")"}},
                             "case-pressure"),
              "case-pressure P1 inconclusive at work needs K1.pressure-drop\n"
              "case-pressure M1 inconclusive at work needs K1.pressure-drop\n");
}

TEST(CasePressure, NotAskedOfMachinesDrainedInside) {
    EXPECT_EQ(judged_at_work({{R"(flow-directions="2" control="hydraulic" drain="external")",
                               R"(flow-directions="2" control="hydraulic")"},
                              {R"(displacement="80 cm3/rev" drain="external")",
                               R"(displacement="80 cm3/rev")"},
                              {"M1.L K1.A P1.L R4.T", "R4.T K1.A"}},
                             "case-pressure"),
              "case-pressure circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
