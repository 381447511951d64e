#include <loopwright/app/shared_files.h>

#include <filesystem>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/output.h>
#include <loopwright/app/schemas.h>

namespace loopwright::app {

bool is_flag(const CLI::Option& option) { return option.get_items_expected_min() == 0; }

std::vector<std::string> choices_of(const CLI::Option& option) {
    // CLI::IsMember describes itself as "{svg,pdf,png}".
    const std::string type = option.get_type_name();
    const auto from = type.find('{');
    const auto to = type.find('}');
    if (from == std::string::npos || to == std::string::npos) return {};
    return CLI::detail::split(type.substr(from + 1, to - from - 1), ',');
}

ExitStatus write_shared_files(const CLI::App& program, const std::string& folder) {
    namespace fs = std::filesystem;
    const fs::path root = folder;
    std::error_code failed;
    fs::create_directories(root / "schemas", failed);
    if (failed) {
        complain(fmt::format("'{}' cannot be made: {}", folder, failed.message()));
        return ExitStatus::unusable;
    }
    std::vector<Output> files{{root / "loopwright.1", manual_page(program)},
                              {root / "loopwright.bash", bash_completion(program)}};
    for (const std::string_view name : schema_names())
        files.push_back({root / "schemas" / fmt::format("{}.{}", name, schema_ending(name)),
                         schema_text(name)});
    const std::string trouble = write_files(files, {});
    if (trouble.empty()) return ExitStatus::good;
    complain(trouble);
    return ExitStatus::unusable;
}

}  // namespace loopwright::app
