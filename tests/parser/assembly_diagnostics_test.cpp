#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// Ports of assemblies, and what shafts join.

namespace loopwright {
namespace {

using testing::told;

TEST(AssemblyDiagnostics, InnerPortFromOutside) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><check-valve id="C2"/><port id="A" of="C1.A"/></assembly>
  <line id="H1" joins="U1/C1.A U1/C1.B U2/C1.A"/>
</circuit>
)"),
              R"(error 3:24-3:31 'U1/C1.A' is inside assembly 'U1'
  expected: a port that the assembly declares: U1.A
  means: U1.A
error 3:32-3:39 'U1/C1.B' is inside assembly 'U1'
  expected: a port that the assembly declares: U1.A
error 3:40-3:47 there is no 'U2'
  expected: a component of this circuit and its port, such as P1.A
)");
}

TEST(AssemblyDiagnostics, NothingInsideAComponent) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1/X.A"/>
</circuit>
)"),
              R"(error 3:24-3:30 'J1' is a junction; nothing stands inside it
  expected: component.port
)");
}

TEST(AssemblyDiagnostics, UndeclaredPortOfAnAssembly) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><check-valve id="C2"/><port id="A" of="C1.A"/></assembly>
  <line id="H1" joins="U1.A U1.B"/>
</circuit>
)"),
              R"(error 3:29-3:33 assembly 'U1' has no port 'B'
  expected: U1.A
)");
}

TEST(AssemblyDiagnostics, AssemblyInPlaceOfAPort) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><check-valve id="C2"/><port id="A" of="C1.A"/></assembly>
  <line id="H1" joins="U1"/>
</circuit>
)"),
              R"(error 3:24-3:26 'U1' is an assembly, not a port
  expected: U1.A
)");
}

TEST(AssemblyDiagnostics, AssemblyWithoutPorts) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><load id="D1"/></assembly>
  <line id="H1" joins="U1.A"/>
</circuit>
)"),
              R"(error 3:24-3:28 assembly 'U1' has no port 'A'
  expected: a 'port' element in 'U1', which declares the port
)");
}

// What joins the port from outside is let pass.
TEST(AssemblyDiagnostics, AssemblyPortOfNothing) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><port id="A" of="C2.A"/><port id="B" of="C1.P"/><port id="C" of=""/></assembly>
  <line id="H1" joins="U1.A U1.B U1.C"/>
</circuit>
)"),
              R"(error 2:60-2:64 there is no 'C2'
  expected: a component of assembly 'U1' and its port, such as P1.A
error 2:84-2:88 check-valve 'C1' has no port 'P'
  expected: C1.A or C1.B
error 2:104-2:109 no port is named
  expected: a component of assembly 'U1' and its port, such as P1.A
)");
}

TEST(AssemblyDiagnostics, AssemblyPortWithoutOf) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><port id="A"/></assembly>
  <line id="H1" joins="U1.A"/>
</circuit>
)"),
              R"(error 2:44-2:48 port 'A' needs the attribute 'of'
  expected: a port inside, such as P1.A
)");
}

TEST(AssemblyDiagnostics, AssemblyPortTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><port id="A" of="C1.A"/><port id="A" of="C1.B"/></assembly>
</circuit>
)"),
              R"(error 2:77-2:78 the port 'A' is there twice
  expected: an id of its own for each port of the assembly
)");
}

TEST(AssemblyDiagnostics, InnerPortDeclaredTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><port id="A" of="C1.A"/><port id="B" of="C1.A"/></assembly>
</circuit>
)"),
              R"(error 2:84-2:88 'C1.A' is the assembly's port 'A' already
  expected: each inner port declared once
)");
}

// C1 stands outside, C9 inside.
TEST(AssemblyDiagnostics, IdsOfAnAssemblyAreItsOwn) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-valve id="C1"/>
  <assembly id="U1"><check-valve id="C9"/><line id="H1" joins="C1.A"/></assembly>
  <line id="H1" joins="C9.A"/>
</circuit>
)"),
              R"(error 3:64-3:68 there is no 'C1'
  expected: a component of assembly 'U1' and its port, such as P1.A
error 4:24-4:28 there is no 'C9'
  expected: a component of this circuit and its port, such as P1.A
)");
}

// Once from inside and once from outside is right.
TEST(AssemblyDiagnostics, AssemblyPortJoinedTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><port id="A" of="C1.A"/><line id="H1" joins="C1.A"/></assembly>
  <line id="H1" joins="U1.A"/>
  <line id="H2" joins="U1.A"/>
</circuit>
)"),
              R"(error 4:24-4:28 'U1.A' is joined by line 'H1' already
  expected: one line for each port; 'H1' stands in line 3 of the file
)");
}

