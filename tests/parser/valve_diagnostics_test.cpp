#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// Directional valves, whose ports and positions come from the file, and other declared ports.

namespace loopwright {
namespace {

using testing::told;

TEST(ValveDiagnostics, NoPositions) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
  </directional-valve>
</circuit>
)"),
              R"(error 2:4-2:21 directional-valve 'V1' has no positions
  expected: a 'position' element for each, one of them with rest="yes"
)");
}

TEST(ValveDiagnostics, NoPortsAndNoPositions) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1"/>
</circuit>
)"),
              R"(error 2:4-2:21 directional-valve 'V1' has no ports
  expected: a 'port' element for each, such as <port id="P"/>
error 2:4-2:21 directional-valve 'V1' has no positions
  expected: a 'position' element for each, one of them with rest="yes"
)");
}

TEST(ValveDiagnostics, NoRestPosition) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="a"/>
    <position id="b" rest="no"/>
  </directional-valve>
</circuit>
)"),
              R"(error 2:4-2:21 directional-valve 'V1' has no rest position
  expected: rest="yes" on the position that it takes by itself
)");
}

TEST(ValveDiagnostics, TwoRestPositions) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="a" rest="yes"/>
    <position id="b" rest="yes"/>
  </directional-valve>
</circuit>
)"),
              R"(error 5:5-5:34 position 'b' is a second rest position of directional-valve 'V1'
  expected: rest="yes" on one position only; 'a' has it
)");
}

// As on drawings: a, 0, b.
TEST(ValveDiagnostics, PositionsMayBeCalledByDigits) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="a"/>
    <position id="0" rest="yes"/>
    <position id="b"/>
  </directional-valve>
</circuit>
)"),
              "");
}

TEST(ValveDiagnostics, IllFormedPositionId) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="rest" rest="yes"/>
    <position id="-a"/>
    <position id="P to A"/>
  </directional-valve>
</circuit>
)"),
              R"(error 5:19-5:21 '-a' is no id
  expected: a letter or digit, then letters, digits, '-' and '_'
error 6:19-6:25 'P to A' is no id
  expected: a letter or digit, then letters, digits, '-' and '_'
)");
}

TEST(ValveDiagnostics, PositionWithoutId) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position rest="yes"/>
  </directional-valve>
</circuit>
)"),
              R"(error 4:6-4:14 this position needs the attribute 'id'
  expected: a letter or digit, then letters, digits, '-' and '_'
)");
}

TEST(ValveDiagnostics, PositionTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="rest" rest="yes"/>
    <position id="a"/>
    <position id="a"/>
  </directional-valve>
</circuit>
)"),
              R"(error 6:19-6:20 the id 'a' is there twice
  expected: an id of its own; 'a' is a position in line 5 of the file
)");
}

// Not also: no rest position.
TEST(ValveDiagnostics, RestIsMisspelt) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="a" rest="yess"/>
  </directional-valve>
</circuit>
)"),
              R"(error 4:28-4:32 rest cannot be 'yess'
  expected: yes or no
  means: yes
)");
}

TEST(ValveDiagnostics, PathToNoPort) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="rest" rest="yes"/>
    <position id="a"><path from="P" to="C"/><path from="p" to="T"/></position>
  </directional-valve>
</circuit>
)"),
              R"(error 5:41-5:42 directional-valve 'V1' has no port 'C'
  expected: P, T, A or B
error 5:57-5:58 directional-valve 'V1' has no port 'p'
  expected: P, T, A or B
  means: P
)");
}

TEST(ValveDiagnostics, PathOfAValveWithoutPorts) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <position id="a" rest="yes"><path from="P" to="A"/></position>
  </directional-valve>
</circuit>
)"),
              R"(error 2:4-2:21 directional-valve 'V1' has no ports
  expected: a 'port' element for each, such as <port id="P"/>
)");
}

TEST(ValveDiagnostics, PathWithoutEnds) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="rest" rest="yes"/>
    <position id="a"><path/></position>
  </directional-valve>
