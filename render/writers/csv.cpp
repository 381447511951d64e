#include <loopwright/render/writers/csv.h>

namespace loopwright {

std::string csv_field(std::string_view text) {
    std::string out;
    // A spreadsheet passes over blanks and ends of lines in front of a formula.
    const std::size_t begin = text.find_first_not_of(" \n");
    if (begin != std::string_view::npos &&
        std::string_view("=+-@\t\r").find(text[begin]) != std::string_view::npos)
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
