#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

#include <loopwright/hydraulics/model_builder.h>
#include <loopwright/hydraulics/rated_mover.h>

// Measured tables in place of laws.

namespace loopwright::hydraulics {

namespace {

std::size_t column_of(const MeasuredTable& table, std::string_view name) {
    const auto found = std::find_if(table.columns.begin(), table.columns.end(),
                                    [&](const AttributeSpec* spec) { return spec->name == name; });
    return static_cast<std::size_t>(found - table.columns.begin());
}

bool has_column(const MeasuredTable& table, std::string_view name) {
    return column_of(table, name) < table.columns.size();
}

/// A result over axes in the order wished, whatever that of the table; an axis that it lacks has no
/// values. Its rows are all combinations, as the reader has seen to.
Grid grid_of(const MeasuredTable& table, std::span<const std::string_view> names,
             std::string_view result) {
    const std::size_t width = table.columns.size();
    const std::size_t rows = table.figures.size() / width;
    std::vector<std::vector<double>> axes;
    for (const std::string_view name : names) {
        std::vector<double>& axis = axes.emplace_back();
        if (!has_column(table, name)) continue;
        for (std::size_t row = 0; row < rows; ++row)
            axis.push_back(table.figures[row * width + column_of(table, name)]);
        std::sort(axis.begin(), axis.end());
        axis.erase(std::unique(axis.begin(), axis.end()), axis.end());
    }
    std::vector<double> figures(rows);
    for (std::size_t row = 0; row < rows; ++row) {
        std::size_t at = 0;
        for (std::size_t i = 0; i < axes.size(); ++i) {
            if (axes[i].empty()) continue;
            const double value = table.figures[row * width + column_of(table, names[i])];
            at = at * axes[i].size() +
                 static_cast<std::size_t>(std::lower_bound(axes[i].begin(), axes[i].end(), value) -
                                          axes[i].begin());
        }
        figures[at] = table.figures[row * width + column_of(table, result)];
    }
    return {std::move(axes), std::move(figures)};
}

std::optional<MeasuredColumn> column(const MeasuredTable& table, std::string_view measured,
                                     std::string_view efficiency) {
    for (const std::string_view name : {measured, efficiency})
        if (has_column(table, name))
            return MeasuredColumn{grid_of(table, machine_axes, name), name == efficiency};
    return std::nullopt;
}

}  // namespace

const MeasuredTable* table_of(const Circuit& circuit, Index component) {
    const auto found =
        std::lower_bound(circuit.tables.begin(), circuit.tables.end(), component,
                         [](const MeasuredTable& table, Index of) { return table.component < of; });
    return found != circuit.tables.end() && found->component == component ? &*found : nullptr;
}

bool ModelBuilder::measures(const Component& component, std::string_view result) const {
    const auto c = static_cast<Index>(&component - circuit_.components.data());
    const MeasuredTable* const table = table_of(circuit_, c);
    return table != nullptr && has_column(*table, result);
}

std::optional<MeasuredMachine> ModelBuilder::measured_machine(Index c, bool pump,
                                                              const Machine& machine) const {
    const MeasuredTable* const table = table_of(circuit_, c);
    if (table == nullptr) return std::nullopt;
    return MeasuredMachine{pump ? Work::pump : Work::motor, machine,
                           column(*table, "flow", "volumetric-efficiency"),
                           column(*table, "torque", "mechanical-efficiency")};
}

/// An efficiency says nothing of what a machine loses at no stroke.
void ModelBuilder::tell_of_no_stroke(const Component& component, const MeasuredMachine& measured) {
    for (const auto& [column, what] :
         {std::pair(&measured.flow, "leakage"), std::pair(&measured.torque, "loss of torque")})
        if (*column && (*column)->efficiency)
            assume(fmt::format("{}: {}", component.path, what), "none",
                   "an efficiency does not tell it at no stroke");
}

std::optional<Grid> measured_full_load(const Circuit& circuit, Index mover) {
    const MeasuredTable* const table = table_of(circuit, mover);
    if (table == nullptr || !has_column(*table, "torque")) return std::nullopt;
    return grid_of(*table, std::array<std::string_view, 1>{"speed"}, "torque");
}

/// A passage whose table says what it loses.
void ModelBuilder::add_measured(Index p) {
    const Passage& passage = circuit_.passages[p];
    Branch& branch = add_branch(Branch::Kind::resistance,
                                {.passage = p, .from = passage.from, .to = passage.to});
    branch.resistance.law = Resistance::Law::measured;
    branch.resistance.measured =
        MeasuredDrop{grid_of(*table_of(circuit_, passage.component), drop_axes, "drop")};
}

}  // namespace loopwright::hydraulics
