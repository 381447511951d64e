// The completion script for bash out of the declared commands.
#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <loopwright/app/schemas.h>
#include <loopwright/app/shared_files.h>
#include <loopwright/parser/kinds/catalogue.h>
#include <loopwright/parser/kinds/definitions.h>
#include <loopwright/parser/ready.h>
#include <loopwright/rules/registry.h>
#include <loopwright/rules/rule.h>

namespace loopwright::app {

namespace {

using Words = std::vector<std::string>;

Words rule_words() {
    Words words;
    for (const Rule* rule : rules()) words.emplace_back(rule->info.id);
    return words;
}

Words kind_words() {
    Words words;
    for (const Kind* kind : kinds()) words.emplace_back(kind->name);
    for (const auto& others : {elements(), definitions()})
        for (const ElementSpec& element : others)
            if (std::find(words.begin(), words.end(), element.name) == words.end())
                words.emplace_back(element.name);
    return words;
}

Words schema_words() {
    const std::vector<std::string_view> names = schema_names();
    return {names.begin(), names.end()};
}

Words drive_words() {
    Words words;
    for (const ReadyText& one : starting_circuits()) words.emplace_back(one.name);
    return words;
}

/// What can follow: words, or files ("any", those with an ending such as "xml", or "folder").
struct Values {
    Words words = {};
    std::string_view files = {};
};

/// Values that no check of an option describes, by the name that the option or argument has.
struct KnownValues {
    std::string_view name = {};
    Words (*words)() = nullptr;
    std::string_view files = {};
};
constexpr KnownValues known_values[] = {
    {"--rule", rule_words},
    {"RULE", rule_words},
    {"KIND", kind_words},
    {"NAME", schema_words},
    {"DRIVE", drive_words},
    {.name = "FILE", .files = "xml"},
    {.name = "--thresholds", .files = "xml"},
    {.name = "--assemblies", .files = "folder"},
    {.name = "--output", .files = "any"},
    {.name = "--plot", .files = "any"},
    {.name = "--symbols", .files = "any"},
    {.name = "--read-layout", .files = "json"},
    {.name = "--write-layout", .files = "json"},
};

Values values_of(const CLI::Option& option) {
    // Of an option with a letter, get_name() gives the long form.
    const std::string name = option.get_name(option.get_positional());
    for (const KnownValues& known : known_values)
        if (name == known.name)
            return {known.words != nullptr ? known.words() : Words{}, known.files};
    return {choices_of(option), {}};
}

/// The words that a verb (or, without one, the program) takes at the place of an option.
Words option_words(const CLI::App& command) {
    Words words;
    for (const CLI::Option* option :
         command.get_options([](const CLI::Option* one) { return !one->get_group().empty(); })) {
        for (const std::string& name : option->get_snames()) words.push_back("-" + name);
        for (const std::string& name : option->get_lnames()) words.push_back("--" + name);
    }
    return words;
}

std::string cases_of(const CLI::App& command) {
    const std::string& verb = command.get_name();
    std::string text;
    Values arguments;
    for (const CLI::Option* option : command.get_options()) {
        const Values values = values_of(*option);
        if (option->get_positional()) arguments = values;
        if (option->get_positional() || is_flag(*option)) continue;
        Words names;
        for (const std::string& name : option->get_snames())
            names.push_back(fmt::format("{},-{}", verb, name));
        for (const std::string& name : option->get_lnames())
            names.push_back(fmt::format("{},--{}", verb, name));
        text += fmt::format("        {}) words='{}' files={} ;;\n", fmt::join(names, "|"),
                            fmt::join(values.words, " "), values.files);
    }
    return text + fmt::format("        {},*) words='{}' options='{}' files={} ;;\n", verb,
                              fmt::join(arguments.words, " "),
                              fmt::join(option_words(command), " "), arguments.files);
}

}  // namespace

std::string bash_completion(const CLI::App& program) {
    const auto commands = program.get_subcommands([](const CLI::App*) { return true; });
    Words verbs;
    for (const CLI::App* command : commands) verbs.push_back(command->get_name());
    std::string script = fmt::format(
        R"(# bash completion for loopwright; made by the program from its table of commands.
_loopwright() {{
    local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}}
    local verb= words= options= files= i
    # bash takes --format=svg apart at the sign.
    if [[ $word == = ]]; then
        word=
    elif [[ $before == = ]]; then
        before=${{COMP_WORDS[COMP_CWORD-2]}}
    fi
    for ((i = 1; i < COMP_CWORD; ++i)); do
        case ${{COMP_WORDS[i]}} in
        {}) verb=${{COMP_WORDS[i]}}; break ;;
        esac
    done
    case $verb,$before in
        ,*) words='{}' options='{}' ;;
)",
        fmt::join(verbs, "|"), fmt::join(verbs, " "), fmt::join(option_words(program), " "));
    for (const CLI::App* command : commands) script += cases_of(*command);
    return script + R"(    esac
    [[ $word == -* ]] && words=$options files=
    COMPREPLY=($(compgen -W "$words" -- "$word"))
    [[ $files ]] || return 0
    compopt -o filenames 2>/dev/null
    local found
    while IFS= read -r found; do
        COMPREPLY+=("$found")
    done < <(
        case $files in
            any) compgen -f -- "$word" ;;
            folder) compgen -d -- "$word" ;;
            *)
                compgen -d -- "$word"
                compgen -f -X "!*.$files" -- "$word"
                ;;
        esac
    )
}
complete -F _loopwright loopwright
)";
}

}  // namespace loopwright::app
