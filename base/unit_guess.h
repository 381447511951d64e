#pragma once

#include <string>
#include <string_view>

#include <loopwright/base/unit_text.h>

/// What a text that is no quantity most likely means. For messages only: nothing here makes a text
/// acceptable. Nor does a guess change what is meant: not a milli into a mega, nor a unit into one
/// that is as near and of another size.
namespace loopwright {

/// The unit of `dimension` that the trade also writes so ("lpm", "psig", "lb-ft", "kJ/kgK"), in
/// small or capital letters, its symbols in any order; null if there is none.
const Unit* unit_by_other_name(std::string_view written, Dimension dimension);

/// The same, or the unit that differs in case or by a slip of the hand ("Mpa", "baar").
const Unit* likely_unit(std::string_view written, Dimension dimension);

/// Why there is no unit to name for what is written, as to be said behind it ("is a reading of the
/// Saybolt viscometer ..."); empty if nothing is known of it.
std::string_view why_not(std::string_view written, Dimension dimension);

/// The text with plain characters for those that stand for them in print: superscripts, powers,
/// raised dots, minus signs and dashes, no-break and thin spaces, primes.
std::string in_plain_characters(std::string_view text);

}  // namespace loopwright
