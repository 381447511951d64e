#include <loopwright/tests/parser/kind_statement.h>

// What conditions, stores, measures and joins, stated by hand from the design's rule table.

namespace loopwright::testing {

std::map<std::string_view, Statement> fitting_statements() {
    const auto instrument = [](std::vector<std::string> attributes = {}) {
        return Statement{.part = Part::instrument, .attributes = std::move(attributes)};
    };
    const std::string tolerance = "tolerance: pressure";
    return {
        {"accumulator",
         {.part = Part::accumulator,
          .attributes = {"charge: gas|spring = gas", "separator: bladder|diaphragm|piston",
                         "volume: volume", "precharge: pressure", "max-pressure: pressure"}}},
        {"breather",
         {.attributes = {"fineness: length", "beta: ratio", "flow: flow",
                         "opening-pressure: pressure", "filler: yes|no = no"}}},
        {"device",
         {.part = Part::device,
          .children = Children::ports_and_passages,
          .attributes = {"inside: declared|unknown = declared"}}},
        {"flow-meter", instrument({"range: flow"})},
        {"gauge", instrument({"range: pressure"})},
        {"heater", {.attributes = {"power: power", "off-above: temperature"}}},
        {"level-indicator", instrument({"switched: yes|no = no"})},
        {"measuring-point", instrument()},
        {"plug", {}},
        {"pressure-switch",
         instrument({"setting: pressure", tolerance, "switches: rising|falling = rising"})},
        {"quick-coupling",
         {.attributes = {"valves: none|one|both = both", "joined: yes|no = yes",
                         "max-pressure: pressure"}}},
        {"rotary-joint", {.children = Children::pairs}},
        {"sensor", instrument({"measures: pressure|temperature|flow|level|contamination = pressure",
                               "signal: text", "range: pressure"})},
        {"strainer",
         {.attributes = {"fineness: length", "bypass: pressure", "flow: flow",
                         "pressure-drop: pressure", "viscosity: kinematic viscosity"}}},
        {"tachometer",
         {.part = Part::instrument,
          .turns = true,
          .attributes = {"signal: text", "range: speed of rotation"}}},
        {"thermometer", instrument()},
        {"thermostatic-bypass", {.attributes = {"opens-at: temperature", "open-at: temperature"}}},
    };
}

namespace {

TEST(KindStatements, Conditioners) {
    EXPECT_EQ(machine("strainer", ""), "A B\nA<>B element");
    EXPECT_EQ(machine("strainer", R"(bypass="0.2 bar")"),
              "A B\nA<>B element\nA>B opened at 20000 Pa");
    EXPECT_EQ(machine("heater", ""), "A B\nA<>B element");
    EXPECT_EQ(machine("thermostatic-bypass", ""),
              "A B C\nA<>B element by position warm\nA<>C element by position cold");
}

TEST(KindStatements, WhatLeadsNoOil) {
    for (const char* kind : {"gauge", "thermometer", "level-indicator", "pressure-switch", "sensor",
                             "measuring-point", "plug", "breather"})
        EXPECT_EQ(machine(kind, ""), "P") << kind;
    EXPECT_EQ(machine("accumulator", ""), "A");
    EXPECT_EQ(machine("tachometer", ""), "");
    // A breather that holds pressure in the reservoir still passes air alone.
    EXPECT_EQ(machine("breather", R"(opening-pressure="0.35 bar" filler="yes")"), "P");
    EXPECT_FALSE(takes("breather", "opening-pressure", "0 bar"));
    EXPECT_FALSE(takes("breather", "fineness", "0 um"));
}

TEST(KindStatements, WhatJoins) {
    EXPECT_EQ(machine("flow-meter", ""), "A B\n{A B}");
    EXPECT_EQ(machine("quick-coupling", ""), "A B\nA<>B switched by hand");
    EXPECT_EQ(machine("quick-coupling", R"(valves="one")"), "A B\nA<>B switched by hand");
    EXPECT_EQ(machine("quick-coupling", R"(valves="none")"), "A B\n{A B}");
    for (const char* valves : {"none", "one", "both"})
        EXPECT_EQ(machine("quick-coupling", fmt::format(R"(joined="no" valves="{}")", valves)),
                  "A B");
    EXPECT_EQ(statement(R"(<rotary-joint id="X1"><port id="a"/><port id="b"/><port id="c"/>
                           <port id="d"/></rotary-joint>)"),
              "a b c d\n{a b}\n{c d}");
}

}  // namespace

}  // namespace loopwright::testing
