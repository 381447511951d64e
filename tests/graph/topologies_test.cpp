// What is found of loops, sides, branches, sections and open parts in circuits of many forms. What
// is expected follows by hand from the design's definitions.
#include <map>
#include <set>
#include <sstream>

#include <gtest/gtest.h>

#include <loopwright/graph/situation.h>
#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/reversing_drive.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::circuit_from;
using testing::circuit_with;
using testing::Edit;
using testing::edited;
using testing::findings_of;
using testing::reversing_drive;
using testing::sound_drive;
using testing::structure_text;
using testing::verdicts_of;

constexpr const char* plain_loop = "loop:P1 P1 : M1\n  side:P1.A main\n  side:P1.B main\n";

/// Engine, two-way pump P1 and what else is given; shaft and motor too.
std::string found(const std::string& parts) {
    return structure_text(circuit_with(R"(<engine id="E1"/><pump id="P1" flow-directions="2"/>
        <motor id="M1"/><shaft id="W1" joins="E1 P1"/>)" +
                                       parts));
}

std::string found_in_drive(const std::vector<Edit>& edits) {
    return structure_text(circuit_from(edited(sound_drive(), edits)));
}

Edit added(const std::string& parts) { return {"</circuit>", parts + "</circuit>"}; }

/// The states of each side of the first loop: "side:P1.A: drive-forward ...".
std::string side_states(const Circuit& circuit) {
    std::string text;
    const Structure structure = structure_of(circuit);
    for (const SideInfo& side : structure.loops.at(0).sides) {
        text += side.id + ':';
        for (const State state : side.states) text += ' ' + std::string(name(state));
        text += '\n';
    }
    return text;
}

TEST(Topologies, PumpAndMotorOnTheSameTwoLines) {
    EXPECT_EQ(found(R"(<line id="HA" joins="P1.A M1.A"/><line id="HB" joins="P1.B M1.B"/>)"),
              plain_loop);
}

TEST(Topologies, SideHasItsLinesPortsAndStates) {
    const Circuit circuit = circuit_from(sound_drive());
    const Structure structure = structure_of(circuit);
    ASSERT_EQ(structure.loops.size(), 1U);
    ASSERT_EQ(structure.loops[0].sides.size(), 2U);
    const SideInfo& side = structure.loops[0].sides[1];
    std::set<std::string> ports;
    for (const Index port : side.ports) ports.insert(circuit.port_name(port));
    EXPECT_EQ(ports, (std::set<std::string>{"P1.B", "M1.B", "R3.P", "R2.T", "C2.B", "V1.B"}));
    ASSERT_EQ(side.lines.size(), 1U);
    EXPECT_EQ(circuit.lines[side.lines[0]].path, "HB");
    EXPECT_EQ(side.states,
              (std::vector<State>{State::neutral, State::drive_forward, State::drive_reverse,
                                  State::overrun_forward, State::overrun_reverse, State::hold,
                                  State::lost_signal}));
}

TEST(Topologies, ChargeLineReachesOverTheFilterUpToTheChecks) {
    const Circuit circuit = circuit_from(sound_drive());
    const Structure structure = structure_of(circuit);
    std::vector<std::string_view> lines;
    for (const Index line : structure.charge_lines) lines.push_back(circuit.lines[line].path);
    EXPECT_EQ(lines, (std::vector<std::string_view>{"G1", "G2"}));
    ASSERT_EQ(structure.charge_pumps.size(), 1U);
    EXPECT_EQ(circuit.components[structure.charge_pumps[0]].path, "P2");
}

