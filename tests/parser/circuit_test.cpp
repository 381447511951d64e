#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// The circuit that a file becomes: its tables, in file order,
// and what refers to what in them. Ports and passages are in circuit_parts_test.cpp.

namespace loopwright {
namespace {

using testing::circuit_from;
using testing::circuit_with;
using testing::TemporaryFolder;

std::vector<std::string> joins(const Circuit& circuit, std::size_t line) {
    std::vector<std::string> list;
    for (const Index port : circuit.ports_of(circuit.lines.at(line))) {
        list.push_back(circuit.port_name(port));
    }
    return list;
}

using Words = std::vector<std::string>;

TEST(CircuitRead, OrderIsThatOfTheFile) {
    const Circuit circuit = circuit_with(R"(
        <line id="H1" joins="J1.A"/>
        <load id="D1"/>
        <assembly id="U1"><engine id="E1"/><assembly id="U2"><load id="D2"/></assembly></assembly>
        <shaft id="W1" joins="D1 U1/E1 U1/U2/D2"/>
        <junction id="J1"><port id="A"/></junction>)");
    Words paths;
    for (const Component& component : circuit.components) {
        paths.emplace_back(component.path);
    }
    EXPECT_EQ(paths, (Words{"D1", "U1/E1", "U1/U2/D2", "J1"}));
    ASSERT_EQ(circuit.assemblies.size(), 2U);
    EXPECT_EQ(circuit.assemblies[1].path, "U1/U2");
    EXPECT_EQ(circuit.assemblies[0].parent, none);
    EXPECT_EQ(circuit.assemblies[1].parent, 0U);
    EXPECT_EQ(circuit.components[0].assembly, none);
    EXPECT_EQ(circuit.components[1].assembly, 0U);
    EXPECT_EQ(circuit.components[2].assembly, 1U);
    const auto on_shaft = circuit.components_of(circuit.shafts.at(0));
    EXPECT_EQ((std::vector<Index>{on_shaft.begin(), on_shaft.end()}),
              (std::vector<Index>{0, 1, 2}));
    EXPECT_EQ(circuit.components[2].shaft, 0U);
    EXPECT_EQ(circuit.components[3].shaft, none);
}

TEST(CircuitRead, TitleBlock) {
    const Circuit circuit = circuit_from(
        R"(<circuit format="1" title="Quay winch &amp; drum" drawing="QW-7" revision="B"
            date="2024-05-01" owner="Harbour" creator="N. N." approver="M. M."/>)");
    EXPECT_EQ(circuit.title.title, "Quay winch & drum");
    EXPECT_EQ(circuit.title.drawing, "QW-7");
    EXPECT_EQ(circuit.title.revision, "B");
    EXPECT_EQ(circuit.title.date, "2024-05-01");
    EXPECT_EQ(circuit.title.owner, "Harbour");
    EXPECT_EQ(circuit.title.creator, "N. N.");
    EXPECT_EQ(circuit.title.approver, "M. M.");
}

TEST(CircuitRead, NamesForPeople) {
    const Circuit circuit = circuit_with(R"(<load id="D1" title="drum" designation="1M2"/>
                        <junction id="J1"><port id="A"/></junction>
                        <line id="H1" title="main" joins="J1.A"/>
                        <shaft id="W1" title="drum shaft" joins="D1"/>
                        <assembly id="U1" title="block"/>)");
    EXPECT_EQ(circuit.components[0].title, "drum");
    EXPECT_EQ(circuit.components[0].designation, "1M2");
    EXPECT_EQ(circuit.lines[0].title, "main");
    EXPECT_EQ(circuit.shafts[0].title, "drum shaft");
    EXPECT_EQ(circuit.assemblies[0].title, "block");
}

TEST(CircuitRead, PlacesOfParts) {
    const Circuit circuit = circuit_from(
        "<circuit format=\"1\">\n"
        "  <reservoir id=\"T1\" volume=\"60 L\">\n"
        "    <port id=\"suction\"/>\n"
        "  </reservoir>\n"
        "  <line id=\"S1\" joins=\"T1.suction\"/>\n"
        "</circuit>\n");
    const auto text = [&circuit](SourceRef ref) {
        return circuit.sources->file_of(ref).text().substr(ref.span.begin,
                                                           ref.span.end - ref.span.begin);
    };
    EXPECT_EQ(text(circuit.components[0].place), "<reservoir id=\"T1\" volume=\"60 L\">");
    EXPECT_EQ(text(circuit.ports[0].place), "<port id=\"suction\"/>");
    EXPECT_EQ(text(circuit.lines[0].place), "<line id=\"S1\" joins=\"T1.suction\"/>");
    const AttributeValue* const volume = circuit.attribute(circuit.components[0], "volume");
    ASSERT_NE(volume, nullptr);
    EXPECT_EQ(text(volume->place), "volume=\"60 L\"");
    const AttributeValue* const breather = circuit.attribute(circuit.components[0], "breather");
    ASSERT_NE(breather, nullptr);
    EXPECT_FALSE(breather->given);  // so it stands nowhere
}

TEST(CircuitRead, Lines) {
    const Circuit circuit = circuit_with(R"(
        <junction id="J1"><port id="a"/><port id="b"/><port id="c"/></junction>
        <line id="H1" joins="J1.b J1.a" bore="25 mm" length="2.4 m" rating="450 bar"
              function="return"/>
        <line id="H2" joins="J1.c"/>)");
    EXPECT_EQ(joins(circuit, 0), (Words{"J1.b", "J1.a"}));
    EXPECT_DOUBLE_EQ(circuit.lines[0].bore.value().si(), 0.025);
    EXPECT_DOUBLE_EQ(circuit.lines[0].length.value().si(), 2.4);
    EXPECT_DOUBLE_EQ(circuit.lines[0].rating.value().si(), 450e5);
    EXPECT_EQ(circuit.lines[0].function, LineFunction::return_);
    EXPECT_FALSE(circuit.lines[1].bore);
    EXPECT_FALSE(circuit.lines[1].length);
    EXPECT_FALSE(circuit.lines[1].rating);
    EXPECT_EQ(circuit.lines[1].function, LineFunction::not_declared);
}

// A hose joins as a line does, and may say how strong and how stiff it is.
TEST(CircuitRead, Hoses) {
    const Circuit circuit = circuit_with(R"(
        <junction id="J1"><port id="a"/><port id="b"/><port id="c"/></junction>
        <hose id="H1" joins="J1.b J1.a" title="to the wheel" bore="25 mm" length="0.9 m"
              rating="420 bar" function="working" burst-pressure="1680 bar"
              min-bend-radius="0.3 m"/>
        <hose id="H2" joins="J1.c"/>)");
    ASSERT_EQ(circuit.lines.size(), 2U);
    const Line& hose = circuit.lines[0];
    EXPECT_TRUE(hose.flexible);
    EXPECT_EQ(joins(circuit, 0), (Words{"J1.b", "J1.a"}));
    EXPECT_EQ(hose.title, "to the wheel");
    EXPECT_DOUBLE_EQ(hose.bore.value().si(), 0.025);
    EXPECT_DOUBLE_EQ(hose.length.value().si(), 0.9);
    EXPECT_DOUBLE_EQ(hose.rating.value().si(), 420e5);
    EXPECT_EQ(hose.function, LineFunction::working);
    EXPECT_DOUBLE_EQ(hose.burst_pressure.value().si(), 1680e5);
    EXPECT_DOUBLE_EQ(hose.min_bend_radius.value().si(), 0.3);
    EXPECT_TRUE(circuit.lines[1].flexible);
    EXPECT_FALSE(circuit.lines[1].burst_pressure);
    EXPECT_FALSE(circuit.lines[1].min_bend_radius);
    EXPECT_FALSE(circuit_with(R"(<junction id="J1"><port id="a"/></junction>
        <line id="L1" joins="J1.a"/>)")
                     .lines[0]
                     .flexible);
}

// The line inside and the line outside share the inner port.
TEST(CircuitRead, PortsOfAssemblies) {
    const Circuit circuit = circuit_with(R"(
        <assembly id="U1">
            <port id="A" of="U2.X"/>
            <assembly id="U2"><port id="X" of="C1.A"/><check-valve id="C1"/>
                <line id="H1" joins="C1.A"/></assembly>
            <line id="H1" joins="U2.X"/>
        </assembly>
        <line id="H1" joins="U1.A"/>)");
    EXPECT_EQ(joins(circuit, 0), (Words{"U1/U2/C1.A"}));
    EXPECT_EQ(joins(circuit, 1), (Words{"U1/U2/C1.A"}));
    EXPECT_EQ(joins(circuit, 2), (Words{"U1/U2/C1.A"}));
    EXPECT_EQ(circuit.lines[0].path, "U1/U2/H1");
    EXPECT_EQ(circuit.lines[1].path, "U1/H1");
    EXPECT_EQ(circuit.lines[2].path, "H1");
    ASSERT_EQ(circuit.assemblies[0].ports.size(), 1U);
    EXPECT_EQ(circuit.assemblies[0].ports[0].letter, "A");
    EXPECT_EQ(circuit.assemblies[0].ports[0].port, circuit.assemblies[1].ports[0].port);
}

TEST(CircuitRead, UseIsAnAssembly) {
    const TemporaryFolder folder;
    folder.write("parts/make-up.xml", R"(<assembly format="1" title="make-up">
        <check-valve id="C1"/><use id="V" file="relief.xml"/>
        <line id="H1" joins="C1.B V.P"/><port id="A" of="C1.A"/><port id="B" of="V.T"/>
    </assembly>)");
    folder.write("parts/relief.xml", R"(<assembly format="1"><relief-valve id="R1"/>
        <port id="P" of="R1.P"/><port id="T" of="R1.T"/></assembly>)");
    const ReadResult result = read_circuit(folder.write("main.xml", R"(<circuit format="1">
        <use id="U1" file="parts/make-up.xml"/>
        <use id="U2" file="parts/make-up.xml" title="other side"/>
        <line id="H1" joins="U1.A U2.A"/><line id="H2" joins="U1.B U2.B"/>
    </circuit>)"));
    ASSERT_TRUE(result.circuit) << testing::described(result);
    const Circuit& circuit = *result.circuit;
    ASSERT_EQ(circuit.components.size(), 4U);
    EXPECT_EQ(circuit.components[1].path, "U1/V/R1");
    EXPECT_EQ(circuit.components[3].path, "U2/V/R1");
    EXPECT_EQ(circuit.assemblies[0].title, "make-up");
    EXPECT_EQ(circuit.assemblies[2].title, "other side");
    EXPECT_EQ(joins(circuit, 0), (Words{"U1/C1.B", "U1/V/R1.P"}));
    EXPECT_EQ(joins(circuit, 3), (Words{"U1/V/R1.T", "U2/V/R1.T"}));
    const Place place = circuit.sources->place(circuit.components[3].place);
    EXPECT_EQ(place.file, "relief.xml");
    ASSERT_EQ(place.within.size(), 2U);
    EXPECT_EQ(place.within[0].file, "parts/make-up.xml");
    EXPECT_EQ(place.within[1].line, 3U);
    EXPECT_EQ(circuit.sources->file_count(), 3U);
}

// The outermost use has the last word; what no use sets is as the file has it.
TEST(CircuitRead, UseOverridesAttributes) {
    const TemporaryFolder folder;
    folder.write("relief.xml", R"(<assembly format="1">
        <relief-valve id="R1" setting="20 bar" title="relief"/>
        <line id="H1" joins="R1.P" bore="10 mm"/></assembly>)");
    folder.write("block.xml", R"(<assembly format="1"><use id="V" file="relief.xml">
        <set of="R1" attribute="setting" value="24 bar"/>
        <set of="H1" attribute="bore" value="16 mm"/></use></assembly>)");
    const ReadResult result = read_circuit(folder.write("main.xml", R"(<circuit format="1">
        <use id="U1" file="block.xml"><set of="V/R1" attribute="setting" value="30 bar"/></use>
        <use id="U2" file="block.xml"><set of="V/R1" attribute="title" value="spare"/></use>
        <use id="U3" file="relief.xml"/>
    </circuit>)"));
    ASSERT_TRUE(result.circuit) << testing::described(result);
    const Circuit& circuit = *result.circuit;
    ASSERT_EQ(circuit.components.size(), 3U);
    EXPECT_DOUBLE_EQ(circuit.figure(circuit.components[0], "setting").value(), 30e5);
    EXPECT_DOUBLE_EQ(circuit.figure(circuit.components[1], "setting").value(), 24e5);
    EXPECT_DOUBLE_EQ(circuit.figure(circuit.components[2], "setting").value(), 20e5);
    EXPECT_DOUBLE_EQ(circuit.passages_of(circuit.components[0])[0].opening, 30e5);
    EXPECT_EQ(circuit.components[0].title, "relief");
    EXPECT_EQ(circuit.components[1].title, "spare");
    EXPECT_DOUBLE_EQ(circuit.lines[0].bore.value().si(), 0.016);
    EXPECT_DOUBLE_EQ(circuit.lines[2].bore.value().si(), 0.010);
    // The place of a figure that a use sets is in the use.
    const AttributeValue* const setting = circuit.attribute(circuit.components[0], "setting");
    ASSERT_NE(setting, nullptr);
    EXPECT_EQ(circuit.sources->place(setting->place).line, 2U);
}

// What the circuit refers to lives as long as it does.
TEST(CircuitRead, OutlivesTheResult) {
    Circuit circuit;
    {
        ReadResult result = read_circuit_text(
            R"(<circuit format="1" title="&quot;1&quot;"><assembly id="U1"><load id="D1"/></assembly></circuit>)",
            "test.xml");
        ASSERT_TRUE(result.circuit);
        circuit = std::move(*result.circuit);
    }
    EXPECT_EQ(circuit.title.title, "\"1\"");
    EXPECT_EQ(circuit.components[0].path, "U1/D1");
}

// The same text in other dress: the same circuit.
TEST(CircuitRead, DressDoesNotMatter) {
    const std::string plain =
        "<circuit format=\"1\"><junction id=\"J1\"><port id=\"A\"/>"
        "<port id=\"B\"/></junction><line id=\"H1\" joins=\"J1.A J1.B\"/>"
        "</circuit>";
    const std::string dressed =
        "\xEF\xBB\xBF<?xml version='1.0' encoding='utf-8'?>\r\n<!-- - -->\r\n"
        "<circuit\r\n  format = '1' >\r\n\t<junction id='&#74;1'><port id=\"A\"></port>"
        "<port id='B'/></junction><!-- x --><line joins='\r\n J1.A&#10;J1.B\t' id='H1' />"
        "\r\n</circuit>\r\n<!-- end -->\r\n";
    for (const std::string& text : {plain, dressed}) {
        const Circuit circuit = circuit_from(text);
        ASSERT_EQ(circuit.lines.size(), 1U);
        EXPECT_EQ(joins(circuit, 0), (Words{"J1.A", "J1.B"}));
    }
}

// As many messages as mistakes, none of them false.
TEST(CircuitRead, EachMistakeOneMessage) {
    const ReadResult result = read_circuit_text(R"(<circuit format="1" titel="Sweeper">
  <pump id="P1" displacement="71 bar" flow-directions="2"/>
  <pump id="P1" displacement="18 cm3/rev"/>
  <motor id="M1" displacement="80 cm3/rev" drain="extern"/>
  <chek-valve id="C1"/>
  <relief-valve setting="24 bar"/>
  <reservoir id="T1"><port id="suction" level="low"/></reservoir>
  <directional-valve id="V1"><port id="P"/><position id="a"><path from="P" to="P1"/></position></directional-valve>
  <line id="H1" joins="P1.A M1.A C1.A V1.P"/>
  <line id="H2" joins="P1.B M1.C C1.B R1.P T1.suction"/>
  <shaft id="W1" joins="P1 M1 C1 T1"/>
</circuit>
)",
                                                "test.xml");
    Words messages;
    for (const Diagnostic& diagnostic : result.diagnostics) {
        messages.push_back(
            fmt::format("{} {}", result.sources->place(diagnostic.place).line, diagnostic.message));
    }
    EXPECT_EQ(
        messages,
        (Words{"1 unknown attribute 'titel' of circuit",
               "2 displacement: 'bar' is the unit of a pressure", "3 the id 'P1' is there twice",
               "4 drain cannot be 'extern'", "5 unknown element 'chek-valve'",
               "6 this relief-valve needs the attribute 'id'", "7 level cannot be 'low'",
               "8 directional-valve 'V1' has no rest position",
               "8 directional-valve 'V1' has no port 'P1'", "10 motor 'M1' has no port 'C'",
               "11 'T1' is a reservoir and has no shaft"}));
}

}  // namespace
}  // namespace loopwright
