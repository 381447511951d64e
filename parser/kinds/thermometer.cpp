#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "P", .doc = "where it measures"},
};

constexpr FailureMode failures[] = {
    {.id = "broken", .doc = "shows a wrong temperature"},
};

}  // namespace

extern constinit const Kind thermometer{.name = "thermometer",
                                        .title = "thermometer",
                                        .doc = "Shows the temperature of the oil at its port.",
                                        .part = Part::instrument,
                                        .ports = ports,
                                        .failures = failures};

}  // namespace loopwright
