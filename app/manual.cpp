// The manual page out of the declared commands, in the macros of man(7).
#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/shared_files.h>

namespace loopwright::app {

namespace {

/// Text as roff takes it: a hyphen that is typed, a backslash, no line that looks like a request.
std::string roff(std::string_view text) {
    std::string result;
    bool at_start = true;
    for (const char c : text) {
        if (at_start && (c == '.' || c == '\'')) result += "\\&";
        if (c == '-')
            result += "\\-";
        else if (c == '\\')
            result += "\\e";
        else
            result += c;
        at_start = c == '\n';
    }
    return result;
}

/// "-o, --output", or a positional's name.
std::string names_of(const CLI::Option& option) {
    if (option.get_positional()) return option.get_name(true);
    std::vector<std::string> names;
    for (const std::string& name : option.get_snames()) names.push_back("-" + name);
    for (const std::string& name : option.get_lnames()) names.push_back("--" + name);
    return fmt::format("{}", fmt::join(names, ", "));
}

/// What stands behind an option: the words to choose from, or that there is a value.
std::string value_of(const CLI::Option& option) {
    const std::vector<std::string> choices = choices_of(option);
    if (choices.empty()) return "\\fIVALUE\\fR";
    return roff(fmt::format("{}", fmt::join(choices, "|")));
}

void append_options(const CLI::App& command, std::string& page) {
    for (const CLI::Option* option :
         command.get_options([](const CLI::Option* one) { return !one->get_group().empty(); })) {
        page += fmt::format(".TP\n\\fB{}\\fR", roff(names_of(*option)));
        if (!option->get_positional() && !is_flag(*option)) page += ' ' + value_of(*option);
        page += fmt::format("\n{}.\n", roff(option->get_description()));
    }
}

std::string synopsis(const CLI::App& command) {
    std::string line = fmt::format(".B loopwright {}\n", roff(command.get_name()));
    line += "[\\fIOPTION\\fR]...";
    for (const CLI::Option* option : command.get_options()) {
        if (!option->get_positional()) {
            if (option->get_required())
                line += fmt::format(" \\fB{}\\fR {}", roff(names_of(*option).substr(0, 2)),
                                    value_of(*option));
            continue;
        }
        std::string argument = fmt::format("\\fI{}\\fR", roff(option->get_name(true)));
        if (option->get_items_expected_max() > 1) argument += "...";
        line +=
            option->get_required() ? fmt::format(" {}", argument) : fmt::format(" [{}]", argument);
    }
    return line + '\n';
}

}  // namespace

std::string manual_page(const CLI::App& program) {
    const auto commands = program.get_subcommands([](const CLI::App*) { return true; });
    std::string page = fmt::format(
        ".\\\" Made by the program from its table of commands.\n"
        ".TH LOOPWRIGHT 1 \"\" \"loopwright {}\" \"User commands\"\n"
        ".SH NAME\nloopwright \\- check, compute and draw closed\\-loop hydrostatic drives\n"
        ".SH SYNOPSIS\n",
        LOOPWRIGHT_VERSION);
    for (std::size_t i = 0; i < commands.size(); ++i)
        page += (i == 0 ? "" : ".br\n") + synopsis(*commands[i]);
    page += fmt::format(".SH DESCRIPTION\n{}\n", roff(program.get_description()));
    page += ".SH OPTIONS\n";
    append_options(program, page);
    page += ".SH COMMANDS\n";
    for (const CLI::App* command : commands) {
        page += fmt::format(".SS {}\n{}.\n", roff(command->get_name()),
                            roff(command->get_description()));
        append_options(*command, page);
    }
    page += fmt::format(".SH EXIT STATUS AND CAUTION\n.nf\n{}\n.fi\n", roff(program.get_footer()));
    page +=
        ".SH ENVIRONMENT\n.TP\n\\fBNO_COLOR\\fR\nNo colour, where \\-\\-color does not say "
        "otherwise.\n";
    return page;
}

}  // namespace loopwright::app
