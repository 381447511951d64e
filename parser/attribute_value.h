#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include <loopwright/parser/circuit.h>
#include <loopwright/parser/report.h>

namespace loopwright {

/// Reads a value as its spec asks. True: `value.si` and `value.text` are set. False: `words` says
/// what is wrong, and `value` is as it was. Never throws on bad text.
bool read_value(const AttributeSpec& spec, std::string_view text, AttributeValue& value,
                Words& words);

/// What the attribute takes, for messages: "a pressure such as 24 bar", "yes or no".
std::string taken_by(const AttributeSpec& spec);

/// The range that its figures must be in, such as "more than 0 mm" or "0 to 1"; empty: any.
std::string range_of(const AttributeSpec& spec);

/// Figures that it takes, such as "24 bar" or "0.2 or 20 %". Quantities only.
std::string_view example_of(const AttributeSpec& spec);

/// A list in a message names no more words than these.
inline constexpr std::size_t most_listed = 40;

/// "a, b or c"; "a, b, ..." where there are more than `most_listed`.
std::string list_of(const std::vector<std::string_view>& words, std::string_view last = "or");

/// The day that "2026-11-25" means (ISO 8601, the calendar date in full); nothing for any other
/// text and for days that no calendar has.
std::optional<std::chrono::sys_days> date_of(std::string_view text);

/// A letter, then letters, digits, '-' and '_'.
bool is_id(std::string_view text);

/// The same, but it may begin with a digit: valve positions are called a, 0, b.
bool is_position_id(std::string_view text);

}  // namespace loopwright
