#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view handles[] = {"pedal", "lever"};
constexpr When double_acting = {"outlets", "2"};

constexpr PortSpec ports[] = {
    {.letter = "P", .use = PortUse::suction, .doc = "control pressure"},
    {.letter = "T", .use = PortUse::outlet, .doc = "return"},
    {.letter = "A", .use = PortUse::outlet, .doc = "outlet"},
    {.letter = "B", .use = PortUse::outlet, .when = double_acting, .doc = "second outlet"},
};

constexpr AttributeSpec attributes[] = {
    choice("actuation", handles, "lever", "what the operator moves"),
    {.name = "outlets",
     .type = AttributeType::count,
     .least = 1,
     .most = 2,
     .default_text = "1",
     .default_source = not_shown,
     .doc = "1: one outlet A; 2: A one way, B the other"},
    pressure("max-pressure", "reduced pressure at its full travel"),
    yes_no("detent", "whether it stays where it was moved to"),
};

constexpr PositionSpec positions[] = {
    {.id = "released", .rest = true},
    {.id = "a"},
    {.id = "b", .when = double_acting},
};

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "T",
     .passage = PassageClass::switched,
     .both_ways = true,
     .shift = Shift::position,
     .position = "released"},
    {.from = "B",
     .to = "T",
     .passage = PassageClass::switched,
     .both_ways = true,
     .shift = Shift::position,
     .position = "released",
     .when = double_acting},
    {.from = "P",
     .to = "A",
     .passage = PassageClass::reduced,
     .shift = Shift::position,
     .position = "a"},
    {.from = "B",
     .to = "T",
     .passage = PassageClass::switched,
     .both_ways = true,
     .shift = Shift::position,
     .position = "a",
     .when = double_acting},
    {.from = "P",
     .to = "B",
     .passage = PassageClass::reduced,
     .shift = Shift::position,
     .position = "b",
     .when = double_acting},
    {.from = "A",
     .to = "T",
     .passage = PassageClass::switched,
     .both_ways = true,
     .shift = Shift::position,
     .position = "b",
     .when = double_acting},
};

constexpr FailureMode failures[] = {
    {.id = "stuck", .doc = "stays where it is"},
    {.id = "spring-broken", .doc = "does not return when let go"},
};

}  // namespace

extern constinit const Kind pilot_control_valve{
    .name = "pilot-control-valve",
    .title = "pilot control valve",
    .doc =
        "Pedal or lever that leads a reduced pressure from P to outlet A (or B) as far as it is "
        "moved; let go, it leads its outlets to T.",
    .ports = ports,
    .attributes = attributes,
    .positions = positions,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
