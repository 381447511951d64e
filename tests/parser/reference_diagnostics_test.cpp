#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// Lines, shafts and assemblies that refer to what is not there, or twice to what can be joined
// once.

namespace loopwright {
namespace {

std::string told(std::string_view text) {
    return testing::described(read_circuit_text(std::string(text), "test.xml"));
}

TEST(ReferenceDiagnostics, NoSuchComponent) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A M1.A"/>
</circuit>
)"),
              R"(error 3:29-3:33 there is no 'M1'
  expected: a component of this circuit and its port, such as P1.A
)");
}

TEST(ReferenceDiagnostics, MisspeltComponent) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="charge-pump" displacement="18 cm3/rev"/>
  <line id="H1" joins="charge-pmup.P"/>
</circuit>
)"),
              R"(error 3:24-3:37 there is no 'charge-pmup'
  expected: a component of this circuit and its port, such as P1.A
  means: charge-pump.P
)");
}

TEST(ReferenceDiagnostics, NoSuchPort) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev"/>
  <line id="H1" joins="P1.A"/>
</circuit>
)"),
              R"(error 3:24-3:28 pump 'P1' has no port 'A'
  expected: P1.S or P1.P; A is there with flow-directions="2"
)");
}

TEST(ReferenceDiagnostics, PortInSmallLetters) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev"/>
  <line id="H1" joins="P1.p"/>
</circuit>
)"),
              R"(error 3:24-3:28 pump 'P1' has no port 'p'
  expected: P1.S or P1.P
  means: P1.P
)");
}

TEST(ReferenceDiagnostics, NoSuchPortOfAReservoir) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <reservoir id="T1"><port id="suction"/><port id="return"/></reservoir>
  <line id="H1" joins="T1.sucton"/>
</circuit>
)"),
              R"(error 3:24-3:33 reservoir 'T1' has no port 'sucton'
  expected: T1.suction or T1.return
  means: T1.suction
)");
}

TEST(ReferenceDiagnostics, PortOfAnEngine) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <engine id="E1"/>
  <line id="H1" joins="E1.A"/>
</circuit>
)"),
              R"(error 3:24-3:28 engine 'E1' has no port 'A'
  expected: nothing; an engine has no ports
)");
}

TEST(ReferenceDiagnostics, ReservoirWithoutPorts) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <reservoir id="T1"/>
  <line id="H1" joins="T1.suction"/>
</circuit>
)"),
              R"(error 3:24-3:34 reservoir 'T1' has no port 'suction'
  expected: a 'port' element in 'T1', which declares the port
)");
}

TEST(ReferenceDiagnostics, ComponentInPlaceOfAPort) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev"/>
  <line id="H1" joins="P1"/>
</circuit>
)"),
              R"(error 3:24-3:26 'P1' is a pump, not a port
  expected: P1.S or P1.P
)");
}

TEST(ReferenceDiagnostics, LineInPlaceOfAPort) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A"/>
  <line id="H2" joins="H1.A H1"/>
</circuit>
)"),
              R"(error 4:24-4:28 'H1' is a line and has no ports
  expected: a port of a component or an assembly
error 4:29-4:31 'H1' is a line and has no ports
  expected: a port of a component or an assembly
)");
}

TEST(ReferenceDiagnostics, NoNameBeforeThePoint) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins=".A J1."/>
</circuit>
)"),
              R"(error 3:24-3:26 '.A' names no component
  expected: a component of this circuit and its port, such as P1.A
error 3:27-3:30 'J1.' names no port
  expected: J1.A or J1.B
)");
}

TEST(ReferenceDiagnostics, PortsSeparatedByCommas) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A, J1.B"/>
</circuit>
)"),
              R"(error 3:24-3:29 'J1.A,' is no port
  expected: component.port; several are separated by blanks alone
  means: J1.A
)");
}

TEST(ReferenceDiagnostics, LineThatJoinsNothing) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <line id="H1" joins=""/>
  <line id="H2" joins="  "/>
  <line id="H3"/>
</circuit>
)"),
              R"(error 2:17-2:25 line 'H1' joins nothing
  expected: ports as component.port, separated by blanks
error 3:17-3:27 line 'H2' joins nothing
  expected: ports as component.port, separated by blanks
error 4:4-4:8 line 'H3' needs the attribute 'joins'
  expected: ports as component.port, separated by blanks
)");
}

// One message: the ports under the wrong name are not looked at.
TEST(ReferenceDiagnostics, MisspeltJoins) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" jions="J1.A J1.X"/>
</circuit>
)"),
              R"(error 3:17-3:22 unknown attribute 'jions' of line
  expected: id, joins, title, bore, length, rating or function
  means: joins
)");
}

TEST(ReferenceDiagnostics, PortJoinedTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A"/>
  <line id="H2" joins="J1.B J1.A"/>
</circuit>
)"),
              R"(error 4:29-4:33 'J1.A' is joined by line 'H1' already
  expected: one line for each port; 'H1' stands in line 3 of the file
)");
}

TEST(ReferenceDiagnostics, PortListedTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A J1.A"/>
</circuit>
)"),
              R"(error 3:29-3:33 'J1.A' is listed twice in this line
  expected: each port once
)");
}

