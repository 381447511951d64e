#pragma once

#include <string>
#include <string_view>

#include <loopwright/parser/reader.h>

namespace loopwright::app {

/// Reads a circuit from a file, or from standard input for "-" (where `use` is an error).
ReadResult read_input(const std::string& file);

/// Its diagnostics to standard error.
void print_diagnostics(const ReadResult& read, std::string_view colour);

}  // namespace loopwright::app
