// The sound drive, whose oil is to be as clean as a code of ISO 4406 says. By common practice (no
// source) a ratio of 75 is needed at 10 um for 18/16/13; the trade takes 10 for 10 um and 75 for 15
// to 20 um for equal, and 2 for 10 um and 75 for 35 to 45 um.
#include <gtest/gtest.h>

#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::Edit;
using testing::verdicts_of;
using testing::with;
using testing::witness_of;

Edit filter(const std::string& figures) {
    return {R"(<filter id="F1" fineness="10 um")", R"(<filter id="F1" )" + figures};
}

Edit oil(const std::string& code) {
    return {R"(<engine id="E1"/>)",
            R"(<fluid grade="VG 46" cleanliness=")" + code + R"("/><engine id="E1"/>)"};
}

std::string rule(const std::string& figures, const std::string& code) {
    return verdicts_of(with({filter(figures), oil(code)}), "filter-fineness");
}

constexpr const char* passes = "filter-fineness F1 pass\n";
constexpr const char* fails = "filter-fineness F1 fail warning\n";

TEST(FilterFineness, AgainstTheCodeOfTheFluid) {
    EXPECT_EQ(rule(R"(fineness="10 um" beta="75")", "18/16/13"), passes);
    EXPECT_EQ(rule(R"(fineness="10 um" beta="75")", "17/15/12"), fails);
    EXPECT_EQ(rule(R"(fineness="10 um" beta="74")", "18/16/13"), fails);
    // Twice the size for two numbers.
    EXPECT_EQ(rule(R"(fineness="20 um" beta="75")", "20/18/15"), passes);
    EXPECT_EQ(rule(R"(fineness="21 um" beta="75")", "20/18/15"), fails);
    // The strictest of its numbers decides, and what is not counted does not.
    EXPECT_EQ(rule(R"(fineness="20 um" beta="75")", "20/18/13"), fails);
    EXPECT_EQ(rule(R"(fineness="20 um" beta="75")", "-/18/15"), passes);
}

/// The size at which a filter has a ratio of 75, um.
double size_at_75(const std::string& figures) {
    const Circuit circuit = with({filter(figures), oil("18/16/13")});
    const Rule* const only[] = {find_rule("filter-fineness")};
    const CheckResult result = check(circuit, only);
    const Figures* const known = result.verdicts.front().figures;
    return known == nullptr ? 0.0 : known->measured.si * 1e6;
}

TEST(FilterFineness, OtherRatiosMeetThePairsOfTheTrade) {
    const double of_ten = size_at_75(R"(fineness="10 um" beta="10")");
    EXPECT_GE(of_ten, 15.0);
    EXPECT_LE(of_ten, 20.0);
    const double of_two = size_at_75(R"(fineness="10 um" beta="2")");
    EXPECT_GE(of_two, 35.0);
    EXPECT_LE(of_two, 45.0);
    EXPECT_DOUBLE_EQ(size_at_75(R"(fineness="6 um" beta="75")"), 6.0);
}

TEST(FilterFineness, OneThatHoldsNothingBackIsTooCoarse) {
    EXPECT_EQ(rule(R"(fineness="10 um" beta="1")", "24/22/19"), fails);
}

TEST(FilterFineness, TheMostSensitiveComponentDecides) {
    const auto machines = [](const std::string& pump, const std::string& motor) {
        return with({filter(R"(fineness="10 um" beta="75")"),
                     {R"(<pump id="P1")", R"(<pump id="P1" cleanliness=")" + pump + '"'},
                     {R"(<pump id="P2")", R"(<pump id="P2" cleanliness="20/18/15")"},
                     {R"(<motor id="M1")", R"(<motor id="M1" cleanliness=")" + motor + '"'}});
    };
    EXPECT_EQ(verdicts_of(machines("20/18/15", "18/16/13"), "filter-fineness"), passes);
    EXPECT_EQ(verdicts_of(machines("20/18/15", "17/15/12"), "filter-fineness"), fails);
    EXPECT_EQ(witness_of(machines("20/18/15", "17/15/12"), "filter-fineness", "F1"), "set: F1 M1");
    EXPECT_EQ(witness_of(machines("16/14/11", "17/15/12"), "filter-fineness", "F1"), "set: F1 P1");
}

TEST(FilterFineness, AFinerOneBesideItKeepsTheOilClean) {
    EXPECT_EQ(verdicts_of(with({filter(R"(fineness="40 um" beta="75")"),
                                oil("18/16/13"),
                                {R"(joins="T1.S P2.S")", R"(joins="F2.B P2.S")"},
                                added(R"(<filter id="F2" fineness="10 um" beta="200"/>
                                         <line id="S2" joins="T1.S F2.A"/>)")}),
                          "filter-fineness"),
              "filter-fineness F1 pass\nfilter-fineness F2 pass\n");
}

TEST(FilterFineness, Missing) {
    EXPECT_EQ(rule(R"(fineness="10 um")", "18/16/13"),
              "filter-fineness F1 inconclusive needs F1.beta\n");
    EXPECT_EQ(rule("", "18/16/13"),
              "filter-fineness F1 inconclusive needs F1.fineness needs F1.beta\n");
    const Edit fine = filter(R"(fineness="10 um" beta="75")");
    const Edit one{R"(<motor id="M1")", R"(<motor id="M1" cleanliness="20/18/15")"};
    EXPECT_EQ(verdicts_of(with({fine, one}), "filter-fineness"),
              "filter-fineness F1 inconclusive needs P1.cleanliness needs P2.cleanliness\n");
    // Whatever the others need, it is too coarse for this one.
    const Edit clean{R"(<motor id="M1")", R"(<motor id="M1" cleanliness="16/14/11")"};
    EXPECT_EQ(verdicts_of(with({fine, clean}), "filter-fineness"), fails);
}

// ISO 4406: numbers never increase from left to right.
TEST(FilterFineness, WhatIsNoCodeIsNotUnderstood) {
    for (const char* text : {"13/16/18", "18/16", "18/16/13/10", "18/x/13", "-/-/-", "clean"})
        EXPECT_EQ(rule(R"(fineness="10 um" beta="75")", text),
                  "filter-fineness F1 inconclusive needs fluid.cleanliness\n")
            << text;
}

TEST(FilterFineness, NotAskedWithoutAFilter) {
    EXPECT_EQ(
        verdicts_of(with({{R"(<filter id="F1" fineness="10 um" clogging-indicator="visual"/>)",
                           R"(<junction id="F1"><port id="A"/><port id="B"/></junction>)"}}),
                    "filter-fineness"),
        "filter-fineness circuit not-applicable\n");
}

}  // namespace
}  // namespace loopwright
