// Writes one of the circuits that come with the program, so that nobody begins with an empty file.
#include <filesystem>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/output.h>
#include <loopwright/base/source.h>
#include <loopwright/parser/ready.h>

namespace loopwright::app {

namespace {

struct Options {
    std::string kind = "traction";
    std::string output = {};
};

std::vector<std::string_view> kinds_of_drive() {
    std::vector<std::string_view> names;
    for (const ReadyText& one : starting_circuits()) names.push_back(one.name);
    return names;
}

ExitStatus write_new(const Options& options) {
    for (const ReadyText& one : starting_circuits()) {
        if (one.name != options.kind) continue;
        if (options.output.empty()) return print(one.text);
        // What stands there may be a day's work on an earlier beginning.
        std::error_code ignored;
        if (std::filesystem::is_regular_file(options.output, ignored)) {
            complain(
                fmt::format("'{}' is there already; give the name of a new file", options.output));
            return ExitStatus::unusable;
        }
        const std::string trouble =
            write_files({{.file = options.output, .text = std::string(one.text)}}, {});
        if (trouble.empty()) return ExitStatus::good;
        complain(trouble);
        return ExitStatus::unusable;
    }
    const std::vector<std::string_view> known = kinds_of_drive();
    const std::string_view near = nearest_name(options.kind, known);
    complain(fmt::format("no starting circuit '{}'; {}", options.kind,
                         near.empty() ? fmt::format("there are {}", fmt::join(known, ", "))
                                      : fmt::format("perhaps '{}'", near)));
    return ExitStatus::unusable;
}

}  // namespace

std::function<ExitStatus()> declare_new(CLI::App& options) {
    auto given = std::make_shared<Options>();
    options.add_option("DRIVE", given->kind,
                       fmt::format("{} (without it: traction)", fmt::join(kinds_of_drive(), ", ")));
    options.add_option("-o,--output", given->output, "A new file; without it, standard output")
        ->check(is_named);
    return [given] { return write_new(*given); };
}

}  // namespace loopwright::app
