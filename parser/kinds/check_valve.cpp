#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {{.letter = "A", .use = PortUse::suction, .doc = "inlet"},
                              {.letter = "B", .use = PortUse::outlet, .doc = "outlet"}};

constexpr AttributeSpec attributes[] = {
    pressure("opening-pressure",
             "pressure that its spring holds; not given: no spring, it holds nothing"),
};

constexpr PassageSpec passages[] = {
    {.from = "A", .to = "B", .passage = PassageClass::one_way, .opening = "opening-pressure"}};

constexpr FailureMode failures[] = {
    {.id = "stuck-open", .doc = "lets oil back"},
    {.id = "stuck-closed", .doc = "lets no oil through"},
};

}  // namespace

extern constinit const Kind check_valve{.name = "check-valve",
                                        .title = "check valve",
                                        .doc = "Free flow from A to B, none back.",
                                        .ports = ports,
                                        .attributes = attributes,
                                        .passages = passages,
                                        .failures = failures};

}  // namespace loopwright
