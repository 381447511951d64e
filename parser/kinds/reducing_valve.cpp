#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr When relieving = {"relieving", "yes"};
constexpr When plain = {"relieving", "no"};

constexpr PortSpec ports[] = {
    {.letter = "P", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "A", .use = PortUse::outlet, .doc = "reduced pressure"},
    {.letter = "T",
     .use = PortUse::outlet,
     .when = relieving,
     .doc = "return of a relieving valve"},
    {.letter = "Y", .use = PortUse::drain, .when = plain, .doc = "drain of the spring chamber"},
};

constexpr AttributeSpec attributes[] = {
    pressure("setting", "pressure that it keeps at A, counted over the spring chamber"),
    tolerance,
    adjustable,
    yes_no("relieving", "whether it has three ports and lets oil from A to T above its setting"),
};

constexpr PassageSpec passages[] = {
    {.from = "P",
     .to = "A",
     .passage = PassageClass::reduced,
     .opening = "setting",
     .spring_chamber = "Y"},
    {.from = "A",
     .to = "T",
     .passage = PassageClass::pressure_opened,
     .opening = "setting",
     .when = relieving},
};

constexpr FailureMode failures[] = {
    {.id = "stuck-open", .doc = "hands the full pressure on"},
    {.id = "stuck-closed", .doc = "hands nothing on"},
    {.id = "set-high", .doc = "keeps too high a pressure"},
    {.id = "set-low", .doc = "keeps too low a pressure"},
};

}  // namespace

extern constinit const Kind reducing_valve{
    .name = "reducing-valve",
    .title = "reducing valve",
    .doc =
        "Hands oil on from P to A up to its setting. With three ports it also limits the pressure "
        "at A, to T.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
