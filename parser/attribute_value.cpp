#include <loopwright/parser/attribute_value.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include <fmt/core.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/scan_bytes.h>
#include <loopwright/parser/short_text.h>

namespace loopwright {
namespace {

constexpr std::size_t longest_quantity = 100;

std::string in_units(const AttributeSpec& spec, double si) {
    return spec.type == AttributeType::count ? fmt::format("{:.0f}", si)
                                             : format_quantity(si, spec.dimension);
}

bool in_range(const AttributeSpec& spec, double si) {
    // A figure such as 0.3 of a limit in other units may miss it by a rounding.
    const double slack = 1e-12 * std::max(std::abs(si), std::abs(spec.most));
    const bool enough = spec.least_included ? si >= spec.least : si > spec.least;
    return enough && (spec.most >= 1e299 ? std::isfinite(si) : si <= spec.most + slack);
}

bool check_range(const AttributeSpec& spec, std::string_view text, double si, AttributeValue& value,
                 Words& words) {
    if (!in_range(spec, si)) {
        words = {
            fmt::format("{} is out of range: '{}'", spec.name, clipped(text)), range_of(spec), {}};
        return false;
    }
    value.si = si;
    value.text = text;
    return true;
}

bool read_count(const AttributeSpec& spec, std::string_view text, AttributeValue& value,
                Words& words) {
    unsigned number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (text.empty() || error != std::errc() || end != text.data() + text.size()) {
        words = {fmt::format("{} is no whole number: '{}'", spec.name, clipped(text)),
                 taken_by(spec),
                 {}};
        return false;
    }
    while (text.size() > 1 && text.front() == '0') {  // "02" meets the conditions on "2"
        text.remove_prefix(1);
    }
    return check_range(spec, text, number, value, words);
}

bool read_date(const AttributeSpec& spec, std::string_view text, AttributeValue& value,
               Words& words) {
    const std::optional<std::chrono::sys_days> day = date_of(text);
    if (!day) {
        words = {fmt::format("{} is no date: '{}'", spec.name, clipped(text)), taken_by(spec), {}};
        return false;
    }
    value.si = static_cast<double>(day->time_since_epoch().count());
    value.text = text;
    return true;
}

bool read_word(const AttributeSpec& spec, std::string_view text,
               const std::vector<std::string_view>& known, Words& words) {
    if (std::find(known.begin(), known.end(), text) != known.end()) {
        return true;
    }
    words = {fmt::format("{} cannot be '{}'", spec.name, clipped(text)), taken_by(spec),
             std::string(nearest_word(text, known))};
    return false;
}

}  // namespace

std::string range_of(const AttributeSpec& spec) {
    const bool above = spec.least > -1e299;
    const bool below = spec.most < 1e299;
    const std::string least = above ? in_units(spec, spec.least) : std::string();
    const std::string most = below ? in_units(spec, spec.most) : std::string();
    if (above && below) {
        return spec.least_included ? fmt::format("{} to {}", least, most)
                                   : fmt::format("more than {}, at most {}", least, most);
    }
    if (above) {
        return spec.least_included ? fmt::format("{} or more", least)
                                   : fmt::format("more than {}", least);
    }
    return below ? fmt::format("at most {}", most) : std::string();
}

std::string_view example_of(const AttributeSpec& spec) {
    return spec.example.empty() ? example(spec.dimension) : spec.example;
}

bool read_value(const AttributeSpec& spec, std::string_view text, AttributeValue& value,
                Words& words) {
    switch (spec.type) {
        case AttributeType::quantity: {
            if (text.size() > longest_quantity) {
                words = {fmt::format("{}: '{}' is no quantity", spec.name, clipped(text)),
                         taken_by(spec),
                         {}};
                return false;
            }
            ParsedQuantity parsed = parse_quantity(text, spec.dimension);
            if (!parsed.ok()) {
                // What the dimension takes may be out of the attribute's range.
                if (parsed.expected == parse_quantity({}, spec.dimension).expected) {
                    parsed.expected = taken_by(spec);
                }
                words = {fmt::format("{}: {}", spec.name, parsed.message),
                         std::move(parsed.expected), std::move(parsed.suggestion)};
                return false;
            }
            return check_range(spec, text, parsed.si, value, words);
        }
        case AttributeType::count:
            return read_count(spec, text, value, words);
        case AttributeType::yes_no:
            if (text != "yes" && text != "no") {
                return read_word(spec, text, {"yes", "no"}, words);
            }
            value.si = text == "yes" ? 1.0 : 0.0;
            break;
        case AttributeType::choice:
            if (std::none_of(spec.choices.begin(), spec.choices.end(),
                             [text](std::string_view word) { return same_text(word, text); })) {
                return read_word(spec, text, {spec.choices.begin(), spec.choices.end()}, words);
            }
            break;
        case AttributeType::date:
            return read_date(spec, text, value, words);
        case AttributeType::text:
            break;
    }
    value.text = text;
    return true;
}

std::string taken_by(const AttributeSpec& spec) {
    switch (spec.type) {
        case AttributeType::quantity:
            return fmt::format("{} such as {}", phrase(spec.dimension), example_of(spec));
        case AttributeType::count:
            return fmt::format("a whole number, {}", range_of(spec));
        case AttributeType::yes_no:
            return "yes or no";
        case AttributeType::choice:
            return list_of({spec.choices.begin(), spec.choices.end()});
        case AttributeType::date:
            return "a date such as 2026-11-25";
        case AttributeType::text:
            return spec.doc.empty() ? "text" : std::string(spec.doc);
    }
    return {};
}

std::string list_of(const std::vector<std::string_view>& words, std::string_view last) {
    std::string list;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i == most_listed) {
            return list + ", ...";
        }
        if (i > 0) {
            list += i + 1 == words.size() ? fmt::format(" {} ", last) : ", ";
        }
        list += clipped(words[i]);
    }
    return list;
}

std::optional<std::chrono::sys_days> date_of(std::string_view text) {
    constexpr std::string_view shape = "dddd-dd-dd";
    if (text.size() != shape.size()) {
        return std::nullopt;
    }
    std::array<unsigned, 3> parts{};
    std::size_t part = 0;
    for (std::size_t i = 0; i < shape.size(); ++i) {
        if (shape[i] == '-') {
            if (text[i] != '-') {
                return std::nullopt;
            }
            ++part;
            continue;
        }
        if (text[i] < '0' || text[i] > '9') {
            return std::nullopt;
        }
        parts[part] = parts[part] * 10 + static_cast<unsigned>(text[i] - '0');
    }
    const std::chrono::year_month_day day{std::chrono::year(static_cast<int>(parts[0])),
                                          std::chrono::month(parts[1]), std::chrono::day(parts[2])};
    return day.ok() ? std::optional(std::chrono::sys_days(day)) : std::nullopt;
}

bool is_id(std::string_view text) {
    return is_position_id(text) && (text.front() < '0' || text.front() > '9');
}

bool is_position_id(std::string_view text) {
    const auto may_stand = [](char c) {
        return (byte_classes[static_cast<unsigned char>(c)] & byte_class::id) != 0;
    };
    return !text.empty() && text.front() != '-' && text.front() != '_' &&
           std::all_of(text.begin(), text.end(), may_stand);
}

}  // namespace loopwright
