#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view indicators[] = {"none", "visual", "electrical"};

constexpr PortSpec ports[] = {{.letter = "A", .use = PortUse::suction, .doc = "inlet"},
                              {.letter = "B", .use = PortUse::outlet, .doc = "outlet"}};

constexpr AttributeSpec attributes[] = {
    positive("fineness", Dimension::length, "particle size x of the filtration ratio"),
    {.name = "beta",
     .type = AttributeType::quantity,
     .dimension = Dimension::ratio,
     .least = 1.0,
     .doc = "filtration ratio at that size (ISO 16889)"},
    pressure("bypass", "opening pressure of the bypass; not given: it has none"),
    choice("clogging-indicator", indicators, "none", "how a clogged element shows"),
    yes_no("one-way", "whether the element may be passed from A to B only"),
};

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "B",
     .passage = PassageClass::element,
     .both_ways = true,
     .when = {"one-way", "no"}},
    {.from = "A", .to = "B", .passage = PassageClass::element, .when = {"one-way", "yes"}},
    {.from = "A",
     .to = "B",
     .passage = PassageClass::pressure_opened,
     .opening = "bypass",
     .needs_opening = true}};

constexpr FailureMode failures[] = {
    {.id = "clogged", .doc = "lets no oil through its element"},
    {.id = "burst", .doc = "lets oil through unfiltered"},
};

}  // namespace

extern constinit const Kind filter{
    .name = "filter",
    .title = "filter",
    .doc =
        "Filter element, with a bypass where its opening pressure is "
        "given.",
    .part = Part::filter,
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
