#include <gtest/gtest.h>

#include <stdexcept>

#include <loopwright/render/symbols/symbols.h>
#include <loopwright/render/text_metrics.h>
#include <loopwright/tests/render/drawn_variant.h>

namespace loopwright::testing {
namespace {

std::vector<Attitude> all_attitudes() {
    std::vector<Attitude> all;
    for (const bool mirrored : {false, true})
        for (int quarter = 0; quarter < 4; ++quarter) all.push_back({quarter, mirrored});
    return all;
}

void expect_near(Point a, Point b) {
    EXPECT_NEAR(a.x, b.x, 1e-9);
    EXPECT_NEAR(a.y, b.y, 1e-9);
}

void expect_same(const Symbol& a, const Symbol& b) {
    ASSERT_EQ(a.primitives.size(), b.primitives.size());
    for (std::size_t i = 0; i < a.primitives.size(); ++i) {
        ASSERT_EQ(a.primitives[i].shape.index(), b.primitives[i].shape.index());
        if (const auto* line = std::get_if<Polyline>(&a.primitives[i].shape)) {
            const auto& other = std::get<Polyline>(b.primitives[i].shape).points;
            ASSERT_EQ(line->points.size(), other.size());
            for (std::size_t p = 0; p < other.size(); ++p) expect_near(line->points[p], other[p]);
        } else if (const auto* arc = std::get_if<Arc>(&a.primitives[i].shape)) {
            expect_near(arc->centre, std::get<Arc>(b.primitives[i].shape).centre);
        } else {
            expect_near(std::get<Text>(a.primitives[i].shape).at,
                        std::get<Text>(b.primitives[i].shape).at);
        }
    }
    ASSERT_EQ(a.ports.size(), b.ports.size());
    for (std::size_t i = 0; i < a.ports.size(); ++i) {
        expect_near(a.ports[i].at, b.ports[i].at);
        expect_near(a.ports[i].letter, b.ports[i].letter);
        EXPECT_EQ(a.ports[i].side, b.ports[i].side);
    }
    EXPECT_NEAR(a.body.left, b.body.left, 1e-9);
    EXPECT_NEAR(a.body.bottom, b.body.bottom, 1e-9);
}

TEST(Turned, FourQuartersAreNone) {
    for (const DrawnVariant& one : all_variants()) {
        Symbol symbol = one.symbol;
        for (int i = 0; i < 4; ++i) symbol = turned(symbol, {1, false});
        expect_same(symbol, one.symbol);
    }
}

TEST(Turned, TwoMirrorsAreNone) {
    for (const DrawnVariant& one : all_variants())
        expect_same(turned(turned(one.symbol, {0, true}), {0, true}), one.symbol);
}

TEST(Turned, StepsAddUp) {
    for (const DrawnVariant& one : all_variants()) {
        const Symbol once = turned(one.symbol, {1, false});
        expect_same(turned(once, {1, false}), turned(one.symbol, {2, false}));
        expect_same(turned(turned(one.symbol, {3, false}), {0, true}),
                    turned(one.symbol, {3, true}));
    }
}

// Clockwise: what looked up looks to the right. Mirrored after that: to the left.
TEST(Turned, PortsGoRound) {
    const Symbol check = drawn(R"(<check-valve id="C"/>)").symbol;
    const auto outlet = [&](Attitude attitude) { return turned(check, attitude).ports[1]; };
    EXPECT_EQ(outlet({0, false}).at, (Point{0, -2}));
    EXPECT_EQ(outlet({1, false}).at, (Point{2, 0}));
    EXPECT_EQ(outlet({1, false}).side, Side::right);
    EXPECT_EQ(outlet({2, false}).side, Side::down);
    EXPECT_EQ(outlet({3, false}).side, Side::left);
    EXPECT_EQ(outlet({1, true}).at, (Point{-2, 0}));
    EXPECT_EQ(outlet({1, true}).side, Side::left);
    EXPECT_EQ(outlet({0, true}).side, Side::up);
}

TEST(Turned, ShaftsGoWithTheirMachine) {
    const Symbol engine = drawn(R"(<engine id="E"/>)").symbol;
    const ShaftAnchor mirrored = turned(engine, {0, true}).shafts[0];
    EXPECT_EQ(mirrored.at, (Point{-3, 0}));
    EXPECT_EQ(mirrored.side, Side::left);
}

TEST(Turned, TextStaysInTheMiddleOfItsBox) {
    for (const char* xml : {R"(<engine id="E"/>)", R"(<load id="D"/>)"}) {
        const Symbol symbol = drawn(xml).symbol;
        const Text rest = std::get<Text>(symbol.primitives[1].shape);
        for (const Attitude attitude : all_attitudes()) {
            const Symbol there = turned(symbol, attitude);
            expect_near(std::get<Text>(there.primitives[1].shape).at, rest.at);
            EXPECT_TRUE(there.upright);
        }
    }
}

/// Arrows at 45 degrees of a machine or a relief valve.
std::vector<Polyline> adjusting(const Symbol& symbol) {
    std::vector<Polyline> out;
    for (const Polyline& arrow : arrows(symbol)) {
        const double dx = arrow.points[1].x - arrow.points[0].x;
        const double dy = arrow.points[1].y - arrow.points[0].y;
        if (std::abs(std::abs(dx) - std::abs(dy)) < 1e-9) out.push_back(arrow);
    }
    return out;
}

TEST(Turned, AdjustingArrowsKeepTheirSense) {
    int seen = 0;
    for (const DrawnVariant& one : all_variants()) {
        if (one.symbol.kind != "pump" && one.symbol.kind != "motor" &&
            one.symbol.kind != "relief-valve")
            continue;
        for (const Attitude attitude : all_attitudes()) {
            const Symbol there = turned(one.symbol, attitude);
            const auto found = adjusting(there);
            EXPECT_EQ(found.size(), adjusting(one.symbol).size());
            for (const Polyline& arrow : found) {
                ++seen;
                EXPECT_GT(arrow.points[1].x, arrow.points[0].x);
                EXPECT_LT(arrow.points[1].y, arrow.points[0].y);
            }
        }
    }
    EXPECT_GT(seen, 50);
}

TEST(Turned, AdjustingArrowStaysOverItsSpring) {
    const Symbol relief = drawn(R"(<relief-valve id="R"/>)").symbol;
    for (const Attitude attitude : all_attitudes()) {
        const Symbol there = turned(relief, attitude);
        const Polyline arrow = adjusting(there)[0];
        const Polyline spring = springs(there)[0];
        expect_near({(arrow.points[0].x + arrow.points[1].x) / 2,
                     (arrow.points[0].y + arrow.points[1].y) / 2},
                    {(spring.points.front().x + spring.points.back().x) / 2,
                     (spring.points.front().y + spring.points.back().y) / 2});
    }
}

TEST(Turned, ControlStaysAtTheTailOfTheArrow) {
    const Symbol pump =
        drawn(R"(<pump id="P" flow-directions="2" variable="yes" control="hydraulic"/>)").symbol;
    for (const Attitude attitude : all_attitudes()) {
        const Symbol there = turned(pump, attitude);
        const Point tail = adjusting(there)[0].points[0];
        expect_near(tail, {-3, 3});
        EXPECT_EQ(there.body.left, -6.0);
        EXPECT_EQ(oil_triangles(there, 1.0)[0].points[0], (Point{-3, 3}));
    }
}

TEST(Turned, ArcsKeepTheirPlaces) {
    constexpr double quarter = 1.5707963267948966;
    Symbol symbol{.kind = "orifice"};
    symbol.primitives.push_back(
        {Arc{.centre = {1, 0}, .radius = 2, .from = 0.2, .to = quarter, .full = false}, {}});
    const auto end = [](const Arc& arc, double angle) {
        return Point{arc.centre.x + arc.radius * std::cos(angle),
                     arc.centre.y + arc.radius * std::sin(angle)};
    };
    const Arc rest = std::get<Arc>(symbol.primitives[0].shape);
    const Point from = end(rest, rest.from);
    const Point to = end(rest, rest.to);
    const Arc once = std::get<Arc>(turned(symbol, {1, false}).primitives[0].shape);
    expect_near(end(once, once.from), {-from.y, from.x});
    expect_near(end(once, once.to), {-to.y, to.x});
    // Clockwise still, so the ends change places in the mirror.
    const Arc mirrored = std::get<Arc>(turned(symbol, {0, true}).primitives[0].shape);
    expect_near(end(mirrored, mirrored.from), {-to.x, to.y});
    expect_near(end(mirrored, mirrored.to), {-from.x, from.y});
}

// No stroke of a symbol passes through a letter, and no letter through another, in any attitude
// that a drawing uses: what is upright is never turned, and machines keep their shaft level.
TEST(Turned, LettersStandClear) {
    for (const DrawnVariant& one : all_variants())
        for (const Attitude attitude : all_attitudes()) {
            if (one.symbol.upright && attitude.quarter_turns != 0) continue;
            if (!one.symbol.shafts.empty() && attitude.quarter_turns % 2 != 0) continue;
            const Symbol there = turned(one.symbol, attitude);
            std::vector<Box> letters;
            for (const PortAnchor& port : there.ports) {
                const double half = text_width(one.circuit.ports[port.port].letter, 2.5) / 2.5 / 2;
                const Box box{port.letter.x - half, port.letter.y - 1.0, port.letter.x + half,
                              port.letter.y};
                for (const Box& other : letters)
                    EXPECT_FALSE(box.left < other.right && other.left < box.right &&
                                 box.top < other.bottom && other.top < box.bottom)
                        << one.circuit.port_name(port.port);
                letters.push_back(box);
                const auto holds = [&box](double x, double y) {
                    return x > box.left && x < box.right && y > box.top && y < box.bottom;
                };
                for (const Polyline& line : polylines(there))
                    for (std::size_t i = 0; i + (line.closed ? 0 : 1) < line.points.size(); ++i) {
                        const Point a = line.points[i];
                        const Point b = line.points[(i + 1) % line.points.size()];
                        for (double t = 0.0; t <= 1.0; t += 1.0 / 256)
                            ASSERT_FALSE(holds(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t))
                                << one.symbol.kind << ' ' << one.circuit.port_name(port.port) << ' '
                                << attitude.quarter_turns << attitude.mirrored;
                    }
                for (const Arc& arc : arcs(there))
                    for (double angle = 0.0; angle < 6.2832; angle += 0.02)
                        ASSERT_FALSE(holds(arc.centre.x + arc.radius * std::cos(angle),
                                           arc.centre.y + arc.radius * std::sin(angle)))
                            << one.symbol.kind << ' ' << one.circuit.port_name(port.port);
            }
        }
}

TEST(Turned, OnlyQuartersZeroToThree) {
    const Symbol symbol = drawn(R"(<orifice id="O"/>)").symbol;
    EXPECT_THROW(turned(symbol, {4, false}), std::logic_error);
    EXPECT_THROW(turned(symbol, {-1, false}), std::logic_error);
}

}  // namespace
}  // namespace loopwright::testing
