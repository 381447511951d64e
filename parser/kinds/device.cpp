#include <loopwright/parser/kinds/shared.h>

namespace loopwright {

namespace {

using namespace kind_parts;

constexpr std::string_view insides[] = {"declared", "unknown"};

constexpr AttributeSpec attributes[] = {
    {.name = "inside",
     .type = AttributeType::choice,
     .choices = insides,
     .default_text = "declared",
     .default_source = not_shown,
     .doc = "unknown: nobody knows how its ports hang together, and what depends on it cannot be "
            "decided"},
};

constexpr FailureMode failures[] = {
    {.id = "failed", .doc = "does not let oil pass as it should"},
};

}  // namespace

extern constinit const Kind device{
    .name = "device",
    .title = "device",
    .doc =
        "A part that has no word of its own. Its ports are children, and so are the ways "
        "between them, unless its inside is unknown.",
    .part = Part::device,
    .children = Children::ports_and_passages,
    .attributes = attributes,
    .failures = failures};

}  // namespace loopwright
