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
#include <loopwright/tests/parser/kind_statement.h>

// What each kind is, stated by hand from the design and held against what the reader makes of an
// element: its ports, how oil passes between them, the part it plays, its attributes.
//
//     A>B  one way     A<>B  both ways     {A B}  one node

namespace loopwright {
namespace {

using testing::machine;
using testing::spelled;
using testing::statement;
using testing::Statement;
using testing::takes;

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

// Part, whether it turns, children and attributes of all kinds; a kind more must be added here.
TEST(KindStatements, PartsAndAttributes) {
    std::map<std::string_view, Statement> all = {
        {"cooler",
         {.part = Part::cooler,
          .attributes = {"capacity: power", "temperature-difference: difference of temperatures",
                         "medium: air|water", "flow: flow", "pressure-drop: pressure",
                         "viscosity: kinematic viscosity", "max-pressure: pressure",
                         "bypass: pressure"}}},
        {"directional-valve",
         {.children = Children::ports_and_positions,
          .attributes = {"actuation: solenoid|pilot|lever|pedal = solenoid",
                         "detent: yes|no = no"}}},
        {"filter",
         {.part = Part::filter,
          .attributes = {"fineness: length", "beta: ratio", "place: suction|pressure|return",
                         "flow: flow", "pressure-drop: pressure", "viscosity: kinematic viscosity",
                         "dirt-capacity: mass", "collapse-pressure: pressure",
                         "max-pressure: pressure", "bypass: pressure",
                         "clogging-indicator: none|visual|electrical = none",
                         "indicator-pressure: pressure", "one-way: yes|no = no"}}},
        {"flushing-valve", {.attributes = {"centre: closed|open = closed"}}},
        {"junction", {.children = Children::ports}},
        {"reservoir",
         {.part = Part::reservoir,
          .children = Children::ports,
          .attributes = {"volume: volume", "min-volume: volume", "max-volume: volume",
                         "breather: yes|no = no", "level-indicator: yes|no = no",
                         "pressure: pressure", "max-pressure: pressure",
                         "max-temperature: temperature", "head: length", "cooling-area: area",
                         "heat-transfer: heat transfer coefficient"}}},
    };
    all.merge(testing::machine_statements());
    all.merge(testing::valve_statements());
    all.merge(testing::fitting_statements());
    EXPECT_EQ(kinds().size(), all.size());
    for (const Kind* kind : kinds()) {
        ASSERT_TRUE(all.contains(kind->name)) << kind->name << " is stated nowhere";
        const Statement& stated = all.at(kind->name);
        EXPECT_EQ(kind->part, stated.part) << kind->name;
        EXPECT_EQ(kind->turns, stated.turns) << kind->name;
        EXPECT_EQ(kind->children, stated.children) << kind->name;
        EXPECT_EQ(std::vector(kind->ends.begin(), kind->ends.end()), stated.ends) << kind->name;
        std::vector<std::string> attributes;
        for (const AttributeSpec& spec : kind->attributes) attributes.push_back(spelled(spec));
        EXPECT_EQ(attributes, stated.attributes) << kind->name;
    }
}

// The edges of the ranges: by what the figures are, not by what the table says.
TEST(KindStatements, Ranges) {
    // Nothing of no size: a filter of no fineness, ...
    EXPECT_FALSE(takes("filter", "fineness", "0 um"));
    EXPECT_FALSE(takes("orifice", "bore", "0 mm"));
    EXPECT_FALSE(takes("reservoir", "volume", "0 L"));
    EXPECT_FALSE(takes("cooler", "capacity", "0 kW"));
    EXPECT_FALSE(takes("cooler", "temperature-difference", "0 K"));
    // Pressures that open or limit are not below the atmosphere.
    EXPECT_TRUE(takes("relief-valve", "setting", "0 bar"));
    EXPECT_FALSE(takes("relief-valve", "setting", "-1 bar"));
    EXPECT_FALSE(takes("pump", "case-pressure", "0.8 bar abs"));
    EXPECT_TRUE(takes("pump", "case-pressure", "2 bar abs"));
    // ISO 16889: a filtration ratio is upstream over downstream count; 1 holds nothing back.
    EXPECT_TRUE(takes("filter", "beta", "1"));
    EXPECT_FALSE(takes("filter", "beta", "0.99"));
}

}  // namespace
}  // namespace loopwright
