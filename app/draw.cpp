#include <fstream>
#include <iterator>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/input.h>
#include <loopwright/app/output.h>
#include <loopwright/render/render.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>

namespace loopwright::app {

namespace {

struct Options {
    std::string file = {};
    std::string output = {};
    std::string format = {};
    double dpi = 150.0;
    std::string sheet = {};
    bool without_findings = false;
    std::string write_layout = {};
    std::string read_layout = {};
    std::string colour = "auto";
};

/// The format asked for, or the ending of the output; empty with a message if there is none.
std::string format_of(const Options& options) {
    if (!options.format.empty()) return options.format;
    const std::string ending = std::filesystem::path(options.output).extension().string();
    for (const char* known : {"svg", "pdf", "png"})
        if (ending == std::string(".") + known) return known;
    complain(fmt::format("{}: the ending tells no format; add --format svg, pdf or png",
                         options.output));
    return {};
}

/// A layout from the file asked for, or worked out; nothing with a message where it does not fit.
std::optional<Layout> layout_of(const Options& options, const Circuit& circuit,
                                const Structure& structure) {
    if (options.read_layout.empty()) return lay_out(circuit, structure, options.sheet);
    std::ifstream in(options.read_layout, std::ios::binary);
    const std::string json{std::istreambuf_iterator<char>(in), {}};
    if (!in.good() && json.empty()) {
        complain(fmt::format("{}: cannot be read", options.read_layout));
        return std::nullopt;
    }
    std::string error;
    std::optional<Layout> layout = read_layout(circuit, json, error);
    if (!layout) complain(fmt::format("{}: {}", options.read_layout, error));
    return layout;
}

ExitStatus draw_file(const Options& options) {
    const std::string format = format_of(options);
    if (format.empty()) return ExitStatus::unusable;
    const ReadResult read = read_input(options.file);
    print_diagnostics(read, options.colour);
    if (!read.circuit) return ExitStatus::unusable;
    const CheckResult result = check(*read.circuit, rules());
    const std::optional<Layout> layout = layout_of(options, *read.circuit, result.structure);
    if (!layout) return ExitStatus::unusable;
    const Drawing drawing =
        draw(*read.circuit, *layout,
             options.without_findings ? std::span<const Verdict>{} : result.verdicts);
    const std::string bytes = format == "svg"   ? to_svg(drawing)
                              : format == "pdf" ? to_pdf(drawing)
                                                : to_png(drawing, options.dpi);
    std::vector<std::filesystem::path> inputs{options.file};
    if (!options.read_layout.empty()) inputs.emplace_back(options.read_layout);
    std::string trouble = write_file(options.output, bytes, inputs);
    if (trouble.empty() && !options.write_layout.empty())
        trouble = write_file(options.write_layout, write_layout(*read.circuit, *layout), inputs);
    if (trouble.empty()) return ExitStatus::good;
    complain(trouble);
    return ExitStatus::unusable;
}

}  // namespace

std::function<ExitStatus()> declare_draw(CLI::App& options) {
    const auto given = std::make_shared<Options>();
    options.add_option("FILE", given->file, "Circuit to draw; - for standard input")->required();
    options.add_option("-o,--output", given->output, "File for the drawing")->required();
    options.add_option("--format", given->format, "svg, pdf or png; else by the output's ending")
        ->check(CLI::IsMember({"svg", "pdf", "png"}));
    options.add_option("--dpi", given->dpi, "Pixels an inch, for png")
        ->check(CLI::Range(36.0, 1200.0));
    options.add_option("--sheet", given->sheet, "Sheet size; else chosen to fit")
        ->check(CLI::IsMember({"A4", "A3", "A2", "A1", "A0"}));
    options.add_flag("--without-findings", given->without_findings, "The schematic alone");
    options.add_option("--write-layout", given->write_layout, "File for the layout, as JSON");
    options.add_option("--read-layout", given->read_layout, "Layout to draw by");
    options.add_option("--color", given->colour, "auto, always or never, for messages")
        ->check(CLI::IsMember({"auto", "always", "never"}));
    return [given] { return draw_file(*given); };
}

}  // namespace loopwright::app