TEST(ReferenceDiagnostics, EachPlaceInAJoinsOfSeveralLines) {
    EXPECT_EQ(told("<circuit format=\"1\">\n  <junction id=\"J1\"><port id=\"A\"/><port "
                   "id=\"B\"/></junction>\n  <line id=\"H1\" joins=\"J1.A\n      "
                   "M1.A\tM2.B\"/>\n</circuit>\n"),
              R"(error 4:7-4:11 there is no 'M1'
  expected: a component of this circuit and its port, such as P1.A
error 4:12-4:16 there is no 'M2'
  expected: a component of this circuit and its port, such as P1.A
)");
}

TEST(ReferenceDiagnostics, InnerPortFromOutside) {
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

TEST(ReferenceDiagnostics, NothingInsideAComponent) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1/X.A"/>
</circuit>
)"),
              R"(error 3:24-3:30 'J1' is a junction; nothing stands inside it
  expected: component.port
)");
}

TEST(ReferenceDiagnostics, UndeclaredPortOfAnAssembly) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><check-valve id="C2"/><port id="A" of="C1.A"/></assembly>
  <line id="H1" joins="U1.A U1.B"/>
</circuit>
)"),
              R"(error 3:29-3:33 assembly 'U1' has no port 'B'
  expected: U1.A
)");
}

TEST(ReferenceDiagnostics, AssemblyInPlaceOfAPort) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><check-valve id="C2"/><port id="A" of="C1.A"/></assembly>
  <line id="H1" joins="U1"/>
</circuit>
)"),
              R"(error 3:24-3:26 'U1' is an assembly, not a port
  expected: U1.A
)");
}

TEST(ReferenceDiagnostics, AssemblyWithoutPorts) {
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
TEST(ReferenceDiagnostics, AssemblyPortOfNothing) {
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

TEST(ReferenceDiagnostics, AssemblyPortWithoutOf) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><port id="A"/></assembly>
  <line id="H1" joins="U1.A"/>
</circuit>
)"),
              R"(error 2:44-2:48 port 'A' needs the attribute 'of'
  expected: a port inside, such as P1.A
)");
}

TEST(ReferenceDiagnostics, AssemblyPortTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><port id="A" of="C1.A"/><port id="A" of="C1.B"/></assembly>
</circuit>
)"),
              R"(error 2:77-2:78 the port 'A' is there twice
  expected: an id of its own for each port of the assembly
)");
}

TEST(ReferenceDiagnostics, InnerPortDeclaredTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><check-valve id="C1"/><port id="A" of="C1.A"/><port id="B" of="C1.A"/></assembly>
</circuit>
)"),
              R"(error 2:84-2:88 'C1.A' is the assembly's port 'A' already
  expected: each inner port declared once
)");
}

// C1 stands outside, C9 inside.
TEST(ReferenceDiagnostics, IdsOfAnAssemblyAreItsOwn) {
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
TEST(ReferenceDiagnostics, AssemblyPortJoinedTwice) {
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

TEST(ReferenceDiagnostics, ShaftOfNothing) {
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

TEST(ReferenceDiagnostics, ShaftWithoutSuchAPart) {
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

TEST(ReferenceDiagnostics, ShaftOfWhatDoesNotTurn) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-valve id="C1"/>
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A"/>
  <shaft id="W1" joins="C1 H1 W1"/>
</circuit>
)"),
              R"(error 5:25-5:27 'C1' is a check-valve and has no shaft
  expected: what turns: engine, load, motor or pump
error 5:28-5:30 'H1' is a line
  expected: what turns: engine, load, motor or pump
error 5:31-5:33 'W1' is a shaft
  expected: what turns: engine, load, motor or pump
)");
}

TEST(ReferenceDiagnostics, ShaftWithAPort) {
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

TEST(ReferenceDiagnostics, ShaftSeparatedByCommas) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <engine id="E1"/>
  <pump id="P1" displacement="18 cm3/rev"/>
  <shaft id="W1" joins="E1, P1"/>
</circuit>
)"),
              R"(error 4:25-4:28 'E1,' is no part
  expected: ids, separated by blanks alone
)");
}

TEST(ReferenceDiagnostics, PartOnTwoShafts) {
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

TEST(ReferenceDiagnostics, PartTwiceOnAShaft) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <engine id="E1"/>
  <shaft id="W1" joins="E1 E1"/>
</circuit>
)"),
              R"(error 3:28-3:30 'E1' is listed twice in this shaft
  expected: each part once
)");
}

TEST(ReferenceDiagnostics, ShaftOfAnAssembly) {
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
TEST(ReferenceDiagnostics, ShaftIntoAnAssembly) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <assembly id="U1"><pump id="P1" displacement="18 cm3/rev"/><engine id="E1"/><shaft id="W1" joins="E1 P1"/></assembly>
  <shaft id="W1" joins="U1/P1"/>
</circuit>
)"),
              R"(error 3:25-3:30 'U1/P1' is on shaft 'U1/W1' already
  expected: one shaft for each part; 'U1/W1' stands in line 2 of the file
)");
}

TEST(ReferenceDiagnostics, PortOfTheDrainIsThereWhereTheFileSaysSo) {
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
