#include <map>
#include <string>
#include <string_view>
#include <vector>

#include <gtest/gtest.h>

#include <loopwright/tests/parser/kind_statement.h>

// What turns, stated by hand from the design: machines, prime movers, what stands on shafts, loads.

namespace loopwright {
namespace {

using testing::machine;
using testing::statement;
using testing::takes;

TEST(MachineStatements, Pump) {
    EXPECT_EQ(machine("pump", ""), "S P\nP>S leakage\nS>P displacement");
    EXPECT_EQ(machine("pump", R"(flow-directions="1" drain="internal")"), machine("pump", ""));
    EXPECT_EQ(machine("pump", R"(drain="external")"),
              "S P L\nP>L leakage\nS>L leakage\nS>P displacement");
    EXPECT_EQ(machine("pump", R"(drain="external" case-ports="2")"),
              "S P L1 L2\n{L1 L2}\nP>L1 leakage\nS>L1 leakage\nS>P displacement");
    EXPECT_EQ(machine("pump", R"(flow-directions="2")"), "A B\nA<>B displacement\nA<>B leakage");
    EXPECT_EQ(machine("pump", R"(flow-directions="2" drain="external")"),
              "A B L\nA<>B displacement\nA>L leakage\nB>L leakage");
    EXPECT_EQ(machine("pump", R"(flow-directions="2" drain="external" case-ports="2")"),
              "A B L1 L2\n{L1 L2}\nA<>B displacement\nA>L1 leakage\nB>L1 leakage");
    EXPECT_EQ(machine("pump", R"(flow-directions="2" drain="external" case-ports="3")"),
              "A B L1 L2 L3\n{L1 L2 L3}\nA<>B displacement\nA>L1 leakage\nB>L1 leakage");
}

TEST(MachineStatements, Motor) {
    EXPECT_EQ(machine("motor", ""), "A B\nA<>B displacement\nA<>B leakage");
    EXPECT_EQ(machine("motor", R"(flow-directions="1")"), "A B\nA<>B leakage\nA>B displacement");
    EXPECT_EQ(machine("motor", R"(drain="external")"),
              "A B L\nA<>B displacement\nA>L leakage\nB>L leakage");
    EXPECT_EQ(machine("motor", R"(flow-directions="1" drain="external" case-ports="2")"),
              "A B L1 L2\n{L1 L2}\nA>B displacement\nA>L1 leakage\nB>L1 leakage");
    EXPECT_EQ(machine("motor", R"(drain="external" case-ports="3")"),
              "A B L1 L2 L3\n{L1 L2 L3}\nA<>B displacement\nA>L1 leakage\nB>L1 leakage");
}

// The ports of a displacement control are there where the file shows them.
TEST(MachineStatements, ControlPorts) {
    for (const char* kind : {"pump", "motor", "pump-motor"}) {
        const std::string bare = machine(kind, R"(flow-directions="2")");
        EXPECT_EQ(machine(kind, R"(flow-directions="2" variable="yes" control="hydraulic")"), bare);
        EXPECT_EQ(machine(kind, R"(flow-directions="2" control="hydraulic" pilot-ports="1")"),
                  bare);
        const std::string passages = bare.substr(bare.find('\n'));
        EXPECT_EQ(machine(kind, R"(flow-directions="2" variable="yes" pilot-ports="1")"),
                  "A B X" + passages);
        EXPECT_EQ(machine(kind, R"(flow-directions="2" variable="yes" pilot-ports="2")"),
                  "A B X1 X2" + passages);
    }
}

TEST(MachineStatements, PumpMotor) {
    for (const char* attributes : {"", R"(flow-directions="1")", R"(drain="external")",
                                   R"(flow-directions="1" drain="external" case-ports="2")",
                                   R"(drain="external" case-ports="3")"})
        EXPECT_EQ(machine("pump-motor", attributes), machine("motor", attributes));
}

TEST(MachineStatements, HandPump) { EXPECT_EQ(machine("hand-pump", ""), "S P\nS>P displacement"); }

TEST(MachineStatements, SemiRotaryActuator) {
    EXPECT_EQ(machine("semi-rotary-actuator", ""), "A B\nA<>B displacement\nA<>B leakage");
}

TEST(MachineStatements, Cylinder) {
    EXPECT_EQ(machine("cylinder", ""), "A B\nA<>B displacement\nA<>B leakage");
    EXPECT_EQ(machine("cylinder", R"(rods="2")"), machine("cylinder", ""));
    EXPECT_EQ(machine("cylinder", R"(action="single")"), "A");
}

TEST(MachineStatements, WhatStandsOnShafts) {
    for (const char* kind : {"engine", "electric-motor", "load", "gearbox", "clutch"})
        EXPECT_EQ(machine(kind, ""), "") << kind;
    EXPECT_EQ(machine("brake", ""), "Z");
    EXPECT_EQ(machine("brake", R"(applied="pressure")"), "Z");
    EXPECT_EQ(machine("clutch", R"(actuation="hydraulic")"), "Z");
    EXPECT_EQ(machine("clutch", R"(actuation="electric")"), "");
}

// The edges of the ranges: by what the figures are, not by what the table says.
TEST(MachineStatements, Ranges) {
    EXPECT_FALSE(takes("pump", "displacement", "0 cm3/rev"));
    EXPECT_FALSE(takes("motor", "displacement", "-1 cm3/rev"));
    EXPECT_FALSE(takes("engine", "power", "0 kW"));
    EXPECT_FALSE(takes("electric-motor", "speed", "0 rpm"));
    EXPECT_FALSE(takes("gearbox", "ratio", "0"));
    EXPECT_FALSE(takes("gearbox", "ratio", "-3"));  // the sense is a word
    EXPECT_TRUE(takes("gearbox", "ratio", "0.5"));
    // A variable machine can be set to nothing.
    EXPECT_TRUE(takes("motor", "min-displacement", "0 cm3/rev"));
    EXPECT_FALSE(takes("motor", "min-displacement", "-1 cm3/rev"));
    // A load can drive.
    EXPECT_TRUE(takes("load", "torque", "-300 N.m"));
    EXPECT_TRUE(takes("load", "force", "-12 kN"));
    EXPECT_FALSE(takes("load", "mass", "0 kg"));
    EXPECT_FALSE(takes("pump", "flow-directions", "0"));
    EXPECT_FALSE(takes("pump", "flow-directions", "3"));
    EXPECT_TRUE(takes("pump", "case-ports", "3"));
    EXPECT_FALSE(takes("pump", "case-ports", "4"));
    EXPECT_TRUE(takes("pump", "pilot-ports", "0"));
    EXPECT_FALSE(takes("pump", "pilot-ports", "3"));
    // No machine gives more than it takes.
    for (const char* kind : {"pump", "motor", "pump-motor"}) {
        EXPECT_TRUE(takes(kind, "volumetric-efficiency", "100 %"));
        EXPECT_FALSE(takes(kind, "volumetric-efficiency", "101 %"));
        EXPECT_FALSE(takes(kind, "torque-efficiency", "-1 %"));
    }
    EXPECT_FALSE(takes("gearbox", "efficiency", "1.01"));
    // An inlet's limit counts from nought.
    EXPECT_TRUE(takes("pump", "inlet-pressure", "0.8 bar abs"));
    EXPECT_FALSE(takes("pump", "inlet-pressure", "-0.2 bar"));
    // The area round the rod is the smaller one.
    EXPECT_TRUE(takes("cylinder", "area-ratio", "1"));
    EXPECT_FALSE(takes("cylinder", "area-ratio", "0.7"));
}

using Lines = std::vector<std::string>;

Lines operator+(Lines first, const Lines& second) {
    first.insert(first.end(), second.begin(), second.end());
    return first;
}

const std::string rotation = "rotation: clockwise|counter-clockwise";

Lines displacement_machine(const std::string& directions, const Lines& own) {
    return Lines{"displacement: displacement",
                 "min-displacement: displacement",
                 "variable: yes|no = no",
                 "flow-directions: 1..2 = " + directions,
                 "design: swashplate|bent-axis|gear|vane|radial-piston",
                 "control: none|manual|hydraulic|electric|pressure-compensated|load-sensing = none",
                 rotation,
                 "drain: internal|external = internal",
                 "case-ports: 1..3 = 1",
                 "case-pressure: pressure",
                 "max-pressure: pressure",
                 "max-speed: speed of rotation",
                 "closed-loop: yes|no = no"} +
           own +
           Lines{"rated-pressure: pressure",
                 "peak-pressure: pressure",
                 "burst-pressure: pressure",
                 "peak-case-pressure: pressure",
                 "seal-pressure: pressure",
                 "low-side-pressure: pressure",
                 "rated-speed: speed of rotation",
                 "min-speed: speed of rotation",
                 "max-speed-at-min-displacement: speed of rotation",
                 "max-torque: torque",
                 "inertia: moment of inertia",
                 "volumetric-efficiency: ratio",
                 "torque-efficiency: ratio",
                 "rated-viscosity: kinematic viscosity",
                 "slip-coefficient: ratio",
                 "drag-coefficient: ratio",
                 "friction-coefficient: ratio",
                 "leakage-coefficient: leakage coefficient",
                 "drag-share: ratio = 50 %",
                 "case-leakage-share: ratio = 100 %",
                 "case-flow: flow",
                 "min-viscosity: kinematic viscosity",
                 "max-viscosity: kinematic viscosity",
                 "start-viscosity: kinematic viscosity",
                 "optimum-min-viscosity: kinematic viscosity",
                 "optimum-max-viscosity: kinematic viscosity",
                 "max-temperature: temperature",
                 "cleanliness: text",
                 "pilot-ports: 0..2 = 0",
                 "control-pressure: pressure",
                 "control-start: pressure",
                 "control-end: pressure",
                 "rest-displacement: zero|least|largest"};
}

const Lines prime_mover{"power: power",
                        "speed: speed of rotation",
                        rotation,
                        "variable-speed: yes|no = no",
                        "max-speed: speed of rotation",
                        "max-torque: torque",
                        "braking-power: power",
                        "inertia: moment of inertia"};

}  // namespace

std::map<std::string_view, testing::Statement> testing::machine_statements() {
    return {
        {"brake",
         {.part = Part::brake,
          .turns = true,
          .attributes = {"applied: spring|pressure = spring", "use: parking|service|both",
                         "torque: torque", "slipping-torque: torque", "release-pressure: pressure",
                         "full-release-pressure: pressure", "apply-pressure: pressure",
                         "max-pressure: pressure", "volume: volume", "max-speed: speed of rotation",
                         "released-by-hand: yes|no = no"}}},
        {"clutch",
         {.part = Part::clutch,
          .turns = true,
          .attributes = {"engaged: yes|no = yes", "actuation: manual|hydraulic|electric = manual",
                         "applied: spring|pressure", "torque: torque", "full-pressure: pressure",
                         "max-pressure: pressure", "max-speed: speed of rotation",
                         "inertia: moment of inertia"},
          .ends = {"in", "out"}}},
        {"cylinder",
         {.part = Part::actuator,
          .turns = true,
          .attributes = {"action: double|single = double", "rods: 1..2 = 1",
                         "spring-return: yes|no = no", "bore: length", "rod: length",
                         "stroke: length", "area-ratio: ratio", "cushion: none|cap|rod|both = none",
                         "rated-pressure: pressure", "max-pressure: pressure",
                         "peak-pressure: pressure", "burst-pressure: pressure",
                         "max-velocity: velocity", "force-efficiency: ratio",
                         "cross-leakage: flow"}}},
        {"electric-motor",
         {.part = Part::prime_mover,
          .turns = true,
          .attributes = prime_mover + Lines{"min-speed: speed of rotation",
                                            "reversing: yes|no = no", "efficiency: ratio"}}},
        {"engine",
         {.part = Part::prime_mover,
          .turns = true,
          .attributes = prime_mover + Lines{"idle-speed: speed of rotation", "droop: ratio",
                                            "braking-torque: torque"}}},
        {"gearbox",
         {.part = Part::gearbox,
          .turns = true,
          .attributes = {"ratio: ratio", "sense: same|opposite", "efficiency: ratio",
                         "max-torque: torque", "max-speed: speed of rotation",
                         "inertia: moment of inertia"},
          .ends = {"in", "out"}}},
        {"hand-pump",
         {.part = Part::hand_pump, .attributes = {"volume: volume", "max-pressure: pressure"}}},
        {"load",
         {.part = Part::load,
          .turns = true,
          .attributes = {"torque: torque", "overrunning: yes|no = no",
                         "overrunning-sense: either|forward|reverse = either", "force: force",
                         "inertia: moment of inertia", "breakaway-torque: torque",
                         "max-speed: speed of rotation", "vehicle: yes|no = no", "mass: mass",
                         "wheel-radius: length", "grade: grade", "rolling-resistance: ratio",
                         "adhesion: ratio", "driven-weight: ratio"}}},
        {"motor",
         {.part = Part::actuator,
          .turns = true,
          .attributes =
              displacement_machine("2", {"freewheeling: yes|no = no", "begin-pressure: pressure",
                                         "end-pressure: pressure", "starting-efficiency: ratio"})}},
        {"pump",
         {.part = Part::pump,
          .turns = true,
          .attributes = displacement_machine(
              "1",
              {"inlet-pressure: absolute pressure", "through-drive-torque: torque",
               "neutral-leakage: flow", "working-pressure: pressure", "pressure-limiter: pressure",
               "torque-limiter: torque", "anti-stall: yes|no = no", "compensator-setting: pressure",
               "load-sensing-margin: pressure"})}},
        {"pump-motor",
         {.part = Part::pump_motor,
          .turns = true,
          .attributes =
              displacement_machine("2", {"starting-efficiency: ratio",
                                         "through-drive-torque: torque", "neutral-leakage: flow",
                                         "working-pressure: pressure", "pressure-limiter: pressure",
                                         "torque-limiter: torque", "anti-stall: yes|no = no"})}},
        {"semi-rotary-actuator",
         {.part = Part::actuator,
          .turns = true,
          .attributes = {"displacement: displacement", "angle: angle", "cushion: yes|no = no",
                         "rated-pressure: pressure", "max-pressure: pressure",
                         "peak-pressure: pressure", "burst-pressure: pressure",
                         "max-torque: torque", "volumetric-efficiency: ratio",
                         "torque-efficiency: ratio"}}},
    };
}

}  // namespace loopwright
