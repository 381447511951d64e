#include <loopwright/app/commands.h>

#include <algorithm>
#include <sstream>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/output.h>
#include <loopwright/app/shared_files.h>
#include <loopwright/base/source.h>
#include <loopwright/render/writers/report.h>

namespace loopwright::app {

namespace {

constexpr Command commands[] = {
    {"check", "Prove or refute what a closed loop needs", declare_check},
    {"draw", "Draw the annotated schematic, symbols after ISO 1219", declare_draw},
    {"solve", "Compute pressures, flows, speeds and powers at the duty points", declare_solve},
    {"readings", "Write what instruments should show, for a first start", declare_readings},
    {"rules", "Show the catalogue of rules", declare_rules},
    {"kinds", "Show the kinds of component that a circuit may use", declare_kinds},
    {"schema", "Print the schema of a file format", declare_schema},
    {"new", "Write a circuit to begin with", declare_new},
    {"size", "Size a drive from its duty, and write its circuit", declare_size},
};

std::string perhaps(std::string_view near, std::string_view dashes = {}) {
    return near.empty() ? std::string{} : fmt::format("; perhaps '{}{}'", dashes, near);
}

/// The long options of the program or of a verb, without dashes.
std::vector<std::string> option_names(const CLI::App& app) {
    std::vector<std::string> names;
    for (const CLI::Option* option : app.get_options())
        for (const std::string& name : option->get_lnames()) names.push_back(name);
    return names;
}

/// The first argument that looks like an option of one letter and is none; the value of an option
/// before it may look so, too.
std::string_view unknown_letter(const CLI::App& app, int argc, char** argv) {
    std::string known;
    for (const CLI::Option* option : app.get_options())
        for (const std::string& name : option->get_snames()) known += name;
    for (int i = 1; i < argc; ++i) {
        const std::string_view word = argv[i];
        if (word == "--") break;
        if (word.size() < 2 || word[0] != '-' || word[1] == '-' || argv[i - 1][0] == '-') continue;
        if (known.find(word[1]) == std::string::npos) return word;
    }
    return {};
}

/// What is wrong with the arguments, and the likely meaning of a misspelt verb or option.
std::string explained(const CLI::App& program, const CLI::ParseError& wrong, int argc,
                      char** argv) {
    std::vector<std::string_view> verbs;
    for (const Command& command : commands) verbs.push_back(command.name);
    const CLI::App* verb = nullptr;
    std::string_view misspelt;
    for (int i = 1; i < argc; ++i) {
        const std::string_view word = argv[i];
        if (word == "--") break;
        if (word.substr(0, 2) == "--") {
            const std::string_view name = word.substr(2, word.find('=') - 2);
            const std::vector<std::string> known = option_names(verb ? *verb : program);
            if (misspelt.empty() && std::find(known.begin(), known.end(), name) == known.end())
                misspelt = name;
        } else if (verb == nullptr && word.substr(0, 1) != "-") {
            if (std::find(verbs.begin(), verbs.end(), word) == verbs.end())
                return fmt::format("no command '{}'{}", word, perhaps(nearest_name(word, verbs)));
            verb = program.get_subcommand(std::string(word));
        }
    }
    const std::vector<std::string> known = option_names(verb ? *verb : program);
    if (misspelt.empty()) {
        // To the parser, what is no option is no argument either, and it only misses some.
        const bool missing = dynamic_cast<const CLI::RequiredError*>(&wrong) != nullptr;
        const std::string_view letter =
            missing ? unknown_letter(verb ? *verb : program, argc, argv) : std::string_view{};
        if (!letter.empty()) return fmt::format("no option '{}'", letter);
        return verb ? wrong.what()
                    : fmt::format("no command; there are {}", fmt::join(verbs, ", "));
    }
    return fmt::format("no option '--{}'{}", misspelt,
                       perhaps(nearest_name(misspelt, {known.begin(), known.end()}), "--"));
}

ExitStatus parse_and_run(int argc, char** argv) {
    CLI::App program("Checks, computes and draws closed-loop hydrostatic drives.", "loopwright");
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
    // For the build of a package; no command, for nobody needs it twice.
    if (argc == 3 && std::string_view(argv[1]) == "--write-shared-files")
        return write_shared_files(program, argv[2]);
    try {
        program.parse(argc, argv);
    } catch (const CLI::Success& asked) {  // --help, --version
        std::ostringstream out;
        std::ostringstream messages;
        program.exit(asked, out, messages);
        return print(out.str());
    } catch (const CLI::ParseError& wrong) {
        complain(explained(program, wrong, argc, argv) + "; see 'loopwright --help'");
        return ExitStatus::unusable;
    }
    for (const auto& [options, command] : ready)
        if (options->parsed()) return command();
    return ExitStatus::unusable;
}

}  // namespace

std::string is_named(const std::string& file) {
    if (file == "-") return "'-' names no file here; /dev/stdout does";
    return file.empty() ? "expected the name of a file" : "";
}

ExitStatus print(std::string_view text) {
    if (write_out(text)) return ExitStatus::good;
    complain("standard output cannot be written");
    return ExitStatus::unusable;
}

ExitStatus hand_over(const std::string& text, const std::string& output,
                     const std::vector<std::filesystem::path>& inputs, ExitStatus status) {
    if (output.empty()) return worse(status, print(text));
    const std::string trouble = write_files({{output, text}}, inputs);
    if (trouble.empty()) return status;
    complain(trouble);
    return ExitStatus::unusable;
}

void complain(std::string_view message) {
    // Arguments may hold what steers a terminal.
    write_message(fmt::format("loopwright: {}\n", visible(message)));
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
