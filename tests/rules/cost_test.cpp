// Counts of work in place of times: visits of nodes and edges grow with the circuit, not faster.
#include <algorithm>

#include <gtest/gtest.h>

#include <loopwright/parser/reader.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/generated_circuit.h>

namespace loopwright {
namespace {

/// Rules that the generated circuits have nothing for.
// A line each, so that one more changes one line.
// clang-format off
constexpr std::string_view nothing_to_ask[] = {
    "filter-in-drain",
    "hose-safety",
    "control-supply",
    "displacement-sequence",
    "engine-braking",
    "load-holding",
    "start-interlock",
    "parking-brake",
    "towing-bypass",
    "accumulator-safety",
    "intermediate-side",
    "unequal-cylinder",
    "filter-reversal",
    "pressure-limiter",
    "pressure-intensification",
    "brake-release",
    "brake-torque",
    "suction-shut-off",
    "unused-definition",
};
// clang-format on

/// Instruments that they have not.
constexpr std::string_view notes[] = {
    "test-points",
};

/// The generated circuits have no duty.
bool lacks_duty(const Verdict& verdict) {
    return verdict.missing.size() == 1 && verdict.missing.front() == "duty";
}

/// Rules that a single drive has nothing for.
constexpr std::string_view of_several_drives[] = {
    "double-source",
};

template <std::size_t count>
bool holds(const std::string_view (&ids)[count], std::string_view id) {
    return std::find(std::begin(ids), std::end(ids), id) != std::end(ids);
}

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

/// Whether 65 536 combinations of positions end in verdicts, few of them judged.
void expect_decided(const CheckResult& result) {
    EXPECT_LE(result.work, 65'536U * 150U);
    for (const Verdict& verdict : result.verdicts)
        EXPECT_TRUE(verdict.outcome != Outcome::inconclusive || lacks_duty(verdict))
            << verdict.rule->id << ' ' << verdict.subject.id << ": " << verdict.message;
}

/// The states in which a rule fails the loop's pump.
std::span<const StateUse> fails_in(const CheckResult& result, std::string_view rule) {
    const auto failed =
        std::find_if(result.verdicts.begin(), result.verdicts.end(), [&](const Verdict& verdict) {
            return verdict.rule->id == rule && verdict.outcome == Outcome::fail &&
                   verdict.subject.id == "P0";
        });
    return failed == result.verdicts.end() ? std::span<const StateUse>() : failed->states;
}

// Those that differ between shut valves alone are judged once.
TEST(Cost, SixteenValvesInALoopAreDecided) {
    // Ids and positions' names are the circuit's own text.
    const Circuit circuit = testing::circuit_from(testing::valves_in_a_loop(16));
    const CheckResult result = check(circuit, rules());
    expect_decided(result);
    const auto blocked = fails_in(result, "blocked-pump");
    ASSERT_FALSE(blocked.empty());
    // Any one shut, in each state: told by valve, not by combination.
    EXPECT_LE(blocked.size(), 16U * 4U);
}

// The same side by side: one that is open does.
TEST(Cost, SixteenValvesSideBySideAreDecided) {
    // Ids and positions' names are the circuit's own text.
    const Circuit circuit = testing::circuit_from(testing::valves_side_by_side(16));
    const CheckResult result = check(circuit, rules());
    expect_decided(result);
    // Cut off from all relief valves only where all are shut: one combination of each state in
    // reverse.
    const auto unlimited = fails_in(result, "pressure-rating");
    ASSERT_EQ(unlimited.size(), 2U);
    for (const StateUse& use : unlimited) {
        EXPECT_EQ(use.positions.size(), 16U);
        for (const ValvePosition& stands : use.positions) EXPECT_EQ(stands.second, "shut");
    }
}

TEST(Cost, GeneratedCircuitsAreSoundAndHaveEveryVerdict) {
    for (const auto& result :
         {checked(testing::many_loops(45)), checked(testing::long_chains(60))}) {
        EXPECT_FALSE(result.verdicts.empty());
        for (const Verdict& verdict : result.verdicts) {
            if (holds(notes, verdict.rule->id)) {
                EXPECT_EQ(verdict.level, Level::note);
                continue;
            }
            if (lacks_duty(verdict)) {
                EXPECT_EQ(verdict.outcome, Outcome::inconclusive);
                EXPECT_EQ(verdict.subject.id, "circuit");
                continue;
            }
            const bool asked =
                !holds(nothing_to_ask, verdict.rule->id) &&
                (!holds(of_several_drives, verdict.rule->id) || result.structure.loops.size() > 1);
            EXPECT_EQ(verdict.outcome, asked ? Outcome::pass : Outcome::not_applicable)
                << verdict.rule->id << ' ' << verdict.subject.id << ": " << verdict.message;
        }
    }
    EXPECT_EQ(checked(testing::many_loops(45)).structure.loops.size(), 3U);
    EXPECT_EQ(checked(testing::long_chains(60)).structure.loops.size(), 1U);
}

}  // namespace
}  // namespace loopwright
