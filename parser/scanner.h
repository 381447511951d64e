#pragma once

#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>
#include <vector>

#include <loopwright/parser/scan.h>
#include <loopwright/parser/scan_bytes.h>

namespace loopwright {

/// One pass of a hand-written automaton over the text of a file. std::string ends with a NUL, which
/// no run of characters passes: the automaton never asks for the end. After it, a quick pass looks
/// for bytes that no XML file may have; of the two troubles, the one that is met first is told.
class Scanner {
  public:
    Scanner(const std::string& text, std::size_t depth);

    Scan run();

  private:
    /// The names that the tag at hand has so far.
    struct Names {
        std::uint64_t marks = 0;  ///< of each a bit; where it is free the name is new
        std::size_t count = 0;
    };
    /// Up to here a name whose bit is taken is compared with each before.
    static constexpr std::size_t few_attributes = 48;

    // scan.cpp: start tags
    bool content();
    bool start_tag();
    bool attribute(Names& names);
    bool value(ScannedAttribute& attribute);
    bool bad_value(const char* p, const char* opening, const ScannedAttribute& attribute);
    const char* behind_reference(const char* p);
    /// Whether the tag has an attribute of that name already; takes the name in.
    bool repeated(std::string_view name, Names& names) {
        const auto mark = std::uint64_t{1}
                          << ((static_cast<unsigned char>(name.front()) * 5U +
                               static_cast<unsigned char>(name.back()) + name.size() * 11U) &
                              63U);
        const bool maybe = (names.marks & mark) != 0 || names.count >= few_attributes;
        names.marks |= mark;
        const bool found = maybe && compared(name, names.count);
        ++names.count;
        return found;
    }
    bool compared(std::string_view name, std::size_t before);

    // scan_markup.cpp: all else
    bool end_tag();
    bool markup();
    bool text();
    bool end_of_file();
    void prefer_bad_bytes(std::uint32_t from);

    // `met` is how far the scan had come; what lies behind may not have been looked at.
    bool fail(const char* met, Span span, std::string message, std::string expected,
              std::string suggestion = {}) {
        met_ = at(met);
        scan_.trouble =
            ScanTrouble{span, std::move(message), std::move(expected), std::move(suggestion)};
        return false;
    }

    std::uint32_t at(const char* p) const { return static_cast<std::uint32_t>(p - base_); }
    std::string_view view(Span span) const { return {base_ + span.begin, span.end - span.begin}; }
    std::string_view rest(const char* p) const { return {p, static_cast<std::size_t>(end_ - p)}; }
    bool is(const char* p, std::uint8_t byte_class) const {
        return (byte_classes[static_cast<unsigned char>(*p)] & byte_class) != 0;
    }
    // These take and give pointers by value: one that the loops reached through a reference or a
    // member would be stored and loaded again for each byte.
    const char* behind_space(const char* p) const {
        while (is(p, byte_class::space)) {
            ++p;
        }
        return p;
    }
    /// Behind the name at `p`; `p` itself if none begins there.
    const char* behind_name(const char* p) const {
        if (is(p, byte_class::name_start)) {
            do {
                ++p;
            } while (is(p, byte_class::name));
        }
        return is(p, byte_class::beyond_ascii) ? behind_other_name(p) : p;
    }
    const char* behind_other_name(const char* p) const;
    /// The character at `p`; a byte that is none counts as one.
    Span character(const char* p) const {
        return {at(p), at(p) + std::max(decode_utf8(rest(p)).length, 1U)};
    }

    const std::string& text_;
    const char* base_;
    const char* end_;
    const char* p_;
    std::size_t depth_limit_;
    std::uint32_t met_ = 0;
    Scan scan_ = {};
    std::vector<std::uint32_t> open_ = {};  ///< elements
    std::unordered_set<std::string_view> many_names_ = {};
};

}  // namespace loopwright
