#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "P", .doc = "the port that it closes"},
};

constexpr FailureMode failures[] = {
    {.id = "missing", .doc = "oil leaves by the port"},
};

}  // namespace

extern constinit const Kind plug{
    .name = "plug", .title = "plug", .doc = "Closes a port.", .ports = ports, .failures = failures};

}  // namespace loopwright
