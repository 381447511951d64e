#include <loopwright/base/keep.h>

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <gtest/gtest.h>

namespace loopwright {
namespace {

TEST(Keep, CopiesAreItsOwnAndStay) {
    Keep keep;
    std::vector<std::string_view> texts;
    texts.reserve(10'000);
    std::array<int, 3> numbers = {1, 2, 3};
    const std::span<const int> list = keep.list(std::span<const int>(numbers));
    numbers = {};
    for (int i = 0; i < 10'000; ++i) texts.push_back(keep.text("text ", std::to_string(i)));
    for (int i = 0; i < 10'000; ++i)
        ASSERT_EQ(texts[static_cast<std::size_t>(i)], "text " + std::to_string(i));
    EXPECT_EQ(std::vector<int>(list.begin(), list.end()), (std::vector<int>{1, 2, 3}));
}

TEST(Keep, EmptyStaysEmpty) {
    Keep keep;
    EXPECT_TRUE(keep.text("").empty());
    EXPECT_TRUE(keep.list(std::span<const int>()).empty());
}

// A short list of bytes between others must not put them where their type may not stand.
TEST(Keep, ListsStandWhereTheirTypeMay) {
    Keep keep;
    const std::array<double, 2> numbers = {0.5, 1.5};
    for (int i = 0; i < 16; ++i) {
        keep.text("x");
        const auto* const at = keep.list(std::span<const double>(numbers)).data();
        EXPECT_EQ(reinterpret_cast<std::uintptr_t>(at) % alignof(double), 0U);
    }
}

}  // namespace
}  // namespace loopwright
