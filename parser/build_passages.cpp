#include <loopwright/parser/builder.h>

#include <algorithm>
#include <limits>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/each_inner.h>

// Positions and passages that the file itself declares for a component.

namespace loopwright {

void Builder::passages(const Page& page, std::uint32_t element, Index component) {
    Component& owner = circuit_.components[component];
    owner.passages.begin = static_cast<Index>(circuit_.passages.size());
    const bool unknown = circuit_.choice(owner, "inside") == "unknown";
    const XmlDocument& document = page.document();
    const SourceRef place = page.at(document.element(element).name());
    const std::uint32_t end = document.element(element).next;
    bool any = false;
    for (std::uint32_t child = element + 1; child < end; child = document.element(child).next) {
        const ElementWords* const words =
            vocabulary_.definition(document.name(document.element(child)), "device");
        if (words == nullptr) {
            continue;
        }
        any = true;
        const Entry entry = enter(page, *words, child);
        no_children(page, child, words->name);
        passage(entry, component);
        if (unknown) {
            report_.error(page.at(document.element(child).name()), [&] {
                return Words{
                    fmt::format("{} has a passage, but its inside is unknown", owner_of(component)),
                    "passages, or inside=\"unknown\"",
                    {}};
            });
        }
    }
    owner.passages.end = static_cast<Index>(circuit_.passages.size());
    if (!any && !unknown && !doubtful_[component]) {
        report_.error(place, [&] {
            return Words{fmt::format("{} says nothing of its inside", owner_of(component)),
                         R"(a 'passage' for each way, such as <passage from="A" to="B" )"
                         R"(class="joined"/>, or inside="unknown")",
                         {}};
        });
    }
}

void Builder::passage(const Entry& entry, Index component) {
    Passage passage;
    passage.from =
        path_end(entry.page, entry.given, vocabulary_.slot(entry.words, "from"), component);
    passage.to = path_end(entry.page, entry.given, vocabulary_.slot(entry.words, "to"), component);
    passage.component = component;
    const Range figures = keep_figures(entry);
    const AttributeValue* const kind = figure_in(figures, "class");
    const AttributeValue* const both = figure_in(figures, "both-ways");
    const AttributeValue* const opening = figure_in(figures, "opening");
    if (kind == nullptr) {
        return;
    }
    for (const PassageClass known :
         {PassageClass::joined, PassageClass::one_way, PassageClass::pressure_opened,
          PassageClass::reduced, PassageClass::metering, PassageClass::element}) {
        if (name(known) == kind->text) {
            passage.passage = known;
        }
    }
    const bool opens = passage.passage == PassageClass::one_way ||
                       passage.passage == PassageClass::pressure_opened ||
                       passage.passage == PassageClass::reduced;
    passage.both_ways = passage.passage == PassageClass::joined || both->si != 0.0;
    if (passage.passage == PassageClass::one_way && both->given && both->si != 0.0) {
        report_.error(both->place, [] {
            return Words{"what is one-way does not pass back", "both-ways=\"no\"", {}};
        });
    }
    if (opening != nullptr && !opens) {
        report_.error(opening->place, [&] {
            return Words{fmt::format("class {} takes no pressure to open", kind->text),
                         "class one-way, pressure-opened or reduced",
                         {}};
        });
    }
    if (opening != nullptr) {
        passage.opening = opening->si;
    } else if (opens && passage.passage != PassageClass::one_way) {
        passage.opening = std::numeric_limits<double>::quiet_NaN();
    }
    if (passage.from != none && passage.from == passage.to) {
        report_.error(tag_of(entry), [] {
            return Words{"the passage leads from a port to itself", "two ports of the device", {}};
        });
    }
    circuit_.passages.push_back(passage);
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
