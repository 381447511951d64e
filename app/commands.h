#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/app/exit_status.h>

namespace CLI {  // NOLINT(readability-identifier-naming): theirs
class App;
}

/// The commands as a table: name, one line of help, and a function that declares the options and
/// gives back what is to be run.
namespace loopwright::app {

struct Command {
    std::string_view name = {};
    std::string_view help = {};
    std::function<ExitStatus()> (*declare)(CLI::App& options) = nullptr;
};

std::function<ExitStatus()> declare_check(CLI::App& options);
std::function<ExitStatus()> declare_draw(CLI::App& options);
std::function<ExitStatus()> declare_solve(CLI::App& options);
std::function<ExitStatus()> declare_readings(CLI::App& options);
std::function<ExitStatus()> declare_rules(CLI::App& options);
std::function<ExitStatus()> declare_kinds(CLI::App& options);
std::function<ExitStatus()> declare_schema(CLI::App& options);
std::function<ExitStatus()> declare_new(CLI::App& options);
std::function<ExitStatus()> declare_size(CLI::App& options);

/// Runs the program. Never throws.
ExitStatus run(int argc, char** argv);

/// For options that take a file: an empty name (a variable that is not set) is no name, and '-'
/// would not be what who writes it means. Gives back what is wrong, or an empty text.
std::string is_named(const std::string& file);

/// All of a result to standard output; a message where that fails.
ExitStatus print(std::string_view text);

/// All of a result to a file, none of the `inputs`, or to standard output where `output` is empty.
/// Gives back `status`, or worse with a message where it cannot be written.
ExitStatus hand_over(const std::string& text, const std::string& output,
                     const std::vector<std::filesystem::path>& inputs, ExitStatus status);

/// A message to standard error, "loopwright: ..." and a line end.
void complain(std::string_view message);

}  // namespace loopwright::app
