#include <loopwright/parser/builder.h>

#include <fmt/core.h>

#include <loopwright/parser/clipped.h>

// Why a part or one of its shaft ends cannot be on a shaft.

namespace loopwright {

void Builder::explain_turning(Index shaft, Index first, std::string_view token, SourceRef place) {
    report_.error(place, [&] {
        const std::size_t dot = token.find('.');
        const bool end = dot != std::string_view::npos;
        if (first == none) {
            return Words{
                fmt::format("both ends of '{}' are on this shaft", clipped(token.substr(0, dot))),
                "a shaft of its own for each end",
                {}};
        }
        if (first == shaft) {
            return Words{fmt::format("'{}' is listed twice in this shaft", clipped(token)),
                         end ? "each shaft end once" : "each part once",
                         {}};
        }
        const Shaft& other = circuit_.shafts[first];
        return Words{
            fmt::format("'{}' is on shaft '{}' already", clipped(token), clipped(other.path)),
            fmt::format("one shaft for each {}; '{}' stands in line {} of the file",
                        end ? "shaft end" : "part", clipped(other.path),
                        sources_->place(other.place).line),
            {}};
    });
}

void Builder::explain_end(const Name& name, std::string_view token, SourceRef place) {
    report_.error(place, [&] {
        const Kind& kind = *circuit_.components[name.index].kind;
        const std::size_t dot = token.find('.');
        const std::string_view path = token.substr(0, dot);
        const std::vector<std::string_view> ends(kind.ends.begin(), kind.ends.end());
        std::string expected;
        for (const std::string_view end : ends) {
            expected += fmt::format("{}{}.{}", expected.empty() ? "" : " or ", clipped(path), end);
        }
        if (dot == std::string_view::npos) {
            return Words{
                fmt::format("'{}' is {} with two shaft ends", clipped(token), kind_of(name)),
                std::move(expected),
                {}};
        }
        const std::string_view near = nearest_word(token.substr(dot + 1), ends);
        return Words{fmt::format("{} '{}' has no shaft end '{}'", kind.name, clipped(path),
                                 clipped(token.substr(dot + 1))),
                     std::move(expected),
                     near.empty() ? std::string() : fmt::format("{}.{}", clipped(path), near)};
    });
}

}  // namespace loopwright
