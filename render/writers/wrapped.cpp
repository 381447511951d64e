#include <loopwright/render/writers/wrapped.h>

#include <algorithm>

namespace loopwright {

std::string wrapped(std::string_view head, std::string_view text) {
    constexpr std::size_t width = 100;
    std::string out(head);
    std::size_t at = head.size();
    bool first = true;
    while (!text.empty()) {
        const std::string_view word = text.substr(0, text.find(' '));
        text.remove_prefix(std::min(text.size(), word.size() + 1));
        if (!first && at + 1 + word.size() > width) {
            out += "\n" + std::string(head.size(), ' ');
            at = head.size();
            first = true;
        }
        if (!first) out += ' ', ++at;
        out += word;
        at += word.size();
        first = false;
    }
    return out + "\n";
}

}  // namespace loopwright
