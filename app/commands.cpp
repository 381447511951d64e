#include <loopwright/app/commands.h>

#include <unistd.h>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/output.h>
#include <loopwright/base/source.h>

namespace loopwright::app {

namespace {

constexpr Command commands[] = {
    {"check", "Prove or refute what a closed loop needs", declare_check},
    {"draw", "Draw the annotated schematic, symbols after ISO 1219", declare_draw},
    {"rules", "Show the catalogue of rules", declare_rules},
    {"kinds", "Show the kinds of component that a circuit may use", declare_kinds},
    {"schema", "Print the schema of a file format", declare_schema},
};

/// The verb that a misspelt one most likely means, as a hint in the message.
std::string hint(int argc, char** argv) {
    std::vector<std::string_view> names;
    for (const Command& command : commands) names.push_back(command.name);
    for (int i = 1; i < argc; ++i) {
        const std::string_view word = argv[i];
        if (word.empty() || word.front() == '-') continue;
        for (const std::string_view name : names)
            if (name == word) return {};
        const std::string_view near = nearest_name(word, names);
        return near.empty() ? std::string{} : fmt::format("; perhaps '{}'", near);
    }
    return {};
}

ExitStatus parse_and_run(int argc, char** argv) {
    CLI::App program("Checks and draws closed-loop hydrostatic drives.", "loopwright");
    program.set_version_flag("--version", "loopwright " LOOPWRIGHT_VERSION);
    program.require_subcommand(1);
    program.footer(
        "A check or a drawing supports and does not replace review by a competent person;\n"
        "local codes govern. Exit status: 0 nothing found, 1 findings, 2 unusable input,\n"
        "option or output, 3 internal error.");
    std::vector<std::pair<CLI::App*, std::function<ExitStatus()>>> ready;
    for (const Command& command : commands) {
        CLI::App* const options =
            program.add_subcommand(std::string(command.name), std::string(command.help));
        ready.emplace_back(options, command.declare(*options));
    }
    try {
        program.parse(argc, argv);
    } catch (const CLI::Success& asked) {  // --help, --version
        std::ostringstream out;
        std::ostringstream messages;
        program.exit(asked, out, messages);
        return write_out(out.str()) ? ExitStatus::good : ExitStatus::unusable;
    } catch (const CLI::ParseError& wrong) {
        complain(fmt::format("{}{}; see 'loopwright --help'", wrong.what(), hint(argc, argv)));
        return ExitStatus::unusable;
    }
    for (const auto& [options, command] : ready)
        if (options->parsed()) return command();
    return ExitStatus::unusable;
}

}  // namespace

void complain(std::string_view message) {
    const std::string line = fmt::format("loopwright: {}\n", message);
    [[maybe_unused]] const auto written = ::write(STDERR_FILENO, line.data(), line.size());
}

ExitStatus run(int argc, char** argv) {
    try {
        return parse_and_run(argc, argv);
    } catch (const std::exception& broken) {
        complain(fmt::format("internal error: {}", broken.what()));
    } catch (...) {
        complain("internal error");
    }
    return ExitStatus::internal;
}

}  // namespace loopwright::app
