#include <loopwright/parser/kinds/prime_movers.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr AttributeSpec own[] = {
    quantity("min-speed", Dimension::speed, "least speed at which it may turn for long"),
    yes_no("reversing", "whether it may turn backwards"),
    share("efficiency", "at rated power and speed"),
};

constexpr auto attributes = joined(prime_mover_figures, own);

constexpr FailureMode failures[] = {
    {.id = "lost", .doc = "stands without current"},
    {.id = "stalled", .doc = "stops under load"},
    {.id = "wrong-sense", .doc = "turns backwards (two phases exchanged)"},
};

}  // namespace

extern constinit const Kind electric_motor{
    .name = "electric-motor",
    .title = "electric motor",
    .doc =
        "Prime mover that turns all that its shaft joins. With variable speed it can stand "
        "still at work; it may reverse where the file says so.",
    .part = Part::prime_mover,
    .turns = true,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
