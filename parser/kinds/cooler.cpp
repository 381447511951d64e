#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view media[] = {"air", "water"};

constexpr PortSpec ports[] = {{.letter = "A", .use = PortUse::suction, .doc = "inlet"},
                              {.letter = "B", .use = PortUse::outlet, .doc = "outlet"}};

constexpr AttributeSpec attributes[] = {
    positive("capacity", Dimension::power, "heat carried off at the stated difference"),
    positive("temperature-difference", Dimension::temperature_difference,
             "oil over ambient at which the capacity holds"),
    choice("medium", media, {}, "what carries the heat off"),
    rated_flow,
    clean_drop,
    drop_viscosity,
    bears,
    pressure("bypass", "opening pressure of the bypass; not given: it has none"),
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::element, .both_ways = true},
    {.from = "A",
     .to = "B",
     .passage = PassageClass::pressure_opened,
     .opening = "bypass",
     .needs_opening = true}};

constexpr FailureMode failures[] = {
    {.id = "clogged", .doc = "lets no oil through"},
    {.id = "no-cooling", .doc = "fan or water fails: heat is not carried off"},
};

}  // namespace

extern constinit const Kind cooler{
    .name = "cooler",
    .title = "cooler",
    .doc = "Oil cooler, with a bypass where its opening pressure is given.",
    .part = Part::cooler,
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
