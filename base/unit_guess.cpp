#include <loopwright/base/unit_guess.h>

#include <algorithm>
#include <iterator>
#include <vector>

#include <loopwright/base/unit_table.h>
#include <loopwright/base/unit_words.h>

namespace loopwright {
namespace {

/// Characters that stand for plain ones in print.
constexpr Alias look_alikes[] = {
    // superscripts and powers
    {"\xC2\xB2", "2"},
    {"\xC2\xB3", "3"},
    {"\xC2\xB9", "1"},
    {"\xE2\x81\xBB", "-"},
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

/// A longer text is no unit, and may be as long as a file.
constexpr std::size_t longest_guessed = 60;

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool letter(char c) { return lower(c) >= 'a' && lower(c) <= 'z'; }

bool digit(char c) { return c >= '0' && c <= '9'; }

std::string_view letters_at(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && letter(text[end])) ++end;
    return text.substr(at, end - at);
}

/// The same in small or capital letters, unless that would make a milli of a mega ("Mbar", "mPa").
bool same_but_case(std::string_view written, std::string_view unit) {
    if (written.size() != unit.size()) return false;
    for (std::size_t i = 0; i < written.size(); ++i) {
        if (lower(written[i]) != lower(unit[i])) return false;
        if (written[i] == unit[i] || lower(unit[i]) != 'm') continue;
        for (const std::string_view symbol : prefixed)
            if (written.substr(i + 1).starts_with(symbol)) return false;
    }
    return true;
}

/// One letter too many or too few, or two swapped, behind the first letter of a symbol of three or
/// more. In a shorter one ("N/m", "N/mm"), with another first letter ("mm3", "kbar") or another
/// last one ("gph"), it is as likely a unit of another size.
bool one_slip(std::string_view written, std::string_view unit) {
    std::size_t same = 0;
    while (same < written.size() && same < unit.size() && written[same] == unit[same]) ++same;
    std::size_t begin = same;
    while (begin > 0 && letter(unit[begin - 1])) --begin;
    if (begin == same) return false;
    std::string_view symbol = letters_at(written, begin);
    std::string_view wanted = letters_at(unit, begin);
    if (symbol.size() < 3 || wanted.size() < 3 ||
        written.substr(begin + symbol.size()) != unit.substr(begin + wanted.size()) ||
        symbol.substr(1) == wanted || wanted.substr(1) == symbol)  // "mHg", "mmHg"
        return false;
    symbol.remove_prefix(same - begin);
    wanted.remove_prefix(same - begin);
    while (!symbol.empty() && !wanted.empty() && symbol.back() == wanted.back()) {
        symbol.remove_suffix(1);
        wanted.remove_suffix(1);
    }
    const bool swapped = symbol.size() == 2 && wanted.size() == 2 && symbol[0] == wanted[1] &&
                         symbol[1] == wanted[0];
    return swapped || symbol.size() + wanted.size() == 1;
}

/// A unit taken apart: what stands over the stroke and what under it, in the table's symbols.
struct Symbols {
    std::vector<std::string> over = {};
    std::vector<std::string> under = {};

