#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <loopwright/base/source.h>

/// The scan of a file's bytes that runs before the XML library sees them. The library asks less
/// than XML does and tells no attribute's place; the scan refuses what XML refuses (and, because a
/// circuit needs none of it, document types, processing instructions and text), and gives the span
/// of every element and attribute.
///
/// Tables are flat and in document order: the attributes of an element are consecutive, and so are
/// an element and all that stands inside it.
namespace loopwright {

/// A start tag. All offsets are bytes of the file.
struct ScannedElement {
    std::uint32_t begin = 0;       ///< its '<'
    std::uint32_t name_end = 0;    ///< the name begins at begin + 1
    std::uint32_t tag_end = 0;     ///< behind its '>'
    std::uint32_t next = 0;        ///< index of the first element behind all that stands inside
    std::uint32_t attributes = 0;  ///< index of its first attribute
    std::uint32_t attribute_count = 0;

    Span name() const { return {begin + 1, name_end}; }
    Span tag() const { return {begin, tag_end}; }
};

struct ScannedAttribute {
    std::uint32_t name_begin = 0;
    std::uint32_t name_end = 0;
    std::uint32_t value_begin = 0;  ///< behind the opening quote
    std::uint32_t value_end = 0;    ///< the closing quote
    /// False where the decoded value differs in length from the text (references, CR LF).
    bool plain = true;

    Span name() const { return {name_begin, name_end}; }
    Span value() const { return {value_begin, value_end}; }
    Span whole() const { return {name_begin, value_end + 1}; }
};

/// The first place where the file is no XML, or none that a circuit may use.
struct ScanTrouble {
    Span span = {};
    std::string message = {};
    std::string expected = {};
    std::string suggestion = {};
};

struct Scan {
    std::vector<ScannedElement> elements = {};
    std::vector<ScannedAttribute> attributes = {};
    /// Every value is what its text says: there are no references, line ends or tabs in any.
    bool literal = true;
    std::optional<ScanTrouble> trouble = {};  ///< if set, the tables are incomplete
};

/// Scans a whole file. `depth` is how deep elements may nest, the root counted as one.
/// Files of 4 GiB and more are a caller's error (std::logic_error).
Scan scan_xml(const std::string& text, std::size_t depth);

}  // namespace loopwright
