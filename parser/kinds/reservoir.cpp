#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr AttributeSpec attributes[] = {
    positive("volume", Dimension::volume, "oil volume at the normal level"),
    positive("min-volume", Dimension::volume, "oil volume at the lowest level allowed"),
    positive("max-volume", Dimension::volume, "oil volume at the highest level allowed"),
    yes_no("breather", "whether it breathes through a filter"),
    yes_no("level-indicator", "whether the level can be read from outside"),
    positive("pressure", Dimension::pressure,
             "pressure that gas keeps in it where it is sealed; not given: it is vented"),
    pressure("max-pressure", "highest pressure that it bears"),
    {.name = "max-temperature",
     .type = AttributeType::quantity,
     .dimension = Dimension::temperature,
     .doc = "highest temperature that its oil may have"},
    {.name = "head",
     .type = AttributeType::quantity,
     .dimension = Dimension::length,
     .least = -1e300,
     .doc = "height of the oil's level over the pump inlets; negative where it is lower"},
    positive("cooling-area", Dimension::area, "surface of its walls that gives heat to the air"),
    positive("heat-transfer", Dimension::heat_transfer, "heat that its walls give to the air"),
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
        "Oil reservoir, vented or sealed under the pressure of a gas. Its ports are children, each "
        "above or below the oil level; the drawing repeats its symbol wherever a line ends in it.",
    .part = Part::reservoir,
    .children = Children::ports,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
