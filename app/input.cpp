#include <loopwright/app/input.h>

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/output.h>
#include <loopwright/base/source.h>
#include <loopwright/parser/attribute_value.h>
#include <loopwright/render/writers/report.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>

namespace loopwright::app {

namespace {

/// What the reader says of a file, for standard input.
ReadResult refused(const std::string& why, std::string expected) {
    auto sources = std::make_shared<SourceSet>();
    sources->add_inclusion(sources->add_file("-", {}));
    ReadResult read;
    read.diagnostics.push_back(
        {.message = "standard input cannot be read: " + why, .expected = std::move(expected)});
    read.sources = std::move(sources);
    return read;
}

}  // namespace

ReadResult read_input(const std::string& file, const std::vector<std::string>& folders) {
    ReadOptions options;
    options.assembly_folders.assign(folders.begin(), folders.end());
    for (const Rule* rule : rules()) options.rules.push_back(rule->info.id);
    if (file != "-") return read_circuit(file, options);
    const std::size_t most = ReadLimits{}.file_bytes;
    std::string text;
    std::array<char, 65'536> buffer{};
    for (;;) {
        const ssize_t got = ::read(STDIN_FILENO, buffer.data(), buffer.size());
        if (got < 0 && errno == EINTR) continue;
        if (got < 0)
            return refused(errno == EISDIR ? "it is a folder" : "the system cannot read it",
                           "a circuit from a file or a pipe");
        if (got == 0) return read_circuit_text(std::move(text), "-", {}, options);
        text.append(buffer.data(), static_cast<std::size_t>(got));
        if (text.size() > most)
            return refused(fmt::format("it has more than {} bytes", most),
                           fmt::format("at most {} bytes", most));
    }
}

std::vector<std::filesystem::path> files_of(const std::string& file, const Circuit& circuit) {
    std::vector<std::filesystem::path> files{file};
    const SourceSet& sources = *circuit.sources;
    for (std::uint32_t i = 0; i < sources.file_count(); ++i)
        if (!sources.file(i).path().empty()) files.emplace_back(sources.file(i).path());
    return files;
}

void add_assemblies_option(CLI::App& options, std::vector<std::string>& folders) {
    options
        .add_option("--assemblies", folders,
                    "Folder with ready assemblies for 'use' by name (may be repeated)")
        ->allow_extra_args(false)
        ->take_all()
        ->check(CLI::ExistingDirectory);
}

std::string this_day() {
    const std::chrono::year_month_day day{
        std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now())};
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(day.year()),
                       static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
}

void add_today_option(CLI::App& options, std::string& today) {
    options.add_option("--today", today, "Day on which waivers must hold; else today, UTC")
        ->check([](const std::string& word) {
            return date_of(word) ? std::string()
                                 : fmt::format("'{}' is no date such as 2026-11-25", word);
        });
}

void add_rules_option(CLI::App& options, std::vector<std::string>& ids) {
    options.add_option("--rule", ids, "Only this rule (may be repeated)")
        ->allow_extra_args(false)
        ->take_all();
}

std::vector<const Rule*> rules_of(const std::vector<std::string>& ids) {
    std::vector<const Rule*> rules;
    for (const std::string& id : ids) {
        if (find_rule(id) != nullptr) continue;
        std::vector<std::string_view> known;
        for (const Rule* rule : loopwright::rules()) known.push_back(rule->info.id);
        const std::string_view near = nearest_name(id, known);
        complain(fmt::format("no rule '{}'{}; 'loopwright rules' lists all", id,
                             near.empty() ? "" : fmt::format("; perhaps '{}'", near)));
        return {};
    }
    for (const Rule* rule : loopwright::rules())
        if (ids.empty() || std::find(ids.begin(), ids.end(), rule->info.id) != ids.end())
            rules.push_back(rule);
    return rules;
}

void add_thresholds_option(CLI::App& options, std::string& file) {
    options.add_option("--thresholds", file, "File with figures to hold things against (XML)")
        ->check(is_named);
}

std::optional<Thresholds> thresholds_of(const std::string& file, std::string_view colour) {
    if (file.empty()) return Thresholds{};
    ThresholdsResult read = read_thresholds(file);
    print_diagnostics(read.diagnostics, *read.sources, colour);
    if (!read.ok) return std::nullopt;
    return std::move(read.thresholds);
}

void print_diagnostics(const Diagnostics& diagnostics, const SourceSet& sources,
                       std::string_view colour) {
    if (diagnostics.empty()) return;
    write_message(
        diagnostics_text(diagnostics, sources, {.colour = wants_colour(colour, STDERR_FILENO)}));
}

}  // namespace loopwright::app
