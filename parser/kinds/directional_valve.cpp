#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view actuations[] = {"solenoid", "pilot", "lever", "pedal"};

constexpr AttributeSpec attributes[] = {
    choice("actuation", actuations, "solenoid", "what shifts it out of rest"),
    yes_no("detent", "whether it stays where it was shifted to"),
};

constexpr FailureMode failures[] = {
    {.id = "stuck", .doc = "stays in the position it is in"},
};

}  // namespace

extern constinit const Kind directional_valve{
    .name = "directional-valve",
    .title = "directional valve",
    .doc =
        "Operated valve. Its ports, and for each position the paths between them, are children; "
        "exactly one position is at rest.",
    .children = Children::ports_and_positions,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
