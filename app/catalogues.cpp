// The commands that need no circuit: rules, kinds, schema.
#include <algorithm>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/commands.h>
#include <loopwright/app/output.h>
#include <loopwright/app/picture.h>
#include <loopwright/app/schemas.h>
#include <loopwright/base/source.h>
#include <loopwright/parser/kinds/catalogue.h>
#include <loopwright/parser/kinds/definitions.h>
#include <loopwright/render/symbols/symbols.h>
#include <loopwright/render/writers/catalogue.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>

namespace loopwright::app {

namespace {

struct Options {
    std::string name = {};
    std::string format = "text";
};

CatalogueFormat format_of(const std::string& word) {
    return word == "json"       ? CatalogueFormat::json
           : word == "markdown" ? CatalogueFormat::markdown
                                : CatalogueFormat::text;
}

ExitStatus unknown(std::string_view what, std::string_view name,
                   const std::vector<std::string_view>& known) {
    const std::string_view near = nearest_name(name, known);
    complain(fmt::format("no {} '{}'; {}", what, name,
                         near.empty() ? fmt::format("there are {}", fmt::join(known, ", "))
                                      : fmt::format("perhaps '{}'", near)));
    return ExitStatus::unusable;
}

std::shared_ptr<Options> declare(CLI::App& options, const char* argument, const char* help) {
    auto given = std::make_shared<Options>();
    options.add_option(argument, given->name, help);
    options.add_option("--format", given->format, "text, json or markdown")
        ->check(CLI::IsMember({"text", "json", "markdown"}));
    return given;
}

ExitStatus show_rules(const Options& options) {
    const CatalogueFormat format = format_of(options.format);
    std::vector<const RuleInfo*> all;
    std::vector<std::string_view> known;
    for (const Rule* rule : rules()) {
        all.push_back(&rule->info);
        known.push_back(rule->info.id);
    }
    if (options.name.empty()) return print(rules_list(all, format));
    const Rule* const rule = find_rule(options.name);
    return rule != nullptr ? print(rule_page(rule->info, format))
                           : unknown("rule", options.name, known);
}

ExitStatus show_kinds(const Options& options) {
    const CatalogueFormat format = format_of(options.format);
    std::vector<ElementSpec> others(elements().begin(), elements().end());
    others.insert(others.end(), definitions().begin(), definitions().end());
    if (options.name.empty()) return print(kinds_list(kinds(), others, format));
    if (const Kind* const kind = find_kind(options.name)) return print(kind_page(*kind, format));
    std::vector<std::string_view> known;
    for (const Kind* kind : kinds()) known.push_back(kind->name);
    for (const ElementSpec& element : others) known.push_back(element.name);
    others.erase(
        std::remove_if(others.begin(), others.end(),
                       [&](const ElementSpec& element) { return element.name != options.name; }),
        others.end());
    if (!others.empty()) return print(element_page(others, format));
    return unknown("kind", options.name, known);
}

ExitStatus draw_symbols(const std::string& output) {
    const std::string format = picture_format(output, "name it .svg, .pdf or .png");
    if (format.empty()) return ExitStatus::unusable;
    const Drawing sheet = symbol_sheet();
    std::string trouble = format == "png" ? too_large(sheet, usual_dpi) : std::string();
    if (trouble.empty())
        trouble = write_files({{output, picture_bytes(sheet, format, usual_dpi)}}, {});
    if (trouble.empty()) return ExitStatus::good;
    complain(trouble);
    return ExitStatus::unusable;
}

ExitStatus show_schema(const Options& options) {
    const std::string schema = schema_text(options.name);
    return schema.empty() ? unknown("schema", options.name, schema_names()) : print(schema);
}

}  // namespace

std::function<ExitStatus()> declare_rules(CLI::App& options) {
    const auto given = declare(options, "RULE", "One rule; all without it");
    return [given] { return show_rules(*given); };
}

std::function<ExitStatus()> declare_kinds(CLI::App& options) {
    const auto given =
        declare(options, "KIND", "One kind of component or other element; all without it");
    const auto symbols = std::make_shared<std::string>();
    options
        .add_option("--symbols", *symbols,
                    "File for a sheet of all symbols: svg, pdf or png, by its ending")
        ->check(is_named);
    return
        [given, symbols] { return symbols->empty() ? show_kinds(*given) : draw_symbols(*symbols); };
}

std::function<ExitStatus()> declare_schema(CLI::App& options) {
    const auto given = std::make_shared<Options>();
    options
        .add_option("NAME", given->name,
                    fmt::format("circuit or thresholds (XSD), or one of JSON: {}",
                                fmt::join(json_schema_names(), ", ")))
        ->required();
    return [given] { return show_schema(*given); };
}

}  // namespace loopwright::app
