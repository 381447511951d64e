#include <loopwright/tests/parser/kind_statement.h>

// The valves, stated by hand from the table of passages in the design's rule table.

namespace loopwright::testing {

std::map<std::string_view, Statement> valve_statements() {
    const std::string setting = "setting: pressure";
    const std::string tolerance = "tolerance: pressure";
    const std::string adjustable = "adjustable: yes|no = yes";
    const std::string check = "check-opening-pressure: pressure";
    return {
        {"bypass-valve",
         {.attributes = {"position: open|closed = closed", "locked: yes|no = no",
                         "switched: yes|no = no"}}},
        {"check-valve",
         {.attributes = {"opening-pressure: pressure", "pilot: none|opens|shuts = none",
                         "pilot-ratio: ratio"}}},
        {"counterbalance-valve",
         {.attributes = {setting, tolerance, adjustable, "pilot: internal|external = external",
                         "pilot-ratio: ratio", "drain: internal|external = internal", check}}},
        {"flow-control",
         {.attributes = {"flow: flow", "pressure-drop: pressure", adjustable, "check: yes|no = no",
                         check}}},
        {"flow-divider",
         {.children = Children::legs,
          .attributes = {"design: spool|rotary = spool", "flow: flow", "error: ratio"}}},
        {"orifice", {.attributes = {"bore: length", "flow: flow", "pressure-drop: pressure"}}},
        {"pilot-control-valve",
         {.attributes = {"actuation: pedal|lever = lever", "outlets: 1..2 = 1",
                         "max-pressure: pressure", "detent: yes|no = no"}}},
        {"priority-valve",
         {.attributes = {"priority-flow: flow", setting, "load-sensing: yes|no = no"}}},
        {"reducing-valve",
         {.attributes = {setting, tolerance, adjustable, "relieving: yes|no = no"}}},
        {"relief-valve",
         {.attributes = {setting, tolerance, "full-flow-pressure: pressure", "full-flow: flow",
                         adjustable, "operation: direct|pilot = direct",
                         "drain: internal|external = internal", "make-up-check: yes|no = no",
                         check}}},
        {"sequence-valve",
         {.attributes = {setting, tolerance, adjustable, "pilot: internal|external = internal",
                         "drain: internal|external = external", "check: yes|no = no", check}}},
        {"shut-off-valve",
         {.attributes = {"position: open|closed = open", "locked: yes|no = no",
                         "switched: yes|no = no", "bore: length"}}},
        {"shuttle-valve", {}},
        {"throttle",
         {.attributes = {adjustable, "bore: length", "length: length", "flow: flow",
                         "pressure-drop: pressure"}}},
        {"throttle-check",
         {.attributes = {adjustable, check, "flow: flow", "pressure-drop: pressure"}}},
        {"unloading-valve",
         {.attributes = {setting, tolerance, adjustable, "drain: internal|external = internal"}}},
    };
}

namespace {

TEST(KindStatements, PilotedChecks) {
    EXPECT_EQ(machine("check-valve", R"(pilot="opens")"),
              "A B X\nA>B check at 0 Pa\n"
              "B>A switched opened by pilot");
    EXPECT_EQ(machine("check-valve", R"(pilot="shuts" opening-pressure="1 bar")"),
              "A B X\nA>B check shut by pilot at 100000 Pa");
}

TEST(KindStatements, PressureValves) {
    EXPECT_EQ(machine("relief-valve", R"(setting="1 bar" drain="external")"),
              "P T Y\nP>T opened at 100000 Pa");
    EXPECT_EQ(machine("relief-valve", R"(setting="1 bar" make-up-check="yes")"),
              "P T\nP>T opened at 100000 Pa\nT>P check at 0 Pa");
    EXPECT_EQ(machine("sequence-valve", R"(setting="1 bar")"), "P A Y\nP>A opened at 100000 Pa");
    EXPECT_EQ(machine("sequence-valve", R"(pilot="external" drain="internal" check="yes")"),
              "P A X\nA>P check at 0 Pa\nP>A switched unloaded by pilot");
    EXPECT_EQ(machine("unloading-valve", R"(setting="1 bar")"),
              "P T X\nP>T switched unloaded by pilot");
    EXPECT_EQ(machine("reducing-valve", R"(setting="1 bar")"), "P A Y\nP>A reduced");
    EXPECT_EQ(machine("reducing-valve", R"(setting="1 bar" relieving="yes")"),
              "P A T\nA>T opened at 100000 Pa\nP>A reduced");
    EXPECT_EQ(machine("counterbalance-valve", R"(setting="1 bar")"),
              "A B X\nA>B check at 0 Pa\nB>A opened at 100000 Pa\nB>A switched opened by pilot");
    EXPECT_EQ(machine("counterbalance-valve", R"(pilot="internal" drain="external")"),
              "A B Y\nA>B check at 0 Pa\nB>A opened at ?");
    EXPECT_EQ(machine("priority-valve", R"(setting="1 bar" load-sensing="yes")"),
              "P CF EF LS\nP>CF reduced\nP>EF opened at 100000 Pa");
}

TEST(KindStatements, FlowValves) {
    EXPECT_EQ(machine("throttle", ""), "A B\nA<>B metering");
    EXPECT_EQ(machine("throttle-check", ""), "A B\nA<>B metering\nB>A check at 0 Pa");
    EXPECT_EQ(machine("flow-control", R"(check="yes")"), "A B\nA>B metering\nB>A check at 0 Pa");
    EXPECT_EQ(statement(R"(<flow-divider id="X1"><port id="A"/><port id="B"/></flow-divider>)"),
              "P A B\nP<>A leg\nP<>B leg");
}

TEST(KindStatements, OperatedAndShifted) {
    EXPECT_EQ(machine("shuttle-valve", ""),
              "A B C\nA<>C switched from the higher inlet\n"
              "B<>C switched from the higher inlet");
    EXPECT_EQ(machine("bypass-valve", ""), "A B\nA<>B switched by hand");
    EXPECT_EQ(machine("pilot-control-valve", ""),
              "P T A\nA<>T switched by position released\nP>A reduced by position a");
    EXPECT_EQ(machine("pilot-control-valve", R"(outlets="2")"),
              "P T A B\nA<>T switched by position b\nA<>T switched by position released\n"
              "B<>T switched by position a\nB<>T switched by position released\n"
              "P>A reduced by position a\nP>B reduced by position b");
}

}  // namespace

}  // namespace loopwright::testing