    bool empty() const { return over.empty() && under.empty(); }
};

/// The table's word for a symbol, or the same.
std::string_view plain_word(std::string_view symbol) {
    for (const Alias& alias : symbol_aliases)
        if (same_but_case(symbol, alias.written)) return alias.meant;
    return symbol;
}

std::string plain_symbol(std::string_view symbol) {
    const std::string_view word = plain_word(symbol);
    if (word != symbol || symbol.size() < 2 || !digit(symbol.back())) return std::string(word);
    symbol.remove_suffix(1);  // "sec2"
    return std::string(plain_word(symbol)) + word.back();
}

/// "degC" under a stroke, or as the difference that is asked for, is K.
bool counts_differences(Dimension dimension) {
    return dimension == Dimension::temperature_difference ||
           (dimension >= Dimension::specific_heat && dimension <= Dimension::thermal_expansion);
}

std::string of_difference(std::string symbol) {
    const auto is_one_of = [&symbol](std::string_view a, std::string_view b) {
        return same_but_case(symbol, a) || same_but_case(symbol, b);
    };
    if (is_one_of("degC", "C") || same_but_case(symbol, "degK")) return "K";
    if (is_one_of("degF", "F")) return "degF";
    return symbol;
}

/// The C of "deg C".
std::string_view scale_behind(std::string_view symbol, std::string_view text) {
    if (symbol != "deg") return {};
    const std::size_t at = std::min(text.find_first_not_of(' '), text.size());
    const std::string_view scale = letters_at(text, at);
    return scale.size() == 1 && std::string_view("CFKRcfkr").find(scale) != std::string_view::npos
               ? scale
               : std::string_view();
}

Symbols symbols_of(std::string_view text, Dimension dimension) {
    constexpr std::string_view degree = "\xC2\xB0";
    Symbols symbols;
    std::vector<std::string>* side = &symbols.over;
    std::string power;  // of "sq in", "cu ft"
    const auto add = [&](std::string symbol) {
        if (counts_differences(dimension)) symbol = of_difference(std::move(symbol));
        if (!symbol.empty()) side->push_back(std::move(symbol));
    };
    while (!text.empty()) {
        if (text.front() == '/') side = &symbols.under;
        std::size_t size = 0;
        while (size < text.size() && (letter(text[size]) || digit(text[size]) ||
                                      (static_cast<unsigned char>(text[size]) >= 0x80 &&
                                       !text.substr(size).starts_with(degree))))
            ++size;
        if (text.starts_with(degree)) size = degree.size();
        if (size == 0) {
            const bool mark = text.front() == '%' || text.front() == '"' || text.front() == '\'';
            if (mark) add(plain_symbol(text.substr(0, 1)));
            text.remove_prefix(1);
            continue;
        }
        const std::string_view word = text.substr(0, size);
        text.remove_prefix(size);
        if (same_but_case(word, "per")) {
            side = &symbols.under;
        } else if (same_but_case(word, "sq") || same_but_case(word, "square")) {
            power = "2";
        } else if (same_but_case(word, "cu") || same_but_case(word, "cubic")) {
            power = "3";
        } else if (const std::string_view scale = scale_behind(plain_symbol(word), text);
                   !scale.empty()) {
            add("deg" + std::string(scale));
            text.remove_prefix(text.find(scale.front()) + 1);
        } else if (text.size() > 1 && text[0] == '-' && digit(text[1])) {  // "min-1", "m-2"
            std::vector<std::string>* const before = side;
            side = &symbols.under;
            add(plain_symbol(word) + (text[1] == '1' ? "" : std::string(1, text[1])));
            side = before;
            text.remove_prefix(2);
        } else {
            add(plain_symbol(word) + power);
            power.clear();
        }
    }
    return symbols;
}

bool before(const std::string& a, const std::string& b) {
    return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end(),
                                        [](char x, char y) { return lower(x) < lower(y); });
}

bool same_but_case_each(const std::vector<std::string>& written,
                        const std::vector<std::string>& unit) {
    return std::equal(written.begin(), written.end(), unit.begin(), unit.end(), same_but_case);
}

/// Two ways to compare units: symbol by symbol in any order ("ft.lbf" is "lbf.ft"), and all in one
/// ("kJ/kgK" is "kJ/(kg.K)").
struct Compared {
    explicit Compared(Symbols symbols) : sorted(std::move(symbols)) {
        for (const std::string& symbol : sorted.over) in_one += symbol;
        if (!sorted.under.empty()) in_one += '/';
        for (const std::string& symbol : sorted.under) in_one += symbol;
        std::sort(sorted.over.begin(), sorted.over.end(), before);
        std::sort(sorted.under.begin(), sorted.under.end(), before);
    }

    bool is(const Compared& unit) const {
        return (same_but_case_each(sorted.over, unit.sorted.over) &&
                same_but_case_each(sorted.under, unit.sorted.under)) ||
               same_but_case(in_one, unit.in_one);
    }

