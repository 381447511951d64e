#include <loopwright/parser/builder.h>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>

// Ids in what a circuit says beside its parts: of commands, waivers, remarks and the rest.

namespace loopwright {
namespace {

constexpr std::string_view subjects = "an id, a port such as P1.A, loop:P1, side:P1.A or circuit";

}  // namespace

const Name* Builder::named(Scope& scope, const GivenText& text, std::string_view path,
                           std::string_view expected) {
    const Name* const name = find_path(scope, path);
    if (name == nullptr) {
        explain_path(scope, path, text.value, expected);
        return nullptr;
    }
    return name->type == NameType::unusable || name->doubtful ? nullptr : name;
}

const Component* Builder::named_part(Scope& scope, const GivenText& text, std::string_view path,
                                     std::string_view expected, Index& index) {
    const Name* const name = named(scope, text, path, expected);
    if (name == nullptr) {
        return nullptr;
    }
    if (name->type != NameType::component) {
        report_.error(text.value, [&] {
            return Words{fmt::format("'{}' is {}", clipped(path), kind_of(*name)),
                         fmt::format(fmt::runtime(expected), "this circuit"),
                         {}};
        });
        return nullptr;
    }
    index = name->index;
    return &circuit_.components[index];
}

Index Builder::named_position(const GivenText& text, Index component, std::string_view position) {
    const Component& valve = circuit_.components[component];
    std::vector<std::string_view> known;
    for (Index i = valve.positions.begin; i < valve.positions.end; ++i) {
        if (circuit_.positions[i].id == position) {
            return i;
        }
        known.push_back(circuit_.positions[i].id);
    }
    if (!doubtful_[component]) {
        report_.error(text.value, [&] {
            return Words{known.empty() ? fmt::format("{} has no positions", owner_of(component))
                                       : fmt::format("{} has no position '{}'", owner_of(component),
                                                     clipped(position)),
                         known.empty() ? "a valve with positions, such as a directional-valve"
                                       : list_of(known),
                         std::string(nearest_word(position, known))};
        });
    }
    return none;
}

bool Builder::read_subject(Scope& scope, const GivenText& text, Subject& subject) {
    subject.id = text.text;
    if (text.text == "circuit") {
        return true;
    }
    std::string_view path = text.text;
    const std::size_t colon = path.find(':');
    subject.type = ElementType::component;
    if (colon != std::string_view::npos) {
        const std::string_view what = path.substr(0, colon);
        if (what != "loop" && what != "side") {
            report_.error(text.value, [&] {
                return Words{fmt::format("'{}' is no subject", clipped(text.text)),
                             std::string(subjects),
                             std::string(nearest_word(what, {"loop", "side"}))};
            });
            return false;
        }
        subject.type = what == "loop" ? ElementType::loop : ElementType::side;
        path.remove_prefix(colon + 1);
    }
    const std::size_t dot = path.find('.');
    const Name* const name = named(scope, text, path.substr(0, dot), subjects);
    if (name == nullptr) {
        return false;
    }
    const bool wants_port = subject.type == ElementType::side;
    if (dot != std::string_view::npos && subject.type != ElementType::loop) {
        Target target;
        if (name->type == NameType::component) {
            target.port = port_of(name->index, path.substr(dot + 1));
        } else if (path.find('/') == std::string_view::npos) {
            find_port(scope, path, target);
        }
        if (target.port == none) {
            if (name->type == NameType::component || name->type == NameType::assembly) {
                explain_letter(*name, path, text.value);
                return false;
            }
        } else {
            subject.index = target.port;
            subject.type = wants_port ? ElementType::side : ElementType::port;
            return true;
        }
    } else if (name->type == NameType::component && !wants_port) {
        subject.index = name->index;
        return true;
    } else if (subject.type == ElementType::component &&
               (name->type == NameType::line || name->type == NameType::shaft)) {
        subject.type = name->type == NameType::line ? ElementType::line : ElementType::shaft;
        subject.index = name->index;
        return true;
    }
    report_.error(text.value, [&] {
        return Words{
            name->type == NameType::component
                ? fmt::format("'{}' is no {}", clipped(text.text), loopwright::name(subject.type))
                : fmt::format("'{}' is {}", clipped(path), kind_of(*name)),
            std::string(subjects),
            {}};
    });
    return false;
}

}  // namespace loopwright
