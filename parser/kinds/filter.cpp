#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view indicators[] = {"none", "visual", "electrical"};

constexpr std::string_view places[] = {"suction", "pressure", "return"};

constexpr PortSpec ports[] = {{.letter = "A", .use = PortUse::suction, .doc = "inlet"},
                              {.letter = "B", .use = PortUse::outlet, .doc = "outlet"}};

constexpr AttributeSpec attributes[] = {
    like("10 um",
         positive("fineness", Dimension::length, "particle size x of the filtration ratio")),
    {.name = "beta",
     .type = AttributeType::quantity,
     .dimension = Dimension::ratio,
     .least = 1.0,
     .doc = "filtration ratio at that size (ISO 16889)",
     .example = "200"},
    choice("place", places, {}, "the kind of line that it is made for"),
    rated_flow,
    clean_drop,
    drop_viscosity,
    like("0.02 kg", positive("dirt-capacity", Dimension::mass,
                             "test dust that its element holds (ISO 16889)")),
    positive("collapse-pressure", Dimension::pressure,
             "difference of pressure at which its element fails (ISO 2941)"),
    bears,
    pressure("bypass", "opening pressure of the bypass; not given: it has none"),
    choice("clogging-indicator", indicators, "none", "how a clogged element shows"),
    positive("indicator-pressure", Dimension::pressure,
             "difference of pressure at which the indicator tells"),
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
