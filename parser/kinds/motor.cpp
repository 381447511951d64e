#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "working port; inlet of a motor with one flow direction"},
    {.letter = "B", .doc = "working port; outlet of a motor with one flow direction"},
    case_port("L", one_case_port),
    case_port("L1", several_case_ports),
    case_port("L2", several_case_ports),
    case_port("L3", three_case_ports),
    control_x,
    control_x1,
    control_x2,
};

constexpr AttributeSpec directions[] = {
    flow_directions("2", practice, "1: from A to B only; 2: either way"),
};

constexpr AttributeSpec own[] = {
    yes_no("closed-loop", "says that the motor is meant to work in a closed loop"),
    yes_no(
        "freewheeling",
        "whether its pistons can be drawn in by pressure in the housing, so that the shaft turns "
        "freely (radial piston)"),
    pressure("begin-pressure",
             "pressure of its higher port from which its control raises the displacement, whatever "
             "is commanded; needs min-displacement, which it has below"),
    pressure("end-pressure", "pressure at which that control has raised it to the largest"),
    share("starting-efficiency", "share of the ideal torque that it gives from standstill"),
};

constexpr auto attributes = joined(machine_size, directions, machine_build, own, machine_pressures,
                                   machine_shaft, machine_losses, machine_oil, machine_control);

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "B",
     .passage = PassageClass::displacement,
     .both_ways = true,
     .when = two_directions},
    {.from = "A", .to = "B", .passage = PassageClass::displacement, .when = one_direction},
    housing("L1", "L2", several_case_ports),
    housing("L2", "L3", three_case_ports),
    leakage("A", "L", external_drain, one_case_port),
    leakage("B", "L", external_drain, one_case_port),
    leakage("A", "L1", external_drain, several_case_ports),
    leakage("B", "L1", external_drain, several_case_ports),
    slip(internal_drain, {}),
};

constexpr FailureMode failures[] = {
    {.id = "seized", .doc = "the shaft does not turn"},
    {.id = "stuck-stroke", .doc = "the displacement stays where it is"},
    {.id = "worn", .doc = "leaks far more than when new"},
    {.id = "seal-blown", .doc = "the shaft seal lets the housing's oil out"},
};

}  // namespace

extern constinit const Kind motor{.name = "motor",
                                  .title = "motor",
                                  .doc = "Hydrostatic motor, fixed or variable.",
                                  .part = Part::actuator,
                                  .turns = true,
                                  .ports = ports,
                                  .attributes = attributes,
                                  .passages = passages,
                                  .failures = failures};

}  // namespace loopwright
