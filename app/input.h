#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/parser/reader.h>

namespace loopwright::app {

/// Reads a circuit from a file, or from standard input for "-" (where `use` is an error).
ReadResult read_input(const std::string& file);

/// The files that a circuit was read from: `file` itself and what its `use` elements brought in.
std::vector<std::filesystem::path> files_of(const std::string& file, const Circuit& circuit);

/// Its diagnostics to standard error.
void print_diagnostics(const ReadResult& read, std::string_view colour);

}  // namespace loopwright::app
