#include <loopwright/app/new_file.h>

#include <filesystem>
#include <stdexcept>

#include <fmt/format.h>

#include <loopwright/app/commands.h>
#include <loopwright/app/output.h>
#include <loopwright/parser/ready.h>
#include <loopwright/render/writers/xml_text.h>

namespace loopwright::app {

std::string_view starting_circuit(std::string_view name) {
    for (const ReadyText& one : starting_circuits())
        if (one.name == name) return one.text;
    return {};
}

ExitStatus write_new_file(const std::string& file, std::string text) {
    // What stands there may be a day's work on an earlier beginning.
    std::error_code ignored;
    if (std::filesystem::is_regular_file(file, ignored)) {
        complain(fmt::format("'{}' is there already; give the name of a new file", file));
        return ExitStatus::unusable;
    }
    const std::string trouble = write_files({{.file = file, .text = std::move(text)}}, {});
    if (trouble.empty()) return ExitStatus::good;
    complain(trouble);
    return ExitStatus::unusable;
}

namespace {

std::size_t found(std::size_t at, std::string_view what) {
    if (at == std::string::npos)
        throw std::logic_error(fmt::format("a circuit to begin with lacks {}", what));
    return at;
}

}  // namespace

CircuitText::Span CircuitText::tag_of(std::string_view id) const {
    const std::size_t at = found(text_.find(fmt::format(" id=\"{}\"", id)), id);
    return {text_.rfind('<', at), text_.find('>', at) + 1};
}

CircuitText::Span CircuitText::element_of(Span tag) const {
    if (text_[tag.end - 2] == '/') return tag;
    const std::size_t blank = text_.find_first_of(" \n>", tag.begin);
    const std::string close =
        fmt::format("</{}>", text_.substr(tag.begin + 1, blank - tag.begin - 1));
    return {tag.begin, found(text_.find(close, tag.end), close) + close.size()};
}

CircuitText::Span CircuitText::attribute_in(Span tag, std::string_view name) const {
    const std::string head = fmt::format("{}=\"", name);
    for (std::size_t at = tag.begin; (at = text_.find(head, at)) < tag.end; ++at) {
        if (text_[at - 1] != ' ' && text_[at - 1] != '\n') continue;
        return {at - 1, text_.find('"', at + head.size()) + 1};
    }
    return {};
}

void CircuitText::put(Span span, std::string_view text) {
    text_.replace(span.begin, span.end - span.begin, text);
}

void CircuitText::set(std::string_view id, std::string_view attribute, std::string_view value) {
    const Span tag = tag_of(id);
    const std::string written = fmt::format("{}=\"{}\"", attribute, xml_escaped(value));
    if (const Span given = attribute_in(tag, attribute); given.end != 0)
        return put({given.begin + 1, given.end}, written);
    const std::size_t end = tag.end - (text_[tag.end - 2] == '/' ? 2 : 1);
    put({end, end}, " " + written);
}

void CircuitText::drop(std::string_view id, std::string_view attribute) {
    if (const Span given = attribute_in(tag_of(id), attribute); given.end != 0) put(given, "");
}

void CircuitText::replace(std::string_view id, std::string_view element) {
    Span span = element_of(tag_of(id));
    if (element.empty()) {
        // Its line goes with it, where it has one for itself.
        const std::size_t before = text_.find_last_not_of(' ', span.begin - 1);
        if (text_[before] == '\n' && text_[span.end] == '\n') span = {before, span.end};
    }
    put(span, element);
}

void CircuitText::replace_first(std::string_view name, std::string_view element) {
    const std::size_t begin = found(text_.find(fmt::format("<{} ", name)), name);
    const Span tag{begin, text_.find('>', begin) + 1};
    put(name == "circuit" ? tag : element_of(tag), element);
}

void CircuitText::fill(std::string_view id, std::string_view content) {
    const Span tag = tag_of(id);
    const Span element = element_of(tag);
    put({tag.end, text_.rfind("</", element.end)}, content);
}

void CircuitText::set_head(std::string_view comment) {
    const std::size_t begin = found(text_.find("<!--"), "its head");
    put({begin, text_.find("-->", begin) + 3}, fmt::format("<!-- {} -->", comment));
}

}  // namespace loopwright::app
