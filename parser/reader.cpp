#include <loopwright/parser/reader.h>

#include <system_error>
#include <utility>

#include <fmt/core.h>

#include <loopwright/parser/builder.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/file_store.h>

namespace loopwright {

ReadResult read_circuit(const std::filesystem::path& file, const ReadOptions& options) {
    Builder builder(options);
    Words words;
    std::optional<std::string> text = read_regular_file(file, options.limits.file_bytes, words);
    if (!text) {
        words.message =
            fmt::format("'{}' cannot be read: {}", clipped(file.string()), words.message);
        return builder.refuse(file.string(), std::move(words));
    }
    // A use looks beside the name that was given, even where that is a link to elsewhere.
    std::error_code error;
    const std::filesystem::path parent =
        file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
    std::filesystem::path folder = std::filesystem::canonical(parent, error);
    std::filesystem::path path = std::filesystem::canonical(file, error);
    return builder.build(std::move(*text), file.string(), std::move(path), std::move(folder));
}

ReadResult read_circuit_text(std::string text, std::string name,
                             const std::filesystem::path& folder, const ReadOptions& options) {
    Builder builder(options);
    if (text.size() > options.limits.file_bytes) {
        return builder.refuse(
            name, {fmt::format("'{}' cannot be read: it has {} bytes", clipped(name), text.size()),
                   fmt::format("at most {} bytes", options.limits.file_bytes),
                   {}});
    }
    std::error_code error;
    std::filesystem::path inside;
    if (!folder.empty()) {
        inside = std::filesystem::canonical(folder, error);
    }
    return builder.build(std::move(text), std::move(name), {}, std::move(inside));
}

}  // namespace loopwright
