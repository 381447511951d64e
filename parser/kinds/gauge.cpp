#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "P", .doc = "where it measures"},
};

constexpr AttributeSpec attributes[] = {
    pressure("range", "highest pressure on its dial"),
};

constexpr FailureMode failures[] = {
    {.id = "broken", .doc = "shows a wrong pressure"},
};

}  // namespace

extern constinit const Kind gauge{.name = "gauge",
                                  .title = "pressure gauge",
                                  .doc = "Shows the pressure at its port.",
                                  .part = Part::instrument,
                                  .shows_pressure = true,
                                  .ports = ports,
                                  .attributes = attributes,
                                  .failures = failures};

}  // namespace loopwright
