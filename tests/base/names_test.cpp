#include <set>
#include <stdexcept>
#include <string_view>
#include <type_traits>

#include <gtest/gtest.h>

#include <loopwright/base/finding.h>
#include <loopwright/base/quantity.h>

// Words of the enumerations, and what a quantity's type forbids.

namespace loopwright {
namespace {

bool kebab(std::string_view word) {
    if (word.empty() || word.front() == '-' || word.back() == '-') return false;
    return word.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string_view::npos;
}

TEST(Names, StatesReadBack) {
    std::set<std::string_view> words;
    for (std::size_t i = 0; i < state_count; ++i) {
        const auto state = static_cast<State>(i);
        EXPECT_TRUE(kebab(name(state))) << name(state);
        EXPECT_TRUE(words.insert(name(state)).second) << name(state);
        EXPECT_EQ(state_named(name(state)), state);
    }
    for (const std::string_view word : {"", "drive", "Neutral", "drive_forward", "neutral "}) {
        EXPECT_FALSE(state_named(word)) << word;
    }
}

// Levels are those of OASIS SARIF 2.1.0, section 3.27.10: none, note, warning, error.
TEST(Names, Levels) {
    EXPECT_EQ(name(Level::note), "note");
    EXPECT_EQ(name(Level::warning), "warning");
    EXPECT_EQ(name(Level::error), "error");
    EXPECT_LT(Level::note, Level::warning);
    EXPECT_LT(Level::warning, Level::error);
}

TEST(Names, OutcomesElementsShapes) {
    EXPECT_EQ(name(Outcome::not_applicable), "not-applicable");
    EXPECT_EQ(name(Outcome::pass), "pass");
    EXPECT_EQ(name(Outcome::inconclusive), "inconclusive");
    EXPECT_EQ(name(Outcome::fail), "fail");
    for (int i = 0; i <= static_cast<int>(ElementType::waiver); ++i) {
        EXPECT_TRUE(kebab(name(static_cast<ElementType>(i)))) << i;
    }
    for (int i = 0; i <= static_cast<int>(WitnessShape::set); ++i) {
        EXPECT_TRUE(kebab(name(static_cast<WitnessShape>(i)))) << i;
    }
}

TEST(Names, Dimensions) {
    std::set<std::string_view> words;
    for (std::size_t i = 0; i < dimension_count; ++i) {
        const auto dimension = static_cast<Dimension>(i);
        EXPECT_TRUE(words.insert(name(dimension)).second) << name(dimension);
        const bool vowel =
            std::string_view("aeiou").find(name(dimension).front()) != std::string_view::npos;
        EXPECT_EQ(phrase(dimension), (vowel ? "an " : "a ") + std::string(name(dimension)));
        EXPECT_FALSE(si_unit(dimension).empty());
    }
    EXPECT_THROW(name(static_cast<Dimension>(dimension_count)), std::logic_error);
}

template <typename A, typename B>
concept Adds = requires(A a, B b) {
    a + b;
};

TEST(Names, QuantitiesOfOneDimensionAddOnly) {
    static_assert(Adds<Pressure, Pressure>);
    static_assert(!Adds<Pressure, Flow>);
    static_assert(!Adds<Pressure, double>);
    static_assert(!std::is_convertible_v<double, Pressure>);
    static_assert(!std::is_convertible_v<Pressure, double>);
    static_assert(std::is_same_v<decltype(Pressure(1) / Pressure(2)), double>);
    EXPECT_EQ((Pressure(3e5) - Pressure(1e5)).si(), 2e5);
    EXPECT_EQ((2.0 * Flow(1.5)).si(), 3.0);
    EXPECT_LT(Speed(1.0), Speed(2.0));
    EXPECT_EQ(Length().si(), 0.0);
}

}  // namespace
}  // namespace loopwright
