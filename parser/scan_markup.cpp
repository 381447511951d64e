#include <cstring>

#include <fmt/core.h>

#include <loopwright/parser/scan_head.h>
#include <loopwright/parser/scanner.h>

namespace loopwright {

bool Scanner::end_tag() {
    const char* const begin = p_;
    const char* const p = p_ + 2;
    if (!open_.empty()) {
        const std::string_view expected = view(scan_.elements[open_.back()].name());
        if (rest(p).substr(0, expected.size()) == expected) {
            const char* const q = behind_space(p + expected.size());
            if (*q == '>') {
                scan_.elements[open_.back()].next =
                    static_cast<std::uint32_t>(scan_.elements.size());
                open_.pop_back();
                p_ = q + 1;
                return true;
            }
        }
    }
    const char* const name_end = behind_name(p);
    if (name_end == p) {
        return fail(
            p, {at(begin), at(begin) + 2}, "'</' without the name of an element",
            open_.empty()
                ? std::string("nothing to close here")
                : fmt::format("'</{}>'", clipped(view(scan_.elements[open_.back()].name()))));
    }
    const Span span{at(p), at(name_end)};
    if (open_.empty()) {
        return fail(p, span, fmt::format("'</{}>' closes nothing", clipped(view(span))),
                    "a start tag before it");
    }
    const ScannedElement& open = scan_.elements[open_.back()];
    if (view(span) == view(open.name())) {
        return fail(p, span, fmt::format("the end tag '</{}' is not closed", clipped(view(span))),
                    "'>' behind the name");
    }
    const std::uint32_t line = line_of(text_, open.begin);
    return fail(p, span,
                fmt::format("'</{}>' does not close '<{}>', opened in line {}", clipped(view(span)),
                            clipped(view(open.name())), line),
                fmt::format("'</{}>' first", clipped(view(open.name()))));
}

bool Scanner::markup() {
    if (rest(p_).substr(0, 4) != "<!--") {
        const ScanTrouble trouble = describe_markup(rest(p_), at(p_));
        return fail(p_, trouble.span, trouble.message, trouble.expected, trouble.suggestion);
    }
    const char* p = p_ + 4;
    const char* const end = end_;
    for (;;) {
        p = static_cast<const char*>(std::memchr(p, '-', static_cast<std::size_t>(end - p)));
        if (p == nullptr) {
            return fail(end, {at(p_), at(p_) + 4}, "the comment is not closed", "'-->'");
        }
        if (p[1] == '-') {
            break;
        }
        ++p;
    }
    if (p[2] != '>') {
        return fail(p + 2 > end ? end : p + 2, {at(p), at(p) + 2}, "'--' inside a comment",
                    "'-->' at its end only; two hyphens may not follow each other");
    }
    p_ = p + 3;
    return true;
}

bool Scanner::text() {
    const char* p = p_;
    while (*p != '<' && *p != '\n' && *p != '\r' && *p != '\0') {
        ++p;
    }
    while (p > p_ + 1 && is(p - 1, byte_class::space)) {
        --p;
    }
    const char* const where = scan_.elements.empty() ? "text before the root element"
                              : open_.empty()        ? "text after the root element"
                                                     : "text between elements";
    return fail(p_, {at(p_), at(p)}, where,
                "elements and comments only; what a circuit says stands in attributes");
}

bool Scanner::end_of_file() {
    if (scan_.elements.empty()) {
        return fail(p_, {0, 0}, text_.empty() ? "the file is empty" : "there is no element",
                    "an XML file with one root element");
    }
    if (open_.empty()) {
        return true;
    }
    const ScannedElement& open = scan_.elements[open_.back()];
    return fail(p_, open.name(), fmt::format("'<{}>' is not closed", clipped(view(open.name()))),
                fmt::format("'</{}>' before the end of the file", clipped(view(open.name()))));
}

void Scanner::prefer_bad_bytes(std::uint32_t from) {
    const std::size_t until =
        scan_.trouble ? std::min<std::size_t>(met_ + 4, text_.size()) : text_.size();
    auto bad = find_bad_bytes(std::string_view(text_).substr(0, until), from);
    if (bad && bad->encoding && until < text_.size()) {  // perhaps only cut short
        bad = find_bad_bytes(text_, bad->span.begin);
    }
    if (!bad || (scan_.trouble && bad->span.begin > met_)) {
        return;
    }
    scan_.trouble = describe(*bad, text_);
}

}  // namespace loopwright
