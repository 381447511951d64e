#include <string_view>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// Elements and ids that a circuit does not have, and its root.

namespace loopwright {
namespace {

using testing::told;

TEST(ElementDiagnostics, UnknownElement) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-vavle id="C1"/>
</circuit>
)"),
              R"(error 2:4-2:15 unknown element 'check-vavle'
  expected: a component (listed by 'loopwright kinds'), line, hose, shaft, assembly, use, fluid, command, duty, interlock, remark, waiver or sheet
  means: check-valve
)");
}

TEST(ElementDiagnostics, UnknownElementNothingNear) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <turbine id="X1"/>
</circuit>
)"),
              R"(error 2:4-2:11 unknown element 'turbine'
  expected: a component (listed by 'loopwright kinds'), line, hose, shaft, assembly, use, fluid, command, duty, interlock, remark, waiver or sheet
)");
}

TEST(ElementDiagnostics, ReferencesToAnUnknownElementAreLetPass) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-vavle id="C1"/>
  <load id="D1"/>
  <line id="H1" joins="C1.A C1.B"/>
</circuit>
)"),
              R"(error 2:4-2:15 unknown element 'check-vavle'
  expected: a component (listed by 'loopwright kinds'), line, hose, shaft, assembly, use, fluid, command, duty, interlock, remark, waiver or sheet
  means: check-valve
)");
}

TEST(ElementDiagnostics, ElementInTheWrongPlace) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <port id="A"/>
  <circuit format="1"/>
</circuit>
)"),
              R"(error 2:4-2:8 'port' cannot stand here
  expected: a component (listed by 'loopwright kinds'), line, hose, shaft, assembly, use, fluid, command, duty, interlock, remark, waiver or sheet
error 3:4-3:11 'circuit' cannot stand here
  expected: a component (listed by 'loopwright kinds'), line, hose, shaft, assembly, use, fluid, command, duty, interlock, remark, waiver or sheet
)");
}

TEST(ElementDiagnostics, NothingStandsInAPump) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacement="18 cm3/rev"><load id="D1"/><port id="A"/></pump>
</circuit>
)"),
              R"(error 2:44-2:48 'load' cannot stand in 'pump'
  expected: table or tolerance
error 2:59-2:63 'port' cannot stand in 'pump'
  expected: table or tolerance
)");
}

TEST(ElementDiagnostics, NothingStandsInALine) {
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

TEST(ElementDiagnostics, UnknownChildOfAReservoir) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <reservoir id="T1"><prot id="suction"/></reservoir>
  <line id="S1" joins="T1.suction"/>
</circuit>
)"),
              R"(error 2:23-2:27 'prot' cannot stand in 'reservoir'
  expected: port, table or tolerance
  means: port
)");
}

TEST(ElementDiagnostics, UnknownAttribute) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <pump id="P1" displacment="18 cm3/rev"/>
</circuit>
)"),
              R"(error 2:17-2:28 unknown attribute 'displacment' of pump
  expected: displacement, min-displacement, variable, flow-directions, design, control, rotation, drain, case-ports, case-pressure, max-pressure, max-speed, closed-loop, inlet-pressure, through-drive-torque, neutral-leakage, working-pressure, pressure-limiter, torque-limiter, anti-stall, compensator-setting, load-sensing-margin, rated-pressure, peak-pressure, burst-pressure, peak-case-pressure, seal-pressure, low-side-pressure, rated-speed, min-speed, max-speed-at-min-displacement, max-torque, inertia, volumetric-efficiency, torque-efficiency, rated-viscosity, slip-coefficient, drag-coefficient, friction-coefficient, leakage-coefficient, ...
  means: displacement
)");
}

TEST(ElementDiagnostics, UnknownAttributeNothingNear) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <load id="D1" colour="red"/>
</circuit>
)"),
              R"(error 2:17-2:23 unknown attribute 'colour' of load
  expected: torque, overrunning, overrunning-sense, force, inertia, breakaway-torque, max-speed, vehicle, mass, wheel-radius, grade, rolling-resistance, adhesion, driven-weight, id, title or designation
)");
}

// The id is known all the same.
TEST(ElementDiagnostics, AttributeOfAnotherCase) {
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
TEST(ElementDiagnostics, MissingId) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-valve/>
  <line id="H1" joins="C1.A"/>
</circuit>
)"),
              R"(error 2:4-2:15 this check-valve needs the attribute 'id'
  expected: unique in its file or assembly: a letter, then letters, digits, - and _
)");
}

TEST(ElementDiagnostics, NamelessPartsExcuseAsManyNames) {
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

TEST(ElementDiagnostics, NamelessPartsExcuseNoTypo) {
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

TEST(ElementDiagnostics, IllFormedId) {
    EXPECT_EQ(told("<circuit format=\"1\">\n  <load id=\"1D\"/>\n  <load id=\"D 1\"/>\n  <load "
                   "id=\"\"/>\n  <load id=\"D\xC3\xBC\"/>\n</circuit>\n"),
              "error 2:13-2:15 '1D' is no id\n  expected: a letter, then letters, digits, '-' and "
              "'_'\nerror 3:13-3:16 'D 1' is no id\n  expected: a letter, then letters, digits, "
              "'-' and '_'\nerror 4:9-4:14 '' is no id\n  expected: a letter, then letters, "
              "digits, '-' and '_'\nerror 5:13-5:15 'D\xC3\xBC' is no id\n  expected: a letter, "
              "then letters, digits, '-' and '_'\n");
}

// The line writes the id as it is meant.
TEST(ElementDiagnostics, IllFormedIdThatALineMeans) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-valve id=" C1"/>
  <reservoir id="T1"><port id="1 R"/></reservoir>
  <assembly id="U1"><junction id="J1"><port id="a"/></junction><port id="A." of="J1.a"/></assembly>
  <line id="H1" joins="C1.A T1.R U1.A"/>
</circuit>
)"),
              R"(error 2:20-2:23 ' C1' is no id
  expected: a letter, then letters, digits, '-' and '_'
error 3:32-3:35 '1 R' is no id
  expected: a letter, then letters, digits, '-' and '_'
error 4:74-4:76 'A.' is no id
  expected: a letter, then letters, digits, '-' and '_'
)");
}

// One of the two is meant to be what the line asks for.
TEST(ElementDiagnostics, DuplicateIdInPlaceOfAnother) {
    EXPECT_EQ(told(R"(<circuit format="1">
  <check-valve id="C1"/>
  <check-valve id="C1"/>
  <reservoir id="T1"><port id="R"/><port id="R"/></reservoir>
  <assembly id="U1">
    <junction id="J1"><port id="a"/><port id="b"/></junction>
    <port id="A" of="J1.a"/><port id="A" of="J1.b"/>
  </assembly>
  <line id="H1" joins="C1.A C2.A T1.R T1.D U1.A U1.B"/>
  <line id="H2" joins="C1.B C3.A"/>
</circuit>
)"),
              R"(error 3:20-3:22 the id 'C1' is there twice
  expected: an id of its own; 'C1' is a check-valve in line 2 of the file
error 4:46-4:47 the id 'R' is there twice
  expected: an id of its own; 'R' is a port in line 4 of the file
error 7:39-7:40 the port 'A' is there twice
  expected: an id of its own for each port of the assembly
error 10:29-10:33 there is no 'C3'
  expected: a component of this circuit and its port, such as P1.A
)");
}

// Across kinds of elements; what refers to it is let pass.
TEST(ElementDiagnostics, DuplicateId) {
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

}  // namespace
}  // namespace loopwright
