#include <loopwright/parser/builder.h>

#include <algorithm>
#include <limits>

#include <fmt/core.h>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/clipped.h>
#include <loopwright/parser/each_inner.h>
#include <loopwright/parser/short_text.h>

// A component with its attributes, and the ports and passages that its kind gives it.

namespace loopwright {

void Builder::component(Scope& scope, const ElementWords& words, std::uint32_t element) {
    const Page& page = *scope.page;
    const ScannedElement& scanned = page.document().element(element);
    if (limit_reached(page, scanned.name(), circuit_.components.size(), "components")) {
        return;
    }
    Given given = read_given(page, words, element);
    const auto index = static_cast<Index>(circuit_.components.size());
    Component& component = circuit_.components.emplace_back();
    component.kind = words.kind;
    component.assembly = scope.assembly;
    component.place = page.at(scanned.tag());
    component.path =
        path_of(scope, element, take_id(scope, words, given, NameType::component, index));
    if (!overrides_.empty()) {
        apply_overrides(words, component.path, given);
    }
    check_required(page, words, given, element);
    if (given.has(words.title)) {
        component.title = text_of(page, given, words.title).text;
    }
    if (given.has(words.designation)) {
        component.designation = text_of(page, given, words.designation).text;
    }

    bool doubtful = false;
    Values values;
    // Room for all, so that none moves while the component is made.
    if (circuit_.attributes.capacity() - circuit_.attributes.size() < words.figures) {
        circuit_.attributes.reserve(2 * circuit_.attributes.capacity() + words.figures);
    }
    component.attributes.begin = static_cast<Index>(circuit_.attributes.size());
    for (Slot slot = 0; slot < words.figures; ++slot) {
        const AttributeValue& usual = words.defaults[slot];
        values[slot] = usual.spec != nullptr ? &usual : nullptr;
        if (!given.has(slot)) {
            continue;
        }
        AttributeValue& value = circuit_.attributes.emplace_back();
        if (read_given_value(page, words, given, slot, value)) {
            values[slot] = &value;
        } else {
            circuit_.attributes.pop_back();
            doubtful = doubtful || words.decides(slot);
        }
    }
    component.attributes.end = static_cast<Index>(circuit_.attributes.size());
    doubtful_.push_back(doubtful);
    check_agreements(words, values);

    kind_ports(words, component, index, values);
    if (words.kind->children != Children::no) {
        declared_parts(page, words, element, index);
    } else if (scanned.next != element + 1) {
        each_inner(page, element, words.name, "component",
                   [&](const ElementWords& inner, std::uint32_t child) {
                       inner_part(page, inner, child, index);
                   });
    }
}

void Builder::check_agreements(const ElementWords& words, const Values& values) {
    for (const Agreement& agreement : words.agreements) {
        if (values[agreement.slot] == nullptr || values[agreement.other] == nullptr) {
            continue;
        }
        const AttributeValue& value = *values[agreement.slot];
        const AttributeValue& other = *values[agreement.other];
        if (!value.given) {
            continue;
        }
        if (agreement.needs.empty()) {
            if (value.si > other.si) {
                report_.error(value.place, [&] {
                    return Words{
                        fmt::format("{} is above {}: '{}' and '{}'", value.spec->name,
                                    other.spec->name, clipped(value.text), clipped(other.text)),
                        fmt::format("at most {}", clipped(other.text)),
                        {}};
                });
            }
        } else if (other.text != agreement.needs && !doubtful_.back()) {
            report_.warning(value.place, [&] {
                return Words{fmt::format("{} says nothing with {}=\"{}\"", value.spec->name,
                                         other.spec->name, other.text),
                             fmt::format("{}=\"{}\", or no {}", other.spec->name, agreement.needs,
                                         value.spec->name),
                             {}};
            });
        }
    }
}

std::uint32_t Builder::conditions_of(const ElementWords& words, const Values& values) {
    std::uint32_t held = 0;
    for (std::size_t i = 0; i < words.conditions.size(); ++i) {
        const Condition& condition = words.conditions[i];
        if (values[condition.slot] == nullptr) {
            continue;
        }
        const std::string_view text = values[condition.slot]->text;
        if (std::any_of(condition.words.begin(), condition.words.end(),
                        [text](std::string_view word) { return same_text(word, text); })) {
            held |= 1U << i;
        }
    }
    return held;
}

void Builder::kind_ports(const ElementWords& words, Component& component, Index index,
                         const Values& values) {
    const Kind& kind = *words.kind;
    const std::uint32_t held = conditions_of(words, values);
    const auto is_there = [held](std::uint32_t needs) { return (needs & held) == needs; };

    std::array<Index, 32> ports;
    component.ports.begin = static_cast<Index>(circuit_.ports.size());
    first_port_.push_back(component.ports.begin);
    for (std::size_t i = 0; i < kind.ports.size(); ++i) {
        ports[i] = none;
        if (is_there(words.port_needs[i])) {
            ports[i] = static_cast<Index>(circuit_.ports.size());
            add_port(index, kind.ports[i].letter, component.place).use = kind.ports[i].use;
        }
    }
    component.ports.end = static_cast<Index>(circuit_.ports.size());

    std::array<Index, 8> positions;
    component.positions.begin = static_cast<Index>(circuit_.positions.size());
    for (std::size_t i = 0; i < kind.positions.size(); ++i) {
        positions[i] = none;
        if (is_there(words.position_needs[i])) {
            positions[i] = static_cast<Index>(circuit_.positions.size());
            Position& position = circuit_.positions.emplace_back();
            position.id = kind.positions[i].id;
            position.rest = kind.positions[i].rest;
            position.place = component.place;
        }
    }
    component.positions.end = static_cast<Index>(circuit_.positions.size());

    component.passages.begin = static_cast<Index>(circuit_.passages.size());
    for (const PassagePlan& plan : words.passages) {
        if (!is_there(plan.needs) || ports[plan.from] == none || ports[plan.to] == none) {
            continue;
        }
        const bool has_opening = plan.opening != no_slot && values[plan.opening] != nullptr;
        if (plan.spec->needs_opening && !has_opening) {
            continue;
        }
        Passage& passage = circuit_.passages.emplace_back();
        passage.from = ports[plan.from];
        passage.to = ports[plan.to];
        passage.component = index;
        passage.passage = plan.spec->passage;
        passage.shift = plan.spec->shift;
        passage.both_ways = plan.spec->both_ways;
        passage.bypass = plan.bypass;
        if (plan.pilot != PassagePlan::no_port) {
            passage.pilot = ports[plan.pilot];
        }
        if (plan.position != PassagePlan::no_position) {
            passage.position = positions[plan.position];
        }
        if (plan.spring_chamber != PassagePlan::no_port) {
            passage.spring_chamber = ports[plan.spring_chamber];
        }
        if (has_opening) {
            passage.opening = values[plan.opening]->si;
        } else if (plan.opening != no_slot && plan.spec->passage != PassageClass::one_way) {
            passage.opening = std::numeric_limits<double>::quiet_NaN();
        }
    }
    component.passages.end = static_cast<Index>(circuit_.passages.size());
}

}  // namespace loopwright
