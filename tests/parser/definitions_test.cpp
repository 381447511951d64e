// What a circuit says beside its parts, read from text: every figure in SI, every id resolved.
#include <cmath>

#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

namespace loopwright {
namespace {

using testing::circuit_from;
using testing::TemporaryFolder;

/// An ice resurfacer's drive with all that there is to say about it.
const Circuit& resurfacer() {
    static const Circuit circuit = circuit_from(R"(<circuit format="1">
<fluid grade="VG 46" viscosity-index="105" density="870 kg/m3" viscosity-100="6.8 mm2/s"/>
<engine id="E1" power="55 kW" speed="2400 rpm" idle-speed="900 rpm" variable-speed="yes">
<table><row speed="2400 rpm" torque="200 N.m"/><row speed="1200 rpm" torque="240 N.m"/></table>
</engine>
<pump id="P1" displacement="71 cm3/rev" variable="yes" flow-directions="2">
<table>
<row speed="1000 rpm" pressure="100 bar" flow="69 l/min" mechanical-efficiency="0.91"/>
<row speed="1000 rpm" pressure="200 bar" flow="67.5 l/min" mechanical-efficiency="0.93"/>
<row pressure="100 bar" speed="2000 rpm" flow="139 l/min" mechanical-efficiency="0.9"/>
<row pressure="200 bar" speed="2000 rpm" flow="137 l/min" mechanical-efficiency="0.92"/>
</table>
<tolerance of="displacement" value="2 %"/>
</pump>
<motor id="M1" displacement="80 cm3/rev"/>
<load id="D1"/><shaft id="W1" joins="E1 P1"/><shaft id="W2" joins="M1 D1"/>
<shut-off-valve id="H1" switched="yes"/>
<filter id="F1" clogging-indicator="electrical"><tolerance of="fineness" value="1 um"/></filter>
<pressure-switch id="PS1" setting="12 bar"/>
<directional-valve id="V3"><port id="P"/><port id="T"/><position id="n" rest="yes"/>
<position id="a"><path from="P" to="T"/></position></directional-valve>
<assembly id="U1"><relief-valve id="R1" setting="350 bar"/></assembly>
<line id="HA" joins="P1.A M1.A"/>
<command id="Z1" given-by="pedal">
<stage of="P1" from="0 %" to="33 %"/><stage of="M1" from="33 %" to="100 %" end="35 %"/>
</command>
<duty altitude="400 m" ambient="-5 degC">
<point id="climb" speed="2200 rpm" travel="-20 %" torque="300 N.m" oil="60 degC" share="10 %">
<set of="V3" position="a"/></point>
<point id="rest" state="hold" share="90 %"/>
</duty>
<interlock when="H1 closed" prevents="start E1"/>
<interlock when="PS1 below 10 bar" prevents="V3.a"/>
<interlock when="PS1 below" prevents="move Z1"/>
<interlock when="Z1 off-neutral" prevents="start E1"/>
<interlock when="V3.a" prevents="start E1"/>
<interlock when="F1 clogged" prevents="move Z1"/>
<interlock when="E1 stands" prevents="V3.a"/>
<remark subject="U1/R1" text="read on the plate" by="reviewer" date="2026-02-28"/>
<remark subject="P1.A" text="port turned"/>
<waiver rule="filtration" subject="loop:P1" reason="flushed by hand" by="owner" until="2027-06-30"/>
<waiver rule="filtration" subject="side:P1.A" reason="the same" by="owner"/>
<waiver rule="filtration" subject="HA" reason="the same" by="owner"/>
<waiver rule="filtration" subject="circuit" reason="the same" by="owner"/>
<sheet size="A3"><place of="P1" x="12" turn="90" mirrored="yes"/><place of="U1/R1" y="4"/></sheet>
</circuit>)");
    return circuit;
}

Index component(const Circuit& circuit, std::string_view path) {
    for (Index i = 0; i < circuit.components.size(); ++i)
        if (circuit.components[i].path == path) return i;
    return none;
}

TEST(Definitions, Fluid) {
    const Circuit& circuit = resurfacer();
    ASSERT_TRUE(circuit.fluid);
    EXPECT_EQ(circuit.figure_of(*circuit.fluid, "grade")->text, "VG 46");
    EXPECT_DOUBLE_EQ(circuit.figure_of(*circuit.fluid, "density")->si, 870.0);
    EXPECT_DOUBLE_EQ(circuit.figure_of(*circuit.fluid, "viscosity-100")->si, 6.8e-6);
    EXPECT_EQ(circuit.figure_of(*circuit.fluid, "bulk-modulus"), nullptr);
}

TEST(Definitions, Command) {
    const Circuit& circuit = resurfacer();
    ASSERT_EQ(circuit.commands.size(), 1U);
    const Command& command = circuit.commands.front();
    EXPECT_EQ(command.id, "Z1");
    EXPECT_EQ(circuit.figure_of(command, "given-by")->text, "pedal");
    EXPECT_DOUBLE_EQ(circuit.figure_of(command, "flow-directions")->si, 2.0);
    ASSERT_EQ(command.stages.size(), 2U);
    const Stage& second = circuit.stages[command.stages.begin + 1];
    EXPECT_EQ(second.part, component(circuit, "M1"));
    EXPECT_DOUBLE_EQ(circuit.figure_of(second, "from")->si, 0.33);
    EXPECT_DOUBLE_EQ(circuit.figure_of(second, "end")->si, 0.35);
    EXPECT_EQ(circuit.figure_of(second, "begin"), nullptr);
}

TEST(Definitions, Duty) {
    const Circuit& circuit = resurfacer();
    ASSERT_TRUE(circuit.duty);
    EXPECT_DOUBLE_EQ(circuit.figure_of(*circuit.duty, "ambient")->si, 268.15);
    ASSERT_EQ(circuit.duty->points.size(), 2U);
    const DutyPoint& climb = circuit.points[0];
    EXPECT_EQ(climb.id, "climb");
    EXPECT_FALSE(climb.state);
    EXPECT_DOUBLE_EQ(circuit.figure_of(climb, "travel")->si, -0.2);
    EXPECT_NEAR(circuit.figure_of(climb, "speed")->si, 2200.0 * 2.0 * 3.14159265358979 / 60.0,
                1e-9);
    ASSERT_EQ(climb.settings.size(), 1U);
    const PointSetting& set = circuit.point_settings[climb.settings.begin];
    EXPECT_EQ(set.component, component(circuit, "V3"));
    EXPECT_EQ(circuit.positions[set.position].id, "a");
    EXPECT_EQ(circuit.points[1].state, State::hold);
}

TEST(Definitions, Interlocks) {
    const Circuit& circuit = resurfacer();
    ASSERT_EQ(circuit.interlocks.size(), 7U);
    const auto& all = circuit.interlocks;
    EXPECT_EQ(all[0].when, Trigger::closed);
    EXPECT_EQ(all[0].watched, component(circuit, "H1"));
    EXPECT_EQ(all[0].prevents, Prevented::start);
    EXPECT_EQ(all[0].held, component(circuit, "E1"));
    EXPECT_EQ(all[1].when, Trigger::below);
    EXPECT_DOUBLE_EQ(all[1].level.value(), 1e6);
    EXPECT_EQ(circuit.positions[all[1].held_position].id, "a");
    EXPECT_FALSE(all[2].level);
    EXPECT_EQ(all[2].prevents, Prevented::move);
    EXPECT_EQ(all[2].held, 0U);
    EXPECT_EQ(all[3].when, Trigger::off_neutral);
    EXPECT_EQ(all[4].when, Trigger::position);
    EXPECT_EQ(all[5].when, Trigger::clogged);
    EXPECT_EQ(all[6].when, Trigger::stands);
}

TEST(Definitions, SubjectsOfRemarksAndWaivers) {
    const Circuit& circuit = resurfacer();
    ASSERT_EQ(circuit.remarks.size(), 2U);
    EXPECT_EQ(circuit.remarks[0].subject.index, component(circuit, "U1/R1"));
    EXPECT_EQ(circuit.remarks[0].text, "read on the plate");
    EXPECT_EQ(circuit.remarks[1].subject.type, ElementType::port);
    EXPECT_EQ(circuit.port_name(circuit.remarks[1].subject.index), "P1.A");
    ASSERT_EQ(circuit.waivers.size(), 4U);
    using std::chrono::sys_days;
    EXPECT_EQ(circuit.waivers[0].until,
              sys_days(std::chrono::year(2027) / std::chrono::month(6) / std::chrono::day(30)));
    EXPECT_EQ(circuit.waivers[0].subject.type, ElementType::loop);
    EXPECT_EQ(circuit.waivers[0].subject.index, component(circuit, "P1"));
    EXPECT_EQ(circuit.waivers[1].subject.type, ElementType::side);
    EXPECT_EQ(circuit.port_name(circuit.waivers[1].subject.index), "P1.A");
    EXPECT_FALSE(circuit.waivers[1].until);
    EXPECT_EQ(circuit.waivers[2].subject.type, ElementType::line);
    EXPECT_EQ(circuit.waivers[3].subject.type, ElementType::circuit);
}

TEST(Definitions, Sheet) {
    const Circuit& circuit = resurfacer();
    ASSERT_TRUE(circuit.sheet);
    EXPECT_EQ(circuit.figure_of(*circuit.sheet, "size")->text, "A3");
    ASSERT_EQ(circuit.sheet_places.size(), 2U);
    EXPECT_DOUBLE_EQ(circuit.figure_of(circuit.sheet_places[0], "x")->si, 12.0);
    EXPECT_EQ(circuit.figure_of(circuit.sheet_places[0], "turn")->text, "90");
    EXPECT_EQ(circuit.figure_of(circuit.sheet_places[0], "y"), nullptr);
    EXPECT_EQ(circuit.sheet_places[1].component, component(circuit, "U1/R1"));
}

// Rows come sorted, the first axis slowest, and axes before results.
TEST(Definitions, TablesAndTolerances) {
    const Circuit& circuit = resurfacer();
    ASSERT_EQ(circuit.tables.size(), 2U);
    const MeasuredTable& pump = circuit.tables[1];
    EXPECT_EQ(pump.component, component(circuit, "P1"));
    EXPECT_EQ(pump.axes, 2U);
    std::vector<std::string_view> columns;
    for (const AttributeSpec* spec : pump.columns) columns.push_back(spec->name);
    EXPECT_EQ(columns, (std::vector<std::string_view>{"pressure", "speed", "flow",
                                                      "mechanical-efficiency"}));
    ASSERT_EQ(pump.figures.size(), 16U);
    EXPECT_DOUBLE_EQ(pump.figures[0], 1e7);
    EXPECT_DOUBLE_EQ(pump.figures[4], 1e7);
    EXPECT_NEAR(pump.figures[6], 139.0 / 60000.0, 1e-12);
    EXPECT_DOUBLE_EQ(pump.figures[8], 2e7);
    EXPECT_LT(circuit.tables[0].figures[0], circuit.tables[0].figures[2]);
    ASSERT_EQ(circuit.tolerances.size(), 2U);
    EXPECT_NEAR(circuit.tolerances[0].si,
                0.02 * circuit.figure(circuit.components[pump.component], "displacement").value(),
                1e-15);
    EXPECT_DOUBLE_EQ(circuit.tolerances[1].si, 1e-6);
}

TEST(Definitions, Device) {
    const Circuit circuit = testing::circuit_with(R"(<device id="X1">
<port id="A"/><port id="B"/><port id="C"/>
<passage from="A" to="B" class="one-way" opening="0.5 bar"/>
<passage from="B" to="C" class="metering" both-ways="yes"/>
<passage from="A" to="C" class="pressure-opened"/></device>
<device id="X2" inside="unknown"><port id="A"/></device>)");
    ASSERT_EQ(circuit.passages.size(), 3U);
    EXPECT_EQ(circuit.passages[0].passage, PassageClass::one_way);
    EXPECT_DOUBLE_EQ(circuit.passages[0].opening, 5e4);
    EXPECT_FALSE(circuit.passages[0].both_ways);
    EXPECT_TRUE(circuit.passages[1].both_ways);
    EXPECT_TRUE(std::isnan(circuit.passages[2].opening));
    EXPECT_EQ(circuit.components[1].passages.size(), 0U);
}

TEST(Definitions, ReadyAssemblies) {
    const Circuit circuit = testing::circuit_with(R"(<use id="U1" name="pump-unit"/>)");
    EXPECT_NE(component(circuit, "U1/P1"), none);
    const TemporaryFolder folder;
    folder.write("mine/pump-unit.xml",
                 R"(<assembly format="1"><plug id="Q1"/><port id="A" of="Q1.P"/></assembly>)");
    const ReadResult own =
        read_circuit_text(R"(<circuit format="1"><use id="U1" name="pump-unit"/></circuit>)",
                          "a.xml", {}, {.assembly_folders = {folder.path() / "mine"}});
    ASSERT_TRUE(own.circuit);
    ASSERT_EQ(own.circuit->components.size(), 1U);
    EXPECT_EQ(own.circuit->components[0].path, "U1/Q1");
    // The text and the one file that it brings in, none of the ready assembly.
    ASSERT_EQ(own.sources->file_count(), 2U);
    EXPECT_TRUE(own.sources->file(0).path().empty());
    EXPECT_FALSE(own.sources->file(1).path().empty());
}

}  // namespace
}  // namespace loopwright
