#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "P", .doc = "where it measures"},
};

constexpr AttributeSpec attributes[] = {
    yes_no("switched", "whether a switch reports a low level"),
};

constexpr FailureMode failures[] = {
    {.id = "broken", .doc = "shows a wrong level"},
};

}  // namespace

extern constinit const Kind level_indicator{
    .name = "level-indicator",
    .title = "level indicator",
    .doc = "Shows the oil level of the reservoir that it is joined to; a switch may report it.",
    .part = Part::instrument,
    .shows_level = true,
    .ports = ports,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
