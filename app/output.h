#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// Where results go: standard output, or a file written whole or not at all.
namespace loopwright::app {

/// Writes all of `text` to standard output. False if that failed; a closed pipe ends the program
/// quietly before.
bool write_out(std::string_view text);

/// Writes a file whole or not at all: a temporary file beside it, flushed to the disk, then renamed
/// over it. A link is followed; what is no regular file (a pipe, a device) is written straight.
/// Returns what went wrong, or an empty text. `inputs` are never overwritten.
std::string write_file(const std::filesystem::path& file, std::string_view text,
                       const std::vector<std::filesystem::path>& inputs);

/// Whether colour goes to that stream: "always", "never", or by terminal and NO_COLOR.
bool wants_colour(std::string_view choice, int stream);

}  // namespace loopwright::app
