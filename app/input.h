#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/app/commands.h>
#include <loopwright/parser/reader.h>
#include <loopwright/rules/thresholds.h>

namespace loopwright::app {

/// Reads a circuit from a file, or from standard input for "-" (where `use` of a file is an error).
/// `folders`: with ready assemblies, before those that come with the program.
ReadResult read_input(const std::string& file, const std::vector<std::string>& folders);

/// What an output must not overwrite: the file as named, "-" too, and all that were read for it.
std::vector<std::filesystem::path> files_of(const std::string& file, const Circuit& circuit);

/// Declares the option for those folders.
void add_assemblies_option(CLI::App& options, std::vector<std::string>& folders);

/// The day, UTC, as "2026-11-25".
std::string this_day();
/// Declares the option for another day, against which waivers are held.
void add_today_option(CLI::App& options, std::string& today);

/// Declares the option for single rules.
void add_rules_option(CLI::App& options, std::vector<std::string>& ids);
/// The rules of those ids in the catalogue's order, all without an id; empty with a message where
/// one is unknown.
std::vector<const Rule*> rules_of(const std::vector<std::string>& ids);

/// Declares the option for a thresholds file.
void add_thresholds_option(CLI::App& options, std::string& file);
/// The thresholds of that file, the rules' own where it is empty; nothing where it is unusable.
/// Its diagnostics go to standard error.
std::optional<Thresholds> thresholds_of(const std::string& file, std::string_view colour);

/// Diagnostics to standard error.
void print_diagnostics(const Diagnostics& diagnostics, const SourceSet& sources,
                       std::string_view colour);

}  // namespace loopwright::app
