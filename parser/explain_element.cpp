#include <loopwright/parser/builder.h>

#include <algorithm>

#include <fmt/core.h>

#include <loopwright/parser/clipped.h>

// Why an element cannot stand where it does.

namespace loopwright {

void Builder::unknown_element(const Scope& scope, std::uint32_t element) {
    const XmlDocument& document = scope.page->document();
    const ScannedElement& scanned = document.element(element);
    const std::string_view name = document.name(scanned);
    // It may be what the lines and shafts mean.
    for (std::uint32_t i = 0; i < scanned.attribute_count; ++i) {
        const ScannedAttribute& attribute = document.attribute(scanned.attributes + i);
        if (document.name(attribute) == "id") {
            names_.add(scope.names, document.value(attribute), Name{});
        }
    }
    report_.error(scope.page->at(scanned.name()), [&] {
        static constexpr std::string_view inner[] = {"port", "position", "path", "set", "circuit"};
        const std::vector<std::string_view> known =
            vocabulary_.content_names(scope.assembly != none);
        const bool misplaced =
            std::find(std::begin(inner), std::end(inner), name) != std::end(inner) ||
            std::any_of(definitions().begin(), definitions().end(),
                        [name](const ElementSpec& spec) { return spec.name == name; });
        std::string expected =
            "a component (listed by 'loopwright kinds'), line, hose, shaft, assembly, use";
        if (scope.assembly == none) {
            for (const ElementSpec& spec : definitions()) {
                if (spec.in == "circuit") {
                    expected += fmt::format(", {}", spec.name);
                }
            }
            expected.replace(expected.rfind(", "), 2, " or ");
        } else {
            expected += " or port";
        }
        return Words{misplaced ? fmt::format("'{}' cannot stand here", clipped(name))
                               : fmt::format("unknown element '{}'", clipped(name)),
                     std::move(expected),
                     misplaced ? std::string() : std::string(nearest_word(name, known))};
    });
}

}  // namespace loopwright
