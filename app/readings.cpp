#include <algorithm>

#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/input.h>
#include <loopwright/app/output.h>
#include <loopwright/hydraulics/readings.h>
#include <loopwright/render/writers/readings_report.h>

namespace loopwright::app {

namespace {

struct Options {
    std::string file = {};
    std::string format = "text";
    std::string output = {};
    std::string colour = "auto";
    std::vector<std::string> assemblies = {};
};

ExitStatus read_off(const Options& options) {
    const ReadResult read = read_input(options.file, options.assemblies);
    print_diagnostics(read.diagnostics, *read.sources, options.colour);
    if (!read.circuit) return ExitStatus::unusable;
    const Circuit& circuit = *read.circuit;
    const hydraulics::Readings all = hydraulics::readings(circuit);
    // As `solve`; that it is not said how cold a cold start is leaves the hot ones.
    const bool solved = std::all_of(all.states.begin(), all.states.end(), [](const auto& state) {
        return state.hot.problem.empty() && !state.cold.no_solution;
    });
    const std::string text = options.format == "json"  ? readings_json(options.file, circuit, all)
                             : options.format == "csv" ? readings_csv(circuit, all)
                                                       : readings_text(circuit, all);
    const ExitStatus status = solved ? ExitStatus::good : ExitStatus::findings;
    return hand_over(text, options.output, files_of(options.file, circuit), status);
}

}  // namespace

std::function<ExitStatus()> declare_readings(CLI::App& options) {
    const auto given = std::make_shared<Options>();
    options.add_option("FILE", given->file, "Circuit to read off; - for standard input")
        ->required();
    options.add_option("--format", given->format, "text, json or csv")
        ->check(CLI::IsMember({"text", "json", "csv"}));
    options.add_option("-o,--output", given->output, "File for the result")->check(is_named);
    options.add_option("--color", given->colour, "auto, always or never")
        ->check(CLI::IsMember({"auto", "always", "never"}));
    add_assemblies_option(options, given->assemblies);
    return [given] { return read_off(*given); };
}

}  // namespace loopwright::app
