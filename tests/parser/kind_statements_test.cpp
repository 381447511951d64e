#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/circuit.h>
#include <loopwright/parser/kinds/catalogue.h>
#include <loopwright/tests/support/circuit_text.h>

// What each kind is, stated by hand from the design and held against what the reader makes of an
// element: its ports, how oil passes between them, the part it plays, its attributes.
//
//     A>B  one way     A<>B  both ways     {A B}  one node

namespace loopwright {
namespace {

using testing::circuit_with;

std::string_view word(Shift shift) {
    switch (shift) {
        case Shift::never:
            return "";
        case Shift::position:
            return " by position";
        case Shift::hand:
            return " by hand";
        case Shift::pressure:
            return " by pressure";
        case Shift::pressure_centred:
            return " when centred";
        case Shift::higher_inlet:
            return " from the higher inlet";
        case Shift::pilot_opens:
            return " opened by pilot";
        case Shift::pilot_shuts:
            return " shut by pilot";
        case Shift::pilot_unloads:
            return " unloaded by pilot";
        case Shift::commanded:
            return " when commanded";
        case Shift::released:
            return " when released";
    }
    return " ?";
}

std::string_view word(PassageClass passage) {
    switch (passage) {
        case PassageClass::joined:
            return "joined";
        case PassageClass::one_way:
            return "check";
        case PassageClass::pressure_opened:
            return "opened";
        case PassageClass::reduced:
            return "reduced";
        case PassageClass::switched:
            return "switched";
        case PassageClass::metering:
            return "metering";
        case PassageClass::displacement:
            return "displacement";
        case PassageClass::leakage:
            return "leakage";
        case PassageClass::element:
            return "element";
    }
    return "?";
}

/// Ports, then a line a node of several ports, then one a passage, sorted.
std::string statement(const std::string& element) {
    const Circuit circuit = circuit_with(element);
    if (circuit.components.size() != 1) return "not one component";
    const Component& part = circuit.components.front();
    std::string ports;
    std::map<Index, Index> node;
    for (Index port = part.ports.begin; port < part.ports.end; ++port) {
        ports += fmt::format("{}{}", ports.empty() ? "" : " ", circuit.ports[port].letter);
        node[port] = port;
    }
    std::vector<std::string> lines;
    for (const Passage& one : circuit.passages_of(part)) {
        if (one.passage == PassageClass::joined) {
            EXPECT_TRUE(one.both_ways);
            const Index from = node[one.from];
            const Index to = node[one.to];
            for (auto& [port, its] : node) its = its == from ? to : its;
            continue;
        }
        std::string line =
            fmt::format("{}{}{} {}{}", circuit.ports[one.from].letter, one.both_ways ? "<>" : ">",
                        circuit.ports[one.to].letter, word(one.passage), word(one.shift));
        if (one.position != none) line += fmt::format(" {}", circuit.positions[one.position].id);
        if (one.passage == PassageClass::one_way || one.passage == PassageClass::pressure_opened)
            line += std::isnan(one.opening) ? " at ?" : fmt::format(" at {} Pa", one.opening);
        lines.push_back(line);
    }
    std::sort(lines.begin(), lines.end());
    std::map<Index, std::string> nodes;
    for (const auto& [port, its] : node)
        nodes[its] +=
            fmt::format("{}{}", nodes[its].empty() ? "" : " ", circuit.ports[port].letter);
    std::string text = ports;
    for (const auto& [its, letters] : nodes)
        if (letters.find(' ') != std::string::npos) text += fmt::format("\n{{{}}}", letters);
    for (const std::string& line : lines) text += "\n" + line;
    return text;
}

std::string machine(std::string_view kind, std::string_view attributes) {
    return statement(fmt::format("<{} id=\"X1\" {}/>", kind, attributes));
}

TEST(KindStatements, Pump) {
    EXPECT_EQ(machine("pump", ""), "S P\nP>S leakage\nS>P displacement");
    EXPECT_EQ(machine("pump", R"(flow-directions="1" drain="internal")"), machine("pump", ""));
    EXPECT_EQ(machine("pump", R"(drain="external")"), "S P L\nP>L leakage\nS>P displacement");
    EXPECT_EQ(machine("pump", R"(drain="external" case-ports="2")"),
              "S P L1 L2\n{L1 L2}\nP>L1 leakage\nS>P displacement");
    EXPECT_EQ(machine("pump", R"(flow-directions="2")"), "A B\nA<>B displacement\nA>B leakage");
    EXPECT_EQ(machine("pump", R"(flow-directions="2" drain="external")"),
              "A B L\nA<>B displacement\nA>L leakage\nB>L leakage");
    EXPECT_EQ(machine("pump", R"(flow-directions="2" drain="external" case-ports="2")"),
              "A B L1 L2\n{L1 L2}\nA<>B displacement\nA>L1 leakage\nB>L1 leakage");
    EXPECT_EQ(machine("pump", R"(flow-directions="2" drain="external" case-ports="3")"),
              "A B L1 L2 L3\n{L1 L2 L3}\nA<>B displacement\nA>L1 leakage\nB>L1 leakage");
}

TEST(KindStatements, Motor) {
    EXPECT_EQ(machine("motor", ""), "A B\nA<>B displacement\nA>B leakage");
    EXPECT_EQ(machine("motor", R"(flow-directions="1")"), "A B\nA>B displacement\nA>B leakage");
    EXPECT_EQ(machine("motor", R"(drain="external")"),
              "A B L\nA<>B displacement\nA>L leakage\nB>L leakage");
    EXPECT_EQ(machine("motor", R"(flow-directions="1" drain="external" case-ports="2")"),
              "A B L1 L2\n{L1 L2}\nA>B displacement\nA>L1 leakage\nB>L1 leakage");
    EXPECT_EQ(machine("motor", R"(drain="external" case-ports="3")"),
              "A B L1 L2 L3\n{L1 L2 L3}\nA<>B displacement\nA>L1 leakage\nB>L1 leakage");
}

TEST(KindStatements, CheckValve) {
    EXPECT_EQ(machine("check-valve", ""), "A B\nA>B check at 0 Pa");
    EXPECT_EQ(machine("check-valve", R"(opening-pressure="0.5 bar")"),
              "A B\nA>B check at 50000 Pa");
}

TEST(KindStatements, ReliefValve) {
    EXPECT_EQ(machine("relief-valve", ""), "P T\nP>T opened at ?");
    EXPECT_EQ(machine("relief-valve", R"(setting="24 bar")"), "P T\nP>T opened at 2400000 Pa");
}

TEST(KindStatements, FilterAndCooler) {
    EXPECT_EQ(machine("filter", ""), "A B\nA<>B element");
    EXPECT_EQ(machine("filter", R"(one-way="yes")"), "A B\nA>B element");
    EXPECT_EQ(machine("filter", R"(bypass="3 bar")"), "A B\nA<>B element\nA>B opened at 300000 Pa");
    EXPECT_EQ(machine("filter", R"(one-way="yes" bypass="3 bar")"),
              "A B\nA>B element\nA>B opened at 300000 Pa");
    EXPECT_EQ(machine("cooler", ""), "A B\nA<>B element");
    EXPECT_EQ(machine("cooler", R"(bypass="1 bar")"), "A B\nA<>B element\nA>B opened at 100000 Pa");
}

TEST(KindStatements, FlushingValve) {
    EXPECT_EQ(machine("flushing-valve", ""),
              "A B F\nA<>F switched by pressure\nB<>F switched by pressure");
    EXPECT_EQ(machine("flushing-valve", R"(centre="open")"),
              "A B F\nA<>F metering when centred\nA<>F switched by pressure\n"
              "B<>F metering when centred\nB<>F switched by pressure");
}

TEST(KindStatements, HandValveAndOrifice) {
    for (const char* attributes : {"", R"(position="closed")", R"(locked="yes")"})
        EXPECT_EQ(machine("shut-off-valve", attributes), "A B\nA<>B switched by hand");
    EXPECT_EQ(machine("orifice", R"(bore="1 mm")"), "A B\nA<>B metering");
}

TEST(KindStatements, WhatOnlyTurns) {
    EXPECT_EQ(machine("engine", ""), "");
    EXPECT_EQ(machine("load", ""), "");
}

TEST(KindStatements, PortsFromTheFile) {
    EXPECT_EQ(
        statement(R"(<reservoir id="T1"><port id="S"/><port id="R"/><port id="D"/></reservoir>)"),
        "S R D\n{S R D}");
    EXPECT_EQ(statement(R"(<junction id="J1"><port id="a"/><port id="b"/></junction>)"),
              "a b\n{a b}");
    EXPECT_EQ(statement(R"(<directional-valve id="V1"><port id="P"/><port id="A"/><port id="T"/>
        <position id="0" rest="yes"><path from="A" to="T" throttled="yes"/></position>
        <position id="a"><path from="P" to="A"/></position></directional-valve>)"),
              "P A T\nA<>T metering by position 0\nP<>A switched by position a");
}

/// "name type default" of an attribute.
std::string spelled(const AttributeSpec& spec) {
    std::string type;
    switch (spec.type) {
        case AttributeType::quantity:
            type = name(spec.dimension);
            break;
        case AttributeType::count:
            type = fmt::format("{:.0f}..{:.0f}", spec.least, spec.most);
            break;
        case AttributeType::yes_no:
            type = "yes|no";
            break;
        case AttributeType::choice:
            for (const std::string_view choice : spec.choices)
                type += fmt::format("{}{}", type.empty() ? "" : "|", choice);
            break;
        case AttributeType::text:
            type = "text";
            break;
    }
    return fmt::format("{}: {}{}", spec.name, type,
                       spec.default_text.empty() ? "" : fmt::format(" = {}", spec.default_text));
}

// Part, whether it turns, children and attributes of all kinds; a kind more must be added here.
TEST(KindStatements, PartsAndAttributes) {
    struct Statement {
        Part part = Part::plumbing;
        bool turns = false;
        Children children = Children::no;
        std::vector<std::string> attributes = {};
    };
    const std::string rotation = "rotation: clockwise|counter-clockwise";
    const std::string design = "design: swashplate|bent-axis|gear|vane|radial-piston";
    const auto machine = [&](const std::string& directions) {
        return std::vector<std::string>{"displacement: displacement",
                                        "min-displacement: displacement",
                                        "variable: yes|no = no",
                                        "flow-directions: 1..2 = " + directions,
                                        design,
                                        "control: none|manual|hydraulic|electric = none",
                                        rotation,
                                        "drain: internal|external = internal",
                                        "case-ports: 1..3 = 1",
                                        "case-pressure: pressure",
                                        "max-pressure: pressure",
                                        "max-speed: speed of rotation",
                                        "closed-loop: yes|no = no"};
    };
    const std::map<std::string_view, Statement> all = {
        {"check-valve", {.attributes = {"opening-pressure: pressure"}}},
        {"cooler",
         {.part = Part::cooler,
          .attributes = {"capacity: power", "temperature-difference: difference of temperatures",
                         "bypass: pressure"}}},
        {"directional-valve",
         {.children = Children::ports_and_positions,
          .attributes = {"actuation: solenoid|pilot|lever|pedal = solenoid",
                         "detent: yes|no = no"}}},
        {"engine",
         {.part = Part::prime_mover,
          .turns = true,
          .attributes = {"power: power", "speed: speed of rotation", rotation}}},
        {"filter",
         {.part = Part::filter,
          .attributes = {"fineness: length", "beta: ratio", "bypass: pressure",
                         "clogging-indicator: none|visual|electrical = none",
                         "one-way: yes|no = no"}}},
        {"flushing-valve", {.attributes = {"centre: closed|open = closed"}}},
        {"junction", {.children = Children::ports}},
        {"load",
         {.part = Part::load,
          .turns = true,
          .attributes = {"torque: torque", "overrunning: yes|no = no"}}},
        {"motor", {.part = Part::actuator, .turns = true, .attributes = machine("2")}},
        {"orifice", {.attributes = {"bore: length"}}},
        {"pump", {.part = Part::pump, .turns = true, .attributes = machine("1")}},
        {"relief-valve",
         {.attributes = {"setting: pressure", "full-flow-pressure: pressure",
                         "adjustable: yes|no = yes", "operation: direct|pilot = direct"}}},
        {"reservoir",
         {.part = Part::reservoir,
          .children = Children::ports,
          .attributes = {"volume: volume", "breather: yes|no = no",
                         "level-indicator: yes|no = no"}}},
        {"shut-off-valve", {.attributes = {"position: open|closed = open", "locked: yes|no = no"}}},
    };
    EXPECT_EQ(kinds().size(), all.size());
    for (const Kind* kind : kinds()) {
        ASSERT_TRUE(all.contains(kind->name)) << kind->name << " is stated nowhere";
        const Statement& stated = all.at(kind->name);
        EXPECT_EQ(kind->part, stated.part) << kind->name;
        EXPECT_EQ(kind->turns, stated.turns) << kind->name;
        EXPECT_EQ(kind->children, stated.children) << kind->name;
        std::vector<std::string> attributes;
        for (const AttributeSpec& spec : kind->attributes) attributes.push_back(spelled(spec));
        EXPECT_EQ(attributes, stated.attributes) << kind->name;
    }
}

bool takes(std::string_view kind, std::string_view attribute, std::string_view text) {
    const auto specs = find_kind(kind)->attributes;
    const auto spec = std::find_if(specs.begin(), specs.end(),
                                   [attribute](const auto& one) { return one.name == attribute; });
    AttributeValue value;
    Words words;
    return read_value(*spec, text, value, words);
}

// The edges of the ranges: by what the figures are, not by what the table says.
TEST(KindStatements, Ranges) {
    // Nothing of no size: a pump that displaces nothing, a filter of no fineness, ...
    EXPECT_FALSE(takes("pump", "displacement", "0 cm3/rev"));
    EXPECT_FALSE(takes("motor", "displacement", "-1 cm3/rev"));
    EXPECT_FALSE(takes("filter", "fineness", "0 um"));
    EXPECT_FALSE(takes("orifice", "bore", "0 mm"));
    EXPECT_FALSE(takes("engine", "power", "0 kW"));
    EXPECT_FALSE(takes("engine", "speed", "0 rpm"));
    EXPECT_FALSE(takes("reservoir", "volume", "0 L"));
    EXPECT_FALSE(takes("cooler", "capacity", "0 kW"));
    EXPECT_FALSE(takes("cooler", "temperature-difference", "0 K"));
    // A variable machine can be set to nothing.
    EXPECT_TRUE(takes("motor", "min-displacement", "0 cm3/rev"));
    EXPECT_FALSE(takes("motor", "min-displacement", "-1 cm3/rev"));
    // Pressures that open or limit are not below the atmosphere.
    EXPECT_TRUE(takes("relief-valve", "setting", "0 bar"));
    EXPECT_FALSE(takes("relief-valve", "setting", "-1 bar"));
    EXPECT_FALSE(takes("pump", "case-pressure", "0.8 bar abs"));
    EXPECT_TRUE(takes("pump", "case-pressure", "2 bar abs"));
    // ISO 16889: a filtration ratio is upstream over downstream count; 1 holds nothing back.
    EXPECT_TRUE(takes("filter", "beta", "1"));
    EXPECT_FALSE(takes("filter", "beta", "0.99"));
    // A load can drive.
    EXPECT_TRUE(takes("load", "torque", "-300 N.m"));
    EXPECT_FALSE(takes("pump", "flow-directions", "0"));
    EXPECT_FALSE(takes("pump", "flow-directions", "3"));
    EXPECT_TRUE(takes("pump", "case-ports", "3"));
    EXPECT_FALSE(takes("pump", "case-ports", "4"));
}

}  // namespace
}  // namespace loopwright
