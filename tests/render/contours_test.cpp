// Lines of equal height against planes and a cone, whose lines are known by plain geometry.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include <loopwright/render/contours.h>

namespace loopwright::testing {
namespace {

double length(const std::vector<Point>& line) {
    double sum = 0.0;
    for (std::size_t i = 1; i < line.size(); ++i)
        sum += std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
    return sum;
}

TEST(Contours, OfAPlaneAreStraight) {
    const auto lines = contours(
        11, 7, [](int c, int r) { return std::optional(2.0 * c + 3.0 * r); }, 17.3);
    ASSERT_EQ(lines.size(), 1U);
    for (const Point& one : lines[0]) EXPECT_NEAR(2.0 * one.x + 3.0 * one.y, 17.3, 1e-12);
    // From 2 x = 17.3 on the first row to where the last row, 6, or the first column meets it.
    EXPECT_NEAR(length(lines[0]), std::hypot(8.65, 17.3 / 3.0), 1e-9);
}

TEST(Contours, OfAConeAreCirclesThatClose) {
    constexpr double radius = 31.7;
    const auto lines = contours(
        101, 101, [](int c, int r) { return std::optional(std::hypot(c - 50.2, r - 49.7)); },
        radius);
    ASSERT_EQ(lines.size(), 1U);
    EXPECT_EQ(lines[0].front(), lines[0].back());
    EXPECT_NEAR(length(lines[0]), 2.0 * std::numbers::pi * radius, 0.1);
    for (const Point& one : lines[0])
        EXPECT_NEAR(std::hypot(one.x - 50.2, one.y - 49.7), radius, 0.01);
}

TEST(Contours, EndWhereThereIsNoFigure) {
    // A road across, with one node of the grid unknown: the four cells about it have no line.
    const auto figure = [](int c, int r) {
        return c == 5 && r == 2 ? std::nullopt : std::optional<double>(r);
    };
    const auto lines = contours(11, 5, figure, 2.4);
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_NEAR(length(lines[0]) + length(lines[1]), 8.0, 1e-12);
}

TEST(Contours, PassASaddleOnBothSides) {
    // x y about the origin: level c > 0 is a hyperbola with a branch in two opposite quarters.
    const auto lines = contours(
        21, 21, [](int c, int r) { return std::optional((c - 10.5) * (r - 10.5)); }, 0.5);
    ASSERT_EQ(lines.size(), 2U);
    for (const auto& line : lines)
        for (const Point& one : line) {
            EXPECT_GT((one.x - 10.5) * (one.y - 10.5), 0.0);
            EXPECT_EQ(one.x > 10.5, line.front().x > 10.5);
        }
}

TEST(Contours, AreNoneBeyondAllFigures) {
    const auto figure = [](int c, int r) { return std::optional<double>(c + r); };
    EXPECT_TRUE(contours(5, 5, figure, 8.5).empty());
    EXPECT_TRUE(contours(5, 5, figure, -0.5).empty());
    EXPECT_TRUE(contours(1, 5, figure, 2.0).empty());
}

}  // namespace
}  // namespace loopwright::testing
