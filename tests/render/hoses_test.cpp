// Hoses on the sheet. Recipe LN3 of the drawing-standard notes (values from memory there): an arc
// between two dots, chord 4 M, lowest point 1 M off; a chord down to 2 M where nothing else has
// room is our own.

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include <loopwright/render/hoses.h>
#include <loopwright/render/render.h>
#include <loopwright/tests/render/laid_out.h>

namespace loopwright::testing {
namespace {

constexpr int quarters = 4;

int length(const Wire& wire) {
    return std::abs(wire.to.x - wire.from.x) + std::abs(wire.to.y - wire.from.y);
}

TEST(Hoses, SagBetweenTheirEnds) {
    struct Case {
        Point from, to;
        double sag;
        Point lowest;
    };
    for (const auto& [from, to, sag, lowest] :
         {Case{{0, 0}, {4, 0}, 1, {2, 1}}, Case{{4, 7}, {0, 7}, -1, {2, 6}},
          Case{{3, 1}, {3, 5}, 1, {4, 3}}, Case{{3, 5}, {3, 3}, -1, {2, 4}}}) {
        const Arc arc = hose_arc(from, to, sag);
        const auto at = [&](double angle) {
            return Point{arc.centre.x + arc.radius * std::cos(angle),
                         arc.centre.y + arc.radius * std::sin(angle)};
        };
        const auto near = [](Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y) < 1e-9; };
        EXPECT_FALSE(arc.full);
        EXPECT_TRUE(near(at(arc.from), from) || near(at(arc.from), to));
        EXPECT_TRUE(near(at(arc.to), from) || near(at(arc.to), to));
        EXPECT_TRUE(near(at((arc.from + arc.to) / 2), lowest));
    }
}

TEST(Hoses, SagOnceAndLinesNever) {
    int bent = 0;
    int straight = 0;
    each_layout([&](const LaidOut& one) {
        std::set<Index> drawn;
        std::multiset<Index> sagging;
        for (const Wire& wire : one.layout.wires) {
            drawn.insert(wire.line);
            if (wire.sag == 0) continue;
            sagging.insert(wire.line);
            EXPECT_GE(length(wire), 2 * quarters);
            EXPECT_LE(length(wire), 4 * quarters);
        }
        for (const Index line : drawn) {
            const std::size_t times = sagging.count(line);
            EXPECT_LE(times, one.circuit.lines[line].flexible ? 1U : 0U)
                << one.circuit.lines[line].path;
            bent += static_cast<int>(times);
            straight += one.circuit.lines[line].flexible && times == 0 ? 1 : 0;
        }
    });
    EXPECT_GT(bent, 100);
    // Rather a hose drawn straight than a drawing that no sheet holds: of the sweepers, with every
    // line a hose, these few.
    EXPECT_LE(straight, 5);
}

// No other wire, joint or body stands where a hose sags.
TEST(Hoses, SagClearOfAllElse) {
    each_layout([](const LaidOut& one) {
        for (const Wire& hose : one.layout.wires) {
            if (hose.sag == 0) continue;
            GridBox room = sag_box(hose);
            const Box sag = box_of(room.from, room.to);
            for (const DrawnSymbol& symbol : one.symbols)
                EXPECT_FALSE(overlap(sag, body_of(symbol)))
                    << one.circuit.lines[hose.line].path << " over a symbol";
            for (const Wire& other : one.layout.wires) {
                if (&other == &hose) continue;
                EXPECT_FALSE(overlap(sag, box_of(other.from, other.to)))
                    << one.circuit.lines[hose.line].path << " over "
                    << one.circuit.lines[other.line].path;
            }
            for (const Joint& joint : one.layout.joints)
                EXPECT_FALSE(joint.at == hose.from || joint.at == hose.to);
        }
    });
}

TEST(Hoses, OfALayoutThatIsReadMustBeHoses) {
    const LaidOut& one = laid_out().front();
    Layout layout = one.layout;
    Wire* straight = nullptr;
    for (Wire& wire : layout.wires)
        if (!one.circuit.lines[wire.line].flexible) straight = &wire;
    ASSERT_NE(straight, nullptr);
    straight->sag = 1;
    std::string error;
    EXPECT_FALSE(read_layout(one.circuit, write_layout(one.circuit, layout), error));
    EXPECT_NE(error.find("only a hose sags"), std::string::npos) << error;
    straight->sag = 3;
    EXPECT_FALSE(read_layout(one.circuit, write_layout(one.circuit, layout), error));
    EXPECT_NE(error.find("expected 1 or -1"), std::string::npos) << error;
}

}  // namespace
}  // namespace loopwright::testing
