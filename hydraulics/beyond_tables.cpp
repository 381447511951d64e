#include <loopwright/hydraulics/beyond_tables.h>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>

namespace loopwright::hydraulics {

namespace {

/// "P1: a pressure of 300 bar is outside its table, which goes from 0 bar to 250 bar".
std::string beyond(std::string_view path, std::string_view axis, const Grid::Outside& outside) {
    const Dimension dimension = axis == "pressure"    ? Dimension::pressure
                                : axis == "speed"     ? Dimension::speed
                                : axis == "flow"      ? Dimension::flow
                                : axis == "viscosity" ? Dimension::kinematic_viscosity
                                                      : Dimension::ratio;
    return fmt::format("{}: a {} of {} is outside its table, which goes from {} to {}", path, axis,
                       format_quantity(outside.at, dimension),
                       format_quantity(outside.least, dimension),
                       format_quantity(outside.most, dimension));
}

}  // namespace

std::string beyond_tables(const Circuit& circuit, const Model& model, const SteadyState& state) {
    for (std::size_t i = 0; i < model.machines.size(); ++i) {
        const NetworkMachine& one = model.network.machines[i];
        if (!one.measured) continue;
        if (const auto found = outside(*one.measured, state.machines[i]))
            return beyond(circuit.components[model.machines[i].component].path,
                          machine_axes[found->axis], *found);
    }
    for (std::size_t i = 0; i < model.branches.size(); ++i) {
        const Branch& one = model.network.branches[i];
        if (one.kind != Branch::Kind::resistance || !one.resistance.measured) continue;
        if (const auto found = outside(*one.resistance.measured, state.flows[i], model.network.oil))
            return beyond(
                circuit.components[circuit.passages[model.branches[i].passage].component].path,
                drop_axes[found->axis], *found);
    }
    return {};
}

}  // namespace loopwright::hydraulics
