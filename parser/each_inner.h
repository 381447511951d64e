#pragma once

#include <utility>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/builder.h>
#include <loopwright/parser/clipped.h>

// Of builder.h, for the few files that walk through definitions.

namespace loopwright {

template <class Take>
void Builder::each_inner(const Page& page, std::uint32_t element, std::string_view owner,
                         std::string_view in, Take&& take) {
    const XmlDocument& document = page.document();
    const std::uint32_t end = document.element(element).next;
    for (std::uint32_t child = element + 1; child < end; child = document.element(child).next) {
        const std::string_view name = document.name(document.element(child));
        if (const ElementWords* const words = vocabulary_.definition(name, in); words != nullptr) {
            take(*words, child);
            continue;
        }
        report_.error(page.at(document.element(child).name()), [&] {
            std::vector<std::string_view> known;
            for (const ElementSpec& spec : definitions()) {
                if (spec.in == in) {
                    known.push_back(spec.name);
                }
            }
            return Words{
                fmt::format("'{}' cannot stand in '{}'", clipped(name), owner),
                known.empty() ? fmt::format("no element inside '{}'", owner) : list_of(known),
                std::string(nearest_word(name, known))};
        });
    }
}

}  // namespace loopwright
