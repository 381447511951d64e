#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "A", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "B", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "C", .use = PortUse::outlet, .doc = "outlet"},
};

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "C",
     .passage = PassageClass::switched,
     .both_ways = true,
     .shift = Shift::higher_inlet},
    {.from = "B",
     .to = "C",
     .passage = PassageClass::switched,
     .both_ways = true,
     .shift = Shift::higher_inlet},
};

constexpr FailureMode failures[] = {
    {.id = "stuck", .doc = "leads one inlet to C whichever is higher"},
};

}  // namespace

extern constinit const Kind shuttle_valve{.name = "shuttle-valve",
                                          .title = "shuttle valve",
                                          .doc = "Leads the higher of its two inlets A and B to C.",
                                          .ports = ports,
                                          .passages = passages,
                                          .failures = failures};

}  // namespace loopwright