TEST(Topologies, TwoLoopsShareAChargePump) {
    EXPECT_EQ(found_in_drive({{"E1 P1 P2", "E1 P1 P2 P3"},
                              {"F1.B C1.A C2.A", "F1.B C1.A C2.A C5.A C6.A"},
                              added(R"(<pump id="P3" flow-directions="2"/><motor id="M2"/>
                                  <check-valve id="C5"/><check-valve id="C6"/>
                                  <line id="JA" joins="P3.A M2.A C5.B"/>
                                  <line id="JB" joins="P3.B M2.B C6.B"/>)")}),
              std::string(plain_loop) +
                  "loop:P3 P3 : M2\n  side:P3.A main\n  side:P3.B main\nopen:P2 P2 :\n");
}

// They touch in one line only: oil of one loop need not go round the other.
TEST(Topologies, TwoLoopsShareALine) {
    EXPECT_EQ(found(R"(<pump id="P2" flow-directions="2"/><motor id="M2"/>
                  <line id="HA" joins="P1.A M1.A"/><line id="JA" joins="P2.A M2.A"/>
                  <line id="HB" joins="P1.B M1.B P2.B M2.B"/>)"),
              std::string(plain_loop) + "loop:P2 P2 : M2\n  side:P2.A main\n  side:P2.B main\n");
}

TEST(Topologies, ChargeOilFromAnOpenPartsReturn) {
    EXPECT_EQ(found_in_drive({{R"(<line id="G1" joins="P2.P R1.P F1.A"/>)",
                               R"(<line id="G0" joins="P2.P M3.A R5.P"/>
                                  <line id="G1" joins="M3.B R5.T R1.P F1.A"/>)"},
                              added(R"(<motor id="M3"/><relief-valve id="R5"/>)")}),
              std::string(plain_loop) + "open:P2 P2 : M3\n");
}

TEST(Topologies, OpenPartsThatMeetAtAReservoirAreTwo) {
    EXPECT_EQ(found_in_drive({{"T1.S P2.S", "T1.S P2.S P3.S"},
                              {"R1.T T1.R", "R1.T T1.R M3.B"},
                              added(R"(<pump id="P3"/><motor id="M3"/>
                                  <line id="X" joins="P3.P M3.A"/>)")}),
              std::string(plain_loop) + "open:P2 P2 :\nopen:P3 P3 : M3\n");
}

TEST(Topologies, MotorsInParallelAndInSeries) {
    EXPECT_EQ(found(R"(<motor id="M2"/><line id="HA" joins="P1.A M1.A M2.A"/>
                  <line id="HB" joins="P1.B M1.B M2.B"/>)"),
              "loop:P1 P1 : M1 M2\n  side:P1.A main\n  side:P1.B main\n");
    EXPECT_EQ(found(R"(<motor id="M2"/><line id="HA" joins="P1.A M1.A"/>
                  <line id="HI" joins="M1.B M2.A"/><line id="HB" joins="P1.B M2.B"/>)"),
              "loop:P1 P1 : M1 M2\n  side:P1.A main\n  side:P1.B main\n"
              "  side:M1.B intermediate\n");
}

TEST(Topologies, PumpsInParallelAreOneLoopNamedAfterTheFirst) {
    EXPECT_EQ(found(R"(<pump id="A9" flow-directions="2"/><line id="HA" joins="A9.A P1.A M1.A"/>
                  <line id="HB" joins="P1.B A9.B M1.B"/>)"),
              "loop:P1 P1 A9 : M1\n  side:P1.A main\n  side:P1.B main\n");
}

TEST(Topologies, OneWayPumpWithAReversingValve) {
    const Circuit circuit = circuit_from(reversing_drive());
    EXPECT_EQ(structure_text(circuit),
              "loop:P1 P1 : M1\n  side:P1.S main\n  side:P1.P main\n  side:M1.A section\n"
              "  side:M1.B section\nopen:P2 P2 :\n");
    const std::string moving = " drive-forward drive-reverse overrun-forward overrun-reverse\n";
    EXPECT_EQ(side_states(circuit), "side:P1.S:" + moving + "side:P1.P:" + moving +
                                        "side:M1.A: neutral hold lost-signal\n"
                                        "side:M1.B: neutral hold lost-signal\n");
}

TEST(Topologies, OneWayPumpAloneHasNoReverse) {
    const Circuit circuit = circuit_with(R"(<pump id="P1"/><motor id="M1"/>
        <line id="HA" joins="P1.P M1.A"/><line id="HB" joins="M1.B P1.S"/>)");
    const std::string states = " neutral drive-forward overrun-forward hold lost-signal\n";
    EXPECT_EQ(side_states(circuit), "side:P1.S:" + states + "side:P1.P:" + states);
}

/// A two-way pump whose lines to the motor lead over one valve, shut off at rest.
std::string isolated(const std::string& at_rest, const std::string& in = "") {
    return R"(<engine id="E1"/><pump id="P1" flow-directions="2"/><motor id="M1"/>
        <shaft id="W1" joins="E1 P1"/><reservoir id="T1"><port id="R"/></reservoir>
        <directional-valve id="V1"><port id="P"/><port id="S"/><port id="A"/><port id="B"/>
        <port id="T"/><position id="off" rest="yes">)" +
           at_rest + R"(</position><position id="on")" + in +
           R"(><path from="P" to="A"/><path from="S" to="B"/></position></directional-valve>
        <line id="HP" joins="P1.A V1.P"/><line id="HS" joins="P1.B V1.S"/>
        <line id="HA" joins="V1.A M1.A"/><line id="HB" joins="V1.B M1.B"/>
        <line id="HT" joins="V1.T T1.R"/>)";
}

TEST(Topologies, IsolatingValveMakesSections) {
    const std::string moving = " drive-forward drive-reverse overrun-forward overrun-reverse";
    EXPECT_EQ(side_states(circuit_with(isolated(""))),
              "side:P1.A:" + moving + "\nside:P1.B:" + moving + "\nside:M1.A: neutral" + moving +
                  " hold lost-signal\nside:M1.B: neutral" + moving + " hold lost-signal\n");
    EXPECT_EQ(side_states(circuit_with(isolated(
                  "", R"( in="drive-forward drive-reverse overrun-forward overrun-reverse")"))),
              "side:P1.A:" + moving + "\nside:P1.B:" + moving +
                  "\nside:M1.A: neutral hold lost-signal\nside:M1.B: neutral hold lost-signal\n");
}

TEST(Topologies, MotorThatFreewheelsIsNoSection) {
    EXPECT_EQ(
        structure_text(circuit_with(isolated(R"(<path from="A" to="T"/><path from="B" to="T"/>)"))),
        plain_loop);
    EXPECT_EQ(structure_text(circuit_with(isolated(R"(<path from="A" to="B"/>)"))), plain_loop);
}

// What the valve joins to a port of the pump is not cut off from it.
TEST(Topologies, MotorPortThatKeepsItsPumpIsNoSection) {
    EXPECT_EQ(structure_text(circuit_with(isolated(R"(<path from="P" to="A"/>)"))),
              std::string(plain_loop) + "  side:M1.B section\n");
}

TEST(Topologies, LoopThroughAssemblies) {
    EXPECT_EQ(structure_text(circuit_with(R"(<engine id="E1"/>
        <assembly id="U1"><assembly id="N1"><pump id="P1" flow-directions="2"/>
          <check-valve id="C1"/><line id="A" joins="P1.A C1.B"/>
          <port id="X" of="P1.A"/><port id="Y" of="P1.B"/></assembly>
          <filter id="F1"/><line id="A" joins="N1.X F1.A"/>
          <port id="A" of="F1.B"/><port id="B" of="N1.Y"/></assembly>
        <assembly id="U2"><motor id="M1"/><port id="A" of="M1.A"/><port id="B" of="M1.B"/></assembly>
        <shaft id="W1" joins="E1 U1/N1/P1"/>
        <line id="HA" joins="U1.A U2.A"/><line id="HB" joins="U1.B U2.B"/>)")),
              "loop:U1/N1/P1 U1/N1/P1 : U2/M1\n  side:U1/N1/P1.A main\n"
              "  side:U1/N1/P1.B main\n");
}

TEST(Topologies, LoopOnlyOverAnOrificeHasABranchBehindIt) {
    EXPECT_EQ(found(R"(<orifice id="O1"/><line id="HA" joins="P1.A O1.A"/>
                  <line id="HC" joins="O1.B M1.A"/><line id="HB" joins="P1.B M1.B"/>)"),
              std::string(plain_loop) + "  side:M1.A branch\n");
}

TEST(Topologies, MotorBehindAnOrificeIsOutsideWhereTheLoopClosesWithoutIt) {
    const std::string text = found(R"(<motor id="M2"/><orifice id="O1"/>
        <line id="HA" joins="P1.A M1.A O1.A"/><line id="HC" joins="O1.B M2.A"/>
        <line id="HB" joins="P1.B M1.B M2.B"/>)");
    EXPECT_EQ(text.find(std::string(plain_loop) + "open:"), 0U) << text;
}

TEST(Topologies, BranchBehindACheckOfAOneWayLoop) {
    EXPECT_EQ(structure_text(circuit_with(R"(<pump id="P1"/><motor id="M1"/><motor id="M2"/>
        <check-valve id="C7"/><line id="HA" joins="P1.P M1.A C7.A"/>
        <line id="HC" joins="C7.B M2.A"/><line id="HB" joins="P1.S M1.B M2.B"/>)")),
              "loop:P1 P1 : M1 M2\n  side:P1.S main\n  side:P1.P main\n  side:M2.A branch\n");
}

TEST(Topologies, ShutOffValveBetweenTheSidesAsDrawn) {
    const auto valve = [](const std::string& position) {
        return found(R"(<shut-off-valve id="B1" position=")" + position +
                     R"("/><line id="HA" joins="P1.A M1.A B1.A"/>
            <line id="HB" joins="P1.B M1.B B1.B"/>)");
    };
    EXPECT_EQ(valve("closed"), plain_loop);
    // Short-circuited: the loop is there, and no sides to judge.
    EXPECT_EQ(valve("open"), "loop:P1 P1 : M1\n");
}

TEST(Topologies, MakeUpCheckTurnedRoundDoesNotLoseTheSides) {
    EXPECT_EQ(found_in_drive(
                  {{"F1.B C1.A C2.A", "F1.B C1.B C2.A"}, {"R3.T C1.B V1.A", "R3.T C1.A V1.A"}}),
              std::string(plain_loop) + "open:P2 P2 :\n");
}

TEST(Topologies, MachineWithBothPortsOnOneNode) {
    const std::string pump = found(R"(<line id="HA" joins="P1.A P1.B M1.A"/>)");
    EXPECT_EQ(pump.find("loop:"), std::string::npos) << pump;
    const std::string motor = found(R"(<line id="HA" joins="P1.A M1.A M1.B"/>
        <line id="HB" joins="P1.B"/>)");
    EXPECT_EQ(motor.find("loop:"), std::string::npos) << motor;
    // Beside a sound motor the shorted one is no part of the loop.
    const std::string beside = found(R"(<motor id="M2"/>
        <line id="HA" joins="P1.A M1.A M2.A M2.B"/><line id="HB" joins="P1.B M1.B"/>)");
    EXPECT_EQ(beside.find(plain_loop), 0U) << beside;
}

TEST(Topologies, OpenCircuitIsNoLoop) {
    EXPECT_EQ(structure_text(circuit_with(R"(<pump id="P1"/><motor id="M1"/>
        <reservoir id="T1"><port id="S"/><port id="R"/></reservoir>
        <line id="S1" joins="T1.S P1.S"/><line id="H1" joins="P1.P M1.A"/>
        <line id="H2" joins="M1.B T1.R"/>)")),
              "open:P1 P1 : M1\n");
}

TEST(Topologies, LineThroughAReservoirBreaksTheLoop) {
    EXPECT_EQ(found(R"(<reservoir id="T1"><port id="S"/><port id="R"/></reservoir>
                  <line id="HA" joins="P1.A M1.A"/><line id="HB" joins="M1.B T1.R"/>
                  <line id="HC" joins="T1.S P1.B"/>)"),
              "open:P1 P1 : M1\n");
}

// The return is teed into a filtered suction line: open to the reservoir both ways through the
// filter. Behind a foot valve oil only comes in from there, and goes round in a loop.
TEST(Topologies, ReturnTeedIntoTheSuctionLine) {
    const auto teed = [](const std::string& part) {
        return structure_text(circuit_with(R"(<pump id="P1"/><motor id="M1"/>
            <reservoir id="T1"><port id="S"/></reservoir><line id="S1" joins="T1.S X1.A"/>
            <line id="S2" joins="X1.B P1.S M1.B"/><line id="H1" joins="P1.P M1.A"/>)" +
                                           part));
    };
    EXPECT_EQ(teed(R"(<filter id="X1"/>)"), "open:P1 P1 : M1\n");
    EXPECT_EQ(teed(R"(<check-valve id="X1"/>)"),
              "loop:P1 P1 : M1\n  side:P1.S main\n  side:P1.P main\n");
}

TEST(Topologies, JunctionsLinesAndHousingsMakeOneNode) {
    const Circuit circuit = circuit_with(R"(
        <pump id="P1" flow-directions="2" drain="external" case-ports="2"/><motor id="M1"/>
        <junction id="J1"><port id="X"/><port id="Y"/></junction>
        <line id="HA" joins="P1.A J1.X"/><line id="HC" joins="J1.Y M1.A"/>
        <line id="HB" joins="P1.B M1.B"/>)");
    EXPECT_EQ(structure_text(circuit), plain_loop);
    const Structure structure = structure_of(circuit);
    std::map<std::string, Index> node;
    for (Index port = 0; port < circuit.ports.size(); ++port)
        node[circuit.port_name(port)] = structure.node_of_port[port];
    EXPECT_EQ(node.at("P1.A"), node.at("M1.A"));
    EXPECT_EQ(node.at("P1.L1"), node.at("P1.L2"));
    EXPECT_NE(node.at("P1.A"), node.at("P1.B"));
    EXPECT_NE(node.at("P1.A"), node.at("P1.L1"));
}

/// Each id gives its name to another part, mostly to one of another kind.
std::string renamed(const std::string& text) {
    static const std::map<std::string, std::string> names{
        {"P1", "M1"}, {"M1", "P1"}, {"P2", "T1"}, {"T1", "P2"}, {"C1", "R2"}, {"R2", "C1"},
        {"R1", "K1"}, {"K1", "R1"}, {"F1", "E1"}, {"E1", "F1"}, {"C2", "V1"}, {"V1", "C2"}};
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto at = names.find(text.substr(i, 2));
        const bool begins = i == 0 || std::isalnum(static_cast<unsigned char>(text[i - 1])) == 0;
        if (at == names.end() || !begins) {
            out += text[i];
            continue;
        }
        out += at->second;
        ++i;
    }
    return out;
}

/// The elements, one a line, in the opposite order, and so the ports that a line joins.
std::string reversed(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);) {
        const std::size_t at = line.find(R"(joins=")");
        if (at != std::string::npos) {
            const std::size_t end = line.find('"', at + 7);
            std::istringstream joined(line.substr(at + 7, end - at - 7));
            std::string turned;
            for (std::string port; joined >> port;) turned.insert(0, ' ' + port);
            line.replace(at + 7, end - at - 7, turned.substr(1));
        }
        lines.push_back(line);
    }
    std::string out = lines.front() + '\n';
    for (std::size_t i = lines.size() - 2; i > 0; --i) out += lines[i] + '\n';
    return out + lines.back() + '\n';
}

