// What a prime mover turns, through gearboxes and clutches, and what that makes of a pump/motor
// unit and of a hand pump. What is expected follows by hand from the rule table.
#include <gtest/gtest.h>

#include <loopwright/graph/flow_graph.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>

namespace loopwright {
namespace {

using testing::circuit_with;
using testing::structure_text;

/// Paths of the components that a prime mover turns, in file order.
std::string turned(const std::string& parts) {
    const Circuit circuit = circuit_with(parts);
    const FlowGraph graph(circuit);
    std::string text;
    for (Index c = 0; c < circuit.components.size(); ++c)
        if (graph.turned(c)) text += std::string(circuit.components[c].path) + ' ';
    return text;
}

TEST(Turned, ByAnyPrimeMoverOnTheShaft) {
    for (const char* mover : {"engine", "electric-motor"})
        EXPECT_EQ(turned("<" + std::string(mover) + R"( id="E1"/><pump id="P1"/><pump id="P2"/>
            <shaft id="W1" joins="E1 P1"/><shaft id="W2" joins="P2"/>)"),
                  "E1 P1 ");
}

TEST(Turned, ThroughGearboxesEitherWay) {
    const std::string parts = R"(<pump id="P1"/><gearbox id="G1"/><engine id="E1"/>
        <gearbox id="G2"/><pump id="P2"/>)";
    EXPECT_EQ(turned(parts + R"(<shaft id="W1" joins="P1 G1.out"/>
        <shaft id="W2" joins="G1.in E1 G2.out"/><shaft id="W3" joins="G2.in P2"/>)"),
              "P1 G1 E1 G2 P2 ");
    // The same without G2's end on the engine's shaft.
    EXPECT_EQ(turned(parts + R"(<shaft id="W1" joins="P1 G1.out"/>
        <shaft id="W2" joins="G1.in E1"/><shaft id="W3" joins="G2.in P2"/>)"),
              "P1 G1 E1 ");
}

TEST(Turned, ThroughAnEngagedClutchOnly) {
    const auto with = [](const char* engaged) {
        return turned(std::string(R"(<engine id="E1"/><clutch id="K1" engaged=")") + engaged +
                      R"("/><gearbox id="G1"/><pump id="P1"/><shaft id="W1" joins="E1 K1.in"/>
                      <shaft id="W2" joins="K1.out G1.in"/><shaft id="W3" joins="G1.out P1"/>)");
    };
    EXPECT_EQ(with("yes"), "E1 K1 G1 P1 ");
    EXPECT_EQ(with("no"), "E1 K1 ");
}

/// Two units on the same two lines, and what turns them.
std::string units(const std::string& more) {
    return structure_text(circuit_with(R"(<pump-motor id="U1"/><pump-motor id="U2"/>
        <line id="HA" joins="U1.A U2.A"/><line id="HB" joins="U1.B U2.B"/>)" +
                                       more));
}

TEST(PumpMotor, IsAPumpWhereAPrimeMoverTurnsIt) {
    EXPECT_EQ(units(R"(<engine id="E1"/><shaft id="W1" joins="E1 U1"/>)"),
              "loop:U1 U1 : U2\n  side:U1.A main\n  side:U1.B main\n");
    EXPECT_EQ(units(R"(<engine id="E1"/><shaft id="W1" joins="E1 U2"/>)"),
              "loop:U2 U2 : U1\n  side:U2.A main\n  side:U2.B main\n");
    // With nothing that turns one there are two actuators and no loop.
    EXPECT_EQ(units(R"(<load id="D1"/><shaft id="W1" joins="D1 U1"/>)"), "open:U1 : U1 U2\n");
    EXPECT_EQ(units(R"(<engine id="E1"/><clutch id="K1" engaged="no"/>
        <shaft id="W1" joins="E1 K1.in"/><shaft id="W2" joins="K1.out U1"/>)"),
              "open:U1 : U1 U2\n");
}

// Worked by hand in towing only: it makes no loop and is no charge source.
TEST(HandPump, MakesNoLoop) {
    EXPECT_EQ(structure_text(circuit_with(R"(<hand-pump id="P1"/><motor id="M1"/>
        <line id="HA" joins="P1.P M1.A"/><line id="HB" joins="P1.S M1.B"/>)")),
              "open:P1 P1 : M1\n");
    EXPECT_EQ(structure_text(circuit_with(R"(<engine id="E1"/><pump id="P1"/><motor id="M1"/>
        <shaft id="W1" joins="E1 P1"/>
        <line id="HA" joins="P1.P M1.A"/><line id="HB" joins="P1.S M1.B"/>)"))
                  .substr(0, 16),
              "loop:P1 P1 : M1\n");
}

TEST(Cylinder, IsAnActuatorOfALoop) {
    const auto loop = [](const char* kind) {
        return structure_text(circuit_with(
            std::string(R"(<engine id="E1"/><pump id="P1" flow-directions="2"/><)") + kind +
            R"( id="M1"/><shaft id="W1" joins="E1 P1"/>
            <line id="HA" joins="P1.A M1.A"/><line id="HB" joins="P1.B M1.B"/>)"));
    };
    for (const char* kind : {"cylinder", "semi-rotary-actuator", "pump-motor"})
        EXPECT_EQ(loop(kind), loop("motor")) << kind;
}

}  // namespace
}  // namespace loopwright
