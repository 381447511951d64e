#include <loopwright/render/plot_data.h>

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>

namespace loopwright {

using namespace hydraulics;

PlotData::PlotData(const Circuit& circuit, const Sweep& sweep, const SweepRows& rows)
    : circuit_(circuit),
      sweep_(sweep),
      rows_(rows),
      first_(static_cast<std::size_t>(sweep.axes()[0].count)),
      second_(sweep.axes().size() > 1 ? static_cast<std::size_t>(sweep.axes()[1].count) : 1),
      duty_(duty_rows(circuit, sweep)) {
    find_power();
    find_columns();
    for (std::size_t row = 0; row < rows.size() && has_plane(); ++row)
        creep_ = std::max(creep_, 0.01 * std::abs(rows.figure(row, *speed_).value_or(0.0)));
}

std::optional<std::size_t> PlotData::column(std::string_view id, std::string_view quantity) const {
    const auto& columns = sweep_.columns();
    for (std::size_t i = 0; i < columns.size(); ++i)
        if (columns[i].id == id && columns[i].quantity == quantity) return i;
    return std::nullopt;
}

const Component* PlotData::part(std::string_view path) const {
    for (const Component& one : circuit_.components)
        if (one.path == path) return &one;
    return nullptr;
}

void PlotData::find_power() {
    double sum = 0.0;
    for (const Component& one : circuit_.components) {
        if (one.kind->part != Part::prime_mover) continue;
        const auto power = circuit_.figure(one, "power");
        if (!power) return;
        sum += *power;
    }
    if (sum > 0.0) power_ = sum;
}

void PlotData::find_columns() {
    std::string actuator;
    std::string vehicle;
    for (const SweepColumn& one : sweep_.columns()) {
        const Component* const found = part(one.id);
        if (found == nullptr) continue;
        const Part kind = found->kind->part;
        if (actuator.empty() && (kind == Part::actuator || kind == Part::pump_motor))
            actuator = one.id;
        if (vehicle.empty() && one.quantity == "tractive effort") vehicle = one.id;
    }
    const auto add = [&](std::string_view id, std::string_view quantity) {
        const auto found = column(id, quantity);
        if (!found) return;
        PlotColumn one{.column = *found, .title = title_of(*found)};
        if (const Component* const of = id == actuator ? part(id) : nullptr) {
            const std::string limit = fmt::format("max-{}", quantity);
            one.limit = circuit_.figure(*of, limit);
            one.limited = fmt::format("{} of {}", limit, id);
        }
        if (quantity == "power in") {
            one.limit = power_;
            one.limited = "power of the prime mover";
        }
        shown_.push_back(std::move(one));
    };
    for (const std::string_view quantity : {"speed", "velocity", "torque", "force"})
        add(actuator, quantity);
    if (!vehicle.empty()) add(vehicle, "tractive effort");
    add(actuator, "pressure");
    add(actuator, "power");
    add("", "power in");
    add("", "efficiency");
    efficiency_ = column("", "efficiency");
    wheels_ = !vehicle.empty();
    const std::string& of = wheels_ ? vehicle : actuator;
    const bool straight = column(of, "force").has_value();
    speed_ = column(of, wheels_ || straight ? "velocity" : "speed");
    effort_ = column(of, wheels_ ? "tractive effort" : straight ? "force" : "torque");
}

double PlotData::at(std::size_t axis, double step) const {
    const SweepAxis& one = sweep_.axes()[axis];
    return one.count < 2 ? one.from : one.from + (one.to - one.from) * step / (one.count - 1);
}

double PlotData::half_way(std::size_t axis, std::size_t step, int side) const {
    const SweepAxis& one = sweep_.axes()[axis];
    const double half = (one.to < one.from ? -0.5 : 0.5) * side;
    return std::clamp(at(axis, static_cast<double>(step) + half), std::min(one.from, one.to),
                      std::max(one.from, one.to));
}

namespace {

std::string text_in(const Unit* unit, double si, Dimension dimension) {
    if (dimension != Dimension::ratio) return format_quantity(si, dimension);
    const PlotScale scale{.unit = unit};
    return fmt::format("{:.4g} {}", scale.shown(si), unit->spelling);
}

}  // namespace

std::string PlotData::name_of(std::size_t axis, std::size_t step) const {
    const Dimension dimension = sweep_.axes()[axis].spec->dimension;
    return text_in(plot_unit(dimension), at(axis, static_cast<double>(step)), dimension);
}

std::string PlotData::text_of(std::size_t column, double si) const {
    return text_in(unit_of(column), si, sweep_.columns()[column].dimension);
}

PlotScale PlotData::scale_of_axis(std::size_t axis) const {
    const SweepAxis& one = sweep_.axes()[axis];
    const double ends[] = {one.from, one.to};
    return plot_scale(plot_unit(one.spec->dimension), ends);
}

bool PlotData::is_solved(std::size_t i, std::size_t j) const {
    return rows_.solved[i * second_ + j] != 0;
}

std::optional<double> PlotData::figure(std::size_t i, std::size_t j, std::size_t column) const {
    return rows_.figure(i * second_ + j, column);
}

PlotScale PlotData::scale_of(const PlotColumn& shown) const {
    std::vector<double> figures{0.0};
    for (std::size_t row = 0; row < rows_.size(); ++row)
        if (const auto one = rows_.figure(row, shown.column)) figures.push_back(*one);
    for (const DutyRow& point : duty_)
        if (const auto one = point.rows.figure(0, shown.column); one && place_of(point, 0))
            figures.push_back(*one);
    const double most = *std::max_element(figures.begin(), figures.end());
    if (shown.limit && most > 0.6 * *shown.limit) figures.push_back(1.1 * *shown.limit);
    return plot_scale(unit_of(shown.column), figures);
}

std::optional<double> PlotData::place_of(const DutyRow& point, std::size_t axis) const {
    const SweepAxis& one = sweep_.axes()[axis];
    const auto place = point.axes[axis];
    const double rounding = 1e-9 * std::abs(one.to - one.from);
    const bool on = place && *place >= std::min(one.from, one.to) - rounding &&
                    *place <= std::max(one.from, one.to) + rounding;
    return on ? place : std::nullopt;
}

std::string PlotData::title_of(std::size_t column) const {
    const SweepColumn& one = sweep_.columns()[column];
    return one.id.empty() ? std::string(one.quantity)
                          : fmt::format("{} of {}", one.quantity, one.id);
}

const Unit* PlotData::unit_of(std::size_t column) const {
    const SweepColumn& one = sweep_.columns()[column];
    if (wheels_ && column == *speed_)
        for (const Unit& unit : units_of(one.dimension))
            if (unit.spelling == "km/h") return &unit;
    return plot_unit(one.dimension);
}

std::optional<PlaneFigure> PlotData::in_plane(const SweepRows& rows, std::size_t row) const {
    const auto speed = rows.figure(row, *speed_);
    const auto effort = rows.figure(row, *effort_);
    if (!speed || !effort) return std::nullopt;
    return PlaneFigure{std::abs(*speed), wheels_ && *speed < -creep_ ? -*effort : *effort};
}

std::optional<PlaneFigure> PlotData::in_plane(std::size_t i, std::size_t j) const {
    return in_plane(rows_, i * second_ + j);
}

std::vector<PlaneFigure> PlotData::plane() const {
    std::vector<PlaneFigure> all;
    for (std::size_t row = 0; row < rows_.size(); ++row)
        if (const auto one = in_plane(rows_, row)) all.push_back(*one);
    return all;
}

}  // namespace loopwright
