#include <loopwright/parser/vocabulary.h>

#include <algorithm>
#include <stdexcept>

#include <loopwright/parser/attribute_value.h>
#include <loopwright/parser/kinds/catalogue.h>
#include <loopwright/parser/kinds/elements.h>
#include <loopwright/parser/short_text.h>

namespace loopwright {
namespace {

struct AgreementWords {
    std::string_view attribute = {};
    std::string_view other = {};
    std::string_view needs = {};
};
constexpr AgreementWords agreements[] = {
    {"min-displacement", "displacement", {}},
    {"setting", "full-flow-pressure", {}},
    {"case-ports", "drain", "external"},
    {"case-pressure", "drain", "external"},
    {"case-pressure", "peak-case-pressure", {}},
    {"seal-pressure", "drain", "internal"},
    {"rated-pressure", "max-pressure", {}},
    {"max-pressure", "peak-pressure", {}},
    {"peak-pressure", "burst-pressure", {}},
    {"rating", "burst-pressure", {}},
    {"idle-speed", "speed", {}},
    {"speed", "max-speed", {}},
    {"min-speed", "max-speed", {}},
    {"rated-speed", "max-speed", {}},
    {"min-viscosity", "max-viscosity", {}},
    {"control-start", "control-end", {}},
    {"release-pressure", "full-release-pressure", {}},
    {"rod", "bore", {}},
    {"min-volume", "volume", {}},
    {"volume", "max-volume", {}},
    {"pressure", "max-pressure", {}},
    {"pressure", "breather", "no"},
    {"bypass", "collapse-pressure", {}},
    {"indicator-pressure", "bypass", {}},
};

std::vector<const AttributeSpec*> with(std::vector<const AttributeSpec*> first,
                                       std::span<const AttributeSpec> more) {
    for (const AttributeSpec& spec : more) {
        const bool known = std::any_of(first.begin(), first.end(), [&spec](const auto* other) {
            return other->name == spec.name;
        });
        if (!known) {
            first.push_back(&spec);
        }
    }
    return first;
}

std::vector<std::string_view> split(std::string_view words) {
    std::vector<std::string_view> list;
    for (std::size_t begin = 0; begin <= words.size();) {
        const std::size_t end = std::min(words.find('|', begin), words.size());
        list.push_back(words.substr(begin, end - begin));
        begin = end + 1;
    }
    return list;
}

std::uint32_t port_index(const Kind& kind, std::string_view letter) {
    for (std::size_t i = 0; i < kind.ports.size(); ++i) {
        if (kind.ports[i].letter == letter) {
            return static_cast<std::uint32_t>(i);
        }
    }
    throw std::logic_error("kind table: a passage of " + std::string(kind.name) +
                           " leads to no port");
}

std::uint32_t position_index(const Kind& kind, std::string_view id) {
    for (std::size_t i = 0; i < kind.positions.size(); ++i) {
        if (kind.positions[i].id == id) {
            return static_cast<std::uint32_t>(i);
        }
    }
    throw std::logic_error("kind table: a passage of " + std::string(kind.name) +
                           " stands open in no position");
}

Slot slot_of(const ElementWords& words, std::string_view name) {
    for (std::size_t i = 0; i < words.attributes.size(); ++i) {
        if (words.attributes[i]->name == name) {
            return static_cast<Slot>(i);
        }
    }
    return no_slot;
}

}  // namespace

bool ElementWords::decides(Slot slot) const {
    return std::any_of(conditions.begin(), conditions.end(),
                       [slot](const Condition& condition) { return condition.slot == slot; });
}

const Vocabulary& Vocabulary::shared() {
    static const Vocabulary words;
    return words;
}

Vocabulary::Vocabulary() {
    elements_.reserve(kinds().size() + definitions().size() + 16);
    for (const Kind* kind : kinds()) {
        add_kind(*kind);
    }
    add_own_elements();
    if (kinds().size() > kind_entry_count / 2) {
        throw std::logic_error("vocabulary: too many kinds for its table");
    }
    for (const ElementWords& words : elements_) {  // where they stay
        if (words.kind == nullptr) {
            continue;
        }
        std::size_t at = first_entry(*words.kind);
        while (kind_entries_[at] != nullptr) {
            at = (at + 1) % kind_entry_count;
        }
        kind_entries_[at] = &words;
    }
}

void Vocabulary::add_own_elements() {
    const auto own = [this](std::string_view word, ElementRole role, std::string_view name,
                            std::string_view in) {
        return add(word, role, with({}, find_element(name, in)->attributes));
    };
    own("circuit", ElementRole::circuit, "circuit", "");
    own("line", ElementRole::line, "line", "circuit");
    own("hose", ElementRole::hose, "hose", "circuit");
    own("shaft", ElementRole::shaft, "shaft", "circuit");
    own("assembly", ElementRole::assembly, "assembly", "circuit");
    own("use", ElementRole::use, "use", "circuit");
    // Known by where they stand, not by their names alone.
    assembly_root_ = own("", ElementRole::assembly, "assembly", "");
    reservoir_port_ = own("", ElementRole::port, "port", "reservoir");
    plain_port_ = own("", ElementRole::port, "port", "component");
    assembly_port_ = own("", ElementRole::port, "port", "assembly");
    position_ = own("", ElementRole::position, "position", "directional-valve");
    path_ = own("", ElementRole::path, "path", "position");
    set_ = own("", ElementRole::set, "set", "use");
    first_definition_ = static_cast<std::uint32_t>(elements_.size());
    for (const ElementSpec& spec : definitions()) {
        const std::uint32_t index = add(spec.in == "circuit" ? spec.name : std::string_view(),
                                        ElementRole::definition, with({}, spec.attributes));
        elements_[index].definition = &spec;
    }
    // After the hashing, for messages.
    elements_[assembly_root_].name = "assembly";
    for (const std::uint32_t port : {reservoir_port_, plain_port_, assembly_port_}) {
        elements_[port].name = "port";
    }
    elements_[position_].name = "position";
    elements_[path_].name = "path";
    elements_[set_].name = "set";
    for (std::size_t i = 0; i < definitions().size(); ++i) {
        elements_[first_definition_ + i].name = definitions()[i].name;
    }
}

std::uint32_t Vocabulary::add(std::string_view name, ElementRole role,
                              std::vector<const AttributeSpec*> attributes) {
    if (attributes.size() > slot_count) {
        throw std::logic_error("kind table: more attributes than the reader has slots");
    }
    const auto index = static_cast<std::uint32_t>(elements_.size());
    ElementWords& words = elements_.emplace_back();
    words.name = name;
    words.role = role;
    words.index = index;
    words.first_slot = slots_;
    slots_ += static_cast<std::uint32_t>(attributes.size());
    words.attributes = std::move(attributes);
    words.defaults.resize(words.attributes.size());
    Words trouble;
    for (std::size_t i = 0; i < words.attributes.size(); ++i) {
        const AttributeSpec& spec = *words.attributes[i];
        words.names.push_back(spec.name);
        insert(hash_text(spec.name, index), index, static_cast<Slot>(i));
        if (spec.required) {
            words.required.push_back(static_cast<Slot>(i));
        }
        if (!spec.default_text.empty()) {
            AttributeValue& value = words.defaults[i];
            value.spec = &spec;
            value.given = false;
            if (!read_value(spec, spec.default_text, value, trouble)) {
                throw std::logic_error("kind table: " + trouble.message);
            }
        }
    }
    words.id = slot_of(words, "id");
    words.title = slot_of(words, "title");
    words.designation = slot_of(words, "designation");
    for (const AgreementWords& one : agreements) {
        const Agreement agreement{slot_of(words, one.attribute), slot_of(words, one.other),
                                  one.needs};
        if (agreement.slot != no_slot && agreement.other != no_slot) {
            words.agreements.push_back(agreement);
        }
    }
    if (!name.empty()) {
        insert(hash_text(name, element_seed), index, no_slot);
    }
    return index;
}

void Vocabulary::add_kind(const Kind& kind) {
    std::vector<const AttributeSpec*> attributes = with({}, kind.attributes);
    const auto figures = static_cast<Slot>(attributes.size());
    attributes = with(std::move(attributes), common_attributes());
    ElementWords& words = elements_[add(kind.name, ElementRole::component, std::move(attributes))];
    words.kind = &kind;
    words.figures = figures;
    for (const PortSpec& port : kind.ports) {
        words.port_needs.push_back(condition_bits(words, port.when) |
                                   condition_bits(words, port.also));
    }
    for (const PositionSpec& position : kind.positions) {
        words.position_needs.push_back(condition_bits(words, position.when));
    }
    const bool has_element =
        std::any_of(kind.passages.begin(), kind.passages.end(),
                    [](const PassageSpec& spec) { return spec.passage == PassageClass::element; });
    for (const PassageSpec& spec : kind.passages) {
        PassagePlan plan;
        plan.spec = &spec;
        plan.from = port_index(kind, spec.from);
        plan.to = port_index(kind, spec.to);
        if (!spec.pilot.empty()) {
            plan.pilot = port_index(kind, spec.pilot);
        }
        if (!spec.position.empty()) {
            plan.position = position_index(kind, spec.position);
        }
        if (!spec.spring_chamber.empty()) {
            plan.spring_chamber = port_index(kind, spec.spring_chamber);
        }
        plan.needs = condition_bits(words, spec.when) | condition_bits(words, spec.also);
        plan.bypass = has_element && spec.passage == PassageClass::pressure_opened;
        if (!spec.opening.empty()) {
            plan.opening = slot_of(words, spec.opening);
            if (plan.opening == no_slot) {
                throw std::logic_error("kind table: an opening without its attribute");
            }
        }
        words.passages.push_back(plan);
    }
}

std::uint32_t Vocabulary::condition_bits(ElementWords& words, const When& when) {
    if (when.attribute.empty()) {
        return 0;
    }
    const Slot slot = slot_of(words, when.attribute);
    std::vector<std::string_view> values = split(when.is);
    for (std::size_t i = 0; i < words.conditions.size(); ++i) {
        if (words.conditions[i].slot == slot && words.conditions[i].words == values) {
            return 1U << i;
        }
    }
    if (slot == no_slot || words.conditions.size() >= 32) {
        throw std::logic_error("kind table: a condition that the reader cannot hold");
    }
    words.conditions.push_back({slot, std::move(values)});
    return 1U << (words.conditions.size() - 1);
}

void Vocabulary::insert(std::uint64_t hash, std::uint32_t element, Slot slot) {
    if (++entries_used_ > entry_count / 2) {
        throw std::logic_error("vocabulary: too many names for its table");
    }
    std::size_t at = hash % entry_count;
    while (entries_[at].used) {
        at = (at + 1) % entry_count;
    }
    entries_[at] = {static_cast<std::uint32_t>(hash >> 32), static_cast<std::uint16_t>(element),
                    slot, true};
}

const ElementWords* Vocabulary::element(std::string_view name) const {
    const std::uint64_t hash = hash_text(name, element_seed);
    const auto tag = static_cast<std::uint32_t>(hash >> 32);
    for (std::size_t at = hash % entry_count; entries_[at].used; at = (at + 1) % entry_count) {
        const Entry& entry = entries_[at];
        if (entry.tag == tag && entry.slot == no_slot &&
            same_text(elements_[entry.element].name, name)) {
            return &elements_[entry.element];
        }
    }
    return nullptr;
}

const ElementWords* Vocabulary::definition(std::string_view name, std::string_view in) const {
    const ElementSpec* const spec = find_definition(name, in);
    return spec == nullptr
               ? nullptr
               : &elements_[first_definition_ + static_cast<std::size_t>(spec - &definitions()[0])];
}

std::size_t Vocabulary::first_entry(const Kind& kind) {
    return (reinterpret_cast<std::uintptr_t>(&kind) / alignof(Kind)) * 0x9E3779B97F4A7C15U >> 55;
}

const ElementWords* Vocabulary::element_of(const Kind& kind) const {
    std::size_t at = first_entry(kind);
    while (kind_entries_[at] != nullptr && kind_entries_[at]->kind != &kind) {
        at = (at + 1) % kind_entry_count;
    }
    return kind_entries_[at];
}

Slot Vocabulary::slot(const ElementWords& element, std::string_view name) const {
    const std::uint64_t hash = hash_text(name, element.index);
    const auto tag = static_cast<std::uint32_t>(hash >> 32);
    for (std::size_t at = hash % entry_count; entries_[at].used; at = (at + 1) % entry_count) {
        const Entry& entry = entries_[at];
        if (entry.tag == tag && entry.element == element.index && entry.slot != no_slot &&
            same_text(element.names[entry.slot], name)) {
            return entry.slot;
        }
    }
    return no_slot;
}

std::vector<std::string_view> Vocabulary::content_names(bool in_assembly) const {
    std::vector<std::string_view> names;
    for (const ElementWords& words : elements_) {
        if (words.role == ElementRole::component) {
            names.push_back(words.name);
        }
    }
    for (const std::string_view name : {"line", "hose", "shaft", "assembly", "use"}) {
        names.push_back(name);
    }
    if (in_assembly) {
        names.push_back("port");
    } else {
        for (const ElementSpec& spec : definitions()) {
            if (spec.in == "circuit") {
                names.push_back(spec.name);
            }
        }
    }
    return names;
}

}  // namespace loopwright
