#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// Elements and attributes that a circuit does not have or that do not hold what they should.

namespace loopwright {
namespace {

std::string told(std::string_view text) {
    return testing::described(read_circuit_text(std::string(text), "test.xml"));
}

TEST(AttributeDiagnostics, UnknownElement) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-vavle id="C1"/>
</circuit>
)"),
              R"(error 2:4-2:15 unknown element 'check-vavle'
  expected: check-valve, cooler, directional-valve, engine, filter, flushing-valve, junction, load, motor, orifice, pump, relief-valve, reservoir, shut-off-valve, line, shaft, assembly or use
  means: check-valve
)");
}

TEST(AttributeDiagnostics, UnknownElementNothingNear) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <turbine id="X1"/>
</circuit>
)"),
              R"(error 2:4-2:11 unknown element 'turbine'
  expected: check-valve, cooler, directional-valve, engine, filter, flushing-valve, junction, load, motor, orifice, pump, relief-valve, reservoir, shut-off-valve, line, shaft, assembly or use
)");
}

TEST(AttributeDiagnostics, ReferencesToAnUnknownElementAreLetPass) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-vavle id="C1"/>
  <load id="D1"/>
  <line id="H1" joins="C1.A C1.B"/>
</circuit>
)"),
              R"(error 2:4-2:15 unknown element 'check-vavle'
  expected: check-valve, cooler, directional-valve, engine, filter, flushing-valve, junction, load, motor, orifice, pump, relief-valve, reservoir, shut-off-valve, line, shaft, assembly or use
  means: check-valve
)");
}

TEST(AttributeDiagnostics, ElementInTheWrongPlace) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <port id="A"/>
  <circuit format="1"/>
</circuit>
)"),
              R"(error 2:4-2:8 'port' cannot stand here
  expected: check-valve, cooler, directional-valve, engine, filter, flushing-valve, junction, load, motor, orifice, pump, relief-valve, reservoir, shut-off-valve, line, shaft, assembly or use
error 3:4-3:11 'circuit' cannot stand here
  expected: check-valve, cooler, directional-valve, engine, filter, flushing-valve, junction, load, motor, orifice, pump, relief-valve, reservoir, shut-off-valve, line, shaft, assembly or use
)");
}

TEST(AttributeDiagnostics, NothingStandsInAPump) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev"><load id="D1"/><port id="A"/></pump>
</circuit>
)"),
              R"(error 2:44-2:48 'load' cannot stand in 'pump'
  expected: no element inside 'pump'
error 2:59-2:63 'port' cannot stand in 'pump'
  expected: no element inside 'pump'
)");
}

TEST(AttributeDiagnostics, NothingStandsInALine) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <load id="D1"/>
  <junction id="J1"><port id="A"/></junction>
  <line id="H1" joins="J1.A"><load id="D2"/></line>
</circuit>
)"),
              R"(error 4:31-4:35 'load' cannot stand in 'line'
  expected: no element inside 'line'
)");
}

TEST(AttributeDiagnostics, UnknownChildOfAReservoir) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <reservoir id="T1"><prot id="suction"/></reservoir>
  <line id="S1" joins="T1.suction"/>
</circuit>
)"),
              R"(error 2:23-2:27 'prot' cannot stand in 'reservoir'
  expected: port
  means: port
)");
}

TEST(AttributeDiagnostics, UnknownAttribute) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacment="18 cm3/rev"/>
</circuit>
)"),
              R"(error 2:17-2:28 unknown attribute 'displacment' of pump
  expected: displacement, min-displacement, variable, flow-directions, design, control, rotation, drain, case-ports, case-pressure, max-pressure, max-speed, closed-loop, id, title or designation
  means: displacement
)");
}

TEST(AttributeDiagnostics, UnknownAttributeNothingNear) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <load id="D1" colour="red"/>
</circuit>
)"),
              R"(error 2:17-2:23 unknown attribute 'colour' of load
  expected: torque, overrunning, id, title or designation
)");
}

// The id is known all the same.
TEST(AttributeDiagnostics, AttributeOfAnotherCase) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction ID="J1"><port id="A"/></junction>
  <line id="H1" joins="J1.A"/>
</circuit>
)"),
              R"(error 2:13-2:15 unknown attribute 'ID' of junction
  expected: id, title or designation
  means: id
)");
}

// The line may mean the nameless valve.
TEST(AttributeDiagnostics, MissingId) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-valve/>
  <line id="H1" joins="C1.A"/>
</circuit>
)"),
              R"(error 2:4-2:15 this check-valve needs the attribute 'id'
  expected: unique in its file or assembly: a letter, then letters, digits, - and _
)");
}

