#include <loopwright/parser/kinds/prime_movers.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr AttributeSpec own[] = {
    positive("idle-speed", Dimension::speed, "lowest speed, without load"),
    share("droop",
          "share of the rated speed that it loses from no load to rated load; not given: its speed "
          "is that of the point whatever it is asked"),
    quantity("braking-torque", Dimension::torque,
             "torque with which it brakes a load that drives it faster than it turns without load; "
             "not given: braking-power over max-speed"),
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
        "idle and its highest speed. With droop and power it follows its governor: the speed of a "
        "duty point is the setting, which it keeps under its rated torque; under less it "
        "is faster, under more slower, along its rated power up to max-torque.",
    .part = Part::prime_mover,
    .turns = true,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
