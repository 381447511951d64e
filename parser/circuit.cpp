#include <loopwright/parser/circuit.h>

#include <loopwright/parser/vocabulary.h>

namespace loopwright {

const AttributeValue* Circuit::attribute(const Component& component, std::string_view name) const {
    const Vocabulary& vocabulary = Vocabulary::shared();
    const ElementWords* const words = vocabulary.element_of(*component.kind);
    const Slot slot = words == nullptr ? no_slot : vocabulary.slot(*words, name);
    if (slot == no_slot) return nullptr;
    const AttributeSpec* const spec = words->attributes[slot];
    for (const AttributeValue& value : attributes_of(component))
        if (value.spec == spec) return &value;
    const AttributeValue& by_default = words->defaults[slot];
    return by_default.spec == nullptr ? nullptr : &by_default;
}

bool Circuit::is_yes(const Component& component, std::string_view name) const {
    const AttributeValue* value = attribute(component, name);
    return value != nullptr && value->si != 0.0;
}

std::string_view Circuit::choice(const Component& component, std::string_view name) const {
    const AttributeValue* value = attribute(component, name);
    return value != nullptr ? value->text : std::string_view{};
}

std::optional<double> Circuit::figure(const Component& component, std::string_view name) const {
    const AttributeValue* value = attribute(component, name);
    if (value == nullptr) return std::nullopt;
    return value->si;
}

const AttributeValue* Circuit::find_figure(std::span<const AttributeValue> figures,
                                           std::string_view name) {
    for (const AttributeValue& value : figures)
        if (value.spec->name == name) return &value;
    return nullptr;
}

std::string Circuit::port_name(Index port) const {
    std::string name(components[ports[port].component].path);
    name += '.';
    name += ports[port].letter;
    return name;
}

std::string_view name(Trigger condition) {
    switch (condition) {
        case Trigger::closed:
            return "closed";
        case Trigger::open:
            return "open";
        case Trigger::below:
            return "below";
        case Trigger::above:
            return "above";
        case Trigger::position:
            return "position";
        case Trigger::turns:
            return "turns";
        case Trigger::stands:
            return "stands";
        case Trigger::neutral:
            return "neutral";
        case Trigger::off_neutral:
            return "off-neutral";
        case Trigger::clogged:
            return "clogged";
    }
    return {};
}

std::string_view name(Prevented prevented) {
    switch (prevented) {
        case Prevented::start:
            return "start";
        case Prevented::position:
            return "position";
        case Prevented::move:
            return "move";
    }
    return {};
}

std::string_view name(LineFunction function) {
    switch (function) {
        case LineFunction::not_declared:
            return {};
        case LineFunction::working:
            return "working";
        case LineFunction::charge:
            return "charge";
        case LineFunction::suction:
            return "suction";
        case LineFunction::return_:
            return "return";
        case LineFunction::drain:
            return "drain";
        case LineFunction::pilot:
            return "pilot";
    }
    return {};
}

std::string_view name(PassageClass passage) {
    switch (passage) {
        case PassageClass::joined:
            return "joined";
        case PassageClass::one_way:
            return "one-way";
        case PassageClass::pressure_opened:
            return "pressure-opened";
        case PassageClass::reduced:
            return "reduced";
        case PassageClass::switched:
            return "switched";
        case PassageClass::metering:
            return "metering";
        case PassageClass::divider:
            return "divider leg";
        case PassageClass::displacement:
            return "displacement";
        case PassageClass::leakage:
            return "leakage";
        case PassageClass::element:
            return "element";
    }
    return {};
}

}  // namespace loopwright
