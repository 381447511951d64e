#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view operations[] = {"direct", "pilot"};
constexpr When with_check = {"make-up-check", "yes"};

constexpr PortSpec ports[] = {
    {.letter = "P", .use = PortUse::suction, .doc = "inlet, where the pressure is limited"},
    {.letter = "T", .use = PortUse::outlet, .doc = "outlet"},
    {.letter = "Y",
     .use = PortUse::drain,
     .when = external_drain,
     .doc = "drain of the spring chamber"},
};

constexpr AttributeSpec attributes[] = {
    pressure("setting", "opening pressure, counted over the spring chamber"),
    tolerance,
    pressure("full-flow-pressure", "pressure at its full flow, counted over the spring chamber"),
    positive("full-flow", Dimension::flow, "flow at the full-flow pressure"),
    adjustable,
    choice("operation", operations, "direct", "direct: a spring on the poppet; pilot: two stages"),
    choice("drain", drains, "internal",
           "where the spring chamber opens: internal to T, external to Y"),
    yes_no("make-up-check", "whether a check beside it lets oil from T to P"),
    check_spring(),
};

constexpr PassageSpec passages[] = {
    {.from = "P",
     .to = "T",
     .passage = PassageClass::pressure_opened,
     .opening = "setting",
     .spring_chamber = "Y"},
    {.from = "T",
     .to = "P",
     .passage = PassageClass::one_way,
     .opening = "check-opening-pressure",
     .when = with_check},
};

}  // namespace

extern constinit const Kind relief_valve{
    .name = "relief-valve",
    .title = "relief valve",
    .doc =
        "Opens from P to T once the pressure at P, over that of its spring chamber, reaches the "
        "setting. The spring chamber opens to T, or where it is drained outside to Y.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = setting_failures};

}  // namespace loopwright
