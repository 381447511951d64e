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
    const bool takes_passages = words.kind->children == Children::ports_and_passages;
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
        } else if (const ElementWords* const inner = vocabulary_.definition(name, "component");
                   inner != nullptr) {
            inner_part(page, *inner, child, component);
        } else if (!(takes_positions && name == "position") &&
                   !(takes_passages && name == "passage")) {
            strangers = true;
            doubtful_[component] = true;
            report_.error(page.at(document.element(child).name()), [&] {
                std::vector<std::string_view> known{"port"};
                if (takes_positions) {
                    known.push_back("position");
                } else if (takes_passages) {
                    known.push_back("passage");
                }
                known.insert(known.end(), {"table", "tolerance"});
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
    } else if (takes_passages) {
        passages(page, element, component);
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
    const std::string_view level =
        reservoir ? value_of(page, words, given, vocabulary_.slot(words, "level")).text : "";
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
    Port& port = add_port(component, letter, page.at(page.document().element(element).tag()));
    port.below_level = level != "above";
    port.level_given = !level.empty();
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

}  // namespace loopwright
