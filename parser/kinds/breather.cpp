#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "P", .doc = "where it sits on the reservoir; air alone passes it"},
};

constexpr AttributeSpec attributes[] = {
    like("10 um",
         positive("fineness", Dimension::length, "particle size that its element holds back")),
    {.name = "beta",
     .type = AttributeType::quantity,
     .dimension = Dimension::ratio,
     .least = 1.0,
     .doc = "its filtration ratio at that size",
     .example = "200"},
    positive("flow", Dimension::flow, "air that it passes at most"),
    positive("opening-pressure", Dimension::pressure,
             "pressure that it holds in the reservoir before air leaves; not given: it holds none"),
    yes_no("filler", "whether oil is filled in through it"),
};

constexpr FailureMode failures[] = {
    {.id = "clogged", .doc = "air does not get in fast enough"},
    {.id = "burst", .doc = "lets air in unfiltered"},
};

}  // namespace

extern constinit const Kind breather{
    .name = "breather",
    .title = "breather",
    .doc =
        "Air filter on a reservoir, joined to a port of it above the oil level; one that holds "
        "pressure in the reservoir gives its opening pressure.",
    .breathes = true,
    .ports = ports,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
