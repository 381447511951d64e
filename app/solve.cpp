#include <algorithm>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/input.h>
#include <loopwright/app/output.h>
#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/render/writers/solve_report.h>

namespace loopwright::app {

namespace {

struct Options {
    std::string file = {};
    std::string format = "text";
    std::string output = {};
    std::string point = {};
    bool working = false;
    std::string colour = "auto";
    std::vector<std::string> assemblies = {};
};

/// Whether the circuit has that point; tells what it has where not.
bool has_point(const Circuit& circuit, const std::string& id) {
    std::vector<std::string_view> known;
    for (const DutyPoint& point : circuit.points) known.push_back(point.id);
    if (id.empty() || std::find(known.begin(), known.end(), id) != known.end()) return true;
    if (known.empty()) {
        complain(fmt::format("no duty point '{}': the circuit has none", id));
        return false;
    }
    const std::string_view near = nearest_name(id, known);
    complain(fmt::format("no duty point '{}'{}; there are {}", id,
                         near.empty() ? "" : fmt::format("; perhaps '{}'", near),
                         fmt::join(known, ", ")));
    return false;
}

ExitStatus solve_file(const Options& options) {
    const ReadResult read = read_input(options.file, options.assemblies);
    print_diagnostics(read.diagnostics, *read.sources, options.colour);
    if (!read.circuit || !has_point(*read.circuit, options.point)) return ExitStatus::unusable;
    const auto points = hydraulics::operating_points(*read.circuit, options.point, options.working);
    const std::string text = options.format == "json"
                                 ? solve_json(options.file, *read.circuit, points)
                             : options.format == "csv" ? solve_csv(*read.circuit, points)
                                                       : solve_text(*read.circuit, points);
    const bool solved =
        std::all_of(points.begin(), points.end(), [](const auto& point) { return point.solved; });
    const ExitStatus status = solved ? ExitStatus::good : ExitStatus::findings;
    if (options.format == "csv")
        for (const auto& point : points)
            if (!point.solved)
                complain(fmt::format("point {} is not solved: {}", point.id, point.problem));
    if (options.output.empty()) return worse(status, print(text));
    const std::string trouble =
        write_files({{options.output, text}}, files_of(options.file, *read.circuit));
    if (trouble.empty()) return status;
    complain(trouble);
    return ExitStatus::unusable;
}

}  // namespace

std::function<ExitStatus()> declare_solve(CLI::App& options) {
    const auto given = std::make_shared<Options>();
    options.add_option("FILE", given->file, "Circuit to compute; - for standard input")->required();
    options.add_option("--format", given->format, "text, json or csv")
        ->check(CLI::IsMember({"text", "json", "csv"}));
    options.add_option("-o,--output", given->output, "File for the result")->check(is_named);
    options.add_option("--point", given->point, "Only this duty point");
    options.add_flag("--working", given->working,
                     "The equations as well, with the figures put in (text)");
    options.add_option("--color", given->colour, "auto, always or never")
        ->check(CLI::IsMember({"auto", "always", "never"}));
    add_assemblies_option(options, given->assemblies);
    return [given] { return solve_file(*given); };
}

}  // namespace loopwright::app
