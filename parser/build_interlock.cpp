#include <loopwright/parser/builder.h>

#include <optional>

#include <fmt/core.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>

// What the controls prevent, and when.

namespace loopwright {
namespace {

constexpr std::string_view conditions =
    "a condition such as 'S1 closed', 'PS1 below 12 bar', 'V3.a', 'E1 turns' or 'Z1 off-neutral'";
constexpr std::string_view actions = "'start E1', 'V3.a' or 'move Z1'";

struct Word {
    std::string_view text = {};
    Trigger trigger = Trigger::closed;
};
constexpr Word words[] = {
    {"closed", Trigger::closed},   {"open", Trigger::open},
    {"below", Trigger::below},     {"above", Trigger::above},
    {"turns", Trigger::turns},     {"stands", Trigger::stands},
    {"neutral", Trigger::neutral}, {"off-neutral", Trigger::off_neutral},
    {"clogged", Trigger::clogged},
};

/// The first word of a text, and what follows it.
std::pair<std::string_view, std::string_view> first_word(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n";
    const std::size_t begin = std::min(text.find_first_not_of(blanks), text.size());
    const std::size_t end = std::min(text.find_first_of(blanks, begin), text.size());
    std::string_view rest = text.substr(end);
    rest.remove_prefix(std::min(rest.find_first_not_of(blanks), rest.size()));
    while (!rest.empty() && blanks.find(rest.back()) != std::string_view::npos) {
        rest.remove_suffix(1);
    }
    return {text.substr(begin, end - begin), rest};
}

}  // namespace

void Builder::interlock(Scope& scope, const Entry& entry) {
    no_children(entry.page, entry.element, entry.words.name);
    Interlock interlock;
    interlock.place = tag_of(entry);
    const auto when = text_at(entry, "when");
    const auto prevents = text_at(entry, "prevents");
    bool sound = when.has_value() && prevents.has_value();
    if (when) {
        interlock.when_text = when->text;
        sound = read_condition(scope, *when, interlock) && sound;
    }
    if (prevents) {
        interlock.prevents_text = prevents->text;
        sound = read_prevented(scope, *prevents, interlock) && sound;
    }
    if (sound) {
        circuit_.interlocks.push_back(interlock);
    }
}

bool Builder::read_condition(Scope& scope, const GivenText& when, Interlock& interlock) {
    const auto [path, rest] = first_word(when.text);
    const auto [word, figure] = first_word(rest);
    const auto refuse = [&](std::string message, std::string expected, std::string near = {}) {
        report_.error(when.value, [&] {
            return Words{std::move(message), std::move(expected), std::move(near)};
        });
        return false;
    };
    if (word.empty()) {
        const std::size_t dot = path.rfind('.');
        if (path.empty() || dot == std::string_view::npos) {
            return refuse(fmt::format("'{}' is no condition", clipped(when.text)),
                          std::string(conditions));
        }
        if (named_part(scope, when, path.substr(0, dot), conditions, interlock.watched) ==
            nullptr) {
            return false;
        }
        interlock.when = Trigger::position;
        interlock.watched_position = named_position(when, interlock.watched, path.substr(dot + 1));
        return interlock.watched_position != none;
    }
    std::vector<std::string_view> known;
    const Word* found = nullptr;
    for (const Word& one : words) {
        known.push_back(one.text);
        found = one.text == word ? &one : found;
    }
    if (found == nullptr) {
        return refuse(fmt::format("'{}' is no condition of '{}'", clipped(word), clipped(path)),
                      list_of(known), std::string(nearest_word(word, known)));
    }
    interlock.when = found->trigger;
    const bool reads = found->trigger == Trigger::below || found->trigger == Trigger::above;
    if (!figure.empty() && !reads) {
        return refuse(fmt::format("'{}' says nothing behind '{}'", clipped(figure), word),
                      fmt::format("'{} {}'", clipped(path), word));
    }
    const Name* const name = named(scope, when, path, conditions);
    if (name == nullptr) {
        return false;
    }
    interlock.watched = name->index;
    const bool of_command =
        found->trigger == Trigger::neutral || found->trigger == Trigger::off_neutral;
    if (of_command != (name->type == NameType::command) ||
        (!of_command && name->type != NameType::component)) {
        return refuse(fmt::format("'{}' is {}; it is never {}", clipped(path), kind_of(*name),
                                  reads ? fmt::format("{} a figure", word) : std::string(word)),
                      std::string(conditions));
    }
    if (of_command) {
        return true;
    }
    const Component& part = circuit_.components[name->index];
    if (reads) {
        return read_level(when, part, figure, interlock);
    }
    const auto is_yes = [&](std::string_view attribute) {
        return circuit_.is_yes(part, attribute);
    };
    switch (found->trigger) {
        case Trigger::closed:
        case Trigger::open:
            if (part.kind->name == "shut-off-valve" && is_yes("switched")) {
                return true;
            }
            return refuse(fmt::format("nothing reports that '{}' is {}", clipped(path), word),
                          "a shut-off-valve with switched=\"yes\"");
        case Trigger::clogged:
            if (circuit_.choice(part, "clogging-indicator") == "electrical") {
                return true;
            }
            return refuse(fmt::format("nothing reports that '{}' is clogged", clipped(path)),
                          "a filter with clogging-indicator=\"electrical\"");
        default:
            if (part.kind->part == Part::prime_mover) {
                return true;
            }
            return refuse(fmt::format("'{}' is {}", clipped(path), kind_of(*name)),
                          "a prime mover");
    }
}

bool Builder::read_level(const GivenText& when, const Component& instrument,
                         std::string_view quantity, Interlock& interlock) {
    const std::string_view kind = instrument.kind->name;
    const std::string_view measured = circuit_.choice(instrument, "measures");
    std::optional<Dimension> dimension;
    if (kind == "pressure-switch" || (kind == "sensor" && measured == "pressure")) {
        dimension = Dimension::pressure;
    } else if (kind == "sensor" && measured == "temperature") {
        dimension = Dimension::temperature;
    } else if (kind == "sensor" && measured == "flow") {
        dimension = Dimension::flow;
    } else if (kind == "tachometer") {
        dimension = Dimension::speed;
    }
    const bool own_setting = kind == "pressure-switch" ||
                             (kind == "level-indicator" && circuit_.is_yes(instrument, "switched"));
    if (quantity.empty() && own_setting) {
        return true;
    }
    if (!dimension) {
        report_.error(when.value, [&] {
            return Words{
                fmt::format("{} gives no figure that a control could read",
                            owner_of(static_cast<Index>(&instrument - circuit_.components.data()))),
                "a pressure-switch, a sensor of pressure, temperature or flow, or a "
                "level-indicator with switched=\"yes\" and no figure",
                {}};
        });
        return false;
    }
    ParsedQuantity parsed = parse_quantity(quantity, *dimension);
    if (!parsed.ok()) {
        report_.error(when.value, [&] {
            return Words{std::move(parsed.message), std::move(parsed.expected),
                         std::move(parsed.suggestion)};
        });
        return false;
    }
    interlock.level = parsed.si;
    return true;
}

bool Builder::read_prevented(Scope& scope, const GivenText& prevents, Interlock& interlock) {
    const auto [verb, path] = first_word(prevents.text);
    const auto refuse = [&](std::string message, std::string near = {}) {
        report_.error(prevents.value, [&] {
            return Words{std::move(message), std::string(actions), std::move(near)};
        });
        return false;
    };
    if (path.empty()) {
        const std::size_t dot = verb.rfind('.');
        if (dot == std::string_view::npos) {
            return refuse(fmt::format("'{}' is nothing to prevent", clipped(prevents.text)));
        }
        if (named_part(scope, prevents, verb.substr(0, dot), actions, interlock.held) == nullptr) {
            return false;
        }
        interlock.prevents = Prevented::position;
        interlock.held_position = named_position(prevents, interlock.held, verb.substr(dot + 1));
        return interlock.held_position != none;
    }
    if (verb != "start" && verb != "move") {
        return refuse(fmt::format("'{}' is nothing to prevent", clipped(prevents.text)),
                      std::string(nearest_word(verb, {"start", "move"})));
    }
    const Name* const name = named(scope, prevents, path, actions);
    if (name == nullptr) {
        return false;
    }
    interlock.held = name->index;
    interlock.prevents = verb == "start" ? Prevented::start : Prevented::move;
    const bool fits = verb == "move"
                          ? name->type == NameType::command
                          : name->type == NameType::component &&
                                circuit_.components[name->index].kind->part == Part::prime_mover;
    return fits || refuse(fmt::format("'{}' is {}, no {}", clipped(path), kind_of(*name),
                                      verb == "move" ? "command" : "prime mover"));
}

}  // namespace loopwright
