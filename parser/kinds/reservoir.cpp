#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr AttributeSpec attributes[] = {
    positive("volume", Dimension::volume, "oil volume at the normal level"),
    yes_no("breather", "whether it breathes through a filter"),
    yes_no("level-indicator", "whether the level can be read from outside"),
};

constexpr FailureMode failures[] = {
    {.id = "level-low", .doc = "the level is below the suction port"},
    {.id = "breather-clogged", .doc = "air does not get in fast enough"},
};

}  // namespace

extern constinit const Kind reservoir{
    .name = "reservoir",
    .title = "reservoir",
    .doc =
        "Vented oil reservoir. Its ports are children, each above or below the oil level; the "
        "drawing repeats its symbol wherever a line ends in it.",
    .part = Part::reservoir,
    .children = Children::ports,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
