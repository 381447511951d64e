// The symbols of valves, read as a person would: what leads where in which box.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

#include <loopwright/tests/render/drawn_variant.h>

namespace loopwright::testing {
namespace {

/// A port's place on the edge of a box.
struct Edge {
    std::string letter = {};
    Point at = {};
};

/// The ports' places on the box at rest, moved by dx: where a stub meets the body.
std::vector<Edge> edges(const DrawnVariant& one, double dx) {
    std::vector<Edge> out;
    for (const PortAnchor& port : one.symbol.ports)
        for (const Primitive& primitive : one.symbol.primitives)
            if (primitive.tag.port == port.port) {
                const Point body = std::get<Polyline>(primitive.shape).points[1];
                out.push_back(
                    {std::string(one.circuit.ports[port.port].letter), {body.x + dx, body.y}});
            }
    return out;
}

/// The upright edges of the boxes of a valve's row, left to right.
std::vector<double> box_lefts(const Symbol& symbol) {
    std::vector<double> lefts;
    for (const Polyline& line : polylines(symbol))
        if (line.closed && line.points.size() == 4 && line.points[2].y - line.points[0].y == 4.0)
            lefts.push_back(line.points[0].x);
    std::sort(lefts.begin(), lefts.end());
    return lefts;
}

/// Which ports the strokes inside a box connect: strokes that share an end, or one of which ends on
/// the other under a dot, are one; strokes that only cross are not.
std::set<std::set<std::string>> connected(const DrawnVariant& one, double left, double width) {
    std::vector<Polyline> inside;
    for (const Primitive& primitive : one.symbol.primitives) {
        const auto* line = std::get_if<Polyline>(&primitive.shape);
        if (line == nullptr || line->closed || primitive.tag.port != none) continue;
        if (std::all_of(line->points.begin(), line->points.end(), [&](Point p) {
                return p.x > left && p.x < left + width && p.y >= -2.0 && p.y <= 2.0;
            }))
            inside.push_back(*line);
    }
    const std::vector<Arc> circles = arcs(one.symbol);
    const auto has_dot = [&](Point p) {
        return std::any_of(circles.begin(), circles.end(), [&](const Arc& arc) {
            return arc.fill == Paint::ink && is_at(arc.centre, p.x, p.y);
        });
    };
    std::vector<std::size_t> group(inside.size());
    std::iota(group.begin(), group.end(), 0u);
    const auto unite = [&](std::size_t a, std::size_t b) {
        const std::size_t from = group[b];
        for (std::size_t& g : group)
            if (g == from) g = group[a];
    };
    for (std::size_t a = 0; a < inside.size(); ++a)
        for (std::size_t b = 0; b < inside.size(); ++b)
            for (const Point end : {inside[a].points.front(), inside[a].points.back()}) {
                const Point b0 = inside[b].points.front();
                const Point b1 = inside[b].points.back();
                const bool shares = is_at(end, b0.x, b0.y) || is_at(end, b1.x, b1.y);
                if (a != b && (shares || (lies_on(end, inside[b]) && has_dot(end)))) unite(a, b);
            }
    std::map<std::size_t, std::set<std::string>> found;
    for (const Edge& edge : edges(one, left + width / 2))
        for (std::size_t i = 0; i < inside.size(); ++i) {
            const Point a = inside[i].points.front();
            const Point b = inside[i].points.back();
            if (is_at(edge.at, a.x, a.y) || is_at(edge.at, b.x, b.y))
                found[group[i]].insert(edge.letter);
        }
    std::set<std::set<std::string>> out;
    for (const auto& [index, letters] : found) out.insert(letters);
    return out;
}

/// The same from the file's paths.
std::set<std::set<std::string>> declared(const DrawnVariant& one, Index position) {
    std::vector<std::set<std::string>> groups;
    for (const Port& port : one.circuit.ports_of(one.component()))
        groups.push_back({std::string(port.letter)});
    for (const Passage& passage : one.circuit.passages_of(one.component())) {
        if (passage.position != position) continue;
        const std::string from(one.circuit.ports[passage.from].letter);
        const std::string to(one.circuit.ports[passage.to].letter);
        const auto holds = [](const std::string& letter) {
            return [letter](const std::set<std::string>& g) { return g.count(letter) != 0; };
        };
        const auto a = std::find_if(groups.begin(), groups.end(), holds(from));
        const auto b = std::find_if(groups.begin(), groups.end(), holds(to));
        if (a == b) continue;
        a->insert(b->begin(), b->end());
        groups.erase(b);
    }
    return {groups.begin(), groups.end()};
}

// DV5, for every directional valve of the sheet and every position of it: the strokes in a box lead
// where the file says. The box at rest is about the origin; all stand in the file's order, but of
// two the one at rest stands on the right, of three in the middle (DV3).
TEST(ValveSymbols, BoxesLeadWhereTheFileSays) {
    int boxes = 0;
    for (const DrawnVariant& one : all_variants()) {
        if (one.symbol.kind != "directional-valve") continue;
        const std::vector<double> lefts = box_lefts(one.symbol);
        ASSERT_EQ(lefts.size(), one.component().positions.size());
        const double width = lefts.size() > 1 ? lefts[1] - lefts[0] : -2 * lefts[0];
        std::vector<Index> order;
        std::size_t rest_at = 0;
        for (Index p = one.component().positions.begin; p < one.component().positions.end; ++p) {
            if (one.circuit.positions[p].rest) rest_at = order.size();
            order.push_back(p);
        }
        if (order.size() == 2 || order.size() == 3) {
            const Index rest = order[rest_at];
            order.erase(order.begin() + static_cast<std::ptrdiff_t>(rest_at));
            rest_at = 1;
            order.insert(order.begin() + 1, rest);
        }
        EXPECT_EQ(lefts[rest_at], -width / 2) << "the box at rest has the stubs";
        for (std::size_t i = 0; i < order.size(); ++i, ++boxes)
            EXPECT_EQ(connected(one, lefts[i], width), declared(one, order[i]))
                << one.circuit.positions[order[i]].id << " of " << one.component().positions.size();
    }
    EXPECT_GT(boxes, 20);
}

// A path's head is at its end; a joint of three has none.
TEST(ValveSymbols, PathsHaveTheirHeadDownstream) {
    const DrawnVariant one = drawn(
        R"(<directional-valve id="V"><port id="A"/><port id="B"/><port id="P"/><port id="T"/>
           <position id="a"><path from="P" to="A"/><path from="B" to="T"/></position>
           <position id="rest" rest="yes"/><position id="b"/></directional-valve>)");
    const auto found = arrows(one.symbol);
    ASSERT_EQ(found.size(), 2u);
    for (const Polyline& arrow : found) {
        EXPECT_LT(arrow.points[0].x, -2.0);
        const bool supply = arrow.points[0].x == -5.0;
        EXPECT_EQ(arrow.points[0].y, supply ? 2.0 : -2.0) << "P below, B above";
        EXPECT_EQ(arrow.points[1].y, supply ? -2.0 : 2.0);
    }
}

// DV3: with two positions the spring is on the side of the box at rest, the actuator on the other.
TEST(ValveSymbols, SpringBesideTheBoxAtRest) {
    const DrawnVariant one = drawn(R"(<directional-valve id="V"><port id="A"/><port id="P"/>
                 <position id="shut" rest="yes"/>
                 <position id="open"><path from="P" to="A"/></position></directional-valve>)");
    ASSERT_EQ(springs(one.symbol).size(), 1u);
    EXPECT_EQ(springs(one.symbol)[0].points.front(), (Point{2, 0}));
    EXPECT_GT(springs(one.symbol)[0].points.back().x, 2.0);
    EXPECT_LT(one.symbol.body.left, -6.0) << "the solenoid stands beside the box that it pushes in";
    // DV2: two ports, both in the middle of their side.
    EXPECT_EQ(one.anchor("A").at, (Point{0, -4}));
    EXPECT_EQ(one.anchor("P").at, (Point{0, 4}));
}

TEST(ValveSymbols, SpringsCentreThreePositionsAndADetentHasNone) {
    for (const bool detent : {false, true}) {
        const DrawnVariant one =
            drawn(std::string(R"(<directional-valve id="V" actuation="lever" detent=")") +
                  (detent ? "yes" : "no") +
                  R"("><port id="A"/><port id="P"/><position id="a"/><position id="n" rest="yes"/>
               <position id="b"/></directional-valve>)");
        const auto found = springs(one.symbol);
        if (detent) {
            // Three notches and the tick in the second from the row: the one at rest.
            ASSERT_EQ(found.size(), 1u);
            EXPECT_EQ(found[0].points.size(), 11u);
            EXPECT_TRUE(found[0].points.back().y == found[0].points.front().y);
            const std::vector<Polyline> lines = polylines(one.symbol);
            const auto& tick = lines.back();
            EXPECT_NEAR(tick.points[0].x, found[0].points[5].x, 1e-9);
            continue;
        }
        ASSERT_EQ(found.size(), 2u);
        EXPECT_LT(found[0].points.back().x, -6.0);
        EXPECT_GT(found[1].points.back().x, 6.0);
    }
}

TEST(ValveSymbols, ActuatorsAreToldApart) {
    std::set<std::size_t> strokes;
    for (const char* actuation : {"solenoid", "pilot", "lever", "pedal"}) {
        const DrawnVariant one =
            drawn(std::string(R"(<directional-valve id="V" actuation=")") + actuation +
                  R"("><port id="A"/><port id="P"/><position id="a"/><position id="n" rest="yes"/>
               </directional-valve>)");
        const auto triangles = oil_triangles(one.symbol, 1.0);
        EXPECT_EQ(triangles.size(), actuation == std::string_view("pilot") ? 1u : 0u);
        if (!triangles.empty()) {
            EXPECT_EQ(triangles[0].points[0], (Point{-6, 0})) << "points to the boxes";
        }
        int circles = 0;
        for (const Arc& arc : arcs(one.symbol)) circles += arc.fill == Paint::none ? 1 : 0;
        EXPECT_EQ(circles, actuation == std::string_view("lever") ? 1 : 0);
    }
}

TEST(ValveSymbols, ThrottledPathIsMarked) {
    for (const bool throttled : {false, true}) {
        const DrawnVariant one =
            drawn(std::string(R"(<directional-valve id="V"><port id="A"/><port id="P"/>
                           <position id="n" rest="yes"><path from="P" to="A" throttled=")") +
                  (throttled ? "yes" : "no") + R"("/></position></directional-valve>)");
        int chevrons = 0;
        for (const Polyline& line : polylines(one.symbol))
            chevrons += !line.closed && line.points.size() == 3 ? 1 : 0;
        EXPECT_EQ(chevrons, throttled ? 2 : 0);
    }
}

// FL1: left box B -> F, right box A -> F, the side not led to F blocked; all blocked at rest.
TEST(ValveSymbols, FlushingValveLeadsTheOtherSide) {
    const DrawnVariant closed = drawn(R"(<flushing-valve id="V"/>)");
    const std::set<std::set<std::string>> apart{{"A"}, {"B"}, {"F"}};
    EXPECT_EQ(connected(closed, -6, 4), (std::set<std::set<std::string>>{{"A"}, {"B", "F"}}));
    EXPECT_EQ(connected(closed, -2, 4), apart);
    EXPECT_EQ(connected(closed, 2, 4), (std::set<std::set<std::string>>{{"B"}, {"A", "F"}}));
    for (const Polyline& arrow : arrows(closed.symbol))
        EXPECT_EQ(arrow.points[1].y, 2.0) << "towards F";
    const DrawnVariant open = drawn(R"(<flushing-valve id="V" centre="open"/>)");
    EXPECT_EQ(connected(open, -2, 4), (std::set<std::set<std::string>>{{"A", "B", "F"}}));
    int chevrons = 0;
    for (const Polyline& line : polylines(open.symbol))
        chevrons += line.points.size() == 3 && !line.closed && line.pen.dash == Dash::continuous &&
                            std::abs(line.points[0].x - line.points[2].x) < 1e-9
                        ? 1
                        : 0;
    EXPECT_EQ(chevrons, 4) << "a restriction in each way";
}

// FL1: the pilot from A acts on the left end, the one from B on the right; springs at both ends.
TEST(ValveSymbols, FlushingPilotsComeFromTheirSide) {
    for (const char* centre : {"closed", "open"}) {
        const DrawnVariant one =
            drawn(std::string(R"(<flushing-valve id="V" centre=")") + centre + R"("/>)");
        const auto pilots = dashed(one.symbol);
        ASSERT_EQ(pilots.size(), 2u);
        for (const Polyline& pilot : pilots) {
            const bool left = pilot.points.back().x < 0;
            const PortAnchor& port = one.anchor(left ? "A" : "B");
            EXPECT_EQ(pilot.points.front().x, port.at.x);
            EXPECT_GT(pilot.points.front().y, port.at.y);
            EXPECT_LT(pilot.points.front().y, -2.0) << "on the stub";
            EXPECT_LT(std::abs(pilot.points.back().x), 7.0);
            EXPECT_GT(std::abs(pilot.points.back().x), 6.0) << "at the end of the row";
        }
        EXPECT_EQ(springs(one.symbol).size(), 2u);
        const auto triangles = oil_triangles(one.symbol, 1.0);
        ASSERT_EQ(triangles.size(), 2u);
        for (const Polyline& triangle : triangles)
            EXPECT_NEAR(std::abs(triangle.points[0].x), 6.0, 1e-9) << "its apex pushes the row";
    }
}

// CV1: free flow from the apex of the seat to the ball; the ball touches both arms.
TEST(ValveSymbols, CheckOpensFromApexToBall) {
    for (const char* xml :
         {R"(<check-valve id="C"/>)", R"(<check-valve id="C" opening-pressure="0.5 bar"/>)"}) {
        const DrawnVariant one = drawn(xml);
        ASSERT_EQ(arcs(one.symbol).size(), 1u);
        const Arc ball = arcs(one.symbol)[0];
        const std::vector<Polyline> lines = polylines(one.symbol);
        const auto seat = std::find_if(lines.begin(), lines.end(), [](const Polyline& line) {
            return line.points.size() == 3;
        });
        ASSERT_NE(seat, lines.end());
        const Point apex = seat->points[1];
        EXPECT_GT(one.anchor("A").at.y, apex.y);
        EXPECT_GT(apex.y, ball.centre.y);
        EXPECT_GT(ball.centre.y, one.anchor("B").at.y);
        for (const std::size_t arm : {0u, 2u}) {
            const Point end = seat->points[arm];
            const double dx = end.x - apex.x;
            const double dy = end.y - apex.y;
            const double off =
                std::abs(dx * (ball.centre.y - apex.y) - dy * (ball.centre.x - apex.x)) /
                std::hypot(dx, dy);
            EXPECT_NEAR(off, ball.radius, 0.01);
            EXPECT_NEAR(std::abs(dx), std::abs(dy), 1e-9) << "a right angle";
        }
        // CV2: the spring sits behind the ball, on the side of B.
        const auto found = springs(one.symbol);
        ASSERT_EQ(found.size(),
                  one.circuit.attribute(one.component(), "opening-pressure") ? 1u : 0u);
        if (!found.empty()) {
            EXPECT_EQ(found[0].points.front(), (Point{0, -0.5}));
            EXPECT_LT(found[0].points.back().y, -0.5);
        }
    }
}

// PV1 and the golden rule of pressure valves: closed at rest, so the arrow stands on the pilot's
// side, away from the ports; the pilot comes from the inlet; the spring is on the far side.
TEST(ValveSymbols, ReliefIsClosedAtRestAndPilotedFromItsInlet) {
    for (const char* xml :
         {R"(<relief-valve id="R"/>)", R"(<relief-valve id="R" operation="pilot"/>)"}) {
        const DrawnVariant one = drawn(xml);
        EXPECT_EQ(one.anchor("P").at, (Point{0, -4}));
        EXPECT_EQ(one.anchor("T").at, (Point{0, 4}));
        const auto pilots = dashed(one.symbol);
        ASSERT_EQ(pilots.size(), 1u);
        EXPECT_EQ(pilots[0].points.front(), (Point{0, -3})) << "on the stub of the inlet";
        EXPECT_EQ(pilots[0].points.back(), (Point{-2, 0})) << "on the left of the box";
        EXPECT_EQ(arrows(one.symbol)[0].points, (std::vector<Point>{{-1, -2}, {-1, 2}}));
        const auto found = springs(one.symbol);
        ASSERT_EQ(found.size(), 1u);
        for (const Point& p : found[0].points) EXPECT_GE(p.x, 2.0);
        const bool piloted = oil_triangles(one.symbol, 1.0).size() == 1;
        EXPECT_EQ(piloted, one.circuit.choice(one.component(), "operation") == "pilot");
        if (piloted) {
            // PV2: between the box and the spring, pointing to the box.
            const Polyline triangle = oil_triangles(one.symbol, 1.0)[0];
            EXPECT_EQ(triangle.points[0], (Point{2, 0}));
            EXPECT_LT(triangle.points[1].x, found[0].points[0].x + 1e-9);
        }
    }
}

// 45 degrees, from lower left to upper right, over the spring by at least 0.75 M at both ends.
TEST(ValveSymbols, AdjustableReliefHasTheArrowOverItsSpring) {
    for (const char* operation : {"direct", "pilot"})
        for (const bool adjustable : {true, false}) {
            const DrawnVariant one =
                drawn(std::string(R"(<relief-valve id="R" operation=")") + operation +
                      R"(" adjustable=")" + (adjustable ? "yes" : "no") + R"("/>)");
            const auto found = arrows(one.symbol);
            ASSERT_EQ(found.size(), adjustable ? 2u : 1u);
            if (!adjustable) continue;
            const Point tail = found[1].points[0];
            const Point tip = found[1].points[1];
            EXPECT_LT(tail.x, tip.x);
            EXPECT_NEAR(tip.x - tail.x, tail.y - tip.y, 1e-9);
            EXPECT_GE((tail.y - 0.5) * std::sqrt(2.0), 0.75);
            EXPECT_GE((-0.5 - tip.y) * std::sqrt(2.0), 0.75);
            const auto spring = springs(one.symbol)[0].points;
            EXPECT_NEAR((tail.x + tip.x) / 2, (spring.front().x + spring.back().x) / 2, 1e-9);
        }
}

}  // namespace
}  // namespace loopwright::testing
