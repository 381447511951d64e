#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <loopwright/tests/support/circuit_text.h>

// The ports, passages and attributes that each component of a circuit has. The expectations are
// written by hand from the statement of each kind.

namespace loopwright {
namespace {

using testing::circuit_with;

// "A<->B displacement", one word for each passage.
std::vector<std::string> passages(const Circuit& circuit, std::size_t component) {
    std::vector<std::string> list;
    for (const Passage& passage : circuit.passages_of(circuit.components.at(component))) {
        std::string text = fmt::format("{}{}{} {}", circuit.ports.at(passage.from).letter,
                                       passage.both_ways ? "<->" : "->",
                                       circuit.ports.at(passage.to).letter, name(passage.passage));
        if (std::isnan(passage.opening)) {
            text += " at an unknown pressure";
        } else if (passage.opening > 0.0) {
            text += fmt::format(" at {:.0f} Pa", passage.opening);
        }
        if (passage.position != none) {
            text += fmt::format(" in {}", circuit.positions.at(passage.position).id);
        }
        list.push_back(text + (passage.bypass ? ", bypass" : ""));
    }
    return list;
}

std::vector<std::string> ports(const Circuit& circuit, std::size_t component) {
    std::vector<std::string> list;
    const Range range = circuit.components.at(component).ports;
    for (Index port = range.begin; port < range.end; ++port) {
        list.push_back(circuit.port_name(port));
    }
    return list;
}

using Words = std::vector<std::string>;

TEST(CircuitParts, AttributesInTheKindsOrder) {
    const Circuit circuit = circuit_with(
        R"(<relief-valve operation="pilot" id="R1" setting="24 bar"/><relief-valve id="R2"/>)");
    const Component& valve = circuit.components[0];
    Words given;
    for (const AttributeValue& value : circuit.attributes_of(valve)) {
        given.push_back(
            fmt::format("{}={}{}", value.spec->name, value.text, value.given ? "" : " by default"));
    }
    EXPECT_EQ(given, (Words{"setting=24 bar", "operation=pilot"}));
    const AttributeValue* const adjustable = circuit.attribute(valve, "adjustable");
    ASSERT_NE(adjustable, nullptr);
    EXPECT_EQ(fmt::format("{}={} {}", adjustable->spec->name, adjustable->text, adjustable->given),
              "adjustable=yes false");
    EXPECT_EQ(circuit.attribute(valve, "full-flow-pressure"), nullptr);
    EXPECT_DOUBLE_EQ(circuit.figure(valve, "setting").value(), 24e5);
    EXPECT_EQ(circuit.choice(valve, "operation"), "pilot");
    EXPECT_TRUE(circuit.is_yes(valve, "adjustable"));
    EXPECT_FALSE(circuit.figure(circuit.components[1], "setting"));
}

TEST(CircuitParts, TwoWayPump) {
    const Circuit circuit = circuit_with(R"(
        <pump id="P1" displacement="71 cm3/rev" flow-directions="2"/>
        <pump id="P2" displacement="71 cm3/rev" flow-directions="2" drain="external"/>
        <pump id="P3" flow-directions="2" drain="external" case-ports="3"/>)");
    EXPECT_EQ(ports(circuit, 0), (Words{"P1.A", "P1.B"}));
    EXPECT_EQ(passages(circuit, 0), (Words{"A<->B displacement", "A<->B leakage"}));
    EXPECT_EQ(ports(circuit, 1), (Words{"P2.A", "P2.B", "P2.L"}));
    EXPECT_EQ(passages(circuit, 1), (Words{"A<->B displacement", "A->L leakage", "B->L leakage"}));
    EXPECT_EQ(ports(circuit, 2), (Words{"P3.A", "P3.B", "P3.L1", "P3.L2", "P3.L3"}));
    EXPECT_EQ(passages(circuit, 2), (Words{"A<->B displacement", "L1<->L2 joined", "L2<->L3 joined",
                                           "A->L1 leakage", "B->L1 leakage"}));
    // 71 cm3/rev in m3/rad.
    EXPECT_DOUBLE_EQ(circuit.figure(circuit.components[0], "displacement").value(),
                     71e-6 / (2.0 * std::numbers::pi));
}

TEST(CircuitParts, OneWayPumpAndMotor) {
    const Circuit circuit = circuit_with(R"(
        <pump id="P1"/><pump id="P2" drain="external" case-ports="02"/>
        <motor id="M1"/><motor id="M2" flow-directions="1" drain="external"/>)");
    EXPECT_EQ(ports(circuit, 0), (Words{"P1.S", "P1.P"}));
    EXPECT_EQ(passages(circuit, 0), (Words{"S->P displacement", "P->S leakage"}));
    EXPECT_EQ(ports(circuit, 1), (Words{"P2.S", "P2.P", "P2.L1", "P2.L2"}));
    EXPECT_EQ(passages(circuit, 1),
              (Words{"S->P displacement", "L1<->L2 joined", "P->L1 leakage", "S->L1 leakage"}));
    EXPECT_EQ(passages(circuit, 2), (Words{"A<->B displacement", "A<->B leakage"}));
    EXPECT_EQ(passages(circuit, 3), (Words{"A->B displacement", "A->L leakage", "B->L leakage"}));
}

TEST(CircuitParts, Valves) {
    const Circuit circuit = circuit_with(R"(
        <check-valve id="C1"/><check-valve id="C2" opening-pressure="0.5 bar"/>
        <relief-valve id="R1" setting="350 bar"/><relief-valve id="R2"/>
        <orifice id="Z1"/><shut-off-valve id="V1"/>
        <flushing-valve id="V2"/><flushing-valve id="V3" centre="open"/>)");
    EXPECT_EQ(passages(circuit, 0), (Words{"A->B one-way"}));
    EXPECT_EQ(passages(circuit, 1), (Words{"A->B one-way at 50000 Pa"}));
    EXPECT_EQ(passages(circuit, 2), (Words{"P->T pressure-opened at 35000000 Pa"}));
    EXPECT_EQ(passages(circuit, 3), (Words{"P->T pressure-opened at an unknown pressure"}));
    EXPECT_EQ(passages(circuit, 4), (Words{"A<->B metering"}));
    EXPECT_EQ(passages(circuit, 5), (Words{"A<->B switched"}));
    EXPECT_EQ(circuit.passages_of(circuit.components[5])[0].shift, Shift::hand);
    EXPECT_EQ(passages(circuit, 6), (Words{"A<->F switched", "B<->F switched"}));
    EXPECT_EQ(passages(circuit, 7),
              (Words{"A<->F switched", "B<->F switched", "A<->F metering", "B<->F metering"}));
}

// A bypass is there only where the file gives one.
TEST(CircuitParts, FilterAndCooler) {
    const Circuit circuit = circuit_with(R"(
        <filter id="F1"/><filter id="F2" one-way="yes" bypass="2 bar"/>
        <cooler id="K1"/><cooler id="K2" bypass="15 psi"/>)");
    EXPECT_EQ(passages(circuit, 0), (Words{"A<->B element"}));
    EXPECT_EQ(passages(circuit, 1),
              (Words{"A->B element", "A->B pressure-opened at 200000 Pa, bypass"}));
    EXPECT_EQ(passages(circuit, 2), (Words{"A<->B element"}));
    EXPECT_EQ(passages(circuit, 3),
              (Words{"A<->B element", "A->B pressure-opened at 103421 Pa, bypass"}));
}

TEST(CircuitParts, DeclaredPortsAreOneNode) {
    const Circuit circuit = circuit_with(R"(
        <reservoir id="T1"><port id="suction" level="below"/><port id="return" level="above"/>
            <port id="drain"/></reservoir>
        <junction id="J1"><port id="a"/></junction>)");
    EXPECT_EQ(ports(circuit, 0), (Words{"T1.suction", "T1.return", "T1.drain"}));
    EXPECT_EQ(passages(circuit, 0), (Words{"suction<->return joined", "suction<->drain joined"}));
    EXPECT_TRUE(circuit.ports[0].below_level);
    EXPECT_FALSE(circuit.ports[1].below_level);
    EXPECT_EQ(passages(circuit, 1), Words{});
}

TEST(CircuitParts, DirectionalValve) {
    const Circuit circuit = circuit_with(R"(
        <load id="D1"/>
        <directional-valve id="V1">
            <port id="P"/><port id="A"/>
            <position id="rest" rest="yes"/>
            <position id="a" in="drive-forward overrun-forward">
                <path from="P" to="A"/><path from="A" to="P" throttled="yes"/></position>
        </directional-valve>)");
    const Component& valve = circuit.components[1];
    ASSERT_EQ(circuit.positions_of(valve).size(), 2U);
    EXPECT_EQ(circuit.positions[0].id, "rest");
    EXPECT_TRUE(circuit.positions[0].rest);
    EXPECT_EQ(circuit.positions[0].in, 0U);
    EXPECT_FALSE(circuit.positions[1].rest);
    EXPECT_EQ(circuit.positions[1].in, (1U << static_cast<unsigned>(State::drive_forward)) |
                                           (1U << static_cast<unsigned>(State::overrun_forward)));
    EXPECT_EQ(passages(circuit, 1), (Words{"P<->A switched in a", "A<->P metering in a"}));
    for (const Passage& passage : circuit.passages_of(valve)) {
        EXPECT_EQ(passage.shift, Shift::position);
        EXPECT_EQ(passage.component, 1U);
    }
}

}  // namespace
}  // namespace loopwright
