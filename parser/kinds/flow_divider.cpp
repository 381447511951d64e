#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view dividers[] = {"spool", "rotary"};

constexpr PortSpec ports[] = {
    {.letter = "P", .doc = "where all oil passes"},
};

constexpr AttributeSpec attributes[] = {
    choice("design", dividers, "spool",
           "spool: by restrictions; rotary: coupled machines, which can raise a pressure"),
    positive("flow", Dimension::flow, "rated flow at P"),
    {.name = "error",
     .type = AttributeType::quantity,
     .dimension = Dimension::ratio,
     .least = 0.0,
     .most = 1.0,
     .doc = "how far a share may be off"},
};

constexpr FailureMode failures[] = {
    {.id = "stuck", .doc = "passes no oil to a leg"},
    {.id = "worn", .doc = "shares unevenly"},
};

}  // namespace

extern constinit const Kind flow_divider{
    .name = "flow-divider",
    .title = "flow divider",
    .doc =
        "Parts the oil of P into fixed shares, one for each port that the file declares; joins "
        "them again on the way back.",
    .children = Children::legs,
    .ports = ports,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
