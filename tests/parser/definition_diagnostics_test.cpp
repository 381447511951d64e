// Mistakes in what a circuit says beside its parts: one message each, where a finger would point.
#include <gtest/gtest.h>

#include <fmt/core.h>

#include <loopwright/tests/support/circuit_text.h>

namespace loopwright {
namespace {

using testing::told;

constexpr std::string_view parts =
    R"(<engine id="E1"/><pump id="P1" variable="yes"/><motor id="M1"/>
<load id="D1"/><load id="D2"/><shut-off-valve id="H1"/><gauge id="G1"/><relief-valve id="R1"/>
<command id="Z1"><stage of="P1" from="0" to="1"/></command>
)";

/// Messages alone: places are counted from the parts' lines.
std::vector<std::string> messages(std::string_view definitions) {
    const ReadResult result =
        read_circuit_text(fmt::format("<circuit format=\"1\">{}{}</circuit>", parts, definitions),
                          "a.xml", {}, {.rules = {"filtration", "lost-loop"}});
    std::vector<std::string> all;
    for (const Diagnostic& one : result.diagnostics) all.push_back(one.message);
    return all;
}
using Messages = std::vector<std::string>;

TEST(DefinitionDiagnostics, PlaceAndLikelyMeaning) {
    EXPECT_EQ(told(R"(<circuit format="1">
<pump id="P1"/>
<command id="Z1">
<stage of="P2" from="50 %" to="20 %"/>
</command>
<waiver rule="filtration" subject="lop:P1" reason="r" by="b" until="2027-02-29"/>
</circuit>)"),
              R"(error 4:12-4:14 there is no 'P2'
  expected: the id of a pump, motor or prime mover of this circuit
error 4:28-4:37 the stage ends at 20 %, but begins at 50 %
  expected: more than 50 %
error 6:36-6:42 'lop:P1' is no subject
  expected: an id, a port such as P1.A, loop:P1, side:P1.A or circuit
  means: loop
error 6:69-6:79 until is no date: '2027-02-29'
  expected: a date such as 2026-11-25
)");
}

TEST(DefinitionDiagnostics, Fluid) {
    EXPECT_EQ(
        messages(R"(<fluid grade="VG 46" viscosity-40="32 mm2/s" viscosity-100="40 mm2/s"/>)"),
        (Messages{"32 mm2/s at 40 degC is no VG 46",
                  "the oil is no thinner at 100 degC than at 40 degC"}));
    EXPECT_EQ(messages(R"(<fluid grade="VG 46" viscosity-40="41.4 mm2/s"/>)"), Messages{});
    EXPECT_EQ(messages(R"(<fluid grade="VG46"/><fluid/>)"),
              (Messages{"grade cannot be 'VG46'", "a second 'fluid'"}));
}

TEST(DefinitionDiagnostics, Command) {
    EXPECT_EQ(messages(R"(<command id="Z2"/>)"), Messages{"command 'Z2' has no stages"});
    EXPECT_EQ(messages(R"(<command id="Z2"><stage of="R1" from="0" to="1"/></command>)"),
              Messages{"'R1' is a relief-valve; it follows no command"});
    EXPECT_EQ(messages(R"(<command id="P1"><stage of="P1" from="0" to="101 %"/></command>)"),
              (Messages{"the id 'P1' is there twice", "to is out of range: '101 %'"}));
    EXPECT_EQ(messages(R"(<command id="Z2"><step of="P1" from="0" to="1"/></command>)"),
              (Messages{"command 'Z2' has no stages", "'step' cannot stand in 'command'"}));
    EXPECT_EQ(messages(R"(<stage of="P1" from="0" to="1"/>)"),
              Messages{"'stage' cannot stand here"});
    EXPECT_EQ(messages(R"(<assembly id="U1"><command id="Z2"/></assembly>)"),
              Messages{"'command' cannot stand here"});
}

TEST(DefinitionDiagnostics, Duty) {
    EXPECT_EQ(messages(R"(<duty><point id="a" share="60 %"/><point id="a" share="41 %"/></duty>)"),
              (Messages{"the id 'a' is there twice", "the shares come to 101 %"}));
    EXPECT_EQ(messages(R"(<duty><point id="a" torque="5 N.m"/></duty>)"),
              Messages{"torque may belong to any of 2 loads"});
    EXPECT_EQ(
        messages(R"(<duty><point id="a" torque="5 N.m"><set of="Z1" travel="5 %"/></point></duty>
<command id="Z2"><stage of="M1" from="0" to="1"/></command>)")
            .size(),
        1U);
    EXPECT_EQ(messages(R"(<duty><point id="a"><set of="D1" travel="5 %"/><set of="Z1"/>
<set of="G1" torque="5 N.m"/><set of="D2" torque="5 N.m"/><set of="D2" torque="6 N.m"/>
</point></duty>)"),
              (Messages{"travel is nothing that a load has", "nothing is set of 'Z1'",
                        "'G1' is a gauge, of which a point sets nothing",
                        "'D2' is set twice at this point"}));
    // How fast a load is to be: it goes backwards, too, which a prime mover is not set to.
    EXPECT_EQ(messages(R"(<duty><point id="a"><set of="D1" speed="-5 rpm"/>
<set of="D2" velocity="-5 km/h"/></point></duty>)"),
              Messages{});
    EXPECT_EQ(messages(R"(<duty><point id="a"><set of="E1" speed="-5 rpm"/></point></duty>)"),
              Messages{"-5 rpm is out of range"});
    EXPECT_EQ(messages(R"(<duty><point id="a"><set of="E1" velocity="5 km/h"/></point></duty>)"),
              Messages{"velocity is nothing that a prime mover has"});
    EXPECT_EQ(messages(R"(<duty><point id="a" state="driving"/></duty>)"),
              Messages{"state cannot be 'driving'"});
    EXPECT_EQ(
        messages(R"(<duty><point id="a" travel="5 %"><set of="Z1" travel="6 %"/></point></duty>)"),
        Messages{"the command is set twice, by travel of the point and travel here"});
    const auto of_load = [](std::string_view figures) {
        return messages(
            fmt::format(R"(<duty><point id="a"><set of="D1" {}/></point></duty>)", figures));
    };
    EXPECT_EQ(of_load(R"(grade="5 %" mass="500 kg")"), Messages{});
    EXPECT_EQ(of_load(R"(grade="5 %" torque="5 N.m")"),
              Messages{"the load is given twice, by torque and by grade"});
    EXPECT_EQ(of_load(R"(force="5 N" torque="5 N.m" mass="500 kg")"),
              Messages{"the load is given twice, by torque and by force"});
}

TEST(DefinitionDiagnostics, Interlock) {
    const auto when = [](std::string_view text) {
        return messages(fmt::format(R"(<interlock when="{}" prevents="start E1"/>)", text));
    };
    EXPECT_EQ(when("H1 closed"), Messages{"nothing reports that 'H1' is closed"});
    EXPECT_EQ(when("H1"), Messages{"'H1' is no condition"});
    EXPECT_EQ(when("E1 turned"), Messages{"'turned' is no condition of 'E1'"});
    EXPECT_EQ(when("M1 turns"), Messages{"'M1' is a motor"});
    EXPECT_EQ(when("E1 neutral"), Messages{"'E1' is an engine; it is never neutral"});
    EXPECT_EQ(when("G1 below 3 bar"),
              Messages{"gauge 'G1' gives no figure that a control could read"});
    EXPECT_EQ(when("R1.a"), Messages{"relief-valve 'R1' has no positions"});
    const auto prevents = [](std::string_view text) {
        return messages(fmt::format(R"(<interlock when="E1 turns" prevents="{}"/>)", text));
    };
    EXPECT_EQ(prevents("start M1"), Messages{"'M1' is a motor, no prime mover"});
    EXPECT_EQ(prevents("move E1"), Messages{"'E1' is an engine, no command"});
    EXPECT_EQ(prevents("stop E1"), Messages{"'stop E1' is nothing to prevent"});
}

TEST(DefinitionDiagnostics, Waiver) {
    const auto waiver = [](std::string_view attributes) {
        return messages(fmt::format("<waiver {} by=\"b\"/>", attributes));
    };
    EXPECT_EQ(waiver(R"(rule="filtrations" subject="P1" reason="r")"),
              Messages{"there is no rule 'filtrations'"});
    EXPECT_EQ(waiver(R"(rule="filtration" subject="P1" reason=" ")"),
              Messages{"the waiver's reason is empty"});
    EXPECT_EQ(waiver(R"(rule="filtration" subject="P1" reason="r" until="30.6.2027")"),
              Messages{"until is no date: '30.6.2027'"});
    EXPECT_EQ(waiver(R"(rule="filtration" subject="side:P1" reason="r")"),
              Messages{"'side:P1' is no side"});
    EXPECT_EQ(waiver(R"(rule="filtration" subject="side:P1.Q" reason="r")"),
              Messages{"pump 'P1' has no port 'Q'"});
    EXPECT_EQ(waiver(R"(rule="filtration" subject="Z1" reason="r")"),
              Messages{"'Z1' is a command"});
}

TEST(DefinitionDiagnostics, Sheet) {
    EXPECT_EQ(messages(R"(<sheet size="A5"><place of="P1" x="-1"/><place of="P1" turn="45"/>
<place of="Z1"/></sheet>)"),
              (Messages{"size cannot be 'A5'", "x is no whole number: '-1'", "'P1' is placed twice",
                        "turn cannot be '45'", "'Z1' is a command"}));
}

TEST(DefinitionDiagnostics, Tables) {
    const auto pump = [](std::string_view rows) {
        return messages(fmt::format("<pump id=\"P3\"><table>{}</table></pump>", rows));
    };
    EXPECT_EQ(pump(""), Messages{"the table has no rows"});
    EXPECT_EQ(pump(R"(<row pressure="1 bar" flow="1 l/min"/><row pressure="2 bar"/>)"),
              Messages{"the row has other columns than the first"});
    EXPECT_EQ(
        pump(R"(<row pressure="1 bar" flow="1 l/min"/><row flow="2 l/min" pressure="1 bar"/>)"),
        Messages{"the row measures at the same place as another"});
    EXPECT_EQ(pump(R"(<row speed="1000 rpm" flow="1 l/min"/>)"),
              Messages{"the table does not say over which pressure"});
    EXPECT_EQ(pump(R"(<row pressure="1 bar" speed="1000 rpm"/>)"),
              Messages{"the table gives no result"});
    EXPECT_EQ(pump(R"(<row pressure="1 bar" drop="1 bar"/>)"),
              Messages{"drop is nothing that is measured on pump 'P3'"});
    EXPECT_EQ(pump(R"(<row pressure="1 bar" flow="1 l/min" volumetric-efficiency="0.9"/>)"),
              Messages{"the table gives flow and volumetric-efficiency, which say the same"});
    EXPECT_EQ(pump(R"(<row pressure="1 bar" speed="500 rpm" flow="1 l/min"/>
<row pressure="2 bar" speed="500 rpm" flow="1 l/min"/><row pressure="2 bar" speed="900 rpm" flow="1 l/min"/>)"),
              Messages{"the table has no row for pressure 1 bar, speed 900 rpm"});
    EXPECT_EQ(
        messages(R"(<brake id="B1"><table><row speed="1 rpm" torque="1 N.m"/></table></brake>)"),
        Messages{"brake 'B1' takes no table"});
}

TEST(DefinitionDiagnostics, Tolerance) {
    const auto relief = [](std::string_view tolerance) {
        return messages(fmt::format(
            R"(<relief-valve id="R3" setting="24 bar"><tolerance {}/></relief-valve>)", tolerance));
    };
    EXPECT_EQ(relief(R"(of="setting" value="5 %")"), Messages{});
    EXPECT_EQ(relief(R"(of="settings" value="1 bar")"),
              Messages{"'settings' is no figure of relief-valve 'R3'"});
    EXPECT_EQ(relief(R"(of="setting" value="-1 bar")"),
              Messages{"a tolerance counts either way: '-1 bar'"});
    EXPECT_EQ(relief(R"(of="setting" value="1 bar"/><tolerance of="setting" value="1 bar")"),
              Messages{"'setting' has a tolerance already"});
    EXPECT_EQ(
        relief(R"(of="full-flow-pressure" value="1 %")"),
        Messages{"relief-valve 'R3' has no full-flow-pressure that a share could be taken of"});
}

TEST(DefinitionDiagnostics, Device) {
    EXPECT_EQ(messages(R"(<device id="X1"><port id="A"/></device>)"),
              Messages{"device 'X1' says nothing of its inside"});
    EXPECT_EQ(messages(R"(<device id="X1" inside="unknown"><port id="A"/><port id="B"/>
<passage from="A" to="B" class="joined"/></device>)"),
              Messages{"device 'X1' has a passage, but its inside is unknown"});
    EXPECT_EQ(messages(R"(<device id="X1"><port id="A"/><port id="B"/>
<passage from="A" to="C" class="joint"/><passage from="A" to="A" class="metering" opening="1 bar"/>
<passage from="A" to="B" class="one-way" both-ways="yes"/></device>)"),
              (Messages{"device 'X1' has no port 'C'", "class cannot be 'joint'",
                        "the passage leads from a port to itself",
                        "class metering takes no pressure to open",
                        "what is one-way does not pass back"}));
}

TEST(DefinitionDiagnostics, Use) {
    EXPECT_EQ(messages(R"(<use id="U1"/>)"),
              Messages{"use 'U1' needs the attribute 'file' or 'name'"});
    EXPECT_EQ(messages(R"(<use id="U1" name="pump-unit" file="a.xml"/>)"),
              Messages{"use 'U1' has a file and a name"});
    EXPECT_EQ(messages(R"(<use id="U1" name="pump-units"/>)"),
              Messages{"there is no ready assembly 'pump-units'"});
    EXPECT_EQ(messages(R"(<use id="U1" name="../x"/>)"),
              Messages{"'../x' is no name of a ready assembly"});
}

}  // namespace
}  // namespace loopwright
