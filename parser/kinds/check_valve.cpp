#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view pilots[] = {"none", "opens", "shuts"};
constexpr When piloted = {"pilot", "opens|shuts"};
constexpr When unless_shut = {"pilot", "none|opens"};
constexpr When opened = {"pilot", "opens"};
constexpr When shut = {"pilot", "shuts"};

constexpr PortSpec ports[] = {
    {.letter = "A", .use = PortUse::suction, .doc = "inlet"},
    {.letter = "B", .use = PortUse::outlet, .doc = "outlet"},
    {.letter = "X", .use = PortUse::pilot, .when = piloted, .doc = "pilot"},
};

constexpr AttributeSpec attributes[] = {
    pressure("opening-pressure",
             "pressure that its spring holds; not given: no spring, it holds nothing"),
    choice("pilot", pilots, "none",
           "opens: the pilot lets oil back; shuts: the pilot keeps it shut"),
    like("3", positive("pilot-ratio", Dimension::ratio, "pilot area over seat area")),
};

constexpr PassageSpec passages[] = {
    {.from = "A",
     .to = "B",
     .passage = PassageClass::one_way,
     .opening = "opening-pressure",
     .when = unless_shut},
    {.from = "A",
     .to = "B",
     .passage = PassageClass::one_way,
     .shift = Shift::pilot_shuts,
     .opening = "opening-pressure",
     .pilot = "X",
     .when = shut},
    {.from = "B",
     .to = "A",
     .passage = PassageClass::switched,
     .shift = Shift::pilot_opens,
     .pilot = "X",
     .when = opened},
};

constexpr FailureMode failures[] = {
    {.id = "stuck-open", .doc = "lets oil back"},
    {.id = "stuck-closed", .doc = "lets no oil through"},
};

}  // namespace

extern constinit const Kind check_valve{
    .name = "check-valve",
    .title = "check valve",
    .doc = "Free flow from A to B, none back; a pilot may open it, or keep it shut.",
    .ports = ports,
    .attributes = attributes,
    .passages = passages,
    .failures = failures};

}  // namespace loopwright
