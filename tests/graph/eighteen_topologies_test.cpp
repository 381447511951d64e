// Circuits of the forms that a loop finder must get right, one to a name of the project's list (a
// reference loop and eighteen others): what is found of loops, sides and open parts, and what the
// rules say, stray findings too. What is expected follows by hand from the design's definitions.
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>
#include <loopwright/tests/support/judged.h>
#include <loopwright/tests/support/reversing_drive.h>
#include <loopwright/tests/support/witnessed.h>

namespace loopwright {
namespace {

using testing::added;
using testing::all_running;
using testing::circuit_from;
using testing::circuit_with;
using testing::Edit;
using testing::edited;
using testing::findings_of;
using testing::reversing_drive;
using testing::sound_drive;
using testing::structure_text;

struct Topology {
    const char* name = nullptr;
    std::string xml = {};
    std::string structure = {};
    std::string findings = {};  ///< that the topology itself deserves
};

const std::string main_sides = "  side:P1.A main\n  side:P1.B main\n";
const std::string one_loop = "loop:P1 P1 : M1\n" + main_sides;
const std::string charge = "open:P2 P2 :\n";

/// The sound drive with edits.
std::string drive(const std::vector<Edit>& edits) { return edited(sound_drive(), edits); }

std::string circuit(const std::string& parts) {
    return "<circuit format=\"1\">" + parts + "</circuit>";
}

/// A second motor with a load of its own, drained to L1.
Edit drained_too() { return {"R4.T M1.L P1.L", "R4.T M1.L M2.L P1.L"}; }
const std::string second_motor =
    R"(<motor id="M2" displacement="90 cm3/rev" drain="external" case-pressure="3 bar"/>
       <load id="D2"/><shaft id="W3" joins="M2 D2"/>)";

std::vector<Topology> drives_with_one_pump() {
    return {
        {"ReferenceLoop", sound_drive(), one_loop + charge},
        {"MotorsInParallel",
         drive({{"P1.A M1.A", "P1.A M1.A M2.A"},
                {"P1.B M1.B", "P1.B M1.B M2.B"},
                drained_too(),
                added(second_motor)}),
         "loop:P1 P1 : M1 M2\n" + main_sides + charge},
        {"MotorsInSeries",
         drive({{"P1.B M1.B", "P1.B M2.B"},
                {"F1.B C1.A C2.A", "F1.B C1.A C2.A C9.A R9.T"},
                drained_too(),
                added(second_motor + R"(<check-valve id="C9"/>
                      <relief-valve id="R9" setting="300 bar"/>
                      <line id="HI" joins="M1.B M2.A C9.B R9.P"/>)")}),
         "loop:P1 P1 : M1 M2\n" + main_sides + "  side:M1.B intermediate\n" + charge},
        {"Divider",
         drive({{"P1.A M1.A", "P1.A V2.P"},
                {"P1.B M1.B", "P1.B M1.B M2.B"},
                {"F1.B C1.A C2.A", "F1.B C1.A C2.A C8.A C9.A"},
                drained_too(),
                added(second_motor + R"(<flow-divider id="V2" design="spool">
                      <port id="A"/><port id="B"/></flow-divider>
                      <check-valve id="C8"/><check-valve id="C9"/>
                      <line id="HC" joins="V2.A M1.A C8.B"/>
                      <line id="HD" joins="V2.B M2.A C9.B"/>)")}),
         "loop:P1 P1 : M1 M2\n" + main_sides + "  side:M1.A branch\n  side:M2.A branch\n" + charge},
        {"IsolatingValves",
         drive({{"P1.A M1.A", "V2.A M1.A"},
                {"P1.B M1.B", "V2.B M1.B"},
                added(R"(<directional-valve id="V2">
                      <port id="P"/><port id="S"/><port id="A"/><port id="B"/>
                      <position id="off" rest="yes"><path from="P" to="S"/></position>
                      <position id="on" in="drive-forward drive-reverse overrun-forward overrun-reverse">
                      <path from="P" to="A"/><path from="S" to="B"/></position></directional-valve>
                      <line id="HP" joins="P1.A V2.P"/><line id="HS" joins="P1.B V2.S"/>)")}),
         one_loop + "  side:M1.A section\n  side:M1.B section\n" + charge},
        {"TowingValveDrawnOpen",
         drive({{"P1.A M1.A", "P1.A M1.A B1.A"},
                {"P1.B M1.B", "P1.B M1.B B1.B"},
                added(R"(<bypass-valve id="B1" position="open"/>)")}),
         "loop:P1 P1 : M1\n" + charge, std::string("lost-loop P1 fail error") + all_running},
        {"FlushingByAnOrificeToChargeSuction",
         drive(
             {{"T1.S P2.S", "T1.S F2.A"},
              {"V1.F R4.P", "V1.F O1.A"},
              {"R4.T M1.L P1.L", "M1.L P1.L"},
              {R"(<relief-valve id="R4" setting="18 bar"/>)", R"(<orifice id="O1" bore="2 mm"/>)"},
              // No oil that the filter has not seen gets in the other way.
              added(R"(<strainer id="F2" fineness="100 um" bypass="0.2 bar"/>
                      <check-valve id="C9"/><line id="FM" joins="O1.B C9.A"/>
                      <line id="S2" joins="F2.B P2.S C9.B"/>)")}),
         one_loop + charge},
        {"ReliefsToTheChargeLineWithABleedOrifice",
         drive({{"R2.P R3.T", "R2.P O1.A"},
                {"R3.P R2.T", "R3.P O2.A"},
                {"F1.B C1.A C2.A", "F1.B C1.A C2.A R2.T R3.T O1.B O2.B"},
                added(R"(<orifice id="O1" bore="0.8 mm"/><orifice id="O2" bore="0.8 mm"/>)")}),
         one_loop + charge},
        {"Cylinder",
         drive(
             {{R"(<motor id="M1" displacement="80 cm3/rev" drain="external" case-pressure="3 bar"/>)",
               R"(<cylinder id="M1" rods="2"/>)"},
              {R"(<shaft id="W2" joins="M1 D1"/>)", ""},
              {R"(<load id="D1"/>)", ""},
              {"R4.T M1.L P1.L", "R4.T P1.L"}}),
         one_loop + charge},
        {"CounterbalanceInSeries",
         drive({{"P1.A M1.A", "P1.A V2.A"},
                {"P1.B M1.B", "P1.B M1.B V2.X"},
                added(R"(<counterbalance-valve id="V2" setting="330 bar"/>
                      <line id="HC" joins="V2.B M1.A"/>)")}),
         one_loop + "  side:M1.A branch\n" + charge},
        {"SeriesParallelValve",
         drive({{"P1.A M1.A", "P1.A M1.A V2.P"},
                {"P1.B M1.B", "P1.B M2.B V2.T"},
                {"F1.B C1.A C2.A", "F1.B C1.A C2.A C9.A R9.T"},
                drained_too(),
                added(second_motor + R"(<check-valve id="C9"/>
                      <relief-valve id="R9" setting="300 bar"/>
                      <directional-valve id="V2"><port id="P"/><port id="T"/><port id="A"/>
                      <port id="B"/>
                      <position id="parallel" rest="yes"><path from="P" to="A"/>
                      <path from="B" to="T"/></position>
                      <position id="series"><path from="A" to="B"/></position></directional-valve>
                      <line id="HI" joins="M1.B V2.B"/>
                      <line id="HJ" joins="M2.A V2.A C9.B R9.P"/>)")}),
         "loop:P1 P1 : M1 M2\n" + main_sides + "  side:M1.B intermediate\n" + charge},
        {"LoopFilterInABridgeOfChecks",
         drive({{"P1.A M1.A", "P1.A C5.A C7.B"},
                added(R"(<check-valve id="C5"/><check-valve id="C6"/><check-valve id="C7"/>
                      <check-valve id="C8"/><filter id="F2" fineness="20 um" clogging-indicator="visual"/>
                      <line id="HC" joins="M1.A C6.A C8.B"/><line id="HD" joins="C5.B C6.B F2.A"/>
                      <line id="HE" joins="F2.B C7.A C8.A"/>)")}),
         one_loop + "  side:M1.A branch\n" + charge},
    };
}

std::vector<Topology> others() {
    const std::string one_way = R"(<engine id="E1"/><pump id="P1" closed-loop="yes"/>
        <motor id="M1"/><load id="D1"/><shaft id="W1" joins="E1 P1"/><shaft id="W2" joins="M1 D1"/>)";
    return {
        {"TwoPumpsOnOneLoop",
         drive({{"E1 P1 P2", "E1 P1 P2 P3"},
                {"P1.A M1.A", "P1.A P3.A M1.A"},
                {"P1.B M1.B", "P1.B P3.B M1.B"},
                {"R4.T M1.L P1.L", "R4.T M1.L P1.L P3.L"},
                added(R"(<pump id="P3" displacement="71 cm3/rev" variable="yes"
                      flow-directions="2" drain="external" case-pressure="3 bar"/>)")}),
         "loop:P1 P1 P3 : M1\n" + main_sides + charge},
        {"TwoOneWayPumpsWithOutletChecks",
         drive({{R"(variable="yes" flow-directions="2")", R"(closed-loop="yes")"},
                {"E1 P1 P2", "E1 P1 P2 P3"},
                {"P1.A M1.A", "C7.B C8.B M1.A"},
                {"P1.B M1.B", "P1.S P3.S M1.B"},
                {"R4.T M1.L P1.L", "R4.T M1.L P1.L P3.L"},
                added(R"(<pump id="P3" displacement="71 cm3/rev" drain="external"
                      case-pressure="3 bar"/><check-valve id="C7"/><check-valve id="C8"/>
                      <line id="HC" joins="P1.P C7.A"/><line id="HD" joins="P3.P C8.A"/>)")}),
         "loop:P1 P1 P3 : M1\n  side:P1.S main\n  side:P1.P main\n  side:M1.A branch\n" + charge},
        {"FixedPumpWithReversingValveAndReturnToItsInlet", reversing_drive(),
         "loop:P1 P1 : M1\n  side:P1.S main\n  side:P1.P main\n  side:M1.A section\n"
         "  side:M1.B section\n" +
             charge},
        {"FixedPumpWithReversingValveAndReturnToTheTank",
         edited(reversing_drive(),
                {{R"( closed-loop="yes")", ""},
                 {R"(<port id="D"/>)", R"(<port id="D"/><port id="E"/><port id="F"/>)"},
                 {"P1.S V3.T", "V3.T T1.E"},
                 {"P1.P V3.P", "P1.P V3.P R5.P"},
                 {"R1.T T1.R", "R1.T R5.T T1.R"},
                 added(R"(<relief-valve id="R5" setting="250 bar"/>
                       <line id="S2" joins="T1.F P1.S"/>)")}),
         "open:P1 P1 P2 : M1\n", "lost-loop circuit fail note\n"},
        {"TwoLoopsWithOneChargePump",
         drive({{"E1 P1 P2", "E1 P1 P2 P3"},
                {"F1.B C1.A C2.A", "F1.B C1.A C2.A C5.A C6.A"},
                {"R4.T M1.L P1.L", "R4.T M1.L M2.L P1.L P3.L"},
                added(second_motor + R"(<pump id="P3" displacement="71 cm3/rev" variable="yes"
                      flow-directions="2" drain="external" case-pressure="3 bar"/>
                      <check-valve id="C5"/><check-valve id="C6"/>
                      <relief-valve id="R5" setting="380 bar"/>
                      <relief-valve id="R6" setting="380 bar"/>
                      <line id="JA" joins="P3.A M2.A C5.B R5.P R6.T"/>
                      <line id="JB" joins="P3.B M2.B C6.B R6.P R5.T"/>)")}),
         one_loop + "loop:P3 P3 : M2\n  side:P3.A main\n  side:P3.B main\n" + charge},
        {"TwoLoopsWithACommonLowLine",
         drive({{"E1 P1 P2", "E1 P1 P2 P3"},
                {"F1.B C1.A C2.A", "F1.B C1.A C2.A C5.A"},
                {"P1.B M1.B", "P1.B M1.B P3.B M2.B R5.T R6.P"},
                // A flushing valve of the one loop would stand on the other, too.
                {R"(<flushing-valve id="V1"/>)", ""},
                {R"(<relief-valve id="R4" setting="18 bar"/>)", ""},
                {" V1.A", ""},
                {" V1.B", ""},
                {R"(<line id="FL" joins="V1.F R4.P"/>)", ""},
                {"R4.T M1.L P1.L", "M1.L M2.L P1.L P3.L"},
                added(second_motor + R"(<pump id="P3" displacement="71 cm3/rev" variable="yes"
                      flow-directions="2" drain="external" case-pressure="3 bar"/>
                      <check-valve id="C5"/><relief-valve id="R5" setting="380 bar"/>
                      <relief-valve id="R6" setting="380 bar"/>
                      <line id="JA" joins="P3.A M2.A C5.B R5.P R6.T"/>)")}),
         one_loop + "loop:P3 P3 : M2\n  side:P3.A main\n  side:P3.B main\n" + charge},
        {"ReturnTeedToTheTank", circuit(one_way + R"(<reservoir id="T1"><port id="S"/></reservoir>
                 <filter id="F1" fineness="60 um" bypass="0.2 bar" clogging-indicator="visual"/>
                 <relief-valve id="R1" setting="250 bar"/>
                 <line id="S1" joins="T1.S F1.A"/><line id="S2" joins="F1.B P1.S M1.B R1.T"/>
                 <line id="H1" joins="P1.P M1.A R1.P"/>)"),
         "open:P1 P1 : M1\n", std::string("lost-loop P1 fail error") + all_running},
    };
}

std::vector<Topology> topologies() {
    std::vector<Topology> all = drives_with_one_pump();
    for (Topology& one : others()) all.push_back(std::move(one));
    return all;
}

class EighteenTopologies : public ::testing::TestWithParam<Topology> {};

TEST_P(EighteenTopologies, LoopsSidesAndFindings) {
    const Topology& topology = GetParam();
    const Circuit circuit = circuit_from(topology.xml);
    EXPECT_EQ(structure_text(circuit), topology.structure);
    EXPECT_EQ(findings_of(circuit), topology.findings);
}

INSTANTIATE_TEST_SUITE_P(List, EighteenTopologies, ::testing::ValuesIn(topologies()),
                         [](const auto& info) { return std::string(info.param.name); });

}  // namespace
}  // namespace loopwright
