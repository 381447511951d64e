#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// Attributes that do not hold what they should.

namespace loopwright {
namespace {

using testing::told;

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
  expected: a pressure such as 24 bar
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
  expected: none, manual, hydraulic, electric, pressure-compensated or load-sensing
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
  expected: more than 0 bar
)");
}

}  // namespace
}  // namespace loopwright
