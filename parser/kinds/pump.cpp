#include <loopwright/parser/kinds/shared.h>

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
};

constexpr AttributeSpec attributes[] = {
    positive("displacement", Dimension::displacement, "largest displacement"),
    {.name = "min-displacement",
     .type = AttributeType::quantity,
     .dimension = Dimension::displacement,
     .doc = "smallest displacement of a variable pump that does not reach zero"},
    yes_no("variable", "whether the displacement can be changed"),
    {.name = "flow-directions",
     .type = AttributeType::count,
     .least = 1,
     .most = 2,
     .default_text = "1",
     .default_source = not_shown,
     .doc = "1: from S to P; 2: over centre, out at A or at B with the shaft turning one way"},
    choice("design", designs, {}, "construction of the displacement machine"),
    choice("control", controls, "none", "how the displacement is set"),
    choice("rotation", rotations, {}, "sense of rotation, looking at the machine's own shaft end"),
    choice("drain", drains, "internal",
           "external: leakage leaves by the case ports; internal: to the inlet or lower port"),
    {.name = "case-ports",
     .type = AttributeType::count,
     .least = 1,
     .most = 3,
     .default_text = "1",
     .default_source = not_shown,
     .doc = "number of case ports: one is L, several are L1, L2, L3"},
    pressure("case-pressure", "highest pressure that the housing bears all the time"),
    pressure("max-pressure", "highest pressure at a working port"),
    positive("max-speed", Dimension::speed, "highest speed of the shaft"),
    yes_no("closed-loop", "says that the pump is meant to work in a closed loop"),
};

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
    leakage("A", "L1", two_directions, several_case_ports),
    leakage("B", "L1", two_directions, several_case_ports),
    leakage("P", "L1", one_direction, several_case_ports),
    leakage("P", "S", one_direction, internal_drain),
    leakage("A", "B", two_directions, internal_drain),
};

constexpr FailureMode failures[] = {
    {.id = "lost", .doc = "delivers nothing (drive or shaft broken, inlet starved)"},
    {.id = "stuck-stroke", .doc = "the displacement stays where it is"},
    {.id = "worn", .doc = "leaks far more than when new"},
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
