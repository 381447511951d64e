#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view operations[] = {"direct", "pilot"};

constexpr PortSpec ports[] = {
    {.letter = "P", .use = PortUse::suction, .doc = "inlet, where the pressure is limited"},
    {.letter = "T", .use = PortUse::outlet, .doc = "outlet"}};

constexpr AttributeSpec attributes[] = {
    pressure("setting", "opening pressure, counted over the outlet"),
    pressure("full-flow-pressure", "pressure at its full flow, counted over the outlet"),
    yes_no("adjustable", "whether the setting can be changed on the machine", "yes"),
    choice("operation", operations, "direct", "direct: a spring on the poppet; pilot: two stages"),
};

constexpr PassageSpec passages[] = {
    {.from = "P", .to = "T", .passage = PassageClass::pressure_opened, .opening = "setting"}};

constexpr FailureMode failures[] = {
    {.id = "stuck-open", .doc = "holds no pressure"},
    {.id = "stuck-closed", .doc = "does not open at its setting"},
    {.id = "set-high", .doc = "opens too late"},
    {.id = "set-low", .doc = "opens too early"},
};

}  // namespace

extern constinit const Kind relief_valve{
    .name = "relief-valve",
    .title = "relief valve",
    .doc =
        "Opens from P to T once the pressure at P, over that at T, "
        "reaches the setting.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
