// How what turns stands on the sheet: in line on the shaft's axis, between what it joins (recipe
// SH1 and the drawing conventions: prime mover left, load right).

#include <gtest/gtest.h>

#include <algorithm>

#include <loopwright/render/nets.h>
#include <loopwright/tests/render/laid_out.h>
#include <loopwright/tests/support/circuit_text.h>

namespace loopwright::testing {
namespace {

const LaidOut& named(const std::string& name) {
    const auto& all = laid_out();
    return *std::find_if(all.begin(), all.end(),
                         [&name](const LaidOut& one) { return one.name == name; });
}

const DrawnSymbol& symbol(const LaidOut& one, std::string_view path) {
    return *std::find_if(one.symbols.begin(), one.symbols.end(), [&](const DrawnSymbol& s) {
        return s.placed.port == none && one.circuit.components[s.placed.component].path == path;
    });
}

/// Left to right on one level.
void expect_in_line(const LaidOut& one, const std::vector<std::string>& paths) {
    for (std::size_t i = 1; i < paths.size(); ++i) {
        const GridPoint before = symbol(one, paths[i - 1]).placed.at;
        const GridPoint own = symbol(one, paths[i]).placed.at;
        EXPECT_LT(before.x, own.x) << paths[i - 1] << " and " << paths[i];
        EXPECT_EQ(before.y, own.y) << paths[i - 1] << " and " << paths[i];
    }
}

TEST(TurningLayouts, StandOnTheAxisBetweenWhatTheyJoin) {
    expect_in_line(named("clutch, gearboxes and a brake"), {"E1", "K2", "G1", "P1", "P2"});
    expect_in_line(named("clutch, gearboxes and a brake"), {"M1", "B1", "G2", "D1"});
    expect_in_line(named("pump/motor units"), {"U2", "K1", "B2", "G1", "D1"});
    expect_in_line(named("a cylinder in a loop"), {"A1", "D1"});
    expect_in_line(named("two loops behind gearboxes"), {"GA", "P1"});
    expect_in_line(named("two loops behind gearboxes"), {"GB", "P2"});
}

TEST(TurningLayouts, EachMotorHasItsOwnInLine) {
    const LaidOut& one = named("two motors with brakes");
    expect_in_line(one, {"M1", "B1", "G1", "D1"});
    expect_in_line(one, {"M2", "B2", "G2", "D2"});
    EXPECT_NE(symbol(one, "M1").placed.at.y, symbol(one, "M2").placed.at.y);
    // G2's end out looks at the motor.
    EXPECT_FALSE(symbol(one, "G1").placed.attitude.mirrored);
    EXPECT_TRUE(symbol(one, "G2").placed.attitude.mirrored);
}

/// A straight shaft where everything on it is in line.
TEST(TurningLayouts, ShaftsInLineAreStraight) {
    const LaidOut& one = named("clutch, gearboxes and a brake");
    for (const ShaftRun& run : one.layout.shafts) EXPECT_EQ(run.from.y, run.to.y);
    EXPECT_EQ(one.layout.shafts.size(), 7u) << "five shafts, two of them through a machine";
}

/// Whether the line H is dashed that joins these ports.
bool dashed(const std::string& joins) {
    const Circuit circuit = circuit_with(
        R"(<brake id="B1"/><brake id="B2"/><pump id="P1"/><check-valve id="C1"/><filter id="F1"/>
        <motor id="M1" variable="yes" pilot-ports="1" drain="external"/>
        <junction id="J1"><port id="a"/><port id="b"/></junction><line id="H" joins=")" +
        joins + "\"/>");
    return is_dashed(circuit, 0);
}

// L2: a pilot line is dashed; what carries flow is not, whatever pilots hang on it.
TEST(TurningLayouts, PilotLinesAreDashed) {
    EXPECT_TRUE(dashed("J1.a B1.Z"));
    EXPECT_TRUE(dashed("J1.a B1.Z B2.Z M1.X"));
    EXPECT_TRUE(dashed("F1.B M1.X"));
    EXPECT_FALSE(dashed("P1.P B1.Z"));
    EXPECT_FALSE(dashed("F1.B C1.A B1.Z"));
    EXPECT_FALSE(dashed("M1.A B1.Z"));
    EXPECT_TRUE(dashed("M1.L J1.a"));
    EXPECT_FALSE(dashed("J1.a J1.b"));
}

}  // namespace
}  // namespace loopwright::testing
