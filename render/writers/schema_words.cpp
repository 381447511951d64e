#include <loopwright/render/writers/schema_words.h>

#include <utility>

#include <fmt/format.h>

#include <loopwright/base/finding.h>
#include <loopwright/graph/analysis.h>
#include <loopwright/parser/kinds/kind.h>
#include <loopwright/render/sheet.h>

namespace loopwright {

namespace {

/// Names of all values of an enumeration up to the last, as a JSON list.
template <typename Enumeration>
std::string names_to(Enumeration last) {
    std::string list;
    for (int i = 0; i <= static_cast<int>(last); ++i)
        list +=
            fmt::format("{}\"{}\"", list.empty() ? "" : ", ", name(static_cast<Enumeration>(i)));
    return fmt::format("[{}]", list);
}

std::string sheet_names() {
    std::string list;
    for (const SheetSize& size : sheet_sizes())
        list += fmt::format("{}\"{}\"", list.empty() ? "" : ", ", size.name);
    return fmt::format("[{}]", list);
}

}  // namespace

std::string with_words(std::string_view text) {
    const std::pair<std::string_view, std::string> words[] = {
        {"@level@", names_to(Level::error)},
        {"@outcome@", names_to(Outcome::fail)},
        {"@state@", names_to(State::towing)},
        {"@subject@", names_to(ElementType::waiver)},
        {"@shape@", names_to(WitnessShape::set)},
        {"@role@", names_to(SideRole::section)},
        {"@passage@", names_to(PassageClass::element)},
        {"@sheet@", sheet_names()},
    };
    std::string out;
    while (!text.empty()) {
        const std::size_t begin = text.find('@');
        const std::size_t end = begin == std::string_view::npos ? begin : text.find('@', begin + 1);
        out += text.substr(0, begin);
        if (end == std::string_view::npos) break;
        const std::string_view what = text.substr(begin, end + 1 - begin);
        for (const auto& [mark, list] : words)
            if (mark == what) out += list;
        text.remove_prefix(end + 1);
    }
    return out;
}

}  // namespace loopwright
