#include <loopwright/rules/warm_oil.h>

#include <algorithm>

namespace loopwright {

namespace {

constexpr std::string_view bears = "max-temperature";

bool has_limit(const Component& component) {
    const auto& specs = component.kind->attributes;
    return std::any_of(specs.begin(), specs.end(),
                       [](const AttributeSpec& spec) { return spec.name == bears; });
}

}  // namespace

LeastLimit least_max_temperature(const Circuit& circuit, Docket& docket,
                                 std::span<const Index> components) {
    LeastLimit limit;
    for (const Index c : components) {
        const Component& component = circuit.components[c];
        if (!has_limit(component)) continue;
        const std::optional<double> own = circuit.figure(component, bears);
        if (!own) {
            limit.missing.push_back(docket.text(component.path, ".", bears));
        } else if (!limit.least || *own < *limit.least) {
            limit.least = own;
            limit.of = c;
        }
    }
    return limit;
}

bool is_oil_guessed(const AtWork& at) {
    // As an operating point names what it assumes.
    return std::any_of(at.point.assumptions.begin(), at.point.assumptions.end(),
                       [](const hydraulics::Assumption& one) { return one.of == "oil"; });
}

std::vector<std::string_view> unknown_oil(const AtWork& at, Docket& docket) {
    if (is_oil_guessed(at)) return {docket.text(at.point.id, ".oil")};
    if (!at.point.balanced) return {};
    std::vector<Index> machines;
    for (const hydraulics::MachinePoint& machine : at.point.machines)
        machines.push_back(machine.component);
    return unknown_heat(at.circuit(), at.point.assumptions, docket, machines);
}

std::vector<std::string_view> unknown_heat(const Circuit& circuit,
                                           std::span<const hydraulics::Assumption> assumptions,
                                           Docket& docket, std::span<const Index> machines) {
    auto unknown = unknown_losses(circuit, assumptions, docket, machines, Loss::leakage);
    const auto torque = unknown_losses(circuit, assumptions, docket, machines, Loss::torque);
    unknown.insert(unknown.end(), torque.begin(), torque.end());
    return unknown;
}

}  // namespace loopwright
