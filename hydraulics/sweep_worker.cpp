#include <loopwright/hydraulics/sweep_worker.h>

#include <algorithm>
#include <limits>

#include <loopwright/hydraulics/power_balance.h>
#include <loopwright/parser/set_figure.h>

namespace loopwright::hydraulics {

namespace {

/// Hands each figure of a row to `put` with its column: columns and rows are read alike.
template <class Put>
void read_row(const Circuit& circuit, const Model& model, const SteadyState& state,
              const OperatingPoint& point, const Put& put) {
    for (const MachinePoint& one : point.machines) {
        const Component* part = &circuit.components[one.component];
        put(part, one.straight ? "velocity" : "speed",
            one.straight ? Dimension::velocity : Dimension::speed, one.speed);
        put(part, one.straight ? "force" : "torque",
            one.straight ? Dimension::force : Dimension::torque, one.torque);
        put(part, "pressure", Dimension::pressure, std::max(one.pressure_a, one.pressure_b));
        put(part, "flow", Dimension::flow, one.flow);
        put(part, "power", Dimension::power, one.shaft_power);
    }
    for (std::size_t i = 0; i < model.loads.size(); ++i) {
        const Component& part = circuit.components[model.loads[i]];
        const auto radius = circuit.figure(part, "wheel-radius");
        if (part.kind->part != Part::load || !radius) continue;
        const NetworkLoad& load = model.network.loads[i];
        const double speed = state.speeds[load.shaft];
        put(&part, "velocity", Dimension::velocity, speed * *radius);
        // Nothing is added so that none is told as -0.
        put(&part, "tractive effort", Dimension::force,
            torque_of(model.network, load, state) / *radius + 0.0);
    }
    double in = 0.0;
    double out = 0.0;
    for (const ShaftPoint& shaft : point.shafts) (shaft.driven ? in : out) += shaft.power;
    put(nullptr, "power in", Dimension::power, in);
    put(nullptr, "power out", Dimension::power, out);
    // Driven by its load, it gives power to the prime mover.
    const bool overruns = out < 0.0;
    const double given = overruns ? -out : in;
    const double taken = overruns ? -in : out;
    put(nullptr, "efficiency", Dimension::ratio,
        given > 0.0 && taken >= 0.0 ? taken / given : std::numeric_limits<double>::quiet_NaN());
}

/// Nothing moves and nothing presses: of no meaning but that it has the parts of a real one.
SteadyState nothing_of(const Network& network) {
    SteadyState state;
    state.pressures.resize(network.nodes.size());
    state.speeds.resize(network.shafts.size());
    state.flows.resize(network.branches.size());
    state.gear_torques.resize(network.gears.size());
    state.machines.resize(network.machines.size());
    state.mover_torques.resize(network.movers.size());
    state.shares_left.resize(network.movers.size(), 1.0);
    return state;
}

}  // namespace

SweepWorker::SweepWorker(const Circuit& circuit, Index point, std::span<const SweepAxis> axes)
    : circuit_(circuit),
      graph_(circuit_),
      point_(point),
      axes_(axes),
      fluid_(fluid_of(circuit_)),
      can_balance_(can_balance_heat(circuit_)) {
    // Room for each axis once, so that the rows only write figures.
    for (std::size_t i = 0; i < axes.size(); ++i) set(i, axes[i].from);
}

void SweepWorker::set(std::size_t axis, double si) {
    const SweepAxis& one = axes_[axis];
    if (one.component == none)
        set_figure(circuit_, circuit_.points[point_].attributes, *one.spec, si);
    else if (set_figure(circuit_, one.component, *one.spec, si))
        built_.reset();
}

std::vector<SweepColumn> SweepWorker::columns() {
    std::vector<SweepColumn> columns;
    if (!fluid_) return columns;
    const PointFigures figures = this->figures();
    std::vector<std::uint8_t> open = standing_of(figures).open;
    open.resize(circuit_.passages.size());
    const Answer<Oil> oil = fluid_->at(Temperature(usual_oil));
    if (!oil) return columns;
    const Model model = model_of(graph_, figures, open, *oil);
    const SteadyState nothing = nothing_of(model.network);
    OperatingPoint point;
    read_drive(graph_, model, nothing, point);
    read_row(circuit_, model, nothing, point,
             [&](const Component* part, std::string_view quantity, Dimension dimension, double) {
                 columns.push_back({part == nullptr ? std::string() : std::string(part->path),
                                    quantity, dimension});
             });
    if (can_balance_ && ambient_of(figures) && !figures.figure("oil"))
        columns.push_back({"", "oil temperature", Dimension::temperature});
    return columns;
}

void SweepWorker::begin_anew() {
    solver_.reset();
    balanced_.reset();
}

PointFigures SweepWorker::figures() {
    PointFigures figures(circuit_, point_);
    if (figures.goes_both_ways()) {
        if (!motions_) motions_.emplace(graph_);
        figures.part(*motions_);
    }
    return figures;
}

const PointStanding& SweepWorker::standing_of(const PointFigures& figures) {
    const auto known = standing_.find(figures.alike());
    if (known != standing_.end()) return known->second;
    return standing_.emplace(figures.alike(), std::move(standings(graph_, {&figures, 1}).front()))
        .first->second;
}

/// Makes the model of the row, or of the last one that of this. False where something is missing.
bool SweepWorker::build(const PointFigures& figures, double temperature) {
    const Built wanted{figures.alike(), temperature};
    if (built_ == wanted) {
        renew_shafts(model_, graph_, figures);
    } else {
        built_.reset();
        const PointStanding& standing = standing_of(figures);
        const Answer<Oil> oil = fluid_->at(Temperature(temperature));
        if (!oil || (standing.open.empty() && !circuit_.passages.empty())) return false;
        model_ = model_of(graph_, figures, standing.open, *oil);
        if (!model_.is_whole()) return false;
        built_ = wanted;
    }
    std::vector<Index> shape = shape_of(model_.network);
    if (shape != shape_) solver_.reset();
    shape_ = std::move(shape);
    return model_.is_whole();
}

/// Whether a state that was followed to is that of a cold start as well: one that begins with a
/// brake off may end otherwise than one that begins with the brake as it is.
bool SweepWorker::is_beyond_doubt(const SteadyState& state) const {
    const auto& loads = model_.network.loads;
    return std::none_of(loads.begin(), loads.end(), [&](const NetworkLoad& load) {
        return load.kind == NetworkLoad::Kind::brake && load.off_at_first &&
               holding_torque(load.brake, state.pressures[load.brake_node]).value != 0.0;
    });
}

/// False where there is no steady state that a machine can work in.
bool SweepWorker::solve(const PointFigures& figures, double temperature) {
    state_.reset();
    if (!build(figures, temperature)) {
        solver_.reset();
        return false;
    }
    if (solver_) state_ = solver_->follow();
    if (!state_ || !is_beyond_doubt(*state_)) {
        // Anew from the ground up: pivots planned for other figures would round otherwise.
        solver_.emplace(model_.network);
        state_ = solver_->solve();
    }
    return state_ && is_workable(circuit_, model_, *state_);
}

/// Nothing where the heat finds no balance.
std::optional<double> SweepWorker::temperature_of(const PointFigures& figures) {
    if (const auto given = figures.figure("oil")) return given;
    const std::optional<double> ambient = ambient_of(figures);
    if (!can_balance_ || !ambient) return usual_oil;
    balanced_ = temperature_of_balance(
        [&](double oil) -> std::optional<double> {
            if (!solve(figures, oil)) return std::nullopt;
            return heat_balance(circuit_, model_, *state_, *fluid_, oil, *ambient).left();
        },
        *ambient, balanced_);
    return balanced_ ? balanced_ : usual_oil;
}

bool SweepWorker::work(std::span<const double> values, std::span<double> cells) {
    std::fill(cells.begin(), cells.end(), std::numeric_limits<double>::quiet_NaN());
    if (!fluid_) return false;
    for (std::size_t i = 0; i < axes_.size(); ++i) set(i, values[i]);
    const PointFigures figures = this->figures();
    const std::optional<double> temperature = temperature_of(figures);
    if (!solve(figures, *temperature)) return false;
    OperatingPoint point;
    read_drive(graph_, model_, *state_, point);
    std::size_t column = 0;
    const auto put = [&](double value) {
        if (column < cells.size()) cells[column++] = value;
    };
    read_row(circuit_, model_, *state_, point,
             [&](const Component*, std::string_view, Dimension, double value) { put(value); });
    if (balanced_) put(*balanced_);
    return true;
}

}  // namespace loopwright::hydraulics
