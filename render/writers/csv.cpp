#include <loopwright/render/writers/csv.h>

namespace loopwright {

std::string csv_field(std::string_view text) {
    std::string out;
    if (!text.empty() && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos)
        out += '\'';
    out += text;
    if (out.find_first_of(",\"\r\n") == std::string::npos) return out;
    std::string quoted = "\"";
    for (const char c : out) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + "\"";
}

}  // namespace loopwright