TEST(AssemblyDiagnostics, ShaftOfNothing) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <shaft id="W1" joins=""/>
  <shaft id="W2"/>
</circuit>
)"),
              R"(error 2:18-2:26 shaft 'W1' joins nothing
  expected: ids of what turns with it, separated by blanks
error 3:4-3:9 shaft 'W2' needs the attribute 'joins'
  expected: ids of what turns as one, separated by blanks
)");
}

TEST(AssemblyDiagnostics, ShaftWithoutSuchAPart) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <engine id="E1"/>
  <shaft id="W1" joins="E1 P1 U1/P1"/>
</circuit>
)"),
              R"(error 3:28-3:30 there is no 'P1'
  expected: the id of a part of this circuit that turns
error 3:31-3:36 there is no 'U1'
  expected: the id of a part of this circuit that turns
)");
}

TEST(AssemblyDiagnostics, ShaftOfWhatDoesNotTurn) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-valve id="C1"/>
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A"/>
  <shaft id="W1" joins="C1 H1 W1"/>
</circuit>
)"),
              R"(error 5:25-5:27 'C1' is a check-valve and has no shaft
  expected: a component that turns, such as a motor or an engine
error 5:28-5:30 'H1' is a line
  expected: a component that turns, such as a motor or an engine
error 5:31-5:33 'W1' is a shaft
  expected: a component that turns, such as a motor or an engine
)");
}

TEST(AssemblyDiagnostics, ShaftWithAPort) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev"/>
  <shaft id="W1" joins="P1.S"/>
</circuit>
)"),
              R"(error 3:25-3:29 'P1.S' is no part
  expected: the part that turns, without a port
  means: P1
)");
}

TEST(AssemblyDiagnostics, ShaftSeparatedByCommas) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <engine id="E1"/>
  <pump id="P1" displacement="18 cm3/rev"/>
  <shaft id="W1" joins="E1, P1"/>
</circuit>
)"),
              R"(error 4:25-4:28 'E1,' is no part
  expected: ids, separated by plain blanks alone
  means: E1
)");
}

TEST(AssemblyDiagnostics, PartOnTwoShafts) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <engine id="E1"/>
  <pump id="P1" displacement="18 cm3/rev"/>
  <shaft id="W1" joins="E1 P1"/>
  <shaft id="W2" joins="P1"/>
</circuit>
)"),
              R"(error 5:25-5:27 'P1' is on shaft 'W1' already
  expected: one shaft for each part; 'W1' stands in line 4 of the file
)");
}

TEST(AssemblyDiagnostics, PartTwiceOnAShaft) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <engine id="E1"/>
  <shaft id="W1" joins="E1 E1"/>
</circuit>
)"),
              R"(error 3:28-3:30 'E1' is listed twice in this shaft
  expected: each part once
)");
}

TEST(AssemblyDiagnostics, ShaftOfAnAssembly) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><pump id="P1" displacement="18 cm3/rev"/></assembly>
  <shaft id="W1" joins="U1 U1/P2"/>
</circuit>
)"),
              R"(error 3:25-3:27 'U1' is an assembly
  expected: a part inside, written U1/id
error 3:28-3:33 there is no 'U1/P2'
  expected: the id of a part, behind the ids of the assemblies around it
)");
}

// A part inside may be on a shaft inside already.
TEST(AssemblyDiagnostics, ShaftIntoAnAssembly) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><pump id="P1" displacement="18 cm3/rev"/><engine id="E1"/><shaft id="W1" joins="E1 P1"/></assembly>
  <shaft id="W1" joins="U1/P1"/>
</circuit>
)"),
              R"(error 3:25-3:30 'U1/P1' is on shaft 'U1/W1' already
  expected: one shaft for each part; 'U1/W1' stands in line 2 of the file
)");
}

TEST(AssemblyDiagnostics, PortOfTheDrainIsThereWhereTheFileSaysSo) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <motor id="M1" displacement="80 cm3/rev"/>
  <motor id="M2" displacement="80 cm3/rev" drain="external"/>
  <motor id="M3" displacement="80 cm3/rev" drain="external" case-ports="2"/>
  <line id="L1" joins="M1.L M2.L M3.L M3.L2"/>
</circuit>
)"),
              R"(error 5:24-5:28 motor 'M1' has no port 'L'
  expected: M1.A or M1.B; L is there with drain="external" and case-ports="1"
error 5:34-5:38 motor 'M3' has no port 'L'
  expected: M3.A, M3.B, M3.L1 or M3.L2; L is there with drain="external" and case-ports="1"
)");
}

}  // namespace
}  // namespace loopwright
