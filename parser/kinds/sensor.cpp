#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view quantities[] = {"pressure", "temperature", "flow", "level",
                                           "contamination"};

constexpr PortSpec ports[] = {
    {.letter = "P", .doc = "where it measures"},
};

constexpr AttributeSpec attributes[] = {
    choice("measures", quantities, "pressure", "what it measures"),
    {.name = "signal", .doc = "its output, such as 4 to 20 mA"},
    pressure("range", "highest pressure, of a pressure sensor"),
};

constexpr FailureMode failures[] = {
    {.id = "dead", .doc = "gives no signal"},
    {.id = "drifting", .doc = "gives a wrong signal"},
};

}  // namespace

extern constinit const Kind sensor{.name = "sensor",
                                   .title = "sensor",
                                   .doc = "Gives a signal for what it measures at its port.",
                                   .part = Part::instrument,
                                   .shows_pressure = true,
                                   .ports = ports,
                                   .attributes = attributes,
                                   .failures = failures};

}  // namespace loopwright