TEST(AttributeDiagnostics, NamelessPartsExcuseAsManyNames) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-valve/>
  <line id="H1" joins="C1.A C2.A"/>
</circuit>
)"),
              R"(error 2:4-2:15 this check-valve needs the attribute 'id'
  expected: unique in its file or assembly: a letter, then letters, digits, - and _
error 3:29-3:33 there is no 'C2'
  expected: a component of this circuit and its port, such as P1.A
)");
}

TEST(AttributeDiagnostics, NamelessPartsExcuseNoTypo) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-valve/>
  <junction id="J101"><port id="A"/></junction>
  <line id="H1" joins="J10.A"/>
</circuit>
)"),
              R"(error 2:4-2:15 this check-valve needs the attribute 'id'
  expected: unique in its file or assembly: a letter, then letters, digits, - and _
error 4:24-4:29 there is no 'J10'
  expected: a component of this circuit and its port, such as P1.A
  means: J101.A
)");
}

TEST(AttributeDiagnostics, IllFormedId) {
    EXPECT_EQ(told("<circuit format=\"1\">\n  <load id=\"1D\"/>\n  <load id=\"D 1\"/>\n  <load "
                   "id=\"\"/>\n  <load id=\"D\xC3\xBC\"/>\n</circuit>\n"),
              "error 2:13-2:15 '1D' is no id\n  expected: a letter, then letters, digits, '-' and "
              "'_'\nerror 3:13-3:16 'D 1' is no id\n  expected: a letter, then letters, digits, "
              "'-' and '_'\nerror 4:9-4:14 '' is no id\n  expected: a letter, then letters, "
              "digits, '-' and '_'\nerror 5:13-5:15 'D\xC3\xBC' is no id\n  expected: a letter, "
              "then letters, digits, '-' and '_'\n");
}

// Across kinds of elements; what refers to it is let pass.
TEST(AttributeDiagnostics, DuplicateId) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-valve id="C1"/>
  <relief-valve id="C1" setting="24 bar"/>
  <line id="C1" joins="C1.A"/>
  <line id="H1" joins="C1.P C1.A"/>
</circuit>
)"),
              R"(error 3:21-3:23 the id 'C1' is there twice
  expected: an id of its own; 'C1' is a check-valve in line 2 of the file
error 4:13-4:15 the id 'C1' is there twice
  expected: an id of its own; 'C1' is a check-valve in line 2 of the file
)");
}

TEST(AttributeDiagnostics, NoUnit) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="24"/>
</circuit>
)"),
              R"(error 2:34-2:36 setting: '24' has no unit
  expected: a pressure such as 24 bar
  means: 24 bar
)");
}

TEST(AttributeDiagnostics, NoNumber) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="high"/>
</circuit>
)"),
              R"(error 2:34-2:38 setting: 'high' does not begin with a decimal number
  expected: a pressure such as 24 bar
)");
}

TEST(AttributeDiagnostics, UnknownUnit) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="24 baar"/>
</circuit>
)"),
              R"(error 2:34-2:41 setting: unknown unit 'baar'
  expected: a pressure such as 24 bar (units: bar, mbar, Pa, kPa, MPa, psi, bar abs, kPa abs, MPa abs, psi abs)
  means: 24 bar
)");
}

TEST(AttributeDiagnostics, UnitOfAnotherDimension) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="24 cm3/rev"/>
</circuit>
)"),
              R"(error 2:34-2:44 setting: 'cm3/rev' is the unit of a displacement
  expected: a pressure such as 24 bar
)");
}

TEST(AttributeDiagnostics, NumberWithComma) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="24,5 bar"/>
</circuit>
)"),
              R"(error 2:34-2:42 setting: a comma in a number
  expected: a pressure such as 24 bar
  means: 24.5 bar
)");
}

TEST(AttributeDiagnostics, NotANumber) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="nan bar"/>
</circuit>
)"),
              R"(error 2:34-2:41 setting: 'nan bar' does not begin with a decimal number
  expected: a pressure such as 24 bar
)");
}

TEST(AttributeDiagnostics, Infinite) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="inf bar"/>
</circuit>
)"),
              R"(error 2:34-2:41 setting: 'inf bar' does not begin with a decimal number
  expected: a pressure such as 24 bar
)");
}

TEST(AttributeDiagnostics, TooLargeForAnyNumber) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="1e999 bar"/>
</circuit>
)"),
              R"(error 2:34-2:43 setting: '1e999 bar' is a number out of range
  expected: a pressure such as 24 bar
)");
}

