// The table is small enough to search by dimension: each has at most a dozen spellings. What a text
// means is worked out in one pass without allocation; only a bad text takes the long way round.
#include <loopwright/base/unit_text.h>

#include <array>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_guess.h>

namespace loopwright {
namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double inch = 0.0254;                  // NIST SP 811, exact
constexpr double foot = 0.3048;                  // exact
constexpr double pound = 0.45359237;             // exact
constexpr double gravity = 9.80665;              // exact
constexpr double pound_force = pound * gravity;  // exact by the two above
constexpr double gallon = 231.0 * inch * inch * inch;
constexpr double psi = pound_force / (inch * inch);
constexpr double revolution = 2.0 * pi;
constexpr double cubic_inch = inch * inch * inch;

using D = Dimension;

// Sorted by dimension; the first of each is what the program prints.
constexpr Unit table[] = {
    {"", D::ratio, 1.0},
    {"%", D::ratio, 0.01},
    {"bar", D::pressure, 1e5},
    {"mbar", D::pressure, 100.0},
    {"Pa", D::pressure, 1.0},
    {"kPa", D::pressure, 1e3},
    {"MPa", D::pressure, 1e6},
    {"psi", D::pressure, psi},
    {"bar abs", D::pressure, 1e5, -standard_atmosphere},
    {"kPa abs", D::pressure, 1e3, -standard_atmosphere},
    {"MPa abs", D::pressure, 1e6, -standard_atmosphere},
    {"psi abs", D::pressure, psi, -standard_atmosphere},
    {"bar abs", D::absolute_pressure, 1e5},
    {"mbar abs", D::absolute_pressure, 100.0},
    {"kPa abs", D::absolute_pressure, 1e3},
    {"MPa abs", D::absolute_pressure, 1e6},
    {"psi abs", D::absolute_pressure, psi},
    {"cm3/rev", D::displacement, 1e-6 / revolution},
    {"cc/rev", D::displacement, 1e-6 / revolution},
    {"mL/rev", D::displacement, 1e-6 / revolution},
    {"L/rev", D::displacement, 1e-3 / revolution},
    {"in3/rev", D::displacement, cubic_inch / revolution},
    {"m3/rad", D::displacement, 1.0},
    {"L/min", D::flow, 1e-3 / 60.0},
    {"l/min", D::flow, 1e-3 / 60.0},
    {"m3/s", D::flow, 1.0},
    {"m3/h", D::flow, 1.0 / 3600.0},
    {"L/s", D::flow, 1e-3},
    {"gpm", D::flow, gallon / 60.0},
    {"gal/min", D::flow, gallon / 60.0},
    {"in3/min", D::flow, cubic_inch / 60.0},
    {"L", D::volume, 1e-3},
    {"l", D::volume, 1e-3},
    {"mL", D::volume, 1e-6},
    {"cm3", D::volume, 1e-6},
    {"m3", D::volume, 1.0},
    {"in3", D::volume, cubic_inch},
    {"gal", D::volume, gallon},
    {"mm", D::length, 1e-3},
    {"cm", D::length, 1e-2},
    {"m", D::length, 1.0},
    {"um", D::length, 1e-6},
    {"\xC2\xB5m", D::length, 1e-6},  // micro sign
    {"\xCE\xBCm", D::length, 1e-6},  // Greek mu
    {"in", D::length, inch},
    {"ft", D::length, foot},
    {"rpm", D::speed, revolution / 60.0},
    {"1/min", D::speed, revolution / 60.0},
    {"rev/min", D::speed, revolution / 60.0},
    {"rad/s", D::speed, 1.0},
    {"m/s", D::velocity, 1.0},
    {"km/h", D::velocity, 1.0 / 3.6},
    {"ft/s", D::velocity, foot},
    {"mph", D::velocity, 5280.0 * foot / 3600.0},
    {"N.m", D::torque, 1.0},
    {"Nm", D::torque, 1.0},
    {"kN.m", D::torque, 1e3},
    {"lbf.ft", D::torque, pound_force* foot},
    {"lbf.in", D::torque, pound_force* inch},
    {"kW", D::power, 1e3},
    {"W", D::power, 1.0},
    {"hp", D::power, 550.0 * foot* pound_force},
    {"PS", D::power, 75.0 * gravity},
    {"deg", D::angle, pi / 180.0},
    {"rad", D::angle, 1.0},
    {"degC", D::temperature, 1.0, 273.15},
    {"\xC2\xB0"
     "C",
     D::temperature, 1.0, 273.15},
    {"degF", D::temperature, 1.0 / 1.8, 459.67 / 1.8},
    {"\xC2\xB0"
     "F",
     D::temperature, 1.0 / 1.8, 459.67 / 1.8},
    {"K", D::temperature_difference, 1.0},
    {"mm2/s", D::kinematic_viscosity, 1e-6},
    {"cSt", D::kinematic_viscosity, 1e-6},
    {"m2/s", D::kinematic_viscosity, 1.0},
    {"kg/m3", D::density, 1.0},
    {"g/cm3", D::density, 1e3},
    {"kg/L", D::density, 1e3},
    {"kg", D::mass, 1.0},
    {"t", D::mass, 1e3},
    {"g", D::mass, 1e-3},
    {"lb", D::mass, pound},
};

struct Run {
    std::size_t begin = 0;
    std::size_t end = 0;
};

/// Where each dimension's spellings stand in the table.
constexpr std::array<Run, dimension_count> find_runs() {
    std::array<Run, dimension_count> runs{};
    for (std::size_t i = 0; i < std::size(table); ++i) {
        Run& run = runs[static_cast<std::size_t>(table[i].dimension)];
        if (run.end == 0) run.begin = i;
        run.end = i + 1;
    }
    return runs;
}
constexpr std::array<Run, dimension_count> runs = find_runs();

const Unit* find_unit(std::string_view spelling, Dimension dimension) {
    const Run run = runs[static_cast<std::size_t>(dimension)];
    for (std::size_t i = run.begin; i < run.end; ++i)
        if (table[i].spelling == spelling) return &table[i];
    return nullptr;
}

constexpr std::string_view examples[dimension_count] = {
    "0.2 or 20 %", "24 bar",   "0.8 bar abs", "71 cm3/rev", "40 L/min", "60 L",
    "25 mm",       "2400 rpm", "4 m/s",       "300 N.m",    "55 kW",    "18 deg",
    "60 degC",     "30 K",     "46 mm2/s",    "870 kg/m3",  "1200 kg",
};

bool blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

std::string units_of(Dimension dimension) {
    const Run run = runs[static_cast<std::size_t>(dimension)];
    std::string list;
    for (std::size_t i = run.begin; i < run.end; ++i) {
        if (table[i].spelling.empty()) continue;
        if (!list.empty()) list += ", ";
        list += table[i].spelling;
    }
    return list;
}

ParsedQuantity wrong(std::string message, Dimension dimension, std::string suggestion = {}) {
    return {.message = std::move(message),
            .expected = fmt::format("{} such as {}", phrase(dimension), example(dimension)),
            .suggestion = std::move(suggestion)};
}

ParsedQuantity bad_unit(std::string_view number, std::string_view unit, Dimension dimension) {
    for (std::size_t d = 0; d < dimension_count; ++d) {
        const auto other = static_cast<Dimension>(d);
        if (other == dimension || find_unit(unit, other) == nullptr) continue;
        ParsedQuantity result =
            wrong(fmt::format("'{}' is the unit of {}", unit, phrase(other)), dimension);
        if (const Unit* meant = unit_by_other_name(unit, dimension))
            result.suggestion = fmt::format("{} {}", number, meant->spelling);
        return result;
    }
    ParsedQuantity result = wrong(fmt::format("unknown unit '{}'", unit), dimension);
    result.expected += fmt::format(" (units: {})", units_of(dimension));
    if (const Unit* likely = likely_unit(unit, dimension))
        result.suggestion = fmt::format("{} {}", number, likely->spelling);
    return result;
}

/// What keeps a text from being a decimal number and a unit.
ParsedQuantity bad_number(std::string_view text, Dimension dimension) {
    if (text.empty()) return wrong("the quantity is empty", dimension);
    return wrong(fmt::format("'{}' does not begin with a decimal number", text), dimension);
}

constexpr char fraction[] = "a fraction in place of a decimal number";

bool digit(char c) { return c >= '0' && c <= '9'; }

std::string_view without_blanks(std::string_view text) {
    while (!text.empty() && blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && blank(text.back())) text.remove_suffix(1);
    return text;
}

ParsedQuantity read(std::string_view text, Dimension dimension);

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
                     fmt::format("{} {}", digits,
                                 table[runs[static_cast<std::size_t>(dimension)].begin].spelling));
    const Unit* found = find_unit(unit, dimension);
    if (found == nullptr) {
        std::string one_blank;  // "bar   abs"
        for (const char c : unit)
            if (!blank(c) || one_blank.empty() || one_blank.back() != ' ')
                one_blank += blank(c) ? ' ' : c;
        found = find_unit(one_blank, dimension);
        if (found == nullptr && digit(one_blank.front()) && blank(*end) &&
            !one_blank.starts_with("1/m") && !one_blank.starts_with("1/M"))
            return parted_number(digits, one_blank, false, dimension);
        if (found == nullptr) return bad_unit(digits, one_blank, dimension);
    }
    const double si = number * found->factor + found->offset;
    if (!std::isfinite(si))
        return wrong(fmt::format("'{}' is a number out of range", text), dimension);
    return {.si = si == 0.0 ? 0.0 : si};  // no negative zero
}

}  // namespace

std::span<const Unit> units() { return table; }

std::string_view example(Dimension dimension) {
    return examples[static_cast<std::size_t>(dimension)];
}

ParsedQuantity parse_quantity(std::string_view text, Dimension dimension) {
    text = without_blanks(text);
    ParsedQuantity result = read(text, dimension);
    if (!result.ok() && result.suggestion.empty()) {
        const std::string plain = in_plain_characters(text);
        if (plain != text)
            result.suggestion = meant_by(std::string(without_blanks(plain)), dimension);
    }
    return result;
}

std::string format_quantity(double si, Dimension dimension) {
    const Unit* unit = &table[runs[static_cast<std::size_t>(dimension)].begin];
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
