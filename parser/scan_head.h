#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include <loopwright/parser/clipped.h>
#include <loopwright/parser/scan.h>
#include <loopwright/parser/scan_bytes.h>

/// The rare parts of the scan: the head of a file (byte order mark, declaration), references, and
/// the wording of what is refused.
namespace loopwright {

struct FileHead {
    std::uint32_t length = 0;     ///< bytes of byte order mark and declaration
    bool other_encoding = false;  ///< not UTF-8: the rest need not be looked at
    std::optional<ScanTrouble> trouble = {};
};

/// Byte order mark and XML declaration, both of which may be absent. Only XML 1.0 in UTF-8 (or its
/// part US-ASCII) is taken; what else the first bytes or the declaration say is trouble.
FileHead read_file_head(std::string_view text);

/// A reference at the head of `text`, which begins with '&'.
struct Reference {
    std::size_t length = 1;    ///< bytes, its ';' included
    std::string message = {};  ///< empty: one of the five entities or a legal character
    std::string expected = {};
    std::string suggestion = {};
};
Reference read_reference(std::string_view text);

/// What is wrong with '<!' or '<?' at the head of `rest`, which is no comment and stands at byte
/// `at` of the file.
ScanTrouble describe_markup(std::string_view rest, std::uint32_t at);

ScanTrouble describe(const BadBytes& bad, std::string_view text);

/// The line, from 1, that byte `at` stands in; CR LF, LF and CR end one.
std::uint32_t line_of(std::string_view text, std::uint32_t at);

}  // namespace loopwright
