#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr AttributeSpec attributes[] = {
    positive("power", Dimension::power, "rated power"),
    positive("speed", Dimension::speed, "rated speed"),
    choice("rotation", rotations, {}, "sense of rotation, looking at the engine's shaft end"),
};

constexpr FailureMode failures[] = {
    {.id = "stalled", .doc = "stops under load"},
};

}  // namespace

extern constinit const Kind engine{.name = "engine",
                                   .title = "combustion engine",
                                   .doc = "Prime mover that turns all that its shaft joins.",
                                   .part = Part::prime_mover,
                                   .turns = true,
                                   .attributes = attributes,
                                   .failures = failures};

}  // namespace loopwright
