#include <loopwright/parser/kinds/machines.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view actions[] = {"double", "single"};
constexpr std::string_view cushions[] = {"none", "cap", "rod", "both"};
constexpr When double_acting = {"action", "double"};

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "port of the cap end; oil in at A drives the rod out"},
    {.letter = "B", .when = double_acting, .doc = "port of the rod end"},
};

constexpr AttributeSpec attributes[] = {
    {.name = "action",
     .type = AttributeType::choice,
     .choices = actions,
     .default_text = "double",
     .default_source = practice,
     .doc = "double: oil drives it both ways; single: out only, spring or load bring it back"},
    {.name = "rods",
     .type = AttributeType::count,
     .least = 1,
     .most = 2,
     .default_text = "1",
     .default_source = practice,
     .doc = "1: rod at one end; 2: rod through both ends, with equal areas"},
    yes_no("spring-return", "whether a spring drives a single-acting cylinder back"),
    positive("bore", Dimension::length, "diameter of the piston"),
    positive("rod", Dimension::length, "diameter of the rod"),
    positive("stroke", Dimension::length, "way from one stop to the other"),
    {.name = "area-ratio",
     .type = AttributeType::quantity,
     .least = 1.0,
     .doc = "area of the piston over the area round its rod, where bore and rod are not given",
     .example = "1.6"},
    choice("cushion", cushions, "none", "ends at which it is slowed before its stop"),
    pressure("rated-pressure", "pressure for continuous work"),
    pressure("max-pressure", "highest pressure at a working port"),
    pressure("peak-pressure", "highest pressure in short peaks"),
    pressure("burst-pressure", "pressure at which it bursts"),
    positive("max-velocity", Dimension::velocity, "highest velocity of the rod"),
    share("force-efficiency", "share of the ideal force that friction leaves, at rated pressure"),
    quantity("cross-leakage", Dimension::flow, "what gets past the piston at rated pressure"),
};

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "B",
     .passage = PassageClass::displacement,
     .both_ways = true,
     .when = double_acting},
    slip(double_acting, {}),
};

constexpr FailureMode failures[] = {
    {.id = "piston-leaks", .doc = "oil gets past the piston, and it drifts under load"},
    {.id = "rod-leaks", .doc = "oil gets out along the rod"},
    {.id = "jammed", .doc = "the rod does not move (bent, or at its stop)"},
};

}  // namespace

extern constinit const Kind cylinder{
    .name = "cylinder",
    .title = "cylinder",
    .doc = "Moves a rod to and fro. A shaft joins its rod with the load that it moves.",
    .part = Part::actuator,
    .turns = true,
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
