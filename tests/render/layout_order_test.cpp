// How a layout is to be read: a loop from left to right between its working lines, assemblies in
// their frames, all inside the sheet; and that it is the same each time, written out and read back
// too.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include <loopwright/graph/situation.h>
#include <loopwright/render/render.h>
#include <loopwright/render/sheet.h>
#include <loopwright/tests/render/laid_out.h>
#include <loopwright/tests/support/circuit_text.h>

namespace loopwright::testing {
namespace {

/// Middle of a component's symbol.
GridPoint place_of(const LaidOut& one, Index component) {
    for (const Placed& placed : one.layout.placed)
        if (placed.component == component) return placed.at;
    return {};
}

// A loop is read from left to right.
TEST(Layouts, ThePumpOfALoopStandsLeftOfItsMotor) {
    int loops = 0;
    each_layout([&](const LaidOut& one) {
        for (const LoopInfo& loop : one.structure.loops)
            for (const Index pump : loop.pumps)
                for (const Index actuator : loop.actuators) {
                    ++loops;
                    EXPECT_LT(place_of(one, pump).x, place_of(one, actuator).x) << loop.id;
                }
    });
    EXPECT_GT(loops, 20);
}

/// The height on which most of a side runs level, and how much that is.
std::pair<int, int> level_of(const LaidOut& one, const SideInfo& side) {
    const std::vector<Index> joined = joined_ports(one.circuit);
    std::set<Index> groups;
    for (const Index port : side.ports) groups.insert(joined[port]);
    std::map<int, int> length;
    for (const Wire& wire : one.layout.wires)
        if (wire.from.y == wire.to.y && groups.count(group_of(one, joined, wire.line)) != 0)
            length[wire.from.y] += std::abs(wire.to.x - wire.from.x);
    std::pair<int, int> best{0, 0};
    for (const auto& [y, sum] : length)
        if (sum > best.second) best = {y, sum};
    return best;
}

// The two working lines: long, level, one above the other. A quarter may be symbols in the line.
TEST(Layouts, WorkingLinesRunLevelFromPumpToMotorOneAboveTheOther) {
    int loops = 0;
    each_layout([&](const LaidOut& one) {
        for (const LoopInfo& loop : one.structure.loops) {
            std::vector<const SideInfo*> main;
            for (const SideInfo& side : loop.sides)
                if (side.role == SideRole::main) main.push_back(&side);
            if (main.size() != 2) continue;
            ++loops;
            const auto [upper, upper_length] = level_of(one, *main[0]);
            const auto [lower, lower_length] = level_of(one, *main[1]);
            EXPECT_LT(upper, lower) << loop.id;
            const int apart =
                place_of(one, loop.actuators.front()).x - place_of(one, loop.pumps.front()).x;
            EXPECT_GE(upper_length * 4, apart * 3) << loop.id;
            EXPECT_GE(lower_length * 4, apart * 3) << loop.id;
        }
    });
    EXPECT_GT(loops, 20);
}

bool is_inside(const Circuit& circuit, Index assembly, Index outer) {
    while (assembly != none && assembly != outer) assembly = circuit.assemblies[assembly].parent;
    return assembly == outer;
}

// The mark of the pump's drain hangs beside port B, not in the way of its line: HB has one upright
// run for each of its five ports and none round the mark.
TEST(Layouts, WorkingLinesDoNotStepRoundReservoirMarks) {
    const Circuit circuit = circuit_with(R"(
        <engine id="E1"/><pump id="P1" flow-directions="2" variable="yes" drain="external"/>
        <pump id="P2"/><motor id="M1" drain="external"/><load id="D1"/>
        <shaft id="W1" joins="E1 P1 P2"/><shaft id="W2" joins="M1 D1"/>
        <check-valve id="C1"/><check-valve id="C2"/><relief-valve id="R1"/>
        <relief-valve id="R2"/><relief-valve id="R3"/><filter id="F1"/>
        <reservoir id="T1"><port id="S"/><port id="R"/><port id="D"/></reservoir>
        <line id="S1" joins="T1.S P2.S"/><line id="G1" joins="P2.P R1.P F1.A"/>
        <line id="G2" joins="F1.B C1.A C2.A"/><line id="G3" joins="R1.T T1.R"/>
        <line id="HA" joins="P1.A M1.A R2.P R3.T C1.B"/>
        <line id="HB" joins="P1.B M1.B R3.P R2.T C2.B"/><line id="L1" joins="P1.L M1.L T1.D"/>)");
    const Layout layout = lay_out(circuit, structure_of(circuit), "");
    std::set<int> upright;
    for (const Wire& wire : layout.wires)
        if (circuit.lines[wire.line].path == "HB" && wire.from.x == wire.to.x)
            upright.insert(wire.from.x);
    EXPECT_EQ(upright.size(), 5U);
}

TEST(Layouts, FramesHoldTheirAssemblysPartsAndNoOthers) {
    int framed = 0;
    each_layout([&](const LaidOut& one) {
        for (Index a = 0; a < one.circuit.assemblies.size(); ++a)
            for (const DrawnSymbol& symbol : one.symbols) {
                const Component& component = one.circuit.components[symbol.placed.component];
                const bool own =
                    symbol.placed.port == none && is_inside(one.circuit, component.assembly, a);
                int around = 0;
                for (const FrameBox& frame : one.layout.frames) {
                    if (frame.assembly != a) continue;
                    const Box box = box_of(frame.box.from, frame.box.to);
                    const Box body = body_of(symbol);
                    const bool within = box.left < body.left && body.right < box.right &&
                                        box.top < body.top && body.bottom < box.bottom;
                    if (within) ++around;
                    if (!within) {
                        EXPECT_FALSE(overlap(box, body)) << "a frame cuts " << component.path;
                    }
                }
                EXPECT_EQ(around, own ? 1 : 0) << component.path;
                framed += around;
            }
    });
    EXPECT_GT(framed, 20);
}

// Common practice, no source: what stands in one housing has one boundary.
TEST(Layouts, EveryAssemblyHasOneFrame) {
    int assemblies = 0;
    each_layout([&](const LaidOut& one) {
        std::map<Index, int> frames;
        for (const FrameBox& frame : one.layout.frames) ++frames[frame.assembly];
        for (const auto& [assembly, count] : frames)
            EXPECT_EQ(count, 1) << one.circuit.assemblies[assembly].path;
        assemblies += static_cast<int>(frames.size());
    });
    EXPECT_GT(assemblies, 80);
}

TEST(Layouts, StandInsideTheirSheetsFrame) {
    each_layout([](const LaidOut& one) {
        const SheetSize& size = *find_sheet(one.layout.sheet);
        const double right = (size.width - margin_left - margin) / 0.625;
        const double bottom = (size.height - 2 * margin) / 0.625;
        for (const GridBox& box : ink_of(one.circuit, one.layout)) {
            EXPECT_GE(box.from.x, 0);
            EXPECT_GE(box.from.y, 0);
            EXPECT_LE(box.to.x, right);
            EXPECT_LE(box.to.y, bottom);
        }
    });
}

TEST(Layouts, ComeBackFromTheirTextAsTheyWere) {
    each_layout([](const LaidOut& one) {
        const std::string text = write_layout(one.circuit, one.layout);
        std::string error;
        const std::optional<Layout> read = read_layout(one.circuit, text, error);
        ASSERT_TRUE(read.has_value()) << error;
        EXPECT_EQ(write_layout(one.circuit, *read), text);
        EXPECT_EQ(to_svg(draw(one.circuit, *read, {})), to_svg(draw(one.circuit, one.layout, {})));
    });
}

TEST(Layouts, AreTheSameForTheSameInput) {
    each_layout([](const LaidOut& one) {
        EXPECT_EQ(write_layout(one.circuit, lay_out(one.circuit, one.structure)),
                  write_layout(one.circuit, one.layout));
    });
}

}  // namespace
}  // namespace loopwright::testing
