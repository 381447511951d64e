#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr AttributeSpec attributes[] = {
    {.name = "signal", .doc = "its output, such as 60 pulses a turn; not given: it shows"},
    positive("range", Dimension::speed, "highest speed that it measures"),
};

constexpr FailureMode failures[] = {
    {.id = "dead", .doc = "gives no speed"},
    {.id = "drifting", .doc = "gives a wrong speed"},
};

}  // namespace

extern constinit const Kind tachometer{.name = "tachometer",
                                       .title = "tachometer",
                                       .doc = "Measures the speed of the shaft that names it.",
                                       .part = Part::instrument,
                                       .turns = true,
                                       .attributes = attributes,
                                       .failures = failures};

}  // namespace loopwright
