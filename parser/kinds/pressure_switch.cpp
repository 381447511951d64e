#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view sides[] = {"rising", "falling"};

constexpr PortSpec ports[] = {
    {.letter = "P", .doc = "where it measures"},
};

constexpr AttributeSpec attributes[] = {
    pressure("setting", "pressure at which it switches"),
    tolerance,
    choice("switches", sides, "rising", "on rising or on falling pressure"),
};

constexpr FailureMode failures[] = {
    {.id = "stuck", .doc = "does not switch"},
};

}  // namespace

extern constinit const Kind pressure_switch{
    .name = "pressure-switch",
    .title = "pressure switch",
    .doc = "Switches when the pressure at its port passes its setting.",
    .part = Part::instrument,
    .ports = ports,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
