#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view ends[] = {"none", "one", "both"};
constexpr When is_joined = {"joined", "yes"};
constexpr When plain = {"valves", "none"};
constexpr When closing = {"valves", "one|both"};

constexpr PortSpec ports[] = {
    {.letter = "A", .doc = "port"},
    {.letter = "B", .doc = "port"},
};

constexpr AttributeSpec attributes[] = {
    choice("valves", ends, "both", "which of its halves close when parted"),
    yes_no("joined", "whether it is drawn joined", "yes"),
    pressure("max-pressure", "highest pressure that it bears"),
};

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "B",
     .passage = PassageClass::joined,
     .both_ways = true,
     .when = is_joined,
     .also = plain},
    {.from = "A",
     .to = "B",
     .passage = PassageClass::switched,
     .both_ways = true,
     .shift = Shift::hand,
     .when = is_joined,
     .also = closing},
};

constexpr FailureMode failures[] = {
    {.id = "parted", .doc = "lets no oil through"},
};

}  // namespace

extern constinit const Kind quick_coupling{.name = "quick-coupling",
                                           .title = "quick coupling",
                                           .doc =
                                               "Joins two lines by hand. With valves it closes "
                                               "where it is parted, so somebody can shut the way.",
                                           .ports = ports,
                                           .attributes = attributes,
                                           .passages = passages,
                                           .failures = failures};

}  // namespace loopwright
