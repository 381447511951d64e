// The table is small enough to search by dimension: each has at most a score of spellings. What a
// text means is worked out in one pass without allocation; only a bad text takes the long way
// round.
#include <loopwright/base/unit_text.h>

#include <charconv>
#include <cmath>
#include <iterator>

#include <fmt/format.h>

#include <loopwright/base/unit_guess.h>
#include <loopwright/base/unit_table.h>

namespace loopwright {
namespace {

const Unit* find_unit(std::string_view spelling, Dimension dimension) {
    for (const Unit& unit : units_of(dimension))
        if (unit.spelling == spelling) return &unit;
    return nullptr;
}

constexpr std::string_view examples[] = {
    "0.2 or 20 %", "24 bar",       "0.8 bar abs",   "71 cm3/rev",
    "40 L/min",    "60 L",         "25 mm",         "2400 rpm",
    "4 m/s",       "300 N.m",      "55 kW",         "18 deg",
    "60 degC",     "30 K",         "46 mm2/s",      "870 kg/m3",
    "1200 kg",     "20 cm2",       "12 kN",         "0.4 kg.m2",
    "2 s",         "12 %",         "1.9 kJ/(kg.K)", "40 mPa.s",
    "1600 MPa",    "25 N/mm",      "900 N.m/rad",   "400 W/K",
    "12 W/(m2.K)", "0.13 W/(m.K)", "0.0007 1/K",    "0.02 L/(min.bar)",
    "80 kJ",       "600 mA",       "24 V",          "50 Hz",
    "0.5 m/s2",
};
static_assert(std::size(examples) == dimension_count);

bool blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

std::string spellings_of(Dimension dimension) {
    std::string list;
    for (const Unit& unit : units_of(dimension)) {
        if (unit.spelling.empty()) continue;
        if (!list.empty()) list += ", ";
        list += unit.spelling;
    }
    return list;
}

ParsedQuantity wrong(std::string message, Dimension dimension, std::string suggestion = {}) {
    return {.message = std::move(message),
            .expected = fmt::format("{} such as {}", phrase(dimension), example(dimension)),
            .suggestion = std::move(suggestion)};
}

ParsedQuantity read(std::string_view text, Dimension dimension);

/// The same number with the unit that is meant, or nothing if there is none or the two are no
/// quantity either.
std::string with_unit(std::string_view number, const Unit* meant) {
    if (meant == nullptr) return {};
    std::string text = fmt::format("{} {}", number, meant->spelling);
    return read(text, meant->dimension).ok() ? text : std::string();
}

ParsedQuantity bad_unit(std::string_view number, std::string_view unit, Dimension dimension) {
    if (const std::string_view why = why_not(unit, dimension); !why.empty())
        return wrong(fmt::format("'{}' {}", unit, why), dimension);
    for (std::size_t d = 0; d < dimension_count; ++d) {
        const auto other = static_cast<Dimension>(d);
        if (other == dimension || find_unit(unit, other) == nullptr) continue;
        return wrong(fmt::format("'{}' is the unit of {}", unit, phrase(other)), dimension,
                     with_unit(number, unit_by_other_name(unit, dimension)));
    }
    ParsedQuantity result = wrong(fmt::format("unknown unit '{}'", unit), dimension,
                                  with_unit(number, likely_unit(unit, dimension)));
    if (result.suggestion.empty())
        result.expected += fmt::format(" (units: {})", spellings_of(dimension));
    return result;
}

/// What keeps a text from being a decimal number and a unit.
ParsedQuantity bad_number(std::string_view text, Dimension dimension) {
    if (text.empty()) return wrong("the quantity is empty", dimension);
    return wrong(fmt::format("'{}' does not begin with a decimal number", text), dimension);
}

constexpr double right_angle = 1.57079632679489661923;

constexpr char fraction[] = "a fraction in place of a decimal number";

bool digit(char c) { return c >= '0' && c <= '9'; }

std::string_view without_blanks(std::string_view text) {
    while (!text.empty() && blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && blank(text.back())) text.remove_suffix(1);
    return text;
}

/// The text itself if it is a quantity, or else what it most likely means.
std::string meant_by(const std::string& text, Dimension dimension) {
    const ParsedQuantity parsed = read(text, dimension);
    return parsed.ok() ? text : parsed.suggestion;
}

/// `rest` begins with a comma or a digit that cannot continue the number before it.
ParsedQuantity parted_number(std::string_view digits, std::string_view rest, bool comma,
                             Dimension dimension) {
    const std::string_view group = comma ? rest.substr(1) : rest;
    std::size_t length = 0;
    while (length < group.size() && digit(group[length])) ++length;
    const bool ends = length == group.size() || blank(group[length]);
    if (!comma && length < group.size() && group[length] == '/') return wrong(fraction, dimension);
    const std::string joined = fmt::format("{}{}{}", digits, comma ? "." : "", group);
    if (!comma)
        return wrong("a blank in a number", dimension,
                     length == 3 && ends ? meant_by(joined, dimension) : std::string());
    // "1,000 psi" is a thousand to one reader and one to the next.
    if (length == 3)
        return wrong("a comma in a number, which may part thousands or decimals", dimension);
    return wrong("a comma in a number", dimension, meant_by(joined, dimension));
}

ParsedQuantity read(std::string_view text, Dimension dimension) {
    const char* first = text.data();
    const char* const last = first + text.size();
    const bool plus = first != last && *first == '+';
    if (plus) ++first;
    // from_chars also reads "inf", "nan" and stops at the x of "0x10": all of them no figures here.
    if (first == last || !(digit(*first) || *first == '.' || (*first == '-' && !plus)))
        return bad_number(text, dimension);
    double number = 0.0;
    const auto [end, error] = std::from_chars(first, last, number);
    if (error == std::errc::result_out_of_range)
        return wrong(fmt::format("'{}' is a number out of range", text), dimension);
    if (error != std::errc{} || !std::isfinite(number)) return bad_number(text, dimension);
    const std::string_view digits(first, static_cast<std::size_t>(end - first));
    if (end != last && (*end == 'x' || *end == 'X') && (digits == "0" || digits == "-0"))
        return wrong("hexadecimal numbers are not read", dimension);
    if (end != last && *end == ',') return parted_number(digits, {end, last}, true, dimension);
    if (last - end > 1 && *end == '/' && digit(end[1])) return wrong(fraction, dimension);
    const std::string_view unit = without_blanks({end, last});
    if (unit.empty() && dimension != Dimension::ratio)
        return wrong(fmt::format("'{}' has no unit", text), dimension,
                     // "0.12" and "12" both may stand for 12 %.
                     dimension == Dimension::grade
                         ? std::string()
                         : with_unit(digits, &units_of(dimension).front()));
    const Unit* found = find_unit(unit, dimension);
    if (found == nullptr) {
        std::string one_blank;  // "bar   abs"
        for (const char c : unit)
            if (!blank(c) || one_blank.empty() || one_blank.back() != ' ')
                one_blank += blank(c) ? ' ' : c;
        found = find_unit(one_blank, dimension);
        if (found == nullptr && digit(one_blank.front()) && blank(*end) &&
            !(one_blank.starts_with("1/") && one_blank.size() > 2 && !digit(one_blank[2])))
            return parted_number(digits, one_blank, false, dimension);
        if (found == nullptr) return bad_unit(digits, one_blank, dimension);
    }
    double si = number * found->factor + found->offset;
    if (found->slope_as_angle) {
        if (std::abs(si) >= right_angle)
            return wrong(fmt::format("a slope of '{}' has no grade", text), dimension);
        si = std::tan(si);
    }
    if (!std::isfinite(si))
        return wrong(fmt::format("'{}' is a number out of range", text), dimension);
    return {.si = si == 0.0 ? 0.0 : si};  // no negative zero
}

}  // namespace

std::string_view example(Dimension dimension) {
    return examples[static_cast<std::size_t>(dimension)];
}

ParsedQuantity parse_quantity(std::string_view text, Dimension dimension) {
    text = without_blanks(text);
    ParsedQuantity result = read(text, dimension);
    if (!result.ok() && result.suggestion.empty()) {
        const std::string plain = in_plain_characters(text);
        if (plain == text) return result;
        std::string meant = meant_by(std::string(without_blanks(plain)), dimension);
        if (!meant.empty()) return wrong(std::move(result.message), dimension, std::move(meant));
    }
    return result;
}

std::string format_quantity(double si, Dimension dimension) {
    const Unit* unit = &units_of(dimension).front();
    if (dimension == Dimension::length) {
        const double size = std::abs(si);
        if (size > 0.0 && size < 0.99995e-4)
            unit = find_unit("um", dimension);
        else if (size >= 0.99995)
            unit = find_unit("m", dimension);
    }
    const double number = (si - unit->offset) / unit->factor;
    const double size = std::abs(number);
    // A whole number keeps all its digits; the rest is rounded to four, without an exponent.
    double shown = std::round(number);
    const bool whole = std::abs(number - shown) <= 1e-9 * std::max(1.0, size);
    if (!whole && size >= 9999.5) {
        const double fourth_digit = std::pow(10.0, std::floor(std::log10(size)) - 3.0);
        shown = std::round(number / fourth_digit) * fourth_digit;
    }
    std::string text = (whole || size >= 9999.5) && size < 1e15
                           ? fmt::format("{:.0f}", shown == 0.0 ? 0.0 : shown)
                           : fmt::format("{:.4g}", number);
    if (!unit->spelling.empty()) text += fmt::format(" {}", unit->spelling);
    return text;
}

}  // namespace loopwright
