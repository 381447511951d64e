#include <loopwright/parser/builder.h>

#include <algorithm>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/short_text.h>

// From ids to indices, once a scope is complete. What resolves takes the short way; what does not
// is explained in explain.cpp.

namespace loopwright {
namespace {

// A part that declares more ports has them looked up by name.
constexpr Index many_ports = 8;

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

// Calls `take(begin, end)` for each word.
template <class Take>
void each_word(std::string_view text, Take&& take) {
    std::size_t i = 0;
    for (;;) {
        while (i < text.size() && is_blank(text[i])) {
            ++i;
        }
        if (i == text.size()) {
            return;
        }
        const std::size_t begin = i;
        while (i < text.size() && !is_blank(text[i])) {
            ++i;
        }
        take(begin, i);
    }
}

}  // namespace

SourceRef Builder::part_of(const GivenText& text, std::size_t begin, std::size_t end) {
    if (!text.plain) {
        return text.value;
    }
    const std::uint32_t first = text.value.span.begin;
    return {text.value.inclusion,
            {first + static_cast<std::uint32_t>(begin), first + static_cast<std::uint32_t>(end)}};
}

void Builder::finish_scope(Scope& scope) {
    joined_by_.resize(circuit_.ports.size(), none);
    declared_in_.resize(circuit_.ports.size(), none);
    for (std::size_t i = scope.first_port; i < pending_ports_.size(); ++i) {
        resolve_port(scope, pending_ports_[i]);
    }
    if (scope.assembly != none) {
        assemblies_[scope.assembly].joined_by.assign(
            circuit_.assemblies[scope.assembly].ports.size(), none);
    }
    for (std::size_t i = scope.first_line; i < pending_lines_.size(); ++i) {
        resolve_line(scope, pending_lines_[i]);
    }
    for (std::size_t i = scope.first_shaft; i < pending_shafts_.size(); ++i) {
        resolve_shaft(scope, pending_shafts_[i]);
    }
}

Port& Builder::add_port(Index component, std::string_view letter, SourceRef place) {
    letters_.push_back(packed(letter.substr(0, 8)));
    Port& port = circuit_.ports.emplace_back();
    port.letter = letter;
    port.component = component;
    port.place = place;
    return port;
}

Index Builder::port_of(Index component, std::string_view letter) const {
    const Index begin = first_port_[component];
    const Index end = component + 1 < first_port_.size() ? first_port_[component + 1]
                                                         : static_cast<Index>(letters_.size());
    if (end - begin > many_ports && circuit_.components[component].kind->children != Children::no) {
        const Name* const name = names_.find(NameScope::ports(component), letter);
        return name == nullptr ? none : name->index;
    }
    const std::uint64_t wanted = packed(letter.substr(0, 8));
    for (Index port = begin; port < end; ++port) {
        if (letters_[port] == wanted && same_text(circuit_.ports[port].letter, letter)) {
            return port;
        }
    }
    return none;
}

bool Builder::find_port(const Scope& scope, std::string_view token, Target& target) const {
    const std::size_t dot = token.find('.');
    if (dot == std::string_view::npos) {
        return false;
    }
    const Name* const name = names_.find(scope.names, token.substr(0, dot));
    if (name == nullptr) {
        return false;
    }
    target.doubtful = name->doubtful;
    const std::string_view letter = token.substr(dot + 1);
    if (name->type == NameType::component) {
        target.port = port_of(name->index, letter);
        return target.port != none;
    }
    if (name->type != NameType::assembly) {
        return false;
    }
    const Name* const declared = names_.find(NameScope::assembly_ports(name->index), letter);
    if (declared == nullptr) {
        return false;
    }
    target.assembly = name->index;
    target.declared = declared->index;
    target.port = declared->type == NameType::unusable
                      ? none
                      : circuit_.assemblies[name->index].ports[declared->index].port;
    return true;
}

void Builder::resolve_port(Scope& scope, const PendingPort& pending) {
    std::vector<Assembly::DeclaredPort>& ports = circuit_.assemblies[scope.assembly].ports;
    Target target;
    const std::string_view token = pending.of.text;
    const bool found = find_port(scope, token, target);
    const Name* const first =
        names_.add(NameScope::assembly_ports(scope.assembly), pending.letter,
                   {found && target.port != none ? NameType::port : NameType::unusable, false,
                    static_cast<Index>(ports.size())});
    if (first != nullptr || !is_id(pending.letter)) {
        assemblies_[scope.assembly].doubtful = true;  // another id is meant
    }
    if (first != nullptr) {
        report_.error(pending.place, [&] {
            return Words{fmt::format("the port '{}' is there twice", clipped(pending.letter)),
                         "an id of its own for each port of the assembly",
                         {}};
        });
        return;
    }
    if (!found) {
        explain_port(scope, token, pending.of.value);
        return;
    }
    if (target.port == none) {
        return;
    }
    if (declared_in_[target.port] == scope.assembly) {
        report_.error(pending.of.value, [&] {
            const auto other = std::find_if(ports.begin(), ports.end(), [&](const auto& one) {
                return one.port == target.port;
            });
            return Words{fmt::format("'{}' is the assembly's port '{}' already", clipped(token),
                                     clipped(other->letter)),
                         "each inner port declared once",
                         {}};
        });
    }
    declared_in_[target.port] = scope.assembly;
    ports.push_back({pending.letter, target.port});
}

void Builder::resolve_line(Scope& scope, const PendingJoin& pending) {
    const Index line = pending.index;
    const auto begin = static_cast<Index>(circuit_.line_ports.size());
    const GivenText joins = text_of(*scope.page, scope.page->document().attribute(pending.joins));
    const std::string_view text = joins.text;
    bool empty = true;
    each_word(text, [&](std::size_t first, std::size_t last) {
        empty = false;
        join(scope, line, text.substr(first, last - first), part_of(joins, first, last));
    });
    circuit_.lines[line].joins = {begin, static_cast<Index>(circuit_.line_ports.size())};
    if (empty) {
        report_.error(joins.whole, [&] {
            return Words{fmt::format("{} '{}' joins nothing",
                                     circuit_.lines[line].flexible ? "hose" : "line",
                                     clipped(circuit_.lines[line].path)),
                         "ports as component.port, separated by blanks",
                         {}};
        });
    }
}

void Builder::join(Scope& scope, Index line, std::string_view token, SourceRef place) {
    Target target;
    if (!find_port(scope, token, target)) {
        explain_port(scope, token, place);
        return;
    }
    if (target.port == none) {
        return;
    }
    Index& joined = target.assembly == none
                        ? joined_by_[target.port]
                        : assemblies_[target.assembly].joined_by[target.declared];
    if (joined == none) {
        joined = line;
    } else if (!target.doubtful) {
        explain_joined(line, joined, token, place);
        return;
    }
    circuit_.line_ports.push_back(target.port);
}

void Builder::resolve_shaft(Scope& scope, const PendingJoin& pending) {
    const Index shaft = pending.index;
    const auto begin = static_cast<Index>(circuit_.shaft_components.size());
    bool empty = true;
    const GivenText joins = text_of(*scope.page, scope.page->document().attribute(pending.joins));
    each_word(joins.text, [&](std::size_t first, std::size_t last) {
        empty = false;
        join_shaft(scope, shaft, joins.text.substr(first, last - first),
                   part_of(joins, first, last));
    });
    circuit_.shafts[shaft].joins = {begin, static_cast<Index>(circuit_.shaft_components.size())};
    if (empty) {
        report_.error(joins.whole, [&] {
            return Words{
                fmt::format("shaft '{}' joins nothing", clipped(circuit_.shafts[shaft].path)),
                "ids of what turns with it, separated by blanks",
                {}};
        });
    }
}

const Name* Builder::find_path(const Scope& scope, std::string_view path) const {
    NameScope names = scope.names;
    for (;;) {
        const std::size_t slash = path.find('/');
        const Name* const name = names_.find(names, path.substr(0, slash));
        if (name == nullptr || slash == std::string_view::npos) {
            return name;
        }
        if (name->type != NameType::assembly) {
            return name->type == NameType::unusable ? name : nullptr;
        }
        if (assemblies_[name->index].doubtful &&
            names_.find(NameScope::assembly(name->index),
                        path.substr(slash + 1, path.find('/', slash + 1) - slash - 1)) == nullptr) {
            return &unreadable_;
        }
        names = NameScope::assembly(name->index);
        path.remove_prefix(slash + 1);
    }
}

void Builder::join_shaft(Scope& scope, Index shaft, std::string_view token, SourceRef place) {
    const std::size_t dot = token.find('.');
    const Name* const name = find_path(scope, token.substr(0, dot));
    const bool has_ends = name != nullptr && name->type == NameType::component &&
                          !circuit_.components[name->index].kind->ends.empty();
    if (name == nullptr || (dot != std::string_view::npos && !has_ends)) {
        explain_shaft(scope, token, place);
        return;
    }
    if (name->type == NameType::unusable) {
        return;
    }
    if (name->type != NameType::component || !circuit_.components[name->index].kind->turns) {
        report_.error(place, [&] {
            return Words{
                name->type == NameType::component
                    ? fmt::format("'{}' is {} and has no shaft", clipped(token), kind_of(*name))
                    : fmt::format("'{}' is {}", clipped(token), kind_of(*name)),
                name->type == NameType::assembly
                    ? fmt::format("a part inside, written {}/id", clipped(token))
                    : "a component that turns, such as a motor or an engine",
                {}};
        });
        return;
    }
    Component& component = circuit_.components[name->index];
    bool far = false;
    if (has_ends) {
        const auto ends = component.kind->ends;
        const std::string_view end =
            dot == std::string_view::npos ? std::string_view() : token.substr(dot + 1);
        far = end == ends.back();
        if (!far && end != ends.front()) {
            explain_end(*name, token, place);
            return;
        }
    }
    Index& on = far ? component.far_shaft : component.shaft;
    const Index beyond = has_ends ? (far ? component.shaft : component.far_shaft) : none;
    if (on != none || beyond == shaft) {
        if (!name->doubtful) {
            explain_turning(shaft, on, token, place);
        }
        return;
    }
    on = shaft;
    circuit_.shaft_components.push_back(name->index);
}

}  // namespace loopwright
