#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view centres[] = {"closed", "open"};

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "joined to one side of the loop"},
    {.letter = "B", .doc = "joined to the other side"},
    {.letter = "F", .use = PortUse::outlet, .doc = "outlet of the flushed oil"}};

constexpr AttributeSpec attributes[] = {
    choice("centre", centres, "closed",
           "what stands between the sides and F while neither side is higher"),
};

constexpr PassageSpec passages[] = {{.from = "A",
                                     .to = "F",
                                     .passage = PassageClass::switched,
                                     .both_ways = true,
                                     .shift = Shift::pressure},
                                    {.from = "B",
                                     .to = "F",
                                     .passage = PassageClass::switched,
                                     .both_ways = true,
                                     .shift = Shift::pressure},
                                    {.from = "A",
                                     .to = "F",
                                     .passage = PassageClass::metering,
                                     .both_ways = true,
                                     .shift = Shift::pressure_centred,
                                     .when = {"centre", "open"}},
                                    {.from = "B",
                                     .to = "F",
                                     .passage = PassageClass::metering,
                                     .both_ways = true,
                                     .shift = Shift::pressure_centred,
                                     .when = {"centre", "open"}}};

constexpr FailureMode failures[] = {
    {.id = "stuck-centred", .doc = "takes no oil from either side"},
    {.id = "stuck-shifted", .doc = "takes oil from one side whatever the pressures"},
};

}  // namespace

extern constinit const Kind flushing_valve{
    .name = "flushing-valve",
    .title = "flushing valve",
    .doc = "Hot-oil shuttle: the higher side shifts it and the lower side is led to F.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
