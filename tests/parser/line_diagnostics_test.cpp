#include <string_view>

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// Lines that refer to what is not there, or twice to what can be joined once.

namespace loopwright {
namespace {

using testing::told;

TEST(LineDiagnostics, NoSuchComponent) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A M1.A"/>
</circuit>
)"),
              R"(error 3:29-3:33 there is no 'M1'
  expected: a component of this circuit and its port, such as P1.A
)");
}

TEST(LineDiagnostics, MisspeltComponent) {
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

TEST(LineDiagnostics, NoSuchPort) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev"/>
  <line id="H1" joins="P1.A"/>
</circuit>
)"),
              R"(error 3:24-3:28 pump 'P1' has no port 'A'
  expected: P1.S or P1.P; A is there with flow-directions="2"
)");
}

TEST(LineDiagnostics, PortInSmallLetters) {
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

TEST(LineDiagnostics, NoSuchPortOfAReservoir) {
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

TEST(LineDiagnostics, PortOfAnEngine) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <engine id="E1"/>
  <line id="H1" joins="E1.A"/>
</circuit>
)"),
              R"(error 3:24-3:28 engine 'E1' has no port 'A'
  expected: nothing; an engine has no ports
)");
}

TEST(LineDiagnostics, ReservoirWithoutPorts) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <reservoir id="T1"/>
  <line id="H1" joins="T1.suction"/>
</circuit>
)"),
              R"(error 3:24-3:34 reservoir 'T1' has no port 'suction'
  expected: a 'port' element in 'T1', which declares the port
)");
}

TEST(LineDiagnostics, ComponentInPlaceOfAPort) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev"/>
  <line id="H1" joins="P1"/>
</circuit>
)"),
              R"(error 3:24-3:26 'P1' is a pump, not a port
  expected: P1.S or P1.P
)");
}

TEST(LineDiagnostics, LineInPlaceOfAPort) {
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

TEST(LineDiagnostics, NoNameBeforeThePoint) {
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

TEST(LineDiagnostics, PortsSeparatedByCommas) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A, J1.B"/>
</circuit>
)"),
              R"(error 3:24-3:29 'J1.A,' is no port
  expected: component.port; several are separated by plain blanks alone
  means: J1.A
)");
}

// Without a word it would be a mystery: on paper nothing is wrong.
TEST(LineDiagnostics, PortsSeparatedByOtherThanBlanks) {
    for (const std::string_view other : {",", ";", "\u00A0", "\u2009", ",\u00A0"}) {
        EXPECT_EQ(told(fmt::format(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A{}J1.B"/>
</circuit>
)",
                                   other)),
                  fmt::format(R"(error 3:24-3:{} 'J1.A{}J1.B' is no port
  expected: component.port; several are separated by plain blanks alone
  means: J1.A J1.B
)",
                              other.starts_with(",\u00A0") ? 34 : 33, other));
    }
}

TEST(LineDiagnostics, LineThatJoinsNothing) {
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
TEST(LineDiagnostics, MisspeltJoins) {
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

TEST(LineDiagnostics, PortJoinedTwice) {
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

TEST(LineDiagnostics, PortListedTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <line id="H1" joins="J1.A J1.A"/>
</circuit>
)"),
              R"(error 3:29-3:33 'J1.A' is listed twice in this line
  expected: each port once
)");
}

TEST(LineDiagnostics, EachPlaceInAJoinsOfSeveralLines) {
    EXPECT_EQ(told("<circuit format=\"1\">\n  <junction id=\"J1\"><port id=\"A\"/><port "
                   "id=\"B\"/></junction>\n  <line id=\"H1\" joins=\"J1.A\n      "
                   "M1.A\tM2.B\"/>\n</circuit>\n"),
              R"(error 4:7-4:11 there is no 'M1'
  expected: a component of this circuit and its port, such as P1.A
error 4:12-4:16 there is no 'M2'
  expected: a component of this circuit and its port, such as P1.A
)");
}

TEST(LineDiagnostics, Hoses) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/><port id="B"/></junction>
  <hose id="H1" joins="J1.A J1.B" rating="420 bar" burst-pressure="400 bar"/>
  <hose id="H2" joins="J1.B" min-bend-radius="0 mm"/>
  <line id="H3" joins="H1.A" burst-pressure="400 bar"/>
</circuit>
)"),
              R"(error 3:35-3:51 rating is above burst-pressure: '420 bar' and '400 bar'
  expected: at most 400 bar
error 4:24-4:28 'J1.B' is joined by hose 'H1' already
  expected: one line for each port; 'H1' stands in line 3 of the file
error 4:47-4:51 min-bend-radius is out of range: '0 mm'
  expected: more than 0 mm
error 5:24-5:28 'H1' is a hose and has no ports
  expected: a port of a component or an assembly
error 5:30-5:44 unknown attribute 'burst-pressure' of line
  expected: id, joins, title, bore, length, rating or function
)");
}

}  // namespace
}  // namespace loopwright
