// Counts of work in place of times: visits of nodes and edges grow with the circuit, not faster.
#include <algorithm>

#include <gtest/gtest.h>

#include <loopwright/parser/reader.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/tests/support/generated_circuit.h>

namespace loopwright {
namespace {

/// Rules that the generated circuits have nothing for.
constexpr std::string_view nothing_to_ask[] = {
    "filter-in-drain",
    "hose-safety",
    "suction-shut-off",
    "unused-definition",
};

CheckResult checked(std::string xml) {
    const ReadResult read = read_circuit_text(std::move(xml), "generated.xml");
    EXPECT_TRUE(read.circuit.has_value());
    return read.circuit ? check(*read.circuit, rules()) : CheckResult{};
}

TEST(Cost, TenTimesTheDrivesTakeAtMostTwelveTimesTheVisits) {
    const auto small = checked(testing::many_loops(1'000)).work;
    const auto large = checked(testing::many_loops(10'000)).work;
    EXPECT_GT(small, 1'000U);
    EXPECT_LE(large, 12 * small);
}

TEST(Cost, TenTimesTheChainTakesAtMostTwelveTimesTheVisits) {
    const auto small = checked(testing::long_chains(1'000)).work;
    const auto large = checked(testing::long_chains(10'000)).work;
    EXPECT_GT(small, 1'000U);
    EXPECT_LE(large, 12 * small);
}

TEST(Cost, GeneratedCircuitsAreSoundAndHaveEveryVerdict) {
    for (const auto& result :
         {checked(testing::many_loops(45)), checked(testing::long_chains(60))}) {
        EXPECT_FALSE(result.verdicts.empty());
        for (const Verdict& verdict : result.verdicts) {
            const bool asked = std::find(std::begin(nothing_to_ask), std::end(nothing_to_ask),
                                         verdict.rule->id) == std::end(nothing_to_ask);
            EXPECT_EQ(verdict.outcome, asked ? Outcome::pass : Outcome::not_applicable)
                << verdict.rule->id << ' ' << verdict.subject.id << ": " << verdict.message;
        }
    }
    EXPECT_EQ(checked(testing::many_loops(45)).structure.loops.size(), 3U);
    EXPECT_EQ(checked(testing::long_chains(60)).structure.loops.size(), 1U);
}

}  // namespace
}  // namespace loopwright
