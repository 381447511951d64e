#include <loopwright/hydraulics/sweep.h>

#include <algorithm>
#include <charconv>

#include <fmt/format.h>

#include <loopwright/base/source.h>
#include <loopwright/base/unit_text.h>
#include <loopwright/parser/kinds/definitions.h>

namespace loopwright::hydraulics {

namespace {

const AttributeSpec* quantity_named(std::span<const AttributeSpec> specs, std::string_view name) {
    const auto found = std::find_if(specs.begin(), specs.end(), [&](const AttributeSpec& spec) {
        return spec.name == name && spec.type == AttributeType::quantity;
    });
    return found == specs.end() ? nullptr : &*found;
}

std::string perhaps(std::span<const AttributeSpec> specs, std::string_view name) {
    std::vector<std::string_view> known;
    for (const AttributeSpec& spec : specs)
        if (spec.type == AttributeType::quantity) known.push_back(spec.name);
    const std::string_view near = nearest_name(name, known);
    return near.empty() ? "" : fmt::format("; perhaps '{}'", near);
}

/// What the text before '=' names.
bool find_datum(const Circuit& circuit, SweepAxis& axis, std::string& trouble) {
    const std::size_t dot = axis.datum.rfind('.');
    if (dot == std::string::npos) {
        const auto specs = find_definition("point", "duty")->attributes;
        axis.spec = quantity_named(specs, axis.datum);
        if (axis.spec == nullptr)
            trouble = fmt::format("a duty point has no figure '{}'{}", axis.datum,
                                  perhaps(specs, axis.datum));
        return axis.spec != nullptr;
    }
    const std::string_view part = std::string_view(axis.datum).substr(0, dot);
    const std::string_view name = std::string_view(axis.datum).substr(dot + 1);
    std::vector<std::string_view> known;
    for (Index c = 0; c < circuit.components.size(); ++c) {
        known.push_back(circuit.components[c].path);
        if (circuit.components[c].path == part) axis.component = c;
    }
    if (axis.component == none) {
        const std::string_view near = nearest_name(part, known);
        trouble = fmt::format("no component '{}'{}", part,
                              near.empty() ? "" : fmt::format("; perhaps '{}'", near));
        return false;
    }
    const auto specs = circuit.components[axis.component].kind->attributes;
    axis.spec = quantity_named(specs, name);
    if (axis.spec == nullptr)
        trouble = fmt::format("{} has no figure '{}'{}", part, name, perhaps(specs, name));
    return axis.spec != nullptr;
}

bool read_end(const SweepAxis& axis, std::string_view text, double& si, std::string& trouble) {
    const ParsedQuantity parsed = parse_quantity(text, axis.spec->dimension);
    if (!parsed.ok()) {
        trouble = fmt::format("{}; expected {}", parsed.message, parsed.expected);
        return false;
    }
    si = parsed.si;
    const bool low = axis.spec->least_included ? si < axis.spec->least : si <= axis.spec->least;
    if (!low && si <= axis.spec->most) return true;
    trouble = fmt::format("{} is outside what {} can be", text, axis.datum);
    return false;
}

}  // namespace

std::optional<SweepAxis> read_axis(const Circuit& circuit, std::string_view text,
                                   std::string& trouble) {
    const std::size_t equals = text.find('=');
    const std::size_t dots = text.find("..", equals == std::string_view::npos ? 0 : equals);
    const std::size_t colon = text.rfind(':');
    if (equals == std::string_view::npos || dots == std::string_view::npos ||
        colon == std::string_view::npos || colon < dots) {
        trouble = fmt::format("'{}' is not DATUM=FROM..TO:COUNT, such as travel=0%..100%:41", text);
        return std::nullopt;
    }
    SweepAxis axis{.datum = std::string(text.substr(0, equals))};
    const std::string_view count = text.substr(colon + 1);
    const auto [end, error] = std::from_chars(count.begin(), count.end(), axis.count);
    if (error != std::errc() || end != count.end() || axis.count < 1 ||
        axis.count > SweepAxis::most_steps) {
        trouble =
            fmt::format("'{}' is not a whole number from 1 to {}", count, SweepAxis::most_steps);
        return std::nullopt;
    }
    if (!find_datum(circuit, axis, trouble) ||
        !read_end(axis, text.substr(equals + 1, dots - equals - 1), axis.from, trouble) ||
        !read_end(axis, text.substr(dots + 2, colon - dots - 2), axis.to, trouble))
        return std::nullopt;
    return axis;
}

}  // namespace loopwright::hydraulics