</circuit>
)"),
              R"(error 5:23-5:27 this path needs the attribute 'from'
  expected: a port of the valve
error 5:23-5:27 this path needs the attribute 'to'
  expected: a port of the valve
)");
}

TEST(ValveDiagnostics, PathToItself) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="rest" rest="yes"/>
    <position id="a"><path from="P" to="P"/></position>
  </directional-valve>
</circuit>
)"),
              R"(error 5:22-5:45 the path leads from a port to itself
  expected: two ports of the valve
)");
}

TEST(ValveDiagnostics, ThrottledIsYesOrNo) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="rest" rest="yes"/>
    <position id="a"><path from="P" to="A" throttled="2 mm"/></position>
  </directional-valve>
</circuit>
)"),
              R"(error 5:55-5:59 throttled cannot be '2 mm'
  expected: yes or no
)");
}

TEST(ValveDiagnostics, UnknownState) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="rest" rest="yes"/>
    <position id="a" in="drive-forward drive-foward reverse"/>
  </directional-valve>
</circuit>
)"),
              R"(error 5:40-5:52 'drive-foward' is no state
  expected: neutral, drive-forward, drive-reverse, overrun-forward, overrun-reverse, hold, lost-signal, stopped or towing
  means: drive-forward
error 5:53-5:60 'reverse' is no state
  expected: neutral, drive-forward, drive-reverse, overrun-forward, overrun-reverse, hold, lost-signal, stopped or towing
)");
}

TEST(ValveDiagnostics, PortTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="P"/>
    <position id="rest" rest="yes"/>
  </directional-valve>
</circuit>
)"),
              R"(error 3:43-3:44 the id 'P' is there twice
  expected: an id of its own; 'P' is a port in line 3 of the file
)");
}

// A path may mean it.
TEST(ValveDiagnostics, PortWithoutId) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port/><port id="T"/>
    <position id="rest" rest="yes"/>
    <position id="a"><path from="P" to="T"/></position>
  </directional-valve>
</circuit>
)"),
              R"(error 3:6-3:10 this port needs the attribute 'id'
  expected: a letter, then letters, digits, '-' and '_'
)");
}

TEST(ValveDiagnostics, UnknownElementInAValve) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <positon id="a" rest="yes"/>
  </directional-valve>
</circuit>
)"),
              R"(error 4:6-4:13 'positon' cannot stand in 'directional-valve'
  expected: port, position, table or tolerance
  means: position
)");
}

TEST(ValveDiagnostics, UnknownElementInAPosition) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="rest" rest="yes"/>
    <position id="a"><way from="P" to="A"/></position>
  </directional-valve>
</circuit>
)"),
              R"(error 5:23-5:26 'way' cannot stand in 'position'
  expected: path
)");
}

TEST(ValveDiagnostics, PositionOfAReservoir) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <reservoir id="T1"><position id="a"/></reservoir>
</circuit>
)"),
              R"(error 2:23-2:31 'position' cannot stand in 'reservoir'
  expected: port, table or tolerance
)");
}

TEST(ValveDiagnostics, PositionsMayStandBeforePorts) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <position id="a" rest="yes"><path from="P" to="A"/></position>
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
  </directional-valve>
</circuit>
)"),
              "");
}

TEST(ValveDiagnostics, ReservoirPortTwice) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <reservoir id="T1"><port id="suction"/><port id="suction" level="above"/></reservoir>
</circuit>
)"),
              R"(error 2:52-2:59 the id 'suction' is there twice
  expected: an id of its own; 'suction' is a port in line 2 of the file
)");
}

TEST(ValveDiagnostics, PortOfAValveThatIsNotThere) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1">
    <port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="rest" rest="yes"/>
  </directional-valve>
  <line id="H1" joins="V1.P V1.X"/>
</circuit>
)"),
              R"(error 6:29-6:33 directional-valve 'V1' has no port 'X'
  expected: V1.P, V1.T, V1.A or V1.B
)");
}

}  // namespace
}  // namespace loopwright
