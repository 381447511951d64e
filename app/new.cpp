// Writes one of the circuits that come with the program, so that nobody begins with an empty file.
#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/new_file.h>
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
    const std::string_view text = starting_circuit(options.kind);
    if (!text.empty())
        return options.output.empty() ? print(text)
                                      : write_new_file(options.output, std::string(text));
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
