#include <loopwright/parser/builder.h>

#include <algorithm>

#include <fmt/core.h>

#include <loopwright/base/unit_guess.h>
#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>

// Why a reference leads nowhere. Nothing here runs for a sound circuit.

namespace loopwright {
namespace {

constexpr std::size_t most_let_pass = 64;
constexpr std::string_view a_port_of = "a component of {} and its port, such as P1.A";
constexpr std::string_view a_part_of = "the id of a part of {} that turns";

std::string with_article(std::string_view noun) {
    const bool vowel =
        !noun.empty() && std::string_view("aeiou").find(noun.front()) != std::string_view::npos;
    return fmt::format("{} {}", vowel ? "an" : "a", noun);
}

// What a token most likely means in which ids are parted by something else than blanks: by commas,
// or by the spaces that text processors put in their place. Empty where they are not.
std::string with_blanks(std::string_view token) {
    constexpr std::size_t looked_at = 256;
    std::string plain = in_plain_characters(token.substr(0, looked_at));
    if (token.find_first_of(",;") == std::string_view::npos &&
        plain.find(' ') == std::string::npos) {
        return {};
    }
    std::replace_if(
        plain.begin(), plain.end(), [](char c) { return c == ',' || c == ';'; }, ' ');
    std::string words;
    for (const char c : plain) {
        if (c != ' ' || (!words.empty() && words.back() != ' ')) {
            words += c;
        }
    }
    while (words.size() > 1 && words.back() == ' ') {
        words.pop_back();
    }
    return words.empty() ? " " : words;
}

// The same as a suggestion: short, and beginning as an id does.
std::string likely_words(const std::string& words) {
    constexpr std::size_t longest = 60;
    const bool likely =
        words.size() <= longest && is_id(words.substr(0, words.find_first_of(" .")));
    return likely ? words : std::string();
}

}  // namespace

std::string Builder::kind_of(const Name& name) const {
    switch (name.type) {
        case NameType::component:
            return with_article(circuit_.components[name.index].kind->name);
        case NameType::line:
            return circuit_.lines[name.index].flexible ? "a hose" : "a line";
        case NameType::shaft:
            return "a shaft";
        case NameType::assembly:
            return "an assembly";
        case NameType::port:
            return "a port";
        case NameType::position:
            return "a position";
        case NameType::command:
            return "a command";
        case NameType::point:
            return "a point";
        case NameType::unusable:
            return "unreadable";
    }
    return {};
}

SourceRef Builder::place_of(const Name& name) const {
    switch (name.type) {
        case NameType::component:
            return circuit_.components[name.index].place;
        case NameType::line:
            return circuit_.lines[name.index].place;
        case NameType::shaft:
            return circuit_.shafts[name.index].place;
        case NameType::assembly:
            return circuit_.assemblies[name.index].place;
        case NameType::port:
            return circuit_.ports[name.index].place;
        case NameType::position:
            return circuit_.positions[name.index].place;
        case NameType::command:
            return circuit_.commands[name.index].place;
        case NameType::point:
            return circuit_.points[name.index].place;
        case NameType::unusable:
            break;
    }
    return {};
}

std::string Builder::near_id(NameScope scope, std::string_view id) {
    if (id.size() > 64 || !report_.may_compare(names_.size())) {
        return {};
    }
    return std::string(nearest_word(id, names_.ids(scope)));
}

std::size_t Builder::letter_count(const Name& name) const {
    return name.type == NameType::component  ? circuit_.components[name.index].ports.size()
           : name.type == NameType::assembly ? circuit_.assemblies[name.index].ports.size()
                                             : 0;
}

std::vector<std::string_view> Builder::letters_of(const Name& name, std::size_t most) const {
    std::vector<std::string_view> letters(std::min(letter_count(name), most));
    for (std::size_t i = 0; i < letters.size(); ++i) {
        letters[i] = name.type == NameType::component
                         ? circuit_.ports_of(circuit_.components[name.index])[i].letter
                         : circuit_.assemblies[name.index].ports[i].letter;
    }
    return letters;
}

std::string_view Builder::near_letter(const Name& name, std::string_view letter) {
    const std::size_t letters = letter_count(name);
    return report_.may_compare(letters) ? nearest_word(letter, letters_of(name, letters))
                                        : std::string_view();
}

std::string Builder::ports_of(const Name& name, std::string_view path) const {
    std::vector<std::string> full;
    for (const std::string_view letter : letters_of(name, most_listed + 1)) {
        full.push_back(fmt::format("{}.{}", clipped(path), clipped(letter)));
    }
    if (!full.empty()) {
        return list_of({full.begin(), full.end()});
    }
    if (name.type == NameType::assembly) {
        return fmt::format("a 'port' element in '{}', which declares the port", clipped(path));
    }
    if (name.type == NameType::component &&
        circuit_.components[name.index].kind->children != Children::no) {
        return fmt::format("a 'port' element in '{}', which declares the port", clipped(path));
    }
    return fmt::format("nothing; {} has no ports", kind_of(name));
}

void Builder::explain_port(Scope& scope, std::string_view token, SourceRef place) {
    if (const std::string words = with_blanks(token); !words.empty()) {
        report_.error(place, [&] {
            return Words{fmt::format("'{}' is no port", clipped(token)),
                         "component.port; several are separated by plain blanks alone",
                         likely_words(words)};
        });
        return;
    }
    if (token.empty()) {
        report_.error(place, [&] {
            return Words{
                "no port is named", fmt::format(fmt::runtime(a_port_of), scope_name(scope)), {}};
        });
        return;
    }
    const std::size_t dot = token.find('.');
    const std::string_view path = token.substr(0, dot);
    if (path.find('/') != std::string_view::npos) {
        explain_inner(scope, token, place);
        return;
    }
    const Name* const name = names_.find(scope.names, path);
    const std::string_view after =
        dot == std::string_view::npos ? std::string_view() : token.substr(dot);
    if (name == nullptr) {
        explain_missing(scope, path, place, after, a_port_of);
        return;
    }
    if (name->type == NameType::unusable) {
        return;
    }
    if (name->type != NameType::component && name->type != NameType::assembly) {
        report_.error(place, [&] {
            return Words{fmt::format("'{}' is {} and has no ports", clipped(path), kind_of(*name)),
                         "a port of a component or an assembly",
                         {}};
        });
    } else if (dot == std::string_view::npos) {
        report_.error(place, [&] {
            return Words{fmt::format("'{}' is {}, not a port", clipped(token), kind_of(*name)),
                         ports_of(*name, path),
                         {}};
        });
    } else {
        explain_letter(*name, token, place);
    }
}

void Builder::explain_letter(const Name& name, std::string_view token, SourceRef place) {
    const std::size_t dot = token.find('.');
    const std::string_view path = token.substr(0, dot);
    const std::string_view letter = token.substr(dot + 1);
    if (name.doubtful) {
        return;
    }
    if (name.type == NameType::assembly && assemblies_[name.index].doubtful) {
        return;
    }
    if (name.type == NameType::component && doubtful_[name.index]) {
        // An attribute or a child that decides on the ports is wrong, and has been told.
        const Kind& kind = *circuit_.components[name.index].kind;
        const bool known =
            std::any_of(kind.ports.begin(), kind.ports.end(),
                        [letter](const PortSpec& port) { return port.letter == letter; });
        if (known || kind.children != Children::no) {
            return;
        }
    }
    report_.error(place, [&] {
        if (letter.empty()) {
            return Words{
                fmt::format("'{}' names no port", clipped(token)), ports_of(name, path), {}};
        }
        const std::string_view near = near_letter(name, letter);
        return Words{fmt::format("{} '{}' has no port '{}'",
                                 name.type == NameType::component
                                     ? circuit_.components[name.index].kind->name
                                     : std::string_view("assembly"),
                                 clipped(path), clipped(letter)),
                     ports_of(name, path) + condition_of(name, letter),
                     near.empty() ? std::string() : fmt::format("{}.{}", path, near)};
    });
}

// "; L is there with drain=\"external\"" for a port that the kind has under other conditions.
std::string Builder::condition_of(const Name& name, std::string_view letter) const {
    if (name.type != NameType::component) {
        return {};
    }
    for (const PortSpec& port : circuit_.components[name.index].kind->ports) {
        if (port.letter != letter) {
            continue;
        }
        std::string text = fmt::format("; {} is there with", letter);
        const auto add = [&text](const When& when, std::string_view link) {
            if (!when.attribute.empty()) {
                text += fmt::format("{} {}=\"{}\"", link, when.attribute,
                                    when.is.substr(0, when.is.find('|')));
            }
        };
        add(port.when, "");
        add(port.also, port.when.attribute.empty() ? "" : " and");
        return text;
    }
    return {};
}

void Builder::explain_missing(Scope& scope, std::string_view id, SourceRef place,
                              std::string_view after, std::string_view expected) {
    const std::string near = near_id(scope.names, id);
    const std::size_t nameless = std::min(scope.nameless, most_let_pass);
    if (near.empty() && nameless > 0) {
        const bool known =
            std::find(scope.let_pass.begin(), scope.let_pass.end(), id) != scope.let_pass.end();
        if (known || scope.let_pass.size() < nameless) {
            if (!known) {
                scope.let_pass.push_back(id);
            }
            return;
        }
    }
    report_.error(place, [&] {
        return Words{id.empty() ? fmt::format("'{}' names no component", clipped(after))
                                : fmt::format("there is no '{}'", clipped(id)),
                     fmt::format(fmt::runtime(expected), scope_name(scope)),
                     near.empty() ? std::string() : near + clipped(after)};
    });
}

std::string Builder::scope_name(const Scope& scope) const {
    if (scope.assembly == none) {
        return "this circuit";
    }
    return scope.id.empty() ? std::string("this assembly")
                            : fmt::format("assembly '{}'", clipped(scope.id));
}

void Builder::explain_inner(Scope& scope, std::string_view token, SourceRef place) {
    const std::size_t slash = token.find('/');
    const std::string_view outer = token.substr(0, slash);
    const Name* const name = names_.find(scope.names, outer);
    if (name == nullptr) {
        explain_missing(scope, outer, place, token.substr(slash), a_port_of);
        return;
    }
    if (name->type == NameType::unusable || name->doubtful) {
        return;
    }
    report_.error(place, [&] {
        if (name->type != NameType::assembly) {
            return Words{
                fmt::format("'{}' is {}; nothing stands inside it", clipped(outer), kind_of(*name)),
                "component.port",
                {}};
        }
        // Which declared port leads to the inner one?
        std::string suggestion;
        const std::size_t dot = token.find('.');
        const Name* const inner = find_path(scope, token.substr(0, dot));
        if (dot != std::string_view::npos && inner != nullptr &&
            inner->type == NameType::component) {
            const Index port = port_of(inner->index, token.substr(dot + 1));
            for (const Assembly::DeclaredPort& one : circuit_.assemblies[name->index].ports) {
                if (one.port == port) {
                    suggestion = fmt::format("{}.{}", outer, one.letter);
                }
            }
        }
        return Words{fmt::format("'{}' is inside assembly '{}'", clipped(token), clipped(outer)),
                     "a port that the assembly declares: " + ports_of(*name, outer),
                     std::move(suggestion)};
    });
}

void Builder::explain_joined(Index line, Index first, std::string_view token, SourceRef place) {
    report_.error(place, [&] {
        if (line == first) {
            return Words{fmt::format("'{}' is listed twice in this line", clipped(token)),
                         "each port once",
                         {}};
        }
        const Line& other = circuit_.lines[first];
        return Words{fmt::format("'{}' is joined by {} '{}' already", clipped(token),
                                 other.flexible ? "hose" : "line", clipped(other.path)),
                     fmt::format("one line for each port; '{}' stands in line {} of the file",
                                 clipped(other.path), sources_->place(other.place).line),
                     {}};
    });
}

void Builder::explain_shaft(Scope& scope, std::string_view token, SourceRef place) {
    const std::size_t dot = token.find('.');
    if (dot != std::string_view::npos && find_path(scope, token.substr(0, dot)) != nullptr) {
        report_.error(place, [&] {
            return Words{fmt::format("'{}' is no part", clipped(token)),
                         "the part that turns, without a port", clipped(token.substr(0, dot))};
        });
        return;
    }
    if (const std::string words = with_blanks(token); !words.empty()) {
        report_.error(place, [&] {
            return Words{fmt::format("'{}' is no part", clipped(token)),
                         "ids, separated by plain blanks alone", likely_words(words)};
        });
        return;
    }
    explain_path(scope, token, place, a_part_of);
}

void Builder::explain_path(Scope& scope, std::string_view token, SourceRef place,
                           std::string_view expected) {
    // The longest head that means something.
    const Name* outer = nullptr;
    NameScope names = scope.names;
    std::size_t begin = 0;
    for (;;) {
        const std::size_t end = token.find('/', begin);
        const Name* const name = names_.find(names, token.substr(begin, end - begin));
        if (name == nullptr || name->type != NameType::assembly || end == std::string_view::npos) {
            outer = name != nullptr ? name : outer;
            break;
        }
        outer = name;
        names = NameScope::assembly(name->index);
        begin = end + 1;
    }
    if (outer == nullptr) {
        explain_missing(scope, token.substr(0, token.find('/')), place,
                        token.substr(std::min(token.find('/'), token.size())), expected);
        return;
    }
    report_.error(place, [&] {
        const std::string near =
            outer->type == NameType::assembly ? near_id(names, token.substr(begin)) : std::string();
        return Words{
            fmt::format("there is no '{}'", clipped(token)),
            "the id of a part, behind the ids of the assemblies around it",
            near.empty() ? std::string() : fmt::format("{}{}", token.substr(0, begin), near)};
    });
}

}  // namespace loopwright
