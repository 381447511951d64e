#include <loopwright/parser/scan_head.h>

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace loopwright {
namespace {

constexpr std::string_view remedy_utf8 = "UTF-8; save the file in that encoding";

bool is_space(char c) {
    return (byte_classes[static_cast<unsigned char>(c)] & byte_class::space) != 0;
}

bool is_in_name(char c) {
    return (byte_classes[static_cast<unsigned char>(c)] & byte_class::name) != 0;
}

bool equal_without_case(std::string_view a, std::string_view b) {
    const auto lower = [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [&lower](char x, char y) { return lower(x) == lower(y); });
}

std::string_view other_encoding(std::string_view text) {
    using namespace std::string_view_literals;
    const auto starts = [text](std::string_view bytes) {
        return text.substr(0, bytes.size()) == bytes;
    };
    if (starts("\xFF\xFE\0\0"sv) || starts("\0\0\xFE\xFF"sv) || starts("<\0\0\0"sv) ||
        starts("\0\0\0<"sv)) {
        return "UTF-32";
    }
    if (starts("\xFF\xFE"sv) || starts("\xFE\xFF"sv) || starts("<\0"sv) || starts("\0<"sv)) {
        return "UTF-16";
    }
    return {};
}

// The declaration's pseudo attributes, in their order: version, encoding, standalone.
class Declaration {
  public:
    Declaration(std::string_view text, std::uint32_t begin)
        : text_(text), begin_(begin), p_(begin + 5) {}

    // The end of the declaration, or trouble.
    std::uint32_t read(std::optional<ScanTrouble>& trouble) {
        static constexpr std::array<std::string_view, 3> names{"version", "encoding", "standalone"};
        std::size_t next = 0;
        for (;;) {
            const std::uint32_t before = p_;
            while (p_ < text_.size() && is_space(text_[p_])) {
                ++p_;
            }
            if (text_.substr(p_, 2) == "?>") {
                break;
            }
            const std::uint32_t name_begin = p_;
            while (p_ < text_.size() && is_in_name(text_[p_])) {
                ++p_;
            }
            const std::string_view name = text_.substr(name_begin, p_ - name_begin);
            const auto* const known = std::find(names.begin() + next, names.end(), name);
            Span value;
            if (name_begin == before || known == names.end() || !read_value(value)) {
                trouble = malformed();
                return p_;
            }
            next = static_cast<std::size_t>(known - names.begin()) + 1;
            if (next == 1) {
                has_version_ = true;
            }
            if (!check(name, value, trouble)) {
                return p_;
            }
        }
        if (!has_version_) {
            trouble = malformed();
        }
        return p_ + 2;
    }

  private:
    bool read_value(Span& value) {
        const auto skip = [this] {
            while (p_ < text_.size() && is_space(text_[p_])) {
                ++p_;
            }
        };
        skip();
        if (p_ >= text_.size() || text_[p_] != '=') {
            return false;
        }
        ++p_;
        skip();
        if (p_ >= text_.size() || (text_[p_] != '"' && text_[p_] != '\'')) {
            return false;
        }
        const std::size_t end = text_.find_first_of(text_[p_] == '"' ? "\"<>" : "'<>", p_ + 1);
        if (end == std::string_view::npos || text_[end] != text_[p_]) {
            return false;
        }
        value = {p_ + 1, static_cast<std::uint32_t>(end)};
        p_ = value.end + 1;
        return true;
    }

    bool check(std::string_view name, Span span, std::optional<ScanTrouble>& trouble) const {
        const std::string_view value = text_.substr(span.begin, span.end - span.begin);
        if (name == "version" && value != "1.0") {
            trouble = ScanTrouble{span, fmt::format("XML version '{}'", clipped(value)),
                                  "version=\"1.0\"", "1.0"};
        } else if (name == "encoding" && !equal_without_case(value, "UTF-8") &&
                   !equal_without_case(value, "US-ASCII")) {
            trouble =
                ScanTrouble{span, fmt::format("the file is declared to be in '{}'", clipped(value)),
                            std::string(remedy_utf8) + " and declare encoding=\"UTF-8\"", "UTF-8"};
        } else if (name == "standalone" && value != "yes" && value != "no") {
            trouble = ScanTrouble{
                span, fmt::format("standalone is '{}'", clipped(value)), "yes or no", {}};
        }
        return !trouble.has_value();
    }

    ScanTrouble malformed() const {
        return {{begin_, std::min<std::uint32_t>(p_ + 1, static_cast<std::uint32_t>(text_.size()))},
                "the XML declaration is malformed",
                R"(<?xml version="1.0" encoding="UTF-8"?>)",
                {}};
    }

    std::string_view text_;
    std::uint32_t begin_;
    std::uint32_t p_;
    bool has_version_ = false;
};

std::optional<char32_t> character_number(std::string_view digits) {
    const bool hex = !digits.empty() && digits.front() == 'x';
    if (hex) {
        digits.remove_prefix(1);
    }
    char32_t code = 0;
    for (const char c : digits) {
        unsigned digit = 16;
        if (c >= '0' && c <= '9') {
            digit = static_cast<unsigned>(c - '0');
        } else if (hex && c >= 'a' && c <= 'f') {
            digit = static_cast<unsigned>(c - 'a') + 10;
        } else if (hex && c >= 'A' && c <= 'F') {
            digit = static_cast<unsigned>(c - 'A') + 10;
        }
        if (digit >= (hex ? 16U : 10U)) {
            return std::nullopt;
        }
        code = std::min<char32_t>(code * (hex ? 16U : 10U) + digit, 0x110000);
    }
    return digits.empty() ? std::nullopt : std::optional<char32_t>(code);
}

}  // namespace

FileHead read_file_head(std::string_view text) {
    FileHead head;
    if (const std::string_view encoding = other_encoding(text); !encoding.empty()) {
        head.other_encoding = true;
        head.trouble =
            ScanTrouble{{0, std::min<std::uint32_t>(2, static_cast<std::uint32_t>(text.size()))},
                        fmt::format("the file is in {}", encoding),
                        std::string(remedy_utf8),
                        {}};
        return head;
    }
    if (text.substr(0, 3) == "\xEF\xBB\xBF") {
        head.length = 3;
    }
    const std::string_view rest = text.substr(head.length);
    if (rest.substr(0, 5) == "<?xml" && (rest.size() == 5 || !is_in_name(rest[5]))) {
        head.length = Declaration(text, head.length).read(head.trouble);
    }
    return head;
}

Reference read_reference(std::string_view text) {
    static constexpr std::string_view right =
        "'&amp;' for the character itself; else &lt; &gt; &quot; &apos; or a character's number "
        "(&#176;)";
    std::size_t end = 1;
    if (end < text.size() && text[end] == '#') {
        ++end;
    }
    while (end < text.size() && is_in_name(text[end])) {
        ++end;
    }
    if (end == 1 || end >= text.size() || text[end] != ';') {
        return {1, "'&' begins no reference", std::string(right), "&amp;"};
    }
    const std::string_view inside = text.substr(1, end - 1);
    const std::size_t length = end + 1;
    if (inside.front() == '#') {
        const auto code = character_number(inside.substr(1));
        if (!code) {
            return {length,
                    fmt::format("'&{};' is no character reference", clipped(inside)),
                    "decimal digits, or x and hexadecimal digits, as in &#176; or &#xB0;",
                    {}};
        }
        if (!is_xml_character(*code)) {
            return {length,
                    fmt::format("'&{};' is no character that XML allows", clipped(inside)),
                    "the number of a character that can be printed, tab or line feed",
                    {}};
        }
        return {length, {}, {}, {}};
    }
    const std::vector<std::string_view> known{"lt", "gt", "amp", "quot", "apos"};
    if (std::find(known.begin(), known.end(), inside) != known.end()) {
        return {length, {}, {}, {}};
    }
    std::string suggestion;
    if (inside.size() <= 8) {
        if (const std::string_view near = nearest_name(inside, known); !near.empty()) {
            suggestion = fmt::format("&{};", near);
        }
    }
    return {length, fmt::format("the entity '&{};' is unknown", clipped(inside)),
            std::string(right), std::move(suggestion)};
}

ScanTrouble describe_markup(std::string_view rest, std::uint32_t at) {
    const auto starts = [rest](std::string_view head) {
        return rest.substr(0, head.size()) == head;
    };
    const auto name_length = [rest](std::size_t from) {
        std::size_t end = from;
        while (end < rest.size() && is_in_name(rest[end])) {
            ++end;
        }
        return static_cast<std::uint32_t>(end);
    };
    if (starts("<!DOCTYPE")) {
        return {{at, at + 9},
                "a document type is not taken",
                "no DOCTYPE; the circuit's schema is known without one",
                {}};
    }
    if (starts("<![CDATA[")) {
        return {{at, at + 9},
                "a CDATA section is not taken",
                "elements and comments only; what a circuit says stands in attributes",
                {}};
    }
    if (starts("<!")) {
        return {{at, at + 2}, "'<!' begins no comment", "'<!--' and '-->' around a comment", {}};
    }
    const Span span{at, at + name_length(2)};
    if (starts("<?xml") && span.end == at + 5) {
        return {span,
                "the XML declaration does not stand at the head of the file",
                "nothing before it, not even white space",
                {}};
    }
    return {span,
            "a processing instruction is not taken",
            "no '<?' but the XML declaration at the head of the file",
            {}};
}

ScanTrouble describe(const BadBytes& bad, std::string_view text) {
    if (bad.encoding) {
        return {bad.span,
                fmt::format("the byte {:02X} is not valid UTF-8 here",
                            static_cast<unsigned char>(text[bad.span.begin])),
                std::string(remedy_utf8),
                {}};
    }
    return {bad.span,
            fmt::format("the character U+{:04X} is not allowed in XML",
                        static_cast<std::uint32_t>(bad.code)),
            "no control characters but tab and line ends",
            {}};
}

std::uint32_t line_of(std::string_view text, std::uint32_t at) {
    std::uint32_t line = 1;
    for (std::uint32_t i = 0; i < at; ++i) {
        if (text[i] == '\n' || (text[i] == '\r' && text.substr(i + 1, 1) != "\n")) {
            ++line;
        }
    }
    return line;
}

}  // namespace loopwright
