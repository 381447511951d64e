#include <loopwright/render/writers/xml_text.h>

#include <loopwright/base/utf8.h>

namespace loopwright {

std::string xml_escaped(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    while (!text.empty()) {
        const utf8::Character c = utf8::first(text);
        const std::string_view bytes = text.substr(0, c.length);
        text.remove_prefix(c.length);
        if (!c.valid || (c.code >= 0xFFFE && c.code <= 0xFFFF)) {
            out += "\uFFFD";
        } else if (c.code < 0x20) {
            out += "\xE2\x90";
            out += static_cast<char>(0x80 + c.code);
        } else if (utf8::is_control(c.code)) {
            out += c.code == 0x7F ? "\u2421" : "\uFFFD";
        } else if (c.code == '&') {
            out += "&amp;";
        } else if (c.code == '<') {
            out += "&lt;";
        } else if (c.code == '>') {
            out += "&gt;";
        } else if (c.code == '"') {
            out += "&quot;";
        } else {
            out += bytes;
        }
    }
    return out;
}

}  // namespace loopwright
