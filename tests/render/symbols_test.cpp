// Symbols against the recipes of the drawing standard as we recall it (ISO 1219-1:2012, from
// memory, see the drawing-standard note in the shared reference: ids PU0, MO1, CV1, PV1, FL1, DV1
// and so on).

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include <fmt/format.h>

#include <loopwright/parser/kinds/catalogue.h>
#include <loopwright/render/symbols/symbols.h>
#include <loopwright/tests/render/drawn_variant.h>

namespace loopwright::testing {
namespace {

/// Every pump and motor that attributes can describe.
std::vector<std::string> all_machines() {
    std::vector<std::string> all;
    for (const char* kind : {"pump", "motor"})
        for (const int directions : {1, 2})
            for (const char* variable : {"no", "yes"})
                for (const char* control : {"none", "manual", "hydraulic", "electric"})
                    for (const int case_ports : {0, 1, 2, 3})
                        all.push_back(fmt::format(
                            R"(<{} id="X" flow-directions="{}" variable="{}" control="{}" {}/>)",
                            kind, directions, variable, control,
                            case_ports == 0
                                ? ""
                                : fmt::format(R"(drain="external" case-ports="{}")", case_ports)));
    return all;
}

std::vector<DrawnVariant> all_drawn() {
    std::vector<DrawnVariant> all = all_variants();
    for (const std::string& machine : all_machines()) all.push_back(drawn(machine));
    return all;
}

TEST(Symbols, EveryKindHasOneAndNoOther) {
    std::vector<std::string_view> listed;
    for (const KindSymbol& symbol : kind_symbols()) listed.push_back(symbol.kind);
    std::vector<std::string_view> wanted;
    for (const Kind* kind : kinds()) wanted.push_back(kind->name);
    EXPECT_EQ(listed, wanted);
}

TEST(Symbols, VariantsCoverEveryKind) {
    std::set<std::string_view> shown;
    for (const DrawnVariant& variant : all_variants()) shown.insert(variant.component().kind->name);
    EXPECT_EQ(shown.size(), kinds().size());
}

TEST(Symbols, AnchorsAreThePortsOfTheComponent) {
    for (const SymbolVariant& variant : symbol_variants()) {
        const DrawnVariant one = drawn(variant.xml, variant.local_mark);
        std::vector<Index> anchors;
        for (const PortAnchor& port : one.symbol.ports) anchors.push_back(port.port);
        std::sort(anchors.begin(), anchors.end());
        std::vector<Index> ports;
        for (Index p = one.component().ports.begin; p < one.component().ports.end; ++p)
            ports.push_back(p);
        EXPECT_EQ(anchors, ports) << variant.xml;
    }
    for (const std::string& xml : all_machines()) {
        const DrawnVariant one = drawn(xml);
        EXPECT_EQ(one.symbol.ports.size(), one.component().ports.size()) << xml;
        for (const Port& port : one.circuit.ports) EXPECT_NO_THROW(one.anchor(port.letter)) << xml;
    }
}

TEST(Symbols, AnchorsLieOnTheGridAndApart) {
    for (const DrawnVariant& one : all_drawn()) {
        const auto& ports = one.symbol.ports;
        for (std::size_t i = 0; i < ports.size(); ++i) {
            EXPECT_EQ(ports[i].at.x, std::round(ports[i].at.x));
            EXPECT_EQ(ports[i].at.y, std::round(ports[i].at.y));
            for (std::size_t j = 0; j < i && one.symbol.kind != "junction"; ++j)
                EXPECT_GE(std::hypot(ports[i].at.x - ports[j].at.x, ports[i].at.y - ports[j].at.y),
                          2.0)
                    << one.circuit.port_name(ports[i].port);
        }
        for (const ShaftAnchor& shaft : one.symbol.shafts) {
            EXPECT_EQ(shaft.at.x, std::round(shaft.at.x));
            EXPECT_EQ(shaft.at.y, 0.0);
        }
    }
}

TEST(Symbols, StubsLeaveOutwards) {
    for (const DrawnVariant& one : all_drawn()) {
        if (one.symbol.kind == "junction") continue;
        for (const PortAnchor& port : one.symbol.ports) {
            const auto stub =
                std::find_if(one.symbol.primitives.begin(), one.symbol.primitives.end(),
                             [&](const Primitive& p) { return p.tag.port == port.port; });
            ASSERT_NE(stub, one.symbol.primitives.end());
            const Polyline& line = std::get<Polyline>(stub->shape);
            ASSERT_EQ(line.points.size(), 2u);
            EXPECT_EQ(line.points[0], port.at);
            const double dx = port.at.x - line.points[1].x;
            const double dy = port.at.y - line.points[1].y;
            EXPECT_TRUE((port.side == Side::up && dy < 0 && dx == 0) ||
                        (port.side == Side::down && dy > 0 && dx == 0) ||
                        (port.side == Side::left && dx < 0 && dy == 0) ||
                        (port.side == Side::right && dx > 0 && dy == 0));
        }
    }
}

// L2: drains and the pilots of a control are dashed, working ports continuous; the chamber of a
// brake (SH7) has a stub as a cylinder's.
TEST(Symbols, DrainsAndPilotsAreDashed) {
    int drains = 0;
    for (const DrawnVariant& one : all_drawn())
        for (const Primitive& primitive : one.symbol.primitives) {
            if (primitive.tag.port == none) continue;
            const PortUse use = one.circuit.ports[primitive.tag.port].use;
            const bool drain =
                use == PortUse::drain || (use == PortUse::pilot && one.symbol.kind != "brake");
            drains += drain ? 1 : 0;
            EXPECT_EQ(std::get<Polyline>(primitive.shape).pen.dash,
                      drain ? Dash::dashed : Dash::continuous);
        }
    EXPECT_GT(drains, 100);
}

// PU0: a pump's triangles have their apex on the circle and point out of it, one for each flow
// direction, the first at the outlet P or A.
TEST(Symbols, PumpTrianglesPointOutwards) {
    for (const std::string& xml : all_machines()) {
        const DrawnVariant one = drawn(xml);
        if (one.symbol.kind != "pump") continue;
        const auto triangles = oil_triangles(one.symbol, 2.0);
        const bool both = one.circuit.figure(one.component(), "flow-directions") == 2.0;
        ASSERT_EQ(triangles.size(), both ? 2u : 1u) << xml;
        for (const Polyline& triangle : triangles) {
            const Point apex = triangle.points[0];
            EXPECT_NEAR(std::hypot(apex.x, apex.y), 3.0, 1e-9);
            EXPECT_LT(std::abs(triangle.points[1].y), std::abs(apex.y));
            EXPECT_LT(std::abs(triangle.points[2].y), std::abs(apex.y));
        }
        EXPECT_LT(triangles[0].points[0].y * 1.0, 0.0);
        EXPECT_EQ(one.anchor(both ? "A" : "P").at, (Point{0, -4}));
        EXPECT_EQ(one.anchor(both ? "B" : "S").at, (Point{0, 4}));
    }
}

// MO1, MO2: a motor's have the base's corners on the circle and point to the centre.
TEST(Symbols, MotorTrianglesPointInwards) {
    for (const std::string& xml : all_machines()) {
        const DrawnVariant one = drawn(xml);
        if (one.symbol.kind != "motor") continue;
        const auto triangles = oil_triangles(one.symbol, 2.0);
        const bool both = one.circuit.figure(one.component(), "flow-directions") == 2.0;
        ASSERT_EQ(triangles.size(), both ? 2u : 1u) << xml;
        for (const Polyline& triangle : triangles) {
            EXPECT_NEAR(std::hypot(triangle.points[1].x, triangle.points[1].y), 3.0, 1e-9);
            EXPECT_NEAR(std::hypot(triangle.points[2].x, triangle.points[2].y), 3.0, 1e-9);
            EXPECT_NEAR(std::abs(triangle.points[0].y), 1.10, 0.005);  // recipe MO1
        }
        EXPECT_LT(triangles[0].points[1].y, 0.0) << "the inlet A is above";
    }
}

// PU3: the arrow runs from lower left to upper right over the circle by at least 1 M at both ends.
TEST(Symbols, VariableMachinesHaveTheArrow) {
    for (const std::string& xml : all_machines()) {
        const DrawnVariant one = drawn(xml);
        const auto found = arrows(one.symbol);
        if (!one.circuit.is_yes(one.component(), "variable")) {
            EXPECT_TRUE(found.empty()) << xml;
            continue;
        }
        ASSERT_EQ(found.size(), 1u) << xml;
        const Point tail = found[0].points[0];
        const Point tip = found[0].points[1];
        EXPECT_EQ(tail.x, -tail.y);
        EXPECT_EQ(tip.x, -tip.y);
        EXPECT_LT(tail.x, tip.x);
        EXPECT_GE(std::hypot(tail.x, tail.y), 4.0);
        EXPECT_GE(std::hypot(tip.x, tip.y), 4.0);
    }
}

// DR1: case ports on the lower half, 2 M beside the working port; a third one above.
TEST(Symbols, CasePorts) {
    const DrawnVariant one = drawn(R"(<motor id="M" drain="external"/>)");
    EXPECT_EQ(one.anchor("L").at, (Point{2, 4}));
    const DrawnVariant three = drawn(R"(<pump id="P" drain="external" case-ports="3"/>)");
    EXPECT_EQ(three.anchor("L1").at, (Point{2, 4}));
    EXPECT_EQ(three.anchor("L2").at, (Point{-2, 4}));
    EXPECT_EQ(three.anchor("L3").at, (Point{-2, -4}));
    for (const Polyline& stub : dashed(three.symbol))
        EXPECT_NEAR(std::hypot(stub.points[1].x, stub.points[1].y), 3.0, 1e-9)
            << "begins on the circle";
}

TEST(Symbols, ShaftEndOfItsOwnOnlyWhereNoShaftIsDrawn) {
    const DrawnVariant alone = drawn(R"(<pump id="P"/>)");
    const DrawnVariant driven =
        drawn(R"(<pump id="P"/><engine id="E"/><shaft id="W" joins="E P"/>)");
    EXPECT_EQ(alone.symbol.primitives.size(), driven.symbol.primitives.size() + 2);
    EXPECT_EQ(driven.symbol.shafts.size(), 2u);
}

// EN3: a square with M; a round one would be an electric motor.
TEST(Symbols, EngineIsASquareWithM) {
    const DrawnVariant one = drawn(R"(<engine id="E"/>)");
    EXPECT_TRUE(arcs(one.symbol).empty());
    EXPECT_EQ(polylines(one.symbol)[0].points,
              (std::vector<Point>{{-3, -3}, {3, -3}, {3, 3}, {-3, 3}}));
    ASSERT_TRUE(std::holds_alternative<Text>(one.symbol.primitives[1].shape));
    EXPECT_EQ(std::get<Text>(one.symbol.primitives[1].shape).text, "M");
}

// LN1.
TEST(Symbols, JunctionIsADotOfThreeQuarterModules) {
    const DrawnVariant one = drawn(R"(<junction id="J"><port id="a"/><port id="b"/></junction>)");
    ASSERT_EQ(one.symbol.primitives.size(), 1u);
    const Arc& dot = std::get<Arc>(one.symbol.primitives[0].shape);
    EXPECT_EQ(dot.radius, 0.375);
    EXPECT_EQ(dot.fill, Paint::ink);
    EXPECT_EQ(dot.centre, (Point{0, 0}));
}

// RS1 to RS4: a line below the level ends on the bottom, one above clear of it.
TEST(Symbols, ReservoirLinesShowTheLevel) {
    for (const bool below : {true, false}) {
        const DrawnVariant one =
            drawn(fmt::format(R"(<reservoir id="T"><port id="R" level="{}"/></reservoir>)",
                              below ? "below" : "above"),
                  true);
        EXPECT_EQ(one.symbol.ports[0].at, (Point{0, -2}));
        const auto lines = polylines(one.symbol);
        ASSERT_EQ(lines.size(), 2u);
        EXPECT_EQ(lines[0].points, (std::vector<Point>{{-1, 0}, {-1, 1}, {1, 1}, {1, 0}}));
        EXPECT_FALSE(lines[0].closed) << "vented: no lid";
        EXPECT_NEAR(lines[1].points[1].y, below ? 1.0 : 1.0 / 3.0, 1e-12);
        EXPECT_TRUE(one.symbol.upright);
    }
}

TEST(Symbols, StubOfAReservoirIsAsItsLine) {
    for (const char* function : {"drain", "return"}) {
        const DrawnVariant one = drawn(fmt::format(R"(<reservoir id="T"><port id="R"/></reservoir>
                           <check-valve id="C"/><line id="L" function="{}" joins="C.B T.R"/>)",
                                                   function),
                                       true);
        EXPECT_EQ(dashed(one.symbol).size(), function == std::string_view("drain") ? 1u : 0u);
    }
}

// SV1; the filling is a house convention.
TEST(Symbols, ShutOffValveIsFilledWhereClosed) {
    for (const char* position : {"open", "closed"}) {
        const DrawnVariant one =
            drawn(fmt::format(R"(<shut-off-valve id="H" position="{}"/>)", position));
        int triangles = 0;
        for (const Polyline& line : polylines(one.symbol)) {
            if (!line.closed) continue;
            ++triangles;
            EXPECT_EQ(line.fill, position == std::string_view("closed") ? Paint::ink : Paint::none);
            EXPECT_EQ(line.points[1], (Point{0, 0}));
        }
        EXPECT_EQ(triangles, 2);
    }
}

// FI1: dashed across the flow. HX1: two triangles outwards, at the corners beside the flow.
TEST(Symbols, FilterAndCooler) {
    const DrawnVariant filter = drawn(R"(<filter id="F"/>)");
    ASSERT_EQ(dashed(filter.symbol).size(), 1u);
    EXPECT_EQ(dashed(filter.symbol)[0].points, (std::vector<Point>{{0, -2.83}, {0, 2.83}}));
    EXPECT_EQ(filter.anchor("A").side, Side::left);
    EXPECT_EQ(filter.anchor("B").side, Side::right);
    const DrawnVariant cooler = drawn(R"(<cooler id="K"/>)");
    const auto triangles = oil_triangles(cooler.symbol, 1.0);
    ASSERT_EQ(triangles.size(), 2u);
    EXPECT_EQ(triangles[0].points[0], (Point{0, -2.83}));
    EXPECT_EQ(triangles[1].points[0], (Point{0, 2.83}));
    EXPECT_TRUE(dashed(cooler.symbol).empty());
}

// FI2: the bypass is a check with a spring in a branch with joints on both stubs.
TEST(Symbols, BypassLeadsRoundTheElement) {
    for (const char* xml :
         {R"(<filter id="F" bypass="2 bar"/>)", R"(<filter id="F" bypass="2 bar" one-way="yes"/>)",
          R"(<cooler id="K" bypass="2 bar"/>)"}) {
        const DrawnVariant one = drawn(xml);
        ASSERT_EQ(springs(one.symbol).size(), 1u) << xml;
        std::vector<Arc> dots;
        std::vector<Arc> balls;
        for (const Arc& arc : arcs(one.symbol))
            (arc.fill == Paint::ink ? dots : balls).push_back(arc);
        ASSERT_EQ(dots.size(), 2u);
        EXPECT_EQ(dots[0].radius, 0.25);
        EXPECT_LT(dots[0].centre.x, -2.83);
        EXPECT_GT(dots[1].centre.x, 2.83);
        // The ball between the way from A's side and the spring towards B's side.
        const Arc ball = balls.back();
        EXPECT_LT(ball.centre.y, -2.83);
        EXPECT_EQ(springs(one.symbol)[0].points[0].x, ball.centre.x + ball.radius);
        EXPECT_GT(springs(one.symbol)[0].points.back().x, springs(one.symbol)[0].points[0].x);
        const std::vector<Polyline> lines = polylines(one.symbol);
        for (const Arc& dot : dots)
            EXPECT_GE(std::count_if(lines.begin(), lines.end(),
                                    [&](const Polyline& l) { return lies_on(dot.centre, l); }),
                      2);
    }
}

TEST(Symbols, OneWayElementHasACheckThatOpensTowardsB) {
    const DrawnVariant one = drawn(R"(<filter id="F" one-way="yes"/>)");
    ASSERT_EQ(arcs(one.symbol).size(), 1u);
    const Arc ball = arcs(one.symbol)[0];
    EXPECT_GT(ball.centre.x, 2.83);
    const std::vector<Polyline> lines = polylines(one.symbol);
    const auto seat = std::find_if(lines.begin(), lines.end(), [](const Polyline& line) {
        return line.points.size() == 3 && !line.closed;
    });
    ASSERT_NE(seat, lines.end());
    EXPECT_LT(seat->points[1].x, ball.centre.x) << "apex on the side of the element";
}

// FI3, FI4: dashed taps before and behind, to a round gauge or a square switch.
TEST(Symbols, CloggingIndicator) {
    for (const bool electrical : {false, true}) {
        const DrawnVariant one = drawn(fmt::format(R"(<filter id="F" clogging-indicator="{}"/>)",
                                                   electrical ? "electrical" : "visual"));
        EXPECT_EQ(dashed(one.symbol).size(), 3u);
        int open_circles = 0;
        for (const Arc& arc : arcs(one.symbol)) open_circles += arc.fill == Paint::none ? 1 : 0;
        EXPECT_EQ(open_circles, electrical ? 0 : 1);
    }
}

// FV2: two chevrons, their tips towards the line that passes between.
TEST(Symbols, OrificeChevronsLookAtTheLine) {
    const DrawnVariant one = drawn(R"(<orifice id="O"/>)");
    int chevrons = 0;
    for (const Polyline& line : polylines(one.symbol)) {
        if (line.points.size() != 3) continue;
        ++chevrons;
        EXPECT_NEAR(std::abs(line.points[1].x), 0.2, 1e-9);
        EXPECT_NEAR(std::abs(line.points[0].x), 1.0, 1e-9);
        EXPECT_NEAR(std::abs(line.points[0].y), 0.75, 1e-9);
    }
    EXPECT_EQ(chevrons, 2);
}

TEST(Symbols, BodyHoldsAllStrokesButTheStubs) {
    for (const DrawnVariant& one : all_drawn()) {
        const Box& body = one.symbol.body;
        for (const Primitive& primitive : one.symbol.primitives) {
            const auto* line = std::get_if<Polyline>(&primitive.shape);
            if (line == nullptr || primitive.tag.port != none) continue;
            for (const Point& p : line->points) {
                EXPECT_TRUE(p.x >= body.left && p.x <= body.right && p.y >= body.top &&
                            p.y <= body.bottom);
            }
        }
        EXPECT_LT(body.left, body.right);
        EXPECT_LT(body.top, body.bottom);
    }
}

TEST(Symbols, AnUnknownKindIsABrokenPromise) {
    DrawnVariant one = drawn(R"(<orifice id="O"/>)");
    const Kind stranger{.name = "stranger"};
    Component component = one.component();
    component.kind = &stranger;
    EXPECT_THROW(symbol_of(one.circuit, component), std::logic_error);
}

TEST(Symbols, SheetShowsEveryVariantWithItsLetters) {
    const Drawing sheet = symbol_sheet();
    EXPECT_EQ(sheet.groups.size(), symbol_variants().size() + 1);
    for (const Group& group : sheet.groups)
        for (const Primitive& primitive : group.primitives)
            if (const auto* text = std::get_if<Text>(&primitive.shape)) {
                EXPECT_GT(text->at.x, 0.0);
                EXPECT_LT(text->at.x, sheet.width);
                EXPECT_LT(text->at.y, sheet.height);
            }
}

}  // namespace
}  // namespace loopwright::testing
