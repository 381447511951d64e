#include <loopwright/base/unit_guess.h>

#include <algorithm>
#include <iterator>

namespace loopwright {
namespace {

bool equal_but_case(std::string_view a, std::string_view b) {
    const auto lower = [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [&lower](char x, char y) { return lower(x) == lower(y); });
}

/// How the trade or a careless hand writes a unit (in small or capital letters), and the spelling
/// that this table has for the same unit.
struct Alias {
    std::string_view written = {};
    std::string_view meant = {};
};
constexpr Alias aliases[] = {
    {"lpm", "L/min"},
    {"ltr/min", "L/min"},
    {"dm3/min", "L/min"},
    {"dm3", "L"},
    {"liter", "L"},
    {"litre", "L"},
    {"litres", "L"},
    {"liters", "L"},
    {"usgpm", "gpm"},
    {"us gpm", "gpm"},
    {"U/min", "rpm"},
    {"r/min", "rpm"},
    {"min-1", "1/min"},
    {"ccm", "cm3/rev"},
    {"ccm/rev", "cm3/rev"},
    {"cc", "cm3/rev"},
    {"cm3", "cm3/rev"},
    {"cm3/U", "cm3/rev"},
    {"cm3/r", "cm3/rev"},
    {"in3", "in3/rev"},
    {"cir", "in3/rev"},
    {"cu.in", "in3/rev"},
    {"cu in", "in3/rev"},
    {"in3/r", "in3/rev"},
    {"cu.in/rev", "in3/rev"},
    {"cu in/rev", "in3/rev"},
    {"ccm", "cm3"},
    {"cc", "cm3"},
    {"cu.in", "in3"},
    {"cu in", "in3"},
    {"ft.lbf", "lbf.ft"},
    {"ft-lbf", "lbf.ft"},
    {"lbf-ft", "lbf.ft"},
    {"ft.lb", "lbf.ft"},
    {"ft-lb", "lbf.ft"},
    {"lb-ft", "lbf.ft"},
    {"lb.ft", "lbf.ft"},
    {"in.lbf", "lbf.in"},
    {"in-lbf", "lbf.in"},
    {"lbf-in", "lbf.in"},
    {"in.lb", "lbf.in"},
    {"in-lb", "lbf.in"},
    {"lb-in", "lbf.in"},
    {"lb.in", "lbf.in"},
    {"N m", "N.m"},
    {"N-m", "N.m"},
    {"kNm", "kN.m"},
    {"kN m", "kN.m"},
    {"kN-m", "kN.m"},
    {"N/mm2", "MPa"},
    {"micron", "um"},
    {"microns", "um"},
    {"\"", "in"},
    {"inch", "in"},
    {"'", "ft"},
    {"lbs", "lb"},
    {"kph", "km/h"},
    {"kmh", "km/h"},
    {"C", "degC"},
    {"F", "degF"},
    {"celsius", "degC"},
    {"fahrenheit", "degF"},
    {"deg C", "degC"},
    {"deg F", "degF"},
    {"\xC2\xB0 C", "degC"},
    {"\xC2\xB0 F", "degF"},
    {"C", "K"},
    {"degC", "K"},
    {"\xC2\xB0"
     "C",
     "K"},
    {"\xC2\xB0", "deg"},
    {"barg", "bar"},
    {"bar(g)", "bar"},
    {"psig", "psi"},
    {"bara", "bar abs"},
    {"bar(a)", "bar abs"},
    {"psia", "psi abs"},
    {"psi(a)", "psi abs"},
};

/// Characters that stand for plain ones in print.
constexpr Alias look_alikes[] = {
    // superscripts and powers
    {"\xC2\xB2", "2"},
    {"\xC2\xB3", "3"},
    {"^", ""},
    // raised dots
    {"\xC2\xB7", "."},
    {"\xE2\x8B\x85", "."},
    {"*", "."},
    // ordinal sign for degree
    {"\xC2\xBA", "\xC2\xB0"},
    // minus sign, en dash
    {"\xE2\x88\x92", "-"},
    {"\xE2\x80\x93", "-"},
    // no-break, narrow no-break, thin space
    {"\xC2\xA0", " "},
    {"\xE2\x80\xAF", " "},
    {"\xE2\x80\x89", " "},
    // primes
    {"\xE2\x80\xB3", "\""},
    {"\xE2\x80\xB2", "'"},
};

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// One letter too many or too few, or two swapped, behind the first letter of a symbol of three or
/// more. In a shorter one ("N/m", "N/mm"), with another first letter ("mm3", "kbar") or another
/// last one ("gph"), it is as likely a unit of another size.
bool one_slip(std::string_view written, std::string_view unit) {
    std::size_t same = 0;
    while (same < written.size() && same < unit.size() && written[same] == unit[same]) ++same;
    std::size_t begin = same;
    while (begin > 0 && letter(unit[begin - 1])) --begin;
    if (begin == same) return false;
    written.remove_prefix(begin);
    unit.remove_prefix(begin);
    const auto symbol = [](std::string_view text) {
        return static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), letter) -
                                        text.begin());
    };
    const std::size_t length = symbol(written);
    const std::size_t wanted = symbol(unit);
    if (length < 3 || wanted < 3 || written.substr(length) != unit.substr(wanted)) return false;
    written = written.substr(same - begin, length - (same - begin));
    unit = unit.substr(same - begin, wanted - (same - begin));
    while (!written.empty() && !unit.empty() && written.back() == unit.back()) {
        written.remove_suffix(1);
        unit.remove_suffix(1);
    }
    const bool swapped =
        written.size() == 2 && unit.size() == 2 && written[0] == unit[1] && written[1] == unit[0];
    return swapped || written.size() + unit.size() == 1;
}

/// The table's unit whose spelling `fits`, or null.
template <typename Fits>
const Unit* first_unit(Dimension dimension, Fits fits) {
    const auto all = units();
    const auto at = std::find_if(all.begin(), all.end(), [&](const Unit& unit) {
        return unit.dimension == dimension && fits(unit.spelling);
    });
    return at == all.end() ? nullptr : &*at;
}

}  // namespace

const Unit* unit_by_other_name(std::string_view written, Dimension dimension) {
    for (const Alias& alias : aliases) {
        if (!equal_but_case(alias.written, written)) continue;
        const Unit* unit = first_unit(
            dimension, [&](std::string_view spelling) { return spelling == alias.meant; });
        if (unit != nullptr) return unit;
    }
    return nullptr;
}

const Unit* likely_unit(std::string_view written, Dimension dimension) {
    if (written.empty()) return nullptr;
    if (const Unit* unit = first_unit(dimension, [&](std::string_view spelling) {
            return equal_but_case(spelling, written);
        }))
        return unit;
    if (const Unit* unit = unit_by_other_name(written, dimension)) return unit;
    return first_unit(dimension,
                      [&](std::string_view spelling) { return one_slip(written, spelling); });
}

std::string in_plain_characters(std::string_view text) {
    std::string plain;
    while (!text.empty()) {
        const auto* const found =
            std::find_if(std::begin(look_alikes), std::end(look_alikes),
                         [text](const Alias& one) { return text.starts_with(one.written); });
        const bool plain_already = found == std::end(look_alikes);
        plain += plain_already ? text.substr(0, 1) : found->meant;
        text.remove_prefix(plain_already ? 1 : found->written.size());
    }
    return plain;
}

}  // namespace loopwright
