#include <algorithm>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/duty_point.h>
#include <loopwright/app/input.h>
#include <loopwright/app/output.h>
#include <loopwright/app/picture.h>
#include <loopwright/app/progress.h>
#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/hydraulics/sweep.h>
#include <loopwright/render/plot.h>
#include <loopwright/render/writers/solve_report.h>

namespace loopwright::app {

namespace {

struct Options {
    std::string file = {};
    std::string format = "text";
    std::string output = {};
    std::string point = {};
    bool working = false;
    std::vector<std::string> sweeps = {};
    std::string plot = {};
    std::string colour = "auto";
    std::vector<std::string> assemblies = {};
};

/// The text of the duty points. `solved`: all of them.
std::string points_of(const Options& options, const Circuit& circuit, bool& solved) {
    const auto points = hydraulics::operating_points(circuit, options.point, options.working);
    for (const auto& point : points) {
        if (point.problem.empty()) continue;
        solved = false;
        if (options.format == "csv") complain(fmt::format("point {}: {}", point.id, point.problem));
    }
    const auto duty = options.point.empty() && options.format != "csv"
                          ? hydraulics::duty_heat(circuit)
                          : std::nullopt;
    return options.format == "json"  ? solve_json(options.file, circuit, points, duty)
           : options.format == "csv" ? solve_csv(circuit, points)
                                     : solve_text(circuit, points, duty);
}

/// The axes asked for; nothing where one is none.
std::optional<std::vector<hydraulics::SweepAxis>> axes_of(const Options& options,
                                                          const Circuit& circuit) {
    std::vector<hydraulics::SweepAxis> axes;
    std::size_t rows = 1;
    constexpr std::size_t most_rows = 4'000'000;
    if (circuit.points.empty()) {
        complain("a sweep begins from a duty point, and the circuit has none");
        return std::nullopt;
    }
    for (const std::string& text : options.sweeps) {
        std::string trouble;
        const auto axis = hydraulics::read_axis(circuit, text, trouble);
        if (!axis) {
            complain(fmt::format("--sweep {}: {}", text, trouble));
            return std::nullopt;
        }
        rows *= static_cast<std::size_t>(axis->count);
        if (rows > most_rows) {
            complain(fmt::format("--sweep: more than {} rows", most_rows));
            return std::nullopt;
        }
        axes.push_back(*axis);
    }
    return axes;
}

/// Whether a sweep can be drawn; tells why not.
bool can_plot(const Options& options, const hydraulics::Sweep& sweep, std::string& format) {
    constexpr std::size_t most_rows = 250'000;  // all are held until the picture is made
    format = picture_format(options.plot, "--plot takes a name that ends in .svg, .pdf or .png");
    if (format.empty()) return false;
    const bool few = sweep.size() <= most_rows;
    if (sweep.axes().size() <= 2 && few) return true;
    complain(few ? "--plot: there can be curves over one or two axes only"
                 : fmt::format("--plot: more than {} rows", most_rows));
    return false;
}

/// A sweep's table goes out as it comes; what is to be drawn is kept.
ExitStatus sweep_file(const Options& options, const Circuit& circuit, Progress& progress) {
    auto axes = axes_of(options, circuit);
    if (!axes) return ExitStatus::unusable;
    const hydraulics::Sweep sweep(circuit, options.point, std::move(*axes));
    std::string picture;
    if (!options.plot.empty() && !can_plot(options, sweep, picture)) return ExitStatus::unusable;
    using Format = SweepTable::Format;
    const SweepTable table(sweep,
                           options.format == "json"  ? Format::json
                           : options.format == "csv" ? Format::csv
                                                     : Format::text,
                           options.file);
    bool solved = true;
    hydraulics::SweepRows drawn{.columns = sweep.columns().size()};
    const auto run = [&](const Put& put) {
        bool taken = put(table.head());
        sweep.run([&](const auto& rows) { return table.rows(rows); },
                  [&](const auto& rows, std::string_view text) {
                      taken = taken && put(text);
                      solved = solved && std::find(rows.solved.begin(), rows.solved.end(), 0) ==
                                             rows.solved.end();
                      if (!picture.empty()) drawn.append(rows);
                      if (progress.is_shown())
                          progress.tell(
                              fmt::format("row {} of {}", rows.first + rows.size(), sweep.size()));
                  });
        return taken && put(table.tail());
    };
    const auto draw = [&](const Put& put) {
        const std::string_view point =
            options.point.empty() ? circuit.points.front().id : options.point;
        return put(picture_bytes(plot_of(circuit, sweep, drawn, point), picture, usual_dpi));
    };
    std::string trouble;
    if (options.output.empty() && options.plot.empty()) {
        // A reader that has seen enough ends it.
        if (!run(write_out)) trouble = "standard output cannot be written";
    } else {
        std::vector<Output> outputs{
            {.file = options.output.empty() ? "-" : options.output, .fill = run}};
        if (!options.plot.empty()) outputs.push_back({.file = options.plot, .fill = draw});
        trouble = write_files(outputs, files_of(options.file, circuit));
    }
    if (trouble.empty()) return solved ? ExitStatus::good : ExitStatus::findings;
    complain(trouble);
    return ExitStatus::unusable;
}

ExitStatus solve_file(const Options& options) {
    Progress progress;
    progress.tell("reading " + options.file);
    const ReadResult read = read_input(options.file, options.assemblies);
    print_diagnostics(read.diagnostics, *read.sources, options.colour);
    if (!read.circuit || !has_point(*read.circuit, options.point)) return ExitStatus::unusable;
    if (!options.sweeps.empty()) return sweep_file(options, *read.circuit, progress);
    if (!options.plot.empty()) {
        complain("--plot draws what --sweep goes through, and there is no --sweep");
        return ExitStatus::unusable;
    }
    progress.tell("solving " + options.file);
    bool solved = true;
    const std::string text = points_of(options, *read.circuit, solved);
    const ExitStatus status = solved ? ExitStatus::good : ExitStatus::findings;
    return hand_over(text, options.output, files_of(options.file, *read.circuit), status);
}

}  // namespace

std::function<ExitStatus()> declare_solve(CLI::App& options) {
    const auto given = std::make_shared<Options>();
    options.add_option("FILE", given->file, "Circuit to compute; - for standard input")->required();
    options.add_option("--format", given->format, "text, json or csv")
        ->check(CLI::IsMember({"text", "json", "csv"}));
    options.add_option("-o,--output", given->output, "File for the result")->check(is_named);
    options.add_option("--point", given->point, "Only this duty point");
    options
        .add_option("--sweep", given->sweeps,
                    "A datum in equal steps, such as travel=0%..100%:41 (may be repeated)")
        ->allow_extra_args(false)
        ->take_all();
    options.add_option("--plot", given->plot, "File for curves of the sweep: svg, pdf or png")
        ->check(is_named);
    options.add_flag("--working", given->working,
                     "The equations as well, with the figures put in (text)");
    options.add_option("--color", given->colour, "auto, always or never")
        ->check(CLI::IsMember({"auto", "always", "never"}));
    add_assemblies_option(options, given->assemblies);
    return [given] { return solve_file(*given); };
}

}  // namespace loopwright::app
