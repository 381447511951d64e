#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/duty_point.h>
#include <loopwright/app/input.h>
#include <loopwright/app/output.h>
#include <loopwright/app/picture.h>
#include <loopwright/app/progress.h>
#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/file_store.h>
#include <loopwright/render/render.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/waivers.h>

namespace loopwright::app {

namespace {

struct Options {
    std::string file = {};
    std::string output = {};
    std::string format = {};
    double dpi = usual_dpi;
    std::string sheet = {};
    bool without_findings = false;
    std::vector<std::string> rules = {};
    std::string write_layout = {};
    std::string read_layout = {};
    std::string point = {};
    std::string colour = "auto";
    std::vector<std::string> assemblies = {};
    std::string thresholds = {};
    std::string today = this_day();
};

/// A range takes what compares with nothing.
std::string is_number(const std::string& word) {
    double value = 0.0;
    return CLI::detail::lexical_cast(word, value) && std::isfinite(value) ? ""
                                                                          : "expected a number";
}

/// A layout from the file asked for, or worked out. Nothing and why in `trouble` where the one
/// asked for does not fit.
std::optional<Layout> layout_of(const Options& options, const Circuit& circuit,
                                const Structure& structure, std::string& trouble) {
    if (options.read_layout.empty()) return lay_out(circuit, structure, options.sheet);
    // Some hundred bytes a symbol, so more than the circuit has.
    constexpr std::size_t most = ReadLimits{}.file_bytes * 4;
    Words words;
    const std::optional<std::string> json = read_regular_file(options.read_layout, most, words);
    std::optional<Layout> layout;
    if (!json)
        trouble = "cannot be read: " + words.message;
    else
        layout = read_layout(circuit, *json, trouble);
    if (!layout)
        trouble = fmt::format("{}: {}; --write-layout writes one that fits", options.read_layout,
                              trouble);
    return layout;
}

/// Makes the drawing and writes it; gives what stood in the way, or an empty text.
std::string drawn(const Options& options, const std::string& format, const Circuit& circuit,
                  std::span<const Rule* const> rules, const Thresholds& thresholds,
                  const hydraulics::OperatingPoint* point, Progress& progress) {
    progress.tell("checking " + options.file);
    CheckResult result = check(circuit, rules, thresholds);
    apply_waivers(circuit, rules, *date_of(options.today), result);
    std::string trouble;
    progress.tell("placing and routing " + options.file);
    const std::optional<Layout> layout = layout_of(options, circuit, result.structure, trouble);
    if (!layout) return trouble;
    progress.tell("drawing " + options.output);
    const Drawing drawing =
        draw(circuit, *layout,
             options.without_findings ? std::span<const Verdict>{} : result.verdicts, point);
    if (format == "png") trouble = too_large(drawing, options.dpi);
    if (!trouble.empty()) return trouble;
    std::vector<Output> outputs{{options.output, picture_bytes(drawing, format, options.dpi)}};
    if (!options.write_layout.empty())
        outputs.push_back({options.write_layout, write_layout(circuit, *layout)});
    std::vector<std::filesystem::path> inputs = files_of(options.file, circuit);
    for (const std::string& other : {options.read_layout, options.thresholds})
        if (!other.empty()) inputs.emplace_back(other);
    return write_files(outputs, inputs);
}

ExitStatus draw_file(const Options& options) {
    const std::string format = !options.format.empty()
                                   ? options.format
                                   : picture_format(options.output, "add --format svg, pdf or png");
    if (format.empty()) return ExitStatus::unusable;
    Progress progress;
    progress.tell("reading " + options.file);
    const ReadResult read = read_input(options.file, options.assemblies);
    print_diagnostics(read.diagnostics, *read.sources, options.colour);
    const std::optional<Thresholds> thresholds = thresholds_of(options.thresholds, options.colour);
    const std::vector<const Rule*> rules = rules_of(options.rules);
    if (!read.circuit || !thresholds || rules.empty()) return ExitStatus::unusable;
    if (!has_point(*read.circuit, options.point)) return ExitStatus::unusable;
    std::vector<hydraulics::OperatingPoint> points;
    if (!options.point.empty()) points = hydraulics::operating_points(*read.circuit, options.point);
    const hydraulics::OperatingPoint* const point = points.empty() ? nullptr : &points.front();
    if (point != nullptr && !point->problem.empty())
        complain(fmt::format("point {}: {}", point->id, point->problem));
    if (point != nullptr && !point->solved) return ExitStatus::findings;
    std::string trouble;
    try {
        trouble = drawn(options, format, *read.circuit, rules, *thresholds, point, progress);
    } catch (const std::length_error& no_sheet) {
        trouble = no_sheet.what();
        if (!options.sheet.empty()) trouble += "; without --sheet one is chosen that does";
    } catch (const std::runtime_error& surroundings) {  // such as a font that is not installed
        trouble = surroundings.what();
    }
    if (trouble.empty()) return ExitStatus::good;
    complain(trouble);
    return ExitStatus::unusable;
}

}  // namespace

std::function<ExitStatus()> declare_draw(CLI::App& options) {
    const auto given = std::make_shared<Options>();
    options.add_option("FILE", given->file, "Circuit to draw; - for standard input")->required();
    options.add_option("-o,--output", given->output, "File for the drawing")
        ->required()
        ->check(is_named);
    options.add_option("--format", given->format, "svg, pdf or png; else by the output's ending")
        ->check(CLI::IsMember({"svg", "pdf", "png"}));
    options.add_option("--dpi", given->dpi, "Pixels an inch, for png")
        ->check(CLI::Range(36.0, 1200.0))
        ->check(is_number);
    CLI::Option* const sheet =
        options.add_option("--sheet", given->sheet, "Sheet size; else chosen to fit")
            ->check(CLI::IsMember({"A4", "A3", "A2", "A1", "A0"}));
    options.add_flag("--without-findings", given->without_findings, "The schematic alone");
    add_rules_option(options, given->rules);
    options.add_option("--write-layout", given->write_layout, "File for the layout, as JSON")
        ->check(is_named);
    options.add_option("--read-layout", given->read_layout, "Layout to draw by")
        ->check(is_named)
        ->excludes(sheet);  // a layout has a sheet
    options.add_option("--point", given->point, "Duty point whose computed figures are written in")
        ->check([](const std::string& id) {
            return std::string(id.empty() ? "expected the id of a duty point" : "");
        });
    options.add_option("--color", given->colour, "auto, always or never, for messages")
        ->check(CLI::IsMember({"auto", "always", "never"}));
    add_assemblies_option(options, given->assemblies);
    add_thresholds_option(options, given->thresholds);
    add_today_option(options, given->today);
    return [given] { return draw_file(*given); };
}

}  // namespace loopwright::app
