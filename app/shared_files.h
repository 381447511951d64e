#pragma once

#include <string>
#include <vector>

#include <loopwright/app/exit_status.h>

namespace CLI {  // NOLINT(readability-identifier-naming): theirs
class App;
class Option;
}  // namespace CLI

/// What stands beside the program once it is installed: manual page, completion, schemas. All of it
/// is made out of what the commands declare, so that none of it can part from them.
namespace loopwright::app {

/// Whether an option stands alone, without a value.
bool is_flag(const CLI::Option& option);

/// The words among which an option's value is chosen, as its check has them; empty where there are
/// none.
std::vector<std::string> choices_of(const CLI::Option& option);

/// The manual page, in the man macros of roff.
std::string manual_page(const CLI::App& program);

/// The completion script for bash (3.2 and up; it needs no other package).
std::string bash_completion(const CLI::App& program);

/// Writes `loopwright.1`, `loopwright.bash` and a folder `schemas` into a folder, which is made if
/// it is not there. A message where that fails.
ExitStatus write_shared_files(const CLI::App& program, const std::string& folder);

}  // namespace loopwright::app