    Symbols sorted;
    std::string in_one = {};
};

/// The table so, in its order. Made when a unit is first guessed.
const std::vector<Compared>& compared_units() {
    static const std::vector<Compared> all = [] {
        std::vector<Compared> made;
        for (const Unit& unit : units())
            made.emplace_back(symbols_of(unit.spelling, unit.dimension));
        return made;
    }();
    return all;
}

/// The dimension's unit whose spelling `fits`, or null.
template <typename Fits>
const Unit* first_unit(Dimension dimension, Fits fits) {
    const auto all = units_of(dimension);
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const Unit& unit) { return fits(unit.spelling); });
    return at == all.end() ? nullptr : &*at;
}

const Unit* unit_of(const Symbols& symbols, Dimension dimension) {
    const Compared written(symbols);
    for (const Unit& unit : units_of(dimension))
        if (written.is(compared_units()[static_cast<std::size_t>(&unit - units().data())]))
            return &unit;
    return nullptr;
}

const Unit* unit_of_symbols(Symbols symbols, Dimension dimension) {
    if (symbols.empty()) return nullptr;
    if (const Unit* unit = unit_of(symbols, dimension)) return unit;
    // A displacement is often given as the volume that it is for a revolution.
    if (dimension == Dimension::displacement && symbols.under.empty()) {
        symbols.under.emplace_back("rev");
        return unit_of(symbols, dimension);
    }
    // Pounds and kilograms are forces too.
    bool weights = false;
    for (std::vector<std::string>* side : {&symbols.over, &symbols.under}) {
        for (std::string& symbol : *side) {
            if (!same_but_case(symbol, "lb") && !same_but_case(symbol, "kg")) continue;
            symbol += 'f';
            weights = true;
        }
    }
    return weights ? unit_of(symbols, dimension) : nullptr;
}

}  // namespace

const Unit* unit_by_other_name(std::string_view written, Dimension dimension) {
    if (written.size() > longest_guessed) return nullptr;
    for (const Alias& alias : unit_aliases) {
        if (!same_but_case(written, alias.written)) continue;
        const Unit* unit = first_unit(
            dimension, [&](std::string_view spelling) { return spelling == alias.meant; });
        if (unit != nullptr) return unit;
    }
    if (dimension == Dimension::pressure || dimension == Dimension::absolute_pressure) {
        for (const Alias& word : pressure_words) {
            if (written.size() <= word.written.size()) continue;
            const std::size_t size = written.size() - word.written.size();
            if (!same_but_case(written.substr(size), word.written)) continue;
            // Any pressure's unit, with or without the word.
            const Unit* unit = unit_of_symbols(
                symbols_of(written.substr(0, size), Dimension::pressure), Dimension::pressure);
            if (unit == nullptr) continue;
            const std::string meant = std::string(unit->spelling) + std::string(word.meant);
            unit =
                first_unit(dimension, [&](std::string_view spelling) { return spelling == meant; });
            if (unit != nullptr) return unit;
        }
    }
    return unit_of_symbols(symbols_of(written, dimension), dimension);
}

const Unit* likely_unit(std::string_view written, Dimension dimension) {
    if (written.empty() || written.size() > longest_guessed) return nullptr;
    if (written == "degr") return nullptr;  // of which scale?
    if (const Unit* unit = first_unit(
            dimension, [&](std::string_view spelling) { return same_but_case(written, spelling); }))
        return unit;
    if (const Unit* unit = unit_by_other_name(written, dimension)) return unit;
    // "kMPa" is as near to MPa as to kPa.
    if (first_unit(dimension, [&](std::string_view spelling) {
            return written.substr(1) == spelling ||
                   (!spelling.empty() && spelling.substr(1) == written);
        }) != nullptr)
        return nullptr;
    return first_unit(dimension,
                      [&](std::string_view spelling) { return one_slip(written, spelling); });
}

std::string_view why_not(std::string_view written, Dimension dimension) {
    if (written.size() > longest_guessed) return {};
    std::string bare;
    for (const char c : written)
        if (std::string_view(" .-()").find(c) == std::string_view::npos) bare += lower(c);
    for (const Refusal& refusal : refusals) {
        if (refusal.dimension != dimension) continue;
        if (refusal.beginning ? bare.starts_with(refusal.written) : bare == refusal.written)
            return refusal.words;
    }
    return {};
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