TEST(AttributeDiagnostics, Hexadecimal) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="0x18 bar"/>
</circuit>
)"),
              R"(error 2:34-2:42 setting: hexadecimal numbers are not read
  expected: a pressure such as 24 bar
)");
}

TEST(AttributeDiagnostics, EmptyQuantity) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting=""/>
</circuit>
)"),
              R"(error 2:25-2:35 setting: the quantity is empty
  expected: a pressure such as 24 bar
)");
}

TEST(AttributeDiagnostics, BelowTheRange) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="-18 cm3/rev"/>
</circuit>
)"),
              R"(error 2:31-2:42 displacement is out of range: '-18 cm3/rev'
  expected: more than 0 cm3/rev
)");
}

TEST(AttributeDiagnostics, OnTheExcludedBound) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="0 cm3/rev"/>
</circuit>
)"),
              R"(error 2:31-2:40 displacement is out of range: '0 cm3/rev'
  expected: more than 0 cm3/rev
)");
}

TEST(AttributeDiagnostics, NoWholeNumber) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev" drain="external" case-ports="1.5"/>
</circuit>
)"),
              R"(error 2:72-2:75 case-ports is no whole number: '1.5'
  expected: a whole number, 1 to 3
)");
}

TEST(AttributeDiagnostics, CountOutOfRange) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev" drain="external" case-ports="4"/>
</circuit>
)"),
              R"(error 2:72-2:73 case-ports is out of range: '4'
  expected: 1 to 3
)");
}

TEST(AttributeDiagnostics, NegativeCount) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev" case-ports="-1"/>
</circuit>
)"),
              R"(error 2:55-2:57 case-ports is no whole number: '-1'
  expected: a whole number, 1 to 3
)");
}

TEST(AttributeDiagnostics, NeitherYesNorNo) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev" variable="true"/>
</circuit>
)"),
              R"(error 2:53-2:57 variable cannot be 'true'
  expected: yes or no
)");
}

TEST(AttributeDiagnostics, YesInCapitals) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev" variable="YES"/>
</circuit>
)"),
              R"(error 2:53-2:56 variable cannot be 'YES'
  expected: yes or no
  means: yes
)");
}

TEST(AttributeDiagnostics, NoneOfTheChoices) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev" control="hydralic"/>
</circuit>
)"),
              R"(error 2:52-2:60 control cannot be 'hydralic'
  expected: none, manual, hydraulic or electric
  means: hydraulic
)");
}

// Whether the pump has A and B is not known; C it never has.
TEST(AttributeDiagnostics, APortBehindABadAttributeIsLetPass) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev" flow-directions="two"/>
  <line id="H1" joins="P1.A P1.C"/>
</circuit>
)"),
              R"(error 2:60-2:63 flow-directions is no whole number: 'two'
  expected: a whole number, 1 to 2
error 3:29-3:33 pump 'P1' has no port 'C'
  expected: P1.S or P1.P
)");
}

TEST(AttributeDiagnostics, SmallestDisplacementAboveTheLargest) {
    EXPECT_EQ(
        told(R"(<circuit format="1">
  <motor id="M1" displacement="80 cm3/rev" min-displacement="90 cm3/rev"/>
  <motor id="M2" displacement="80 cm3/rev" min-displacement="80 cm3/rev"/>
</circuit>
)"),
        R"(error 2:44-2:73 min-displacement is above displacement: '90 cm3/rev' and '80 cm3/rev'
  expected: at most 80 cm3/rev
)");
}

TEST(AttributeDiagnostics, SettingAboveTheFullFlowPressure) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="24 bar" full-flow-pressure="20 bar"/>
</circuit>
)"),
              R"(error 2:25-2:41 setting is above full-flow-pressure: '24 bar' and '20 bar'
  expected: at most 20 bar
)");
}

// Warnings; the circuit can be used.
TEST(AttributeDiagnostics, CaseWithoutDrain) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" case-ports="2" case-pressure="3 bar"/>
  <pump id="P2" drain="external" case-ports="2" case-pressure="3 bar"/>
</circuit>
)"),
              R"(warning 2:17-2:31 case-ports says nothing with drain="internal"
  expected: drain="external", or no case-ports
warning 2:32-2:53 case-pressure says nothing with drain="internal"
  expected: drain="external", or no case-pressure
)");
}

TEST(AttributeDiagnostics, CaseWithAnUnknownDrain) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" drain="both" case-pressure="3 bar"/>
</circuit>
)"),
              R"(error 2:24-2:28 drain cannot be 'both'
  expected: internal or external
)");
}

