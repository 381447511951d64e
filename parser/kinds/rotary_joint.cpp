#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr FailureMode failures[] = {
    {.id = "leaking", .doc = "oil leaves at the pivot, or passes from one way to the next"},
};

}  // namespace

extern constinit const Kind rotary_joint{
    .name = "rotary-joint",
    .title = "rotary joint",
    .doc =
        "Leads lines through a pivot. Its ports are children, in pairs: the first leads to the "
        "second, the third to the fourth.",
    .children = Children::pairs,
    .failures = failures};

}  // namespace loopwright
