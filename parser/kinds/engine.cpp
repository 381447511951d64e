#include <loopwright/parser/kinds/prime_movers.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr AttributeSpec own[] = {
    positive("idle-speed", Dimension::speed, "lowest speed, without load"),
    share("droop", "share of the rated speed that it loses from no load to rated load"),
};

constexpr auto attributes = joined(prime_mover_figures, own);

constexpr FailureMode failures[] = {
    {.id = "stalled", .doc = "stops under load"},
    {.id = "overspeed", .doc = "is driven faster than it bears"},
};

}  // namespace

extern constinit const Kind engine{
    .name = "engine",
    .title = "combustion engine",
    .doc =
        "Prime mover that turns all that its shaft joins. It never reverses, and turns between "
        "idle and its highest speed.",
    .part = Part::prime_mover,
    .turns = true,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