TEST(AttributeDiagnostics, BadReservoirLevel) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <reservoir id="T1"><port id="suction" level="under"/></reservoir>
</circuit>
)"),
              R"(error 2:48-2:53 level cannot be 'under'
  expected: above or below
)");
}

TEST(AttributeDiagnostics, LevelOfAJunction) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A" level="below"/></junction>
</circuit>
)"),
              R"(error 2:34-2:39 unknown attribute 'level' of port
  expected: id
)");
}

TEST(AttributeDiagnostics, LineFunctionAndBore) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <junction id="J1"><port id="A"/></junction>
  <line id="H1" joins="J1.A" function="supply" bore="25" rating="-1 bar"/>
</circuit>
)"),
              R"(error 3:40-3:46 function cannot be 'supply'
  expected: working, charge, suction, return, drain or pilot
error 3:54-3:56 bore: '25' has no unit
  expected: a length such as 25 mm
  means: 25 mm
error 3:66-3:72 rating is out of range: '-1 bar'
  expected: 0 bar or more
)");
}

TEST(AttributeDiagnostics, FormatMissing) {
    EXPECT_EQ(told(R"(<circuit>
  <load id="D1" x="y"/>
</circuit>
)"),
              R"(error 1:2-1:9 this circuit needs the attribute 'format'
  expected: format="1"
error 2:17-2:18 unknown attribute 'x' of load
  expected: torque, overrunning, id, title or designation
)");
}

// What another format may say is not judged.
TEST(AttributeDiagnostics, OtherFormat) {
    EXPECT_EQ(told(R"(<circuit format="2">
  <pipe/>
</circuit>
)"),
              R"(error 1:18-1:19 format '2' is not known
  expected: format="1"
  means: 1
)");
}

TEST(AttributeDiagnostics, OtherRoot) {
    EXPECT_EQ(told(R"(<system format="1"/>
)"),
              R"(error 1:2-1:8 the root element is 'system'
  expected: 'circuit'
  means: circuit
)");
}

TEST(AttributeDiagnostics, AssemblyAsRoot) {
    EXPECT_EQ(told(R"(<assembly format="1"/>
)"),
              R"(error 1:2-1:10 the root element is 'assembly'
  expected: 'circuit'; a file with an assembly is brought in by 'use'
  means: circuit
)");
}

TEST(AttributeDiagnostics, UnknownAttributeOfTheCircuit) {
    EXPECT_EQ(told(R"(<circuit format="1" titel="Drive"/>
)"),
              R"(error 1:21-1:26 unknown attribute 'titel' of circuit
  expected: format, title, drawing, revision, date, owner, creator or approver
  means: title
)");
}

TEST(AttributeDiagnostics, SchemaHintsOfEditorsAreTaken) {
    EXPECT_EQ(
        told(
            R"(<circuit format="1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:noNamespaceSchemaLocation="circuit.xsd"/>
)"),
        "");
}

TEST(AttributeDiagnostics, SchemaHintsAtTheRootOnly) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <load id="D1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"/>
</circuit>
)"),
              R"(error 2:17-2:26 unknown attribute 'xmlns:xsi' of load
  expected: torque, overrunning, id, title or designation
)");
}

TEST(AttributeDiagnostics, QuotedTextIsClipped) {
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
TEST(AttributeDiagnostics, PlaceOfAValueWithReferences) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <relief-valve id="R1" setting="24&#32;baar"/>
</circuit>
)"),
              R"(error 2:34-2:45 setting: unknown unit 'baar'
  expected: a pressure such as 24 bar (units: bar, mbar, Pa, kPa, MPa, psi, bar abs, kPa abs, MPa abs, psi abs)
  means: 24 bar
)");
}

TEST(AttributeDiagnostics, PlaceInCrLfText) {
    EXPECT_EQ(told("<circuit format=\"1\">\r\n  <load id=\"D1\"\r\n        "
                   "colour=\"red\"/>\r\n</circuit>\r\n"),
              R"(error 3:9-3:15 unknown attribute 'colour' of load
  expected: torque, overrunning, id, title or designation
)");
}

TEST(AttributeDiagnostics, PlaceBehindAByteOrderMark) {
    EXPECT_EQ(told("\xEF\xBB\xBF<circuit format=\"1\"><load id=\"D1\" colour=\"red\"/></circuit>"),
              R"(error 1:35-1:41 unknown attribute 'colour' of load
  expected: torque, overrunning, id, title or designation
)");
}

// A valve path to itself: the whole tag.
TEST(AttributeDiagnostics, PlaceOfASpanOverTwoLines) {
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
