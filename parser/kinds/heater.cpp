#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "B", .use = PortUse::outlet, .doc = "outlet"},
};

constexpr AttributeSpec attributes[] = {
    positive("power", Dimension::power, "heat given to the oil"),
    {.name = "off-above",
     .type = AttributeType::quantity,
     .dimension = Dimension::temperature,
     .doc = "oil temperature at which it is switched off"},
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::element, .both_ways = true},
};

constexpr FailureMode failures[] = {
    {.id = "stays-on", .doc = "overheats the oil"},
    {.id = "stays-off", .doc = "the oil stays cold"},
};

}  // namespace

extern constinit const Kind heater{.name = "heater",
                                   .title = "heater",
                                   .doc = "Warms the oil that passes it.",
                                   .ports = ports,
                                   .attributes = attributes,
                                   .passages = passages,
                                   .failures = failures};

}  // namespace loopwright
