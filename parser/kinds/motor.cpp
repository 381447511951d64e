#include <loopwright/parser/kinds/shared.h>

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
};

constexpr AttributeSpec attributes[] = {
    positive("displacement", Dimension::displacement, "largest displacement"),
    {.name = "min-displacement",
     .type = AttributeType::quantity,
     .dimension = Dimension::displacement,
     .doc = "smallest displacement of a variable motor"},
    yes_no("variable", "whether the displacement can be changed"),
    {.name = "flow-directions",
     .type = AttributeType::count,
     .least = 1,
     .most = 2,
     .default_text = "2",
     .default_source = practice,
     .doc = "1: from A to B only; 2: either way"},
    choice("design", designs, {}, "construction of the displacement machine"),
    choice("control", controls, "none", "how the displacement is set"),
    choice("rotation", rotations, {}, "sense of rotation, looking at the machine's own shaft end"),
    choice("drain", drains, "internal",
           "external: leakage leaves by the case ports; internal: to the lower working port"),
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
    yes_no("closed-loop", "says that the motor is meant to work in a closed loop"),
};

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
    leakage("A", "B", internal_drain, {}),
};

constexpr FailureMode failures[] = {
    {.id = "seized", .doc = "the shaft does not turn"},
    {.id = "stuck-stroke", .doc = "the displacement stays where it is"},
    {.id = "worn", .doc = "leaks far more than when new"},
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
