#include <gtest/gtest.h>

#include <loopwright/parser/circuit.h>
#include <loopwright/tests/support/circuit_text.h>

// Shafts that join parts with two named ends: gearboxes and clutches.

namespace loopwright {
namespace {

using testing::circuit_with;
using testing::told;

TEST(ShaftDiagnostics, EndsAreJoined) {
    const Circuit circuit = circuit_with(R"(<engine id="E1"/><gearbox id="G1"/><load id="D1"/>
  <assembly id="U1"><clutch id="K1"/></assembly>
  <shaft id="W1" joins="E1 G1.in"/><shaft id="W2" joins="G1.out U1/K1.out"/>
  <shaft id="W3" joins="U1/K1.in D1"/>)");
    EXPECT_EQ(circuit.components[0].shaft, 0u);
    EXPECT_EQ(circuit.components[0].far_shaft, none);
    EXPECT_EQ(circuit.components[1].shaft, 0u);
    EXPECT_EQ(circuit.components[1].far_shaft, 1u);
    EXPECT_EQ(circuit.components[3].path, "U1/K1");
    EXPECT_EQ(circuit.components[3].shaft, 2u);
    EXPECT_EQ(circuit.components[3].far_shaft, 1u);
    const auto on_second = circuit.components_of(circuit.shafts[1]);
    EXPECT_EQ(std::vector(on_second.begin(), on_second.end()), (std::vector<Index>{1, 3}));
}

TEST(ShaftDiagnostics, NoEndIsNamed) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <engine id="E1"/>
  <gearbox id="G1"/>
  <shaft id="W1" joins="E1 G1"/>
</circuit>
)"),
              R"(error 4:28-4:30 'G1' is a gearbox with two shaft ends
  expected: G1.in or G1.out
)");
}

TEST(ShaftDiagnostics, NoSuchEnd) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <clutch id="K1"/>
  <clutch id="K2"/>
  <shaft id="W1" joins="K1.A K2.Out"/>
  <shaft id="W2" joins="K1. K3.in"/>
</circuit>
)"),
              R"(error 4:25-4:29 clutch 'K1' has no shaft end 'A'
  expected: K1.in or K1.out
error 4:30-4:36 clutch 'K2' has no shaft end 'Out'
  expected: K2.in or K2.out
  means: K2.out
error 5:25-5:28 clutch 'K1' has no shaft end ''
  expected: K1.in or K1.out
error 5:29-5:34 there is no 'K3.in'
  expected: the id of a part of this circuit that turns
)");
}

TEST(ShaftDiagnostics, BothEndsOnOneShaft) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <gearbox id="G1"/>
  <shaft id="W1" joins="G1.out G1.in"/>
</circuit>
)"),
              R"(error 3:32-3:37 both ends of 'G1' are on this shaft
  expected: a shaft of its own for each end
)");
}

TEST(ShaftDiagnostics, EndOnTwoShafts) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <engine id="E1"/>
  <gearbox id="G1"/>
  <shaft id="W1" joins="E1 G1.in"/>
  <shaft id="W2" joins="G1.in G1.out"/>
</circuit>
)"),
              R"(error 5:25-5:30 'G1.in' is on shaft 'W1' already
  expected: one shaft for each shaft end; 'W1' stands in line 4 of the file
)");
}

TEST(ShaftDiagnostics, EndTwiceOnAShaft) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <gearbox id="G1"/>
  <shaft id="W1" joins="G1.in G1.in"/>
</circuit>
)"),
              R"(error 3:31-3:36 'G1.in' is listed twice in this shaft
  expected: each shaft end once
)");
}

// A clutch has a port too; a line joins that, not an end.
TEST(ShaftDiagnostics, EndInALine) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <clutch id="K1" actuation="hydraulic"/>
  <gearbox id="G1"/>
  <line id="H1" joins="K1.in G1.in"/>
</circuit>
)"),
              R"(error 4:24-4:29 clutch 'K1' has no port 'in'
  expected: K1.Z
error 4:30-4:35 gearbox 'G1' has no port 'in'
  expected: nothing; a gearbox has no ports
)");
}

}  // namespace
}  // namespace loopwright
