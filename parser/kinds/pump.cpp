#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .when = two_directions, .doc = "working port"},
    {.letter = "B", .when = two_directions, .doc = "working port"},
    {.letter = "S", .use = PortUse::suction, .when = one_direction, .doc = "inlet"},
    {.letter = "P", .use = PortUse::outlet, .when = one_direction, .doc = "outlet"},
    case_port("L", one_case_port),
    case_port("L1", several_case_ports),
    case_port("L2", several_case_ports),
    case_port("L3", three_case_ports),
    control_x,
    control_x1,
    control_x2,
};

constexpr AttributeSpec directions[] = {
    flow_directions("1", not_shown,
                    "1: from S to P; 2: over centre, out at A or at B with the shaft turning one "
                    "way"),
};

constexpr AttributeSpec own[] = {
    yes_no("closed-loop", "says that the pump is meant to work in a closed loop"),
    {.name = "inlet-pressure",
     .type = AttributeType::quantity,
     .dimension = Dimension::absolute_pressure,
     .least = 0.0,
     .doc = "least pressure at the inlet that it draws from"},
    positive("through-drive-torque", Dimension::torque,
             "highest torque that it passes on to what it drives through"),
    quantity("neutral-leakage", Dimension::flow,
             "what it loses at zero displacement and rated pressure"),
    working_pressure,
    pressure("pressure-limiter",
             "pressure at which its limiter takes the displacement back; not given: it has none"),
    torque_limiter,
    anti_stall,
    pressure("compensator-setting",
             "pressure that a pressure-compensated pump keeps, or a load-sensing one at most"),
    pressure("load-sensing-margin",
             "what a load-sensing pump keeps above the pressure of the load, felt at X"),
};

constexpr auto attributes = joined(machine_size, directions, machine_build, own, machine_pressures,
                                   machine_shaft, machine_losses, machine_oil, machine_control);

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "B",
     .passage = PassageClass::displacement,
     .both_ways = true,
     .when = two_directions},
    {.from = "S", .to = "P", .passage = PassageClass::displacement, .when = one_direction},
    housing("L1", "L2", several_case_ports),
    housing("L2", "L3", three_case_ports),
    leakage("A", "L", two_directions, one_case_port),
    leakage("B", "L", two_directions, one_case_port),
    leakage("P", "L", one_direction, one_case_port),
    leakage("S", "L", one_direction, one_case_port),
    leakage("A", "L1", two_directions, several_case_ports),
    leakage("B", "L1", two_directions, several_case_ports),
    leakage("P", "L1", one_direction, several_case_ports),
    leakage("S", "L1", one_direction, several_case_ports),
    leakage("P", "S", one_direction, internal_drain),
    slip(two_directions, internal_drain),
};

constexpr FailureMode failures[] = {
    {.id = "lost", .doc = "delivers nothing (drive or shaft broken, inlet starved)"},
    {.id = "stuck-stroke", .doc = "the displacement stays where it is"},
    {.id = "no-stroke", .doc = "the displacement goes to zero and stays there"},
    {.id = "worn", .doc = "leaks far more than when new"},
    {.id = "seal-blown", .doc = "the shaft seal lets the housing's oil out"},
};

}  // namespace

extern constinit const Kind pump{
    .name = "pump",
    .title = "pump",
    .doc =
        "Hydrostatic pump. With two flow directions it is the loop pump of a closed loop; with "
        "one it draws from a reservoir (charge pump, open circuit).",
    .part = Part::pump,
    .turns = true,
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
