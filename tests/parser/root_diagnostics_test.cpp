#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// The root element, and places in texts of every dress.

namespace loopwright {
namespace {

using testing::told;

TEST(RootDiagnostics, FormatMissing) {
    EXPECT_EQ(told(R"(<circuit>
  <load id="D1" x="y"/>
</circuit>
)"),
              R"(error 1:2-1:9 this circuit needs the attribute 'format'
  expected: format="1"
error 2:17-2:18 unknown attribute 'x' of load
  expected: torque, overrunning, overrunning-sense, force, inertia, breakaway-torque, max-speed, vehicle, mass, wheel-radius, grade, rolling-resistance, adhesion, driven-weight, id, title or designation
)");
}

// What another format may say is not judged.
TEST(RootDiagnostics, OtherFormat) {
    EXPECT_EQ(told(R"(<circuit format="2">
  <pipe/>
</circuit>
)"),
              R"(error 1:18-1:19 format '2' is not known
  expected: format="1"
  means: 1
)");
}

TEST(RootDiagnostics, OtherRoot) {
    EXPECT_EQ(told(R"(<system format="1"/>
)"),
              R"(error 1:2-1:8 the root element is 'system'
  expected: 'circuit'
  means: circuit
)");
}

TEST(RootDiagnostics, AssemblyAsRoot) {
    EXPECT_EQ(told(R"(<assembly format="1"/>
)"),
              R"(error 1:2-1:10 the root element is 'assembly'
  expected: 'circuit'; a file with an assembly is brought in by 'use'
  means: circuit
)");
}

TEST(RootDiagnostics, UnknownAttributeOfTheCircuit) {
    EXPECT_EQ(told(R"(<circuit format="1" titel="Drive"/>
)"),
              R"(error 1:21-1:26 unknown attribute 'titel' of circuit
  expected: format, title, drawing, revision, date, owner, creator or approver
  means: title
)");
}

TEST(RootDiagnostics, SchemaHintsOfEditorsAreTaken) {
    EXPECT_EQ(
        told(
            R"(<circuit format="1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:noNamespaceSchemaLocation="circuit.xsd"/>
)"),
        "");
}

TEST(RootDiagnostics, SchemaHintsAtTheRootOnly) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <load id="D1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"/>
</circuit>
)"),
              R"(error 2:17-2:26 unknown attribute 'xmlns:xsi' of load
  expected: torque, overrunning, overrunning-sense, force, inertia, breakaway-torque, max-speed, vehicle, mass, wheel-radius, grade, rolling-resistance, adhesion, driven-weight, id, title or designation
)");
}

TEST(RootDiagnostics, QuotedTextIsClipped) {
    EXPECT_EQ(
        told(R"(<circuit format="1">
  <relief-valve id="R1" setting="xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx"/>
</circuit>
)"),
        R"(error 2:34-2:135 setting: 'xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx...' is no quantity
  expected: a pressure such as 24 bar
)");
}

// The whole value is underlined.
TEST(RootDiagnostics, PlaceOfAValueWithReferences) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="24&#32;baar"/>
</circuit>
)"),
              R"(error 2:34-2:45 setting: unknown unit 'baar'
  expected: a pressure such as 24 bar
  means: 24 bar
)");
}

TEST(RootDiagnostics, PlaceInCrLfText) {
    EXPECT_EQ(told("<circuit format=\"1\">\r\n  <load id=\"D1\"\r\n        "
                   "colour=\"red\"/>\r\n</circuit>\r\n"),
              R"(error 3:9-3:15 unknown attribute 'colour' of load
  expected: torque, overrunning, overrunning-sense, force, inertia, breakaway-torque, max-speed, vehicle, mass, wheel-radius, grade, rolling-resistance, adhesion, driven-weight, id, title or designation
)");
}

TEST(RootDiagnostics, PlaceBehindAByteOrderMark) {
    EXPECT_EQ(told("\xEF\xBB\xBF<circuit format=\"1\"><load id=\"D1\" colour=\"red\"/></circuit>"),
              R"(error 1:35-1:41 unknown attribute 'colour' of load
  expected: torque, overrunning, overrunning-sense, force, inertia, breakaway-torque, max-speed, vehicle, mass, wheel-radius, grade, rolling-resistance, adhesion, driven-weight, id, title or designation
)");
}

// A valve path to itself: the whole tag.
TEST(RootDiagnostics, PlaceOfASpanOverTwoLines) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <directional-valve id="V1"><port id="A"/><position id="a" rest="yes"><path from="A"
  to="A"/></position></directional-valve>
</circuit>
)"),
              R"(error 2:72-3:11 the path leads from a port to itself
  expected: two ports of the valve
)");
}

}  // namespace
}  // namespace loopwright
