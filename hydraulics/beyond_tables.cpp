#include <loopwright/hydraulics/beyond_tables.h>

#include <cmath>

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

/// What a table does not say that a state asks of it: a flow holds for its speed, flow and torque
/// for their stroke, the full one where the table has none.
std::string left_open(std::string_view path, const MeasuredMachine& measured,
                      const MachineState& state) {
    constexpr double rounding = 1e-9;
    const bool full = std::abs(state.relative_displacement) >= 1.0 - rounding;
    const auto hangs_on = [](const std::optional<MeasuredColumn>& column, std::size_t axis) {
        return !column || column->efficiency || column->grid.has_axis(axis);
    };
    if (!hangs_on(measured.flow, 1))
        return fmt::format("{}: its table gives a flow, but not at which speed", path);
    if (!full && (!hangs_on(measured.flow, 2) || !hangs_on(measured.torque, 2)))
        return fmt::format("{}: its table says nothing of a stroke of {:.4g}", path,
                           std::abs(state.relative_displacement));
    return {};
}

}  // namespace

std::string beyond_tables(const Circuit& circuit, const Model& model, const SteadyState& state) {
    for (std::size_t i = 0; i < model.machines.size(); ++i) {
        const NetworkMachine& one = model.network.machines[i];
        if (!one.measured) continue;
        std::string open = left_open(circuit.components[model.machines[i].component].path,
                                     *one.measured, state.machines[i]);
        if (!open.empty()) return open;
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
