#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

/// Where results go: standard output, or files written whole or not at all.
namespace loopwright::app {

/// Writes all of `text` to standard output. False if that failed; a closed pipe ends the program
/// quietly before.
bool write_out(std::string_view text);

/// Takes a piece of a text; false where it cannot be written.
using Put = std::function<bool(std::string_view)>;
/// Makes a text piece by piece; false where a piece was not taken.
using Fill = std::function<bool(const Put&)>;

struct Output {
    std::filesystem::path file = {};  ///< "-": standard output
    std::string text = {};
    Fill fill = {};  ///< where there is one, in place of the text
};

/// Writes files whole or not at all, and all of them or none: temporary files beside them, filled
/// in the order of `outputs`, flushed to the disk, then renamed over them. Links are followed and
/// kept, as are the mode bits of a file that was there. What is no regular file (a pipe, a device,
/// standard output by its name) is written straight, at its turn. Returns what went wrong, or an
/// empty text. `inputs` ("-": standard input) are never overwritten.
std::string write_files(const std::vector<Output>& outputs,
                        const std::vector<std::filesystem::path>& inputs);

/// Writes a message to standard error, as far as that can be written.
void write_message(std::string_view text);

/// Whether colour goes to that stream: "always", "never", or by terminal and NO_COLOR.
bool wants_colour(std::string_view choice, int stream);

}  // namespace loopwright::app
