#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr PortSpec ports[] = {
    {.letter = "P", .doc = "where it measures"},
};

constexpr FailureMode failures[] = {
    {.id = "leaking", .doc = "oil leaves under pressure"},
};

}  // namespace

extern constinit const Kind measuring_point{
    .name = "measuring-point",
    .title = "measuring point",
    .doc = "Closed connection where a gauge can be joined while the machine runs.",
    .part = Part::instrument,
    .shows_pressure = true,
    .closes_itself = true,
    .ports = ports,
    .failures = failures};

}  // namespace loopwright
