// Which combinations of valve positions share an outcome, told as few as there are. What is
// expected follows by hand.
#include <string>

#include <gtest/gtest.h>

#include <loopwright/rules/combinations.h>

namespace loopwright {
namespace {

/// Each set in brackets, "valve=position" apart by blanks.
std::string told(const Combinations& combinations, std::span<const Index> sizes,
                 std::span<const std::uint32_t> judging = {}) {
    std::string text;
    combinations.for_each_sharing(
        sizes, judging, [&](std::span<const Combinations::Setting> settings) {
            text += '[';
            for (const auto& [valve, position] : settings)
                text += (text.back() == '[' ? "" : " ") + std::to_string(valve) + '=' +
                        std::to_string(position);
            text += ']';
        });
    return text;
}

TEST(Combinations, FewAreToldInFull) {
    const Index sizes[] = {2, 3};
    Combinations combinations;
    for (std::uint32_t c = 0; c < 6; ++c) combinations.note(c, c % 2 == 1);
    EXPECT_FALSE(combinations.all_share());
    EXPECT_EQ(told(combinations, sizes), "[0=1 1=0][0=1 1=1][0=1 1=2]");
    combinations.forget_shares();
    EXPECT_EQ(told(combinations, sizes), "");
}

// Nine valves with two positions each: 512 combinations.
TEST(Combinations, ManyAreToldByWhatTheyHangOn) {
    const Index sizes[] = {2, 2, 2, 2, 2, 2, 2, 2, 2};
    Combinations one;
    Combinations any_of_two;
    for (std::uint32_t c = 0; c < 512; ++c) {
        one.note(c, (c & 4U) != 0);
        any_of_two.note(c, (c & 4U) != 0 || (c & 8U) != 0);
    }
    EXPECT_EQ(told(one, sizes), "[2=1]");
    EXPECT_EQ(told(any_of_two, sizes), "[2=1 3=0][3=1]");
}

TEST(Combinations, JudgedByOthers) {
    const Index sizes[] = {2, 2};
    const std::uint32_t judging[] = {0, 1, 2, 1};
    Combinations combinations;
    for (const std::uint32_t c : {0U, 1U, 2U}) combinations.note(c, c == 1);
    EXPECT_EQ(told(combinations, sizes, judging), "[0=1 1=0][0=1 1=1]");
}

}  // namespace
}  // namespace loopwright
