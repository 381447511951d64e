#include <loopwright/parser/scan.h>

#include <bit>
#include <limits>
#include <stdexcept>

#include <fmt/core.h>

#include <loopwright/parser/scan_head.h>
#include <loopwright/parser/scanner.h>
#include <loopwright/parser/short_text.h>

namespace loopwright {

Scanner::Scanner(const std::string& text, std::size_t depth)
    : text_(text),
      base_(text.data()),
      end_(text.data() + text.size()),
      p_(text.data()),
      depth_limit_(depth) {
    scan_.elements.reserve(text.size() / 48 + 16);
    scan_.attributes.reserve(text.size() / 16 + 16);
}

Scan Scanner::run() {
    const FileHead head = read_file_head(text_);
    p_ += head.length;
    if (head.trouble) {
        scan_.trouble = head.trouble;
        met_ = head.trouble->span.begin;
    } else {
        content();
    }
    if (!head.other_encoding) {
        prefer_bad_bytes(head.length);
    }
    return std::move(scan_);
}

bool Scanner::content() {
    for (;;) {
        p_ = behind_space(p_);
        if (*p_ != '<') {
            if (p_ != end_) {
                return text();
            }
            return end_of_file();
        }
        const char next = p_[1];
        if (next == '/') {
            if (!end_tag()) {
                return false;
            }
        } else if (next == '!' || next == '?') {
            if (!markup()) {
                return false;
            }
        } else if (!start_tag()) {
            return false;
        }
    }
}

bool Scanner::start_tag() {
    const char* const begin = p_;
    const char* const p = behind_name(begin + 1);
    if (p == begin + 1) {
        return fail(p, {at(begin), at(begin) + 1}, "'<' begins no element",
                    "an element's name behind '<'; the character itself is written '&lt;'");
    }
    const bool is_first = scan_.elements.empty();
    const auto index = static_cast<std::uint32_t>(scan_.elements.size());
    ScannedElement& element = scan_.elements.emplace_back();  // no other is added below
    element.begin = at(begin);
    element.name_end = at(p);
    element.attributes = static_cast<std::uint32_t>(scan_.attributes.size());
    element.next = index + 1;
    if (open_.empty() && !is_first) {
        return fail(p, element.name(), "a second root element",
                    fmt::format("one root element; '{}' is closed already",
                                clipped(view(scan_.elements.front().name()))));
    }
    if (open_.size() >= depth_limit_) {
        return fail(p, element.name(),
                    fmt::format("elements are nested deeper than {}", depth_limit_),
                    fmt::format("at most {} elements one inside the other", depth_limit_));
    }
    Names names;
    p_ = p;
    for (;;) {
        const char* const before = p_;
        p_ = behind_space(p_);
        if (*p_ == '>' || (*p_ == '/' && p_[1] == '>')) {
            break;
        }
        if (p_ == end_ || *p_ == '<') {
            return fail(p_, element.name(),
                        fmt::format("the tag '<{}' is not closed", clipped(view(element.name()))),
                        "'>' or '/>' behind the attributes");
        }
        if (p_ == before) {
            const bool name_follows = is(p_, byte_class::name_start);
            return fail(p_, character(p_),
                        name_follows ? "no white space before an attribute"
                                     : fmt::format("'{}' cannot stand here", view(character(p_))),
                        "white space, '>' or '/>'");
        }
        if (!attribute(names)) {
            return false;
        }
    }
    element.attribute_count =
        static_cast<std::uint32_t>(scan_.attributes.size()) - element.attributes;
    if (*p_ == '>') {
        open_.push_back(index);
        p_ += 1;
    } else {
        p_ += 2;
    }
    element.tag_end = at(p_);
    return true;
}

// `p` stands at a byte beyond ASCII, at the head of a name or inside one.
const char* Scanner::behind_other_name(const char* p) const {
    bool inside = p != base_ && is(p - 1, byte_class::name);
    while (is(p, byte_class::name | byte_class::beyond_ascii)) {
        const Utf8Character one = decode_utf8(rest(p));
        if (one.length == 0 || !(inside ? is_name_character(one.code) : is_name_start(one.code))) {
            break;
        }
        inside = true;
        p += one.length;
    }
    return p;
}

bool Scanner::attribute(Names& names) {
    // Filled where it stays; a copy would wait for each of its words.
    ScannedAttribute& attribute = scan_.attributes.emplace_back();
    attribute.name_begin = at(p_);
    const char* p = behind_name(p_);
    if (p == p_) {
        return fail(p, character(p), fmt::format("'{}' begins no attribute", view(character(p))),
                    "an attribute's name, '>' or '/>'");
    }
    attribute.name_end = at(p);
    p = behind_space(p);
    if (*p != '=') {
        return fail(p, attribute.name(),
                    fmt::format("the attribute '{}' has no value", clipped(view(attribute.name()))),
                    "'=' and a value in quotes behind the name");
    }
    ++p;
    p = behind_space(p);
    if (*p != '"' && *p != '\'') {
        return fail(
            p, attribute.name(),
            fmt::format("the value of '{}' is not in quotes", clipped(view(attribute.name()))),
            "a value in double or single quotes behind '='");
    }
    p_ = p;
    if (!value(attribute)) {
        return false;
    }
    if (repeated(view(attribute.name()), names)) {
        return fail(
            p_, attribute.name(),
            fmt::format("the attribute '{}' is there twice", clipped(view(attribute.name()))),
            "each attribute once in an element");
    }
    return true;
}

bool Scanner::value(ScannedAttribute& attribute) {
    const char* const opening = p_;
    const char quote = *opening;
    const std::uint8_t stop = quote == '"' ? byte_class::ends_double : byte_class::ends_single;
    attribute.value_begin = at(opening + 1);
    for (const char* p = opening + 1;;) {
        if constexpr (std::endian::native == std::endian::little) {
            // Eight at a time: a loop over single bytes ends where no branch predictor foresees it.
            unsigned run = 8;
            while (run == 8 && end_ - p >= 8) {
                run = bytes_of_value(load_8(p), quote);
                p += run;
            }
        }
        while (!is(p, stop)) {
            ++p;
        }
        if (*p == quote) {
            attribute.value_end = at(p);
            p_ = p + 1;
            return true;
        }
        if (*p == '\t' || *p == '\n' || *p == '\r') {
            scan_.literal = false;
            attribute.plain = attribute.plain && *p != '\r';
            ++p;
        } else if (*p == '&') {
            scan_.literal = false;
            attribute.plain = false;
            p = behind_reference(p);
            if (p == nullptr) {
                return false;
            }
        } else {
            return bad_value(p, opening, attribute);
        }
    }
}

bool Scanner::bad_value(const char* p, const char* opening, const ScannedAttribute& attribute) {
    const std::string name = clipped(view(attribute.name()));
    if (*p != '<') {
        return fail(p, {at(opening), at(opening) + 1},
                    fmt::format("the value of '{}' is not closed", name),
                    fmt::format("a closing {}", *opening));
    }
    const std::uint32_t line = line_of(text_, at(opening));
    return fail(
        p, {at(p), at(p) + 1}, fmt::format("'<' in the value of '{}'", name),
        line == line_of(text_, at(p))
            ? fmt::format("'&lt;', or the closing {} before it", *opening)
            : fmt::format("the closing {} of the value that begins in line {}", *opening, line));
}

const char* Scanner::behind_reference(const char* p) {
    const Reference found = read_reference(rest(p));
    if (!found.message.empty()) {
        fail(p + found.length - 1, {at(p), at(p) + static_cast<std::uint32_t>(found.length)},
             found.message, found.expected, found.suggestion);
        return nullptr;
    }
    return p + found.length;
}

bool Scanner::compared(std::string_view name, std::size_t before) {
    const auto first = scan_.attributes.begin() + scan_.elements.back().attributes;
    const auto end = first + static_cast<std::ptrdiff_t>(before);
    if (before >= few_attributes) {
        if (before == few_attributes) {
            many_names_.clear();
            for (auto it = first; it != end; ++it) {
                many_names_.insert(view(it->name()));
            }
        }
        return !many_names_.insert(name).second;
    }
    return std::any_of(first, end,
                       [&](const ScannedAttribute& other) { return view(other.name()) == name; });
}

Scan scan_xml(const std::string& text, std::size_t depth) {
    if (text.size() >= std::numeric_limits<std::uint32_t>::max()) {
        throw std::logic_error("scan_xml: a text of 4 GiB or more");
    }
    return Scanner(text, depth).run();
}

}  // namespace loopwright
