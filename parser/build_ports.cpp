#include <loopwright/parser/builder.h>

#include <algorithm>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>

// Ports and positions that the file itself declares for a component.

namespace loopwright {

std::string Builder::owner_of(Index component) const {
    const Component& owner = circuit_.components[component];
    return owner.path.empty() ? fmt::format("this {}", owner.kind->name)
                              : fmt::format("{} '{}'", owner.kind->name, clipped(owner.path));
}

void Builder::declared_parts(const Page& page, const ElementWords& words, std::uint32_t element,
                             Index component) {
    const XmlDocument& document = page.document();
    bool strangers = false;
    const bool takes_positions = words.kind->children == Children::ports_and_positions;
    for (Index port = circuit_.components[component].ports.begin;
         port < circuit_.components[component].ports.end; ++port) {  // that the kind has already
        names_.add(NameScope::ports(component), circuit_.ports[port].letter,
                   {NameType::port, false, port});
    }
    const std::uint32_t end = document.element(element).next;
    for (std::uint32_t child = element + 1; child < end; child = document.element(child).next) {
        const std::string_view name = document.name(document.element(child));
        if (name == "port") {
            declared_port(page, child, component);
        } else if (!takes_positions || name != "position") {
            strangers = true;
            doubtful_[component] = true;
            report_.error(page.at(document.element(child).name()), [&] {
                std::vector<std::string_view> known{"port"};
                if (takes_positions) {
                    known.push_back("position");
                }
                return Words{fmt::format("'{}' cannot stand in '{}'", clipped(name), words.name),
                             list_of(known), std::string(nearest_word(name, known))};
            });
        }
    }
    if (takes_positions) {
        if (circuit_.components[component].ports.size() == 0 && !doubtful_[component]) {
            report_.error(page.at(document.element(element).name()), [&] {
                return Words{fmt::format("{} has no ports", owner_of(component)),
                             "a 'port' element for each, such as <port id=\"P\"/>",
                             {}};
            });
            doubtful_[component] = true;
        }
        positions(page, element, component, strangers);
    } else if (words.kind->children == Children::legs) {
        divide_ports(page.at(document.element(element).name()), component);
    } else if (words.kind->children == Children::pairs) {
        pair_ports(page.at(document.element(element).name()), component);
    } else {
        join_ports(component);
    }
}

/// The first port leads to the second, the third to the fourth.
void Builder::pair_ports(SourceRef place, Index component) {
    Component& owner = circuit_.components[component];
    if ((owner.ports.size() == 0 || owner.ports.size() % 2 != 0) && !doubtful_[component]) {
        report_.error(place, [&] {
            return Words{fmt::format("{} has {} port{}", owner_of(component), owner.ports.size(),
                                     owner.ports.size() == 1 ? "" : "s"),
                         R"('port' elements in pairs, such as <port id="A"/> <port id="B"/>)",
                         {}};
        });
    }
    owner.passages.begin = static_cast<Index>(circuit_.passages.size());
    for (Index port = owner.ports.begin; port + 1 < owner.ports.end; port += 2) {
        Passage& passage = circuit_.passages.emplace_back();
        passage.from = port;
        passage.to = port + 1;
        passage.component = component;
        passage.passage = PassageClass::joined;
        passage.both_ways = true;
    }
    owner.passages.end = static_cast<Index>(circuit_.passages.size());
}

/// Each declared port is a leg from the first, which the kind has.
void Builder::divide_ports(SourceRef place, Index component) {
    Component& owner = circuit_.components[component];
    const Index first = owner.ports.begin;
    const Index legs = owner.ports.size() - 1;
    if (legs < 2 && !doubtful_[component]) {
        report_.error(place, [&] {
            return Words{fmt::format("{} has {}", owner_of(component),
                                     legs == 0 ? "no legs" : "a single leg"),
                         "two or more 'port' elements, such as <port id=\"A\"/>",
                         {}};
        });
    }
    owner.passages.begin = static_cast<Index>(circuit_.passages.size());
    for (Index port = first + 1; port < owner.ports.end; ++port) {
        Passage& passage = circuit_.passages.emplace_back();
        passage.from = first;
        passage.to = port;
        passage.component = component;
        passage.passage = PassageClass::divider;
        passage.both_ways = true;
    }
    owner.passages.end = static_cast<Index>(circuit_.passages.size());
}

void Builder::declared_port(const Page& page, std::uint32_t element, Index component) {
    const bool reservoir = circuit_.components[component].kind->part == Part::reservoir;
    const ElementWords& words = reservoir ? vocabulary_.reservoir_port() : vocabulary_.plain_port();
    const Given given = read_given(page, words, element);
    check_required(page, words, given, element);
    no_children(page, element, words.name);
    bool sound = false;
    const std::string_view letter = id_text(page, words, given, &sound);
    const bool below_level =
        !reservoir ||
        value_of(page, words, given, vocabulary_.slot(words, "level")).text != "above";
    if (letter.empty()) {
        doubtful_[component] = true;
        return;
    }
    const auto index = static_cast<Index>(circuit_.ports.size());
    const Name* first =
        names_.add(NameScope::ports(component), letter, {NameType::port, false, index});
    if (first != nullptr || !sound) {
        doubtful_[component] = true;  // another id is meant, perhaps one that a line joins
    }
    if (first != nullptr) {
        report_duplicate(text_of(page, given, words.id), *first);
        return;
    }
    add_port(component, letter, page.at(page.document().element(element).tag())).below_level =
        below_level;
    circuit_.components[component].ports.end = index + 1;
}

void Builder::join_ports(Index component) {
    Component& owner = circuit_.components[component];
    owner.passages.begin = static_cast<Index>(circuit_.passages.size());
    for (Index port = owner.ports.begin + 1; port < owner.ports.end; ++port) {
        Passage& passage = circuit_.passages.emplace_back();
        passage.from = owner.ports.begin;
        passage.to = port;
        passage.component = component;
        passage.passage = PassageClass::joined;
        passage.both_ways = true;
    }
    owner.passages.end = static_cast<Index>(circuit_.passages.size());
}

void Builder::positions(const Page& page, std::uint32_t element, Index component, bool doubtful) {
    const XmlDocument& document = page.document();
    const std::uint32_t end = document.element(element).next;
    const auto begin = static_cast<Index>(circuit_.positions.size());
    for (std::uint32_t child = element + 1; child < end; child = document.element(child).next) {
        if (document.name(document.element(child)) == "position") {
            position(page, child, component, doubtful);
        }
    }
    Component& owner = circuit_.components[component];
    owner.positions = {begin, static_cast<Index>(circuit_.positions.size())};
    owner.passages.end = static_cast<Index>(circuit_.passages.size());
    const SourceRef place = page.at(document.element(element).name());
    if (owner.positions.size() > limits_.positions) {
        report_.error(place, [&] {
            return Words{
                fmt::format("{} has {} positions", owner_of(component), owner.positions.size()),
                fmt::format("at most {}", limits_.positions),
                {}};
        });
        return;
    }
    if (owner.positions.size() == 0) {
        if (!doubtful) {
            report_.error(place, [&] {
                return Words{fmt::format("{} has no positions", owner_of(component)),
                             "a 'position' element for each, one of them with rest=\"yes\"",
                             {}};
            });
        }
        return;
    }
    const Position* first_rest = nullptr;
    for (const Position& one : circuit_.positions_of(owner)) {
        if (!one.rest) {
            continue;
        }
        if (first_rest == nullptr) {
            first_rest = &one;
            continue;
        }
        report_.error(one.place, [&] {
            return Words{fmt::format("position '{}' is a second rest position of {}",
                                     clipped(one.id), owner_of(component)),
                         fmt::format("rest=\"yes\" on one position only; '{}' has it",
                                     clipped(first_rest->id)),
                         {}};
        });
    }
    if (first_rest == nullptr && !doubtful) {
        report_.error(place, [&] {
            return Words{fmt::format("{} has no rest position", owner_of(component)),
                         "rest=\"yes\" on the position that it takes by itself",
                         {}};
        });
    }
}

void Builder::position(const Page& page, std::uint32_t element, Index component, bool& doubtful) {
    const XmlDocument& document = page.document();
    const ElementWords& words = vocabulary_.position();
    const Given given = read_given(page, words, element);
    check_required(page, words, given, element);
    Position position;
    position.id = id_text(page, words, given);
    position.place = page.at(document.element(element).tag());
    bool bad = false;
    const Slot rest = vocabulary_.slot(words, "rest");
    position.rest = value_of(page, words, given, rest, &bad).si != 0.0;
    doubtful = doubtful || bad;
    const Slot in = vocabulary_.slot(words, "in");
    if (given.has(in) && !given.guessed(in)) {
        position.in = states_of(text_of(page, given, in));
    }
    const auto index = static_cast<Index>(circuit_.positions.size());
    if (!position.id.empty()) {
        const Name* first = names_.add(NameScope::positions(component), position.id,
                                       {NameType::position, false, index});
        if (first != nullptr) {
            report_duplicate(text_of(page, given, words.id), *first);
            position.rest = false;  // one of the two is meant to be another
            doubtful = true;
        }
    }
    circuit_.positions.push_back(position);
    const std::uint32_t end = document.element(element).next;
    for (std::uint32_t child = element + 1; child < end; child = document.element(child).next) {
        const std::string_view name = document.name(document.element(child));
        if (name == "path") {
            path(page, child, component, index);
            continue;
        }
        report_.error(page.at(document.element(child).name()), [&] {
            return Words{fmt::format("'{}' cannot stand in 'position'", clipped(name)), "path",
                         std::string(nearest_word(name, {"path"}))};
        });
    }
}

void Builder::path(const Page& page, std::uint32_t element, Index component, Index position) {
    const ElementWords& words = vocabulary_.path();
    const Given given = read_given(page, words, element);
    check_required(page, words, given, element);
    no_children(page, element, words.name);
    Passage passage;
    passage.from = path_end(page, given, vocabulary_.slot(words, "from"), component);
    passage.to = path_end(page, given, vocabulary_.slot(words, "to"), component);
    passage.component = component;
    passage.position = position;
    passage.shift = Shift::position;
    passage.both_ways = true;
    const Slot throttled = vocabulary_.slot(words, "throttled");
    passage.passage = value_of(page, words, given, throttled).si != 0.0 ? PassageClass::metering
                                                                        : PassageClass::switched;
    if (passage.from != none && passage.from == passage.to) {
        report_.error(page.at(page.document().element(element).tag()), [&] {
            return Words{"the path leads from a port to itself", "two ports of the valve", {}};
        });
    }
    circuit_.passages.push_back(passage);
}

Index Builder::path_end(const Page& page, const Given& given, Slot slot, Index component) {
    if (!given.has(slot) || given.guessed(slot)) {
        return none;
    }
    const GivenText letter = text_of(page, given, slot);
    const Index port = port_of(component, letter.text);
    if (port == none && !doubtful_[component]) {
        report_.error(letter.value, [&] {
            const Name valve{NameType::component, false, component};
            const std::vector<std::string_view> known = letters_of(valve, most_listed + 1);
            return Words{
                fmt::format("{} has no port '{}'", owner_of(component), clipped(letter.text)),
                known.empty() ? "'port' elements in the valve, which declare its ports"
                              : list_of(known),
                std::string(near_letter(valve, letter.text))};
        });
    }
    return port;
}

std::uint16_t Builder::states_of(const GivenText& in) {
    std::uint16_t states = 0;
    std::size_t begin = 0;
    const std::string_view text = in.text;
    while ((begin = text.find_first_not_of(" \t\r\n", begin)) != std::string_view::npos) {
        const std::size_t end = std::min(text.find_first_of(" \t\r\n", begin), text.size());
        const std::string_view word = text.substr(begin, end - begin);
        if (const std::optional<State> state = state_named(word)) {
            states = static_cast<std::uint16_t>(states | (1U << static_cast<unsigned>(*state)));
        } else {
            report_.error(part_of(in, begin, end), [&] {
                std::vector<std::string_view> known;
                for (std::size_t i = 0; i < state_count; ++i) {
                    known.push_back(name(static_cast<State>(i)));
                }
                return Words{fmt::format("'{}' is no state", clipped(word)), list_of(known),
                             std::string(nearest_word(word, known))};
            });
        }
        begin = end;
    }
    return states;
}

}  // namespace loopwright
