// What turns, against the recipes of the drawing-standard note (EN2, SH5 to SH7, MO4, PM1, PM2,
// MP1, PC2, PC6, PC7, CY1 to CY4; sizes there are from memory of ISO 1219-1:2012).

#include <gtest/gtest.h>

#include <algorithm>

#include <fmt/format.h>

#include <loopwright/tests/render/drawn_variant.h>

namespace loopwright::testing {
namespace {

/// Boxes as left, top, right, bottom.
std::vector<Box> boxes(const Symbol& symbol) {
    std::vector<Box> out;
    for (const Polyline& line : polylines(symbol))
        if (line.closed && line.points.size() == 4 && line.points[0].y == line.points[1].y)
            out.push_back({line.points[0].x, line.points[0].y, line.points[2].x, line.points[2].y});
    return out;
}

bool has_box(const Symbol& symbol, double left, double top, double right, double bottom) {
    const auto all = boxes(symbol);
    return std::any_of(all.begin(), all.end(), [&](const Box& box) {
        return box.left == left && box.top == top && box.right == right && box.bottom == bottom;
    });
}

bool has_line(const Symbol& symbol, Point from, Point to) {
    const auto lines = polylines(symbol);
    return std::any_of(lines.begin(), lines.end(), [&](const Polyline& line) {
        return line.points == std::vector<Point>{from, to};
    });
}

std::vector<std::string> texts(const Symbol& symbol) {
    std::vector<std::string> out;
    for (const Primitive& primitive : symbol.primitives)
        if (const auto* text = std::get_if<Text>(&primitive.shape)) out.push_back(text->text);
    return out;
}

// EN2: a circle; the square of EN3 is what is not electric.
TEST(MachineSymbols, ElectricMotorIsACircleWithM) {
    const DrawnVariant one = drawn(R"(<electric-motor id="E"/>)");
    ASSERT_EQ(arcs(one.symbol).size(), 1u);
    EXPECT_EQ(arcs(one.symbol)[0].radius, 3.0);
    EXPECT_EQ(texts(one.symbol), std::vector<std::string>{"M"});
    EXPECT_TRUE(boxes(one.symbol).empty());
    EXPECT_TRUE(oil_triangles(one.symbol, 2.0).empty()) << "that would be a hydraulic one";
}

// SH7: the spring below the piston pushes the bars on, the pressure comes in above the piston.
// A port in the spring's chamber would draw a brake that pressure applies.
TEST(MachineSymbols, SpringAppliedBrake) {
    const DrawnVariant one = drawn(R"(<brake id="B"/>)");
    EXPECT_TRUE(has_box(one.symbol, -1.5, 1.5, 1.5, 4.5));
    EXPECT_TRUE(has_line(one.symbol, {-1.5, 2.5}, {1.5, 2.5})) << "the piston";
    ASSERT_EQ(springs(one.symbol).size(), 1u);
    EXPECT_EQ(springs(one.symbol)[0].points.front(), (Point{0, 2.5}));
    EXPECT_EQ(springs(one.symbol)[0].points.back(), (Point{0, 4.5}));
    EXPECT_EQ(one.anchor("Z").at, (Point{-4, 2}));
    EXPECT_TRUE(has_line(one.symbol, {-4, 2}, {-1.5, 2}));
    for (const double x : {-0.25, 0.25}) {
        EXPECT_TRUE(has_line(one.symbol, {x, -1.5}, {x, -0.5})) << "bars at the shaft";
        EXPECT_TRUE(has_line(one.symbol, {x, 0.5}, {x, 2.5})) << "from the shaft to the piston";
    }
    EXPECT_EQ(one.symbol.shafts.size(), 2u) << "the shaft runs through";
}

TEST(MachineSymbols, PressureAppliedBrakeStandsOff) {
    const DrawnVariant one = drawn(R"(<brake id="B" applied="pressure"/>)");
    EXPECT_TRUE(springs(one.symbol).empty());
    EXPECT_EQ(one.anchor("Z").at, (Point{-4, 4}));
    EXPECT_TRUE(has_line(one.symbol, {-1.5, 3.5}, {1.5, 3.5})) << "the port below the piston";
    for (const double x : {-0.25, 0.25})
        EXPECT_FALSE(has_line(one.symbol, {x, 0.5}, {x, 3.5})) << "nothing pushes the bars on";
}

/// Between the bars of a clutch.
double gap(const Symbol& symbol) {
    std::vector<double> bars;
    for (const Polyline& line : polylines(symbol))
        if (line.points.size() == 2 && line.points[0].x == line.points[1].x &&
            line.points[0].y == -1.0 && line.points[1].y == 1.0)
            bars.push_back(line.points[0].x);
    return bars.size() == 2 ? bars[1] - bars[0] : -1.0;
}

TEST(MachineSymbols, ClutchIsDrawnAsItStands) {
    for (const char* actuation : {"manual", "hydraulic", "electric"}) {
        const auto stands = [&](const char* engaged) {
            return drawn(
                fmt::format(R"(<clutch id="G" actuation="{}" engaged="{}"/>)", actuation, engaged));
        };
        EXPECT_EQ(gap(stands("yes").symbol), 0.5);
        EXPECT_EQ(gap(stands("no").symbol), 1.5);
        for (const Polyline& line : polylines(stands("no").symbol)) {
            const bool across = line.points.front().x < 0 && line.points.back().x > 0 &&
                                std::abs(line.points.front().y) < 0.5;
            EXPECT_FALSE(across) << "no shaft through a parted clutch";
        }
    }
    EXPECT_EQ(drawn(R"(<clutch id="G" actuation="hydraulic"/>)").anchor("Z").at, (Point{0, 5}));
}

// SH5.
TEST(MachineSymbols, GearboxIsABoxWithItsRatio) {
    const DrawnVariant one = drawn(R"(<gearbox id="G" ratio="3.5"/>)");
    EXPECT_TRUE(has_box(one.symbol, -2, -2, 2, 2));
    EXPECT_EQ(texts(one.symbol), (std::vector<std::string>{"i = 3.5", "in"}));
    EXPECT_EQ(texts(drawn(R"(<gearbox id="G"/>)").symbol), (std::vector<std::string>{"i", "in"}));
    // What does not fit the box stands beside it alone.
    EXPECT_EQ(texts(drawn(R"(<gearbox id="G" ratio="124.75"/>)").symbol),
              (std::vector<std::string>{"i", "in"}));
}

TEST(MachineSymbols, NamedEndsAreWhereTheirShaftsAre) {
    for (const char* kind : {"gearbox", "clutch"}) {
        const DrawnVariant one = drawn(fmt::format(
            R"(<{} id="G"/><engine id="E"/><load id="D"/>
               <shaft id="W1" joins="E G.in"/><shaft id="W2" joins="G.out D"/>)",
            kind));
        ASSERT_EQ(one.symbol.shafts.size(), 2u);
        EXPECT_EQ(one.symbol.shafts[0].at, (Point{-2, 0}));
        EXPECT_EQ(shaft_at(one.component(), one.symbol.shafts[0]), 0u);
        EXPECT_EQ(one.symbol.shafts[1].at, (Point{2, 0}));
        EXPECT_EQ(shaft_at(one.component(), one.symbol.shafts[1]), 1u);
        const Symbol mirrored = turned(one.symbol, {.mirrored = true});
        EXPECT_EQ(mirrored.shafts[0].at, (Point{2, 0}));
        EXPECT_EQ(shaft_at(one.component(), mirrored.shafts[0]), 0u);
    }
}

// PM1, PM2: the unit over centre is drawn as a pump, with its name beside it; with one flow
// direction the triangle at A points in and the one at B out.
TEST(MachineSymbols, PumpMotor) {
    const DrawnVariant both = drawn(R"(<pump-motor id="U" variable="yes"/>)");
    const DrawnVariant pump = drawn(R"(<pump id="U" variable="yes" flow-directions="2"/>)");
    const auto same = [](const std::vector<Polyline>& a, const std::vector<Polyline>& b) {
        return std::equal(
            a.begin(), a.end(), b.begin(), b.end(),
            [](const Polyline& x, const Polyline& y) { return x.points == y.points; });
    };
    EXPECT_TRUE(same(polylines(both.symbol), polylines(pump.symbol)));
    const auto lines = label_lines(both.circuit, both.component());
    EXPECT_NE(std::find(lines.begin(), lines.end(), "pump/motor"), lines.end());
    const auto triangles =
        oil_triangles(drawn(R"(<pump-motor id="U" flow-directions="1"/>)").symbol, 2.0);
    ASSERT_EQ(triangles.size(), 2u);
    EXPECT_NEAR(triangles[0].points[0].y, -1.10, 0.005) << "into the circle, from A above";
    EXPECT_EQ(triangles[1].points[0], (Point{0, 3})) << "out of it, at B below";
}

// MP1: a pump's circle with a lever, and no shaft.
TEST(MachineSymbols, HandPump) {
    const DrawnVariant one = drawn(R"(<hand-pump id="P"/>)");
    ASSERT_EQ(oil_triangles(one.symbol, 2.0).size(), 1u);
    EXPECT_EQ(oil_triangles(one.symbol, 2.0)[0].points[0], (Point{0, -3})) << "out at P";
    EXPECT_EQ(one.anchor("P").side, Side::up);
    ASSERT_EQ(arcs(one.symbol).size(), 2u) << "circle and knob";
    EXPECT_TRUE(one.symbol.shafts.empty());
}

// MO4: half a circle of radius 3, triangles inwards, inside it.
TEST(MachineSymbols, SemiRotaryActuator) {
    const DrawnVariant one = drawn(R"(<semi-rotary-actuator id="A"/>)");
    ASSERT_EQ(arcs(one.symbol).size(), 1u);
    EXPECT_FALSE(arcs(one.symbol)[0].full);
    EXPECT_EQ(arcs(one.symbol)[0].radius, 3.0);
    EXPECT_NEAR(arcs(one.symbol)[0].to - arcs(one.symbol)[0].from, 3.14159265, 1e-8);
    EXPECT_TRUE(has_line(one.symbol, {0, -3}, {0, 3})) << "the flat side";
    const auto triangles = oil_triangles(one.symbol, 1.0);
    ASSERT_EQ(triangles.size(), 2u);
    for (const Polyline& triangle : triangles) {
        for (const Point& corner : triangle.points) EXPECT_LT(std::hypot(corner.x, corner.y), 3.0);
        EXPECT_LT(std::abs(triangle.points[0].y), std::abs(triangle.points[1].y)) << "inwards";
    }
    for (const char* letter : {"A", "B"}) {
        const PortAnchor anchor = one.anchor(letter);
        const auto lines = polylines(one.symbol);
        EXPECT_TRUE(std::any_of(lines.begin(), lines.end(), [&](const Polyline& line) {
            return line.points[0] == anchor.at &&
                   std::abs(std::hypot(line.points[1].x, line.points[1].y) - 3.0) < 1e-9;
        })) << "the stub ends on the arc";
    }
}

// CY1 to CY4: a body of 9 by 3, the piston a third of the way; about the rod's axis here.
TEST(MachineSymbols, Cylinders) {
    const DrawnVariant one = drawn(R"(<cylinder id="A"/>)");
    EXPECT_TRUE(has_box(one.symbol, -4.5, -1.5, 4.5, 1.5));
    EXPECT_EQ(one.anchor("A").at.x, -4.0);
    EXPECT_EQ(one.anchor("B").at.x, 4.0);
    EXPECT_EQ(one.symbol.shafts.size(), 1u);
    for (const double y : {-0.25, 0.25}) {
        EXPECT_TRUE(has_line(one.symbol, {-0.5, y}, {7, y})) << "the rod";
        EXPECT_FALSE(has_line(one.symbol, {-1.5, y}, {-7, y}));
    }
    EXPECT_TRUE(springs(one.symbol).empty());
    const DrawnVariant two = drawn(R"(<cylinder id="A" rods="2"/>)");
    for (const double y : {-0.25, 0.25}) EXPECT_TRUE(has_line(two.symbol, {-1.5, y}, {-7, y}));
    const DrawnVariant single = drawn(R"(<cylinder id="A" action="single" spring-return="yes"/>)");
    EXPECT_EQ(single.symbol.ports.size(), 1u);
    ASSERT_EQ(springs(single.symbol).size(), 1u);
    EXPECT_GT(springs(single.symbol)[0].points.front().x, single.anchor("A").at.x)
        << "on the side without pressure";
    EXPECT_EQ(boxes(drawn(R"(<cylinder id="A" cushion="cap"/>)").symbol).size(), 2u);
    EXPECT_EQ(boxes(drawn(R"(<cylinder id="A" cushion="both"/>)").symbol).size(), 3u);
}

// PC2: the pilots lead to the frame; they and the frame keep their place when the machine is
// mirrored, as the arrow does, and their stubs still end on the frame.
TEST(MachineSymbols, ControlPorts) {
    for (const char* kind : {"pump", "motor", "pump-motor"})
        for (const int pilots : {1, 2}) {
            const DrawnVariant one = drawn(fmt::format(
                R"(<{} id="P" flow-directions="2" variable="yes" control="hydraulic"
                    drain="external" pilot-ports="{}"/>)",
                kind, pilots));
            for (const bool mirrored : {false, true})
                for (const int quarters : {0, 2}) {
                    const Symbol symbol = turned(one.symbol, {quarters, mirrored});
                    const auto all = boxes(symbol);
                    ASSERT_EQ(all.size(), 1u);
                    EXPECT_EQ(all[0].right - all[0].left, pilots == 2 ? 4.0 : 3.0);
                    EXPECT_EQ(all[0].right, -3.0);
                    int found = 0;
                    for (const PortAnchor& port : symbol.ports) {
                        if (one.circuit.ports[port.port].use != PortUse::pilot) continue;
                        ++found;
                        EXPECT_EQ(port.side, pilots == 2 ? Side::down : Side::left);
                        for (const Primitive& primitive : symbol.primitives) {
                            if (primitive.tag.port != port.port) continue;
                            const auto& points = std::get<Polyline>(primitive.shape).points;
                            EXPECT_EQ(points[0], port.at);
                            EXPECT_TRUE(pilots == 2 ? points[1].y == all[0].bottom
                                                    : points[1].x == all[0].left);
                        }
                    }
                    EXPECT_EQ(found, pilots);
                }
        }
}

// PC6, PC7: a spring against the pressure; the load's pressure comes in at the spring's end.
TEST(MachineSymbols, SensedPressure) {
    const DrawnVariant kept =
        drawn(R"(<pump id="P" variable="yes" control="pressure-compensated"/>)");
    EXPECT_EQ(springs(kept.symbol).size() + 0u, 1u);
    EXPECT_EQ(oil_triangles(kept.symbol, 1.0).size(), 1u);
    const DrawnVariant sensed =
        drawn(R"(<pump id="P" variable="yes" control="load-sensing" pilot-ports="1"/>)");
    const auto triangles = oil_triangles(sensed.symbol, 1.0);
    ASSERT_EQ(triangles.size(), 2u);
    ASSERT_EQ(springs(sensed.symbol).size(), 1u);
    EXPECT_EQ(triangles[1].points[0], springs(sensed.symbol)[0].points.front());
    EXPECT_LT(sensed.anchor("X").at.x, triangles[1].points[0].x);
}

}  // namespace
}  // namespace loopwright::testing
