#include <loopwright/hydraulics/duty.h>

#include <algorithm>
#include <cmath>
#include <map>

#include <loopwright/graph/states.h>

namespace loopwright::hydraulics {

namespace {

std::optional<double> given_in(const Circuit& circuit, const Range& attributes,
                               std::string_view name) {
    for (Index i = attributes.begin; i < attributes.end; ++i)
        if (circuit.attributes[i].spec->name == name) return circuit.attributes[i].si;
    return std::nullopt;
}

std::string_view word_in(const Circuit& circuit, const Range& attributes, std::string_view name) {
    for (Index i = attributes.begin; i < attributes.end; ++i)
        if (circuit.attributes[i].spec->name == name) return circuit.attributes[i].text;
    return {};
}

bool reverse(State state) {
    return state == State::drive_reverse || state == State::overrun_reverse;
}

/// Only what concerns a motion is asked of the point itself.
bool is_figure_of_point(std::string_view name) {
    static constexpr std::string_view names[] = {"speed", "torque", "force",
                                                 "grade", "mass",   "velocity"};
    return std::find(std::begin(names), std::end(names), name) != std::end(names);
}

}  // namespace

PointFigures::PointFigures(const Circuit& circuit, Index point) : circuit_(circuit), point_(point) {
    double travel = 0.0;
    for (Index command = 0; command < circuit.commands.size(); ++command)
        if (const auto one = travel_of(command); one && *one != 0.0) travel = *one;
    sense_ = travel < 0.0 ? -1.0 : 1.0;
    state_ = find_state();
    if (reverse(state_)) sense_ = -1.0;
}

PointFigures PointFigures::neutral(const Circuit& circuit, double oil) {
    PointFigures figures(circuit, none);
    figures.neutral_id_ = "neutral";
    figures.oil_ = oil;
    figures.state_ = State::neutral;
    figures.sense_ = 1.0;
    return figures;
}

std::optional<PointFigures> PointFigures::cold_start(const Circuit& circuit) {
    if (!circuit.duty) return std::nullopt;
    const AttributeValue* const oil = circuit.figure_of(*circuit.duty, "cold-start");
    if (oil == nullptr) return std::nullopt;
    PointFigures figures = neutral(circuit, oil->si);
    figures.neutral_id_ = "cold-start";
    return figures;
}

std::string_view PointFigures::id() const {
    if (!neutral_id_.empty()) return neutral_id_;
    return point_ == none ? std::string_view("rated") : circuit_.points[point_].id;
}

std::optional<double> PointFigures::figure(std::string_view name) const {
    if (oil_ && name == "oil") return oil_;
    return point_ == none ? std::nullopt
                          : given_in(circuit_, circuit_.points[point_].attributes, name);
}

std::optional<double> PointFigures::set_figure(Index component, std::string_view name) const {
    if (!neutral_id_.empty() && circuit_.components[component].kind->part == Part::load &&
        (name == "torque" || name == "force"))
        return 0.0;
    if (point_ == none) return std::nullopt;
    const DutyPoint& point = circuit_.points[point_];
    for (Index i = point.settings.begin; i < point.settings.end; ++i) {
        const PointSetting& setting = circuit_.point_settings[i];
        if (setting.component != component) continue;
        if (const auto one = given_in(circuit_, setting.attributes, name)) return one;
    }
    const Part part = circuit_.components[component].kind->part;
    const bool own = part == Part::load || (part == Part::prime_mover && name == "speed");
    if (!own || !is_figure_of_point(name) || (part == Part::load && name == "speed"))
        return std::nullopt;
    return figure(name);
}

std::optional<double> PointFigures::figure(Index component, std::string_view name) const {
    if (const auto set = set_figure(component, name)) return set;
    return circuit_.figure(circuit_.components[component], name);
}

Index PointFigures::position_of(Index valve) const {
    if (point_ == none) return none;
    const DutyPoint& point = circuit_.points[point_];
    for (Index i = point.settings.begin; i < point.settings.end; ++i)
        if (circuit_.point_settings[i].component == valve &&
            circuit_.point_settings[i].position != none)
            return circuit_.point_settings[i].position;
    return none;
}

std::optional<double> PointFigures::travel_of(Index command) const {
    if (!neutral_id_.empty()) return 0.0;
    if (point_ == none) return 1.0;
    const DutyPoint& point = circuit_.points[point_];
    for (Index i = point.settings.begin; i < point.settings.end; ++i)
        if (circuit_.point_settings[i].command == command)
            if (const auto one =
                    given_in(circuit_, circuit_.point_settings[i].attributes, "travel"))
                return one;
    return figure("travel");
}

bool PointFigures::load_drives(Index load) const {
    if (const auto torque = figure(load, "torque")) return *torque < 0.0;
    if (const auto force = figure(load, "force")) return *force < 0.0;
    if (const auto grade = set_figure(load, "grade"))
        return *grade < -figure(load, "rolling-resistance").value_or(0.0);
    return false;
}

State PointFigures::find_state() const {
    if (point_ != none && circuit_.points[point_].state) return *circuit_.points[point_].state;
    bool commanded = false;
    bool moved = false;
    for (Index command = 0; command < circuit_.commands.size(); ++command) {
        const auto travel = travel_of(command);
        commanded = commanded || travel.has_value();
        moved = moved || (travel && *travel != 0.0);
    }
    if (commanded && !moved) return State::neutral;
    return moving_state(sense_, nullptr, none);
}

State PointFigures::moving_state(double sense, const Motions* motions, Index motion) const {
    bool drives = false;
    bool always = false;  // one that pulls one way, as a hoist does
    for (Index c = 0; c < circuit_.components.size(); ++c) {
        const Component& load = circuit_.components[c];
        if (load.kind->part != Part::load) continue;
        if (motions != nullptr && motions->of(c) != motion) continue;
        drives = drives || load_drives(c);
        const std::string_view pulls = circuit_.choice(load, "overrunning-sense");
        if (!circuit_.is_yes(load, "overrunning")) continue;
        always =
            always || (pulls == "reverse" && sense < 0.0) || (pulls == "forward" && sense > 0.0);
    }
    if (sense < 0.0) return drives || always ? State::overrun_reverse : State::drive_reverse;
    return drives || always ? State::overrun_forward : State::drive_forward;
}

void PointFigures::part(const Motions& motions) {
    std::map<Index, double> travels;
    for (Index command = 0; command < circuit_.commands.size(); ++command) {
        const Index motion = motions.of_command(command);
        if (motion == none) continue;
        const double travel = travel_of(command).value_or(0.0);
        double& whole = travels[motion];
        is_torn_ = is_torn_ || whole * travel < 0.0;
        if (travel != 0.0) whole = travel;
    }
    // What no command moves goes with the point, whose sense is none; forward is as good as any.
    const bool moves = is_moving(state_);
    motions_.assign(circuit_.components.size(),
                    {.state = moves ? State::drive_forward : state_, .sense = 1.0});
    for (const auto& [motion, travel] : travels) {
        Motion one{.state = state_, .sense = travel < 0.0 ? -1.0 : 1.0};
        if (moves)
            one.state = travel == 0.0 ? State::neutral : moving_state(one.sense, &motions, motion);
        for (Index c = 0; c < circuit_.components.size(); ++c)
            if (motions.of(c) == motion) motions_[c] = one;
    }
}

std::vector<State> PointFigures::alike() const {
    if (!is_parted()) return {state_};
    std::vector<State> states;
    for (const Motion& one : motions_) states.push_back(one.state);
    return states;
}

std::vector<State> PointFigures::states() const {
    std::vector<State> states = alike();
    std::sort(states.begin(), states.end());
    states.erase(std::unique(states.begin(), states.end()), states.end());
    return states;
}

bool PointFigures::is_moving(State state) { return (bit(state) & moving_states) != 0; }

bool PointFigures::goes_both_ways() const {
    bool ahead = false;
    bool back = false;
    for (Index command = 0; command < circuit_.commands.size(); ++command) {
        const double travel = travel_of(command).value_or(0.0);
        ahead = ahead || travel > 0.0;
        back = back || travel < 0.0;
    }
    return ahead && back;
}

bool PointFigures::is_commanded(Index component) const {
    return std::any_of(circuit_.stages.begin(), circuit_.stages.end(),
                       [&](const Stage& stage) { return stage.part == component; });
}

double PointFigures::set_share(Index component, bool pump) const {
    const Component& part = circuit_.components[component];
    const bool mover = part.kind->part == Part::prime_mover;
    double least = 0.0;
    if (const auto largest = circuit_.figure(part, mover ? "speed" : "displacement"))
        if (const auto smallest = circuit_.figure(part, mover ? "idle-speed" : "min-displacement"))
            least = *smallest / *largest;
    std::optional<double> share;
    for (Index command = 0; command < circuit_.commands.size(); ++command) {
        const Range& attributes = circuit_.commands[command].attributes;
        const double signed_travel = travel_of(command).value_or(0.0);
        const double dead = given_in(circuit_, attributes, "dead-band").value_or(0.0);
        const double travel = std::abs(signed_travel) <= dead ? 0.0 : std::abs(signed_travel);
        const Range& stages = circuit_.commands[command].stages;
        for (Index i = stages.begin; i < stages.end; ++i) {
            const Stage& stage = circuit_.stages[i];
            if (stage.part != component) continue;
            const std::string_view way = word_in(circuit_, stage.attributes, "direction");
            if ((way == "forward" && signed_travel < 0.0) ||
                (way == "reverse" && signed_travel >= 0.0))
                continue;
            const double from = given_in(circuit_, stage.attributes, "from").value_or(0.0);
            const double to = given_in(circuit_, stage.attributes, "to").value_or(1.0);
            const double begin = given_in(circuit_, stage.attributes, "begin")
                                     .value_or(mover  ? least
                                               : pump ? 0.0
                                                      : 1.0);
            const double end =
                given_in(circuit_, stage.attributes, "end").value_or(mover || pump ? 1.0 : least);
            const double done = to > from ? std::clamp((travel - from) / (to - from), 0.0, 1.0)
                                          : (travel >= to ? 1.0 : 0.0);
            // Of several stages of one part that which is under way, or the last one done.
            if (!share || travel >= from) share = begin + done * (end - begin);
        }
    }
    if (share) return *share;
    const bool follows = pump && circuit_.is_yes(part, "variable") && !moves(component);
    return follows ? 0.0 : 1.0;
}

}  // namespace loopwright::hydraulics
