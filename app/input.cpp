#include <loopwright/app/input.h>

#include <unistd.h>

#include <array>
#include <cerrno>
#include <set>

#include <fmt/format.h>

#include <loopwright/app/output.h>
#include <loopwright/render/writers/report.h>

namespace loopwright::app {

namespace {

/// What the reader says of a file, for standard input.
ReadResult refused(const std::string& why, std::string expected) {
    auto sources = std::make_shared<SourceSet>();
    sources->add_inclusion(sources->add_file("-", {}));
    ReadResult read;
    read.diagnostics.push_back(
        {.message = "standard input cannot be read: " + why, .expected = std::move(expected)});
    read.sources = std::move(sources);
    return read;
}

}  // namespace

ReadResult read_input(const std::string& file) {
    if (file != "-") return read_circuit(file);
    const std::size_t most = ReadLimits{}.file_bytes;
    std::string text;
    std::array<char, 65'536> buffer{};
    for (;;) {
        const ssize_t got = ::read(STDIN_FILENO, buffer.data(), buffer.size());
        if (got < 0 && errno == EINTR) continue;
        if (got < 0)
            return refused(errno == EISDIR ? "it is a folder" : "the system cannot read it",
                           "a circuit from a file or a pipe");
        if (got == 0) return read_circuit_text(std::move(text), "-");
        text.append(buffer.data(), static_cast<std::size_t>(got));
        if (text.size() > most)
            return refused(fmt::format("it has more than {} bytes", most),
                           fmt::format("at most {} bytes", most));
    }
}

std::vector<std::filesystem::path> files_of(const std::string& file, const Circuit& circuit) {
    namespace fs = std::filesystem;
    const SourceSet& sources = *circuit.sources;
    std::vector<fs::path> files{file};
    std::set<const SourceFile*> seen{&sources.file_of({})};
    // Each file of a circuit is in some inclusion, even one in which there is nothing.
    for (std::uint32_t inclusion = 1; seen.size() < sources.file_count(); ++inclusion) {
        const SourceRef root{inclusion, {}};
        if (!seen.insert(&sources.file_of(root)).second) continue;
        const Place place = sources.place(root);
        // A name is relative to the folder of the file that uses it; the outermost stands last.
        std::error_code error;
        fs::path folder = fs::path(file).parent_path();
        for (auto user = place.within.rbegin() + 1; user < place.within.rend(); ++user) {
            files.push_back(folder / user->file);
            folder = fs::canonical(files.back(), error).parent_path();
        }
        files.push_back(folder / place.file);
    }
    return files;
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
