#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "port"},
    {.letter = "B", .doc = "port"},
};

constexpr AttributeSpec attributes[] = {
    positive("range", Dimension::flow, "highest flow that it shows"),
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::joined, .both_ways = true},
};

constexpr FailureMode failures[] = {
    {.id = "stuck", .doc = "shows a wrong flow"},
};

}  // namespace

extern constinit const Kind flow_meter{.name = "flow-meter",
                                       .title = "flow meter",
                                       .doc = "Shows the flow from A to B or back; lets it pass.",
                                       .part = Part::instrument,
                                       .ports = ports,
                                       .attributes = attributes,
                                       .passages = passages,
                                       .failures = failures};

}  // namespace loopwright
