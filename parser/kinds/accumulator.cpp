#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view charges[] = {"gas", "spring"};
constexpr std::string_view separators[] = {"bladder", "diaphragm", "piston"};

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "oil"},
};

constexpr AttributeSpec attributes[] = {
    choice("charge", charges, "gas", "what stands against the oil"),
    choice("separator", separators, {}, "what parts gas and oil"),
    positive("volume", Dimension::volume, "gas volume when it is empty of oil"),
    pressure("precharge", "gas pressure when it is empty of oil"),
    pressure("max-pressure", "highest pressure that it bears"),
};

constexpr FailureMode failures[] = {
    {.id = "gas-lost", .doc = "stores nothing"},
};

}  // namespace

extern constinit const Kind accumulator{.name = "accumulator",
                                        .title = "accumulator",
                                        .doc =
                                            "Stores oil under pressure of a gas or a spring. It "
                                            "stays charged after the machine has stopped.",
                                        .part = Part::accumulator,
                                        .ports = ports,
                                        .attributes = attributes,
                                        .failures = failures};

}  // namespace loopwright
