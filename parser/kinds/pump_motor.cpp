#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "working port; inlet of a unit with one flow direction"},
    {.letter = "B", .doc = "working port; outlet of a unit with one flow direction"},
    case_port("L", one_case_port),
    case_port("L1", several_case_ports),
    case_port("L2", several_case_ports),
    case_port("L3", three_case_ports),
    control_x,
    control_x1,
    control_x2,
};

constexpr AttributeSpec directions[] = {
    flow_directions("2", practice, "1: from A to B only, pumping or driven; 2: either way"),
};

constexpr AttributeSpec own[] = {
    yes_no("closed-loop", "says that the unit is meant to work in a closed loop"),
    share("starting-efficiency", "share of the ideal torque that it gives from standstill"),
    positive("through-drive-torque", Dimension::torque,
             "highest torque that it passes on to what it drives through"),
    quantity("neutral-leakage", Dimension::flow,
             "what it loses at zero displacement and rated pressure"),
    working_pressure,
    pressure("pressure-limiter",
             "pressure at which its limiter takes the displacement back; not given: it has none"),
    torque_limiter,
    anti_stall,
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

extern constinit const Kind pump_motor{
    .name = "pump-motor",
    .title = "pump/motor unit",
    .doc =
        "Machine that is made to pump and to drive. It is taken as a pump where a prime mover "
        "turns its shaft, else as an actuator.",
    .part = Part::pump_motor,
    .turns = true,
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
