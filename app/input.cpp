#include <loopwright/app/input.h>

#include <unistd.h>

#include <array>

#include <loopwright/app/output.h>
#include <loopwright/render/writers/report.h>

namespace loopwright::app {

ReadResult read_input(const std::string& file) {
    if (file != "-") return read_circuit(file);
    // One byte more than the limit is enough for the reader to refuse it.
    const std::size_t most = ReadLimits{}.file_bytes + 1;
    std::string text;
    std::array<char, 65'536> buffer{};
    while (text.size() < most) {
        const ssize_t got = ::read(STDIN_FILENO, buffer.data(), buffer.size());
        if (got <= 0) break;
        text.append(buffer.data(), static_cast<std::size_t>(got));
    }
    return read_circuit_text(std::move(text), "-");
}

void print_diagnostics(const ReadResult& read, std::string_view colour) {
    if (read.diagnostics.empty()) return;
    const std::string text = diagnostics_text(read.diagnostics, *read.sources,
                                              {.colour = wants_colour(colour, STDERR_FILENO)});
    std::string_view left = text;
    while (!left.empty()) {
        const ssize_t written = ::write(STDERR_FILENO, left.data(), left.size());
        if (written <= 0) return;
        left.remove_prefix(static_cast<std::size_t>(written));
    }
}

}  // namespace loopwright::app
