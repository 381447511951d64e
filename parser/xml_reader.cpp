#include <loopwright/parser/xml_reader.h>

#include <algorithm>
#include <cstring>
#include <new>

#include <fmt/core.h>
#include <pugixml.hpp>

// The library parses in place: what it makes of a name or a value begins at the byte where the
// name or the value began, is never longer, and where it is shorter ends with a NUL. So the spans
// of the scan lead into the decoded text as well, and the library's tree need not be walked.

namespace loopwright {

XmlResult read_xml(const std::string& text, std::size_t depth) {
    XmlResult result;
    Scan scan = scan_xml(text, depth);
    if (scan.trouble) {
        result.trouble = std::move(scan.trouble);
        return result;
    }
    // Where every value is literal, the library has nothing to decode.
    if (scan.literal) {
        result.document.emplace(std::move(scan), text);
        return result;
    }
    const auto buffer = std::make_shared_for_overwrite<char[]>(text.size() + 1);
    std::memcpy(buffer.get(), text.c_str(), text.size() + 1);
    pugi::xml_document tree;
    const pugi::xml_parse_result parsed = tree.load_buffer_inplace(
        buffer.get(), text.size(),
        pugi::parse_escapes | pugi::parse_eol | pugi::parse_wconv_attribute, pugi::encoding_utf8);
    if (parsed.status == pugi::status_out_of_memory) {
        throw std::bad_alloc();
    }
    if (!parsed) {
        const auto at = static_cast<std::uint32_t>(
            std::clamp<std::ptrdiff_t>(parsed.offset, 0, static_cast<std::ptrdiff_t>(text.size())));
        result.trouble = ScanTrouble{
            {at, at}, fmt::format("the XML is malformed: {}", parsed.description()), {}, {}};
        return result;
    }
    result.document.emplace(std::move(scan), buffer);
    return result;
}

}  // namespace loopwright