std::multiset<std::string> lines_of(const std::string& text) {
    std::istringstream in(text);
    std::multiset<std::string> lines;
    for (std::string line; std::getline(in, line);) lines.insert(line);
    return lines;
}

TEST(Topologies, NamesAndOrderChangeNothing) {
    const std::vector<std::vector<Edit>> circuits{
        {},
        {{"E1 P1 P2", "E1 P1"}},
        {{"F1.B C1.A C2.A", "F1.B C1.B C2.A"}, {"R3.T C1.B V1.A", "R3.T C1.A V1.A"}},
        {{"R3.P R2.T C2.B", "R3.P C2.B"}, {"R1.T T1.R", "R1.T R2.T T1.R"}},
        {{"P2.P R1.P F1.A", "P2.P R1.P F1.A C1.A"}, {"F1.B C1.A C2.A", "F1.B C2.A"}},
        {{"R4.T M1.L P1.L K1.A", "R4.T P1.L K1.A"}}};
    for (const std::vector<Edit>& edits : circuits) {
        const std::string text = edited(sound_drive(), edits);
        const Circuit as_written = circuit_from(text);
        const std::string structure = structure_text(as_written);
        EXPECT_EQ(structure, std::string(plain_loop) + "open:P2 P2 :\n");
        const Circuit other_names = circuit_from(renamed(text));
        EXPECT_EQ(structure_text(other_names), renamed(structure));
        EXPECT_EQ(findings_of(other_names), renamed(findings_of(as_written)));
        const Circuit other_order = circuit_from(reversed(text));
        EXPECT_EQ(structure_text(other_order), structure);
        EXPECT_EQ(lines_of(findings_of(other_order)), lines_of(findings_of(as_written)));
    }
}

}  // namespace
}  // namespace loopwright
