#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

extern constinit const Kind junction{
    .name = "junction",
    .title = "junction",
    .doc = "A tee, a cross or a drilled block that only joins lines. Its ports are children.",
    .children = Children::ports};

}  // namespace loopwright
