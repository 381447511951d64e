#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include <loopwright/base/unit_text.h>
#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/hydraulics/model_builder.h>
#include <loopwright/hydraulics/rated_mover.h>

namespace loopwright::hydraulics {

namespace {

/// But for what rounding leaves.
bool same_speed(double one, double other) {
    return std::abs(one - other) <= 1e-9 * std::max(std::abs(one), std::abs(other));
}

}  // namespace

void ModelBuilder::build_shafts() {
    if (point_.is_torn())
        model_.contradiction = "commands of one loop ask for both senses at once: give one of them";
    find_shafts();
    hold_speeds_against_gears();
    add_machines();
    add_anti_stall();
    add_loads();
    settle_shafts();
}

void ModelBuilder::renew_shafts(Model& model) {
    model_ = std::move(model);
    Network& network = model_.network;
    network.shafts.clear();
    network.machines.clear();
    network.cylinders.clear();
    network.movers.clear();
    network.gears.clear();
    network.loads.clear();
    model_.shaft_of_shaft.clear();
    model_.machines.clear();
    model_.cylinders.clear();
    model_.movers.clear();
    model_.gears.clear();
    model_.loads.clear();
    model_.shaft_names.clear();
    model_.assumptions.clear();
    model_.missing.clear();
    model_.contradiction.clear();
    build_shafts();
    model = std::move(model_);
}

/// One shaft for all that shafts and engaged clutches make turn at one speed.
void ModelBuilder::find_shafts() {
    DisjointSets sets(circuit_.shafts.size());
    for (const Component& component : circuit_.components)
        if (component.kind->part == Part::clutch && passes_torque(circuit_, component) &&
            component.shaft != none && component.far_shaft != none)
            sets.join(component.shaft, component.far_shaft);
    model_.shaft_of_shaft.assign(circuit_.shafts.size(), none);
    for (Index s = 0; s < circuit_.shafts.size(); ++s) {
        const Index leader = sets.find(s);
        if (model_.shaft_of_shaft[leader] == none) {
            model_.shaft_of_shaft[leader] = static_cast<Index>(model_.network.shafts.size());
            model_.network.shafts.emplace_back();
            model_.shaft_names.emplace_back(circuit_.shafts[leader].path);
        }
        model_.shaft_of_shaft[s] = model_.shaft_of_shaft[leader];
    }
    turned_by_.assign(model_.network.shafts.size(), none);
    for (Index c = 0; c < circuit_.components.size(); ++c) {
        const Component& component = circuit_.components[c];
        if (component.kind->part == Part::prime_mover && component.shaft != none)
            add_prime_mover(c);
        if (component.kind->part == Part::gearbox && component.shaft != none &&
            component.far_shaft != none) {
            const auto ratio = need(component, "ratio");
            if (!ratio) continue;
            const bool opposite = circuit_.choice(component, "sense") == "opposite";
            const auto efficiency = circuit_.figure(component, "efficiency");
            if (!efficiency)
                assume(fmt::format("{}.efficiency", component.path), "1", "not given: no loss");
            model_.gears.push_back(c);
            model_.network.gears.push_back({.gear = {.ratio = opposite ? -*ratio : *ratio,
                                                     .efficiency = efficiency.value_or(1.0)},
                                            .in = model_.shaft_of_shaft[component.shaft],
                                            .out = model_.shaft_of_shaft[component.far_shaft]});
        }
    }
}

/// Turns its shaft at a speed that is known, or gives way to its load (droop).
void ModelBuilder::add_prime_mover(Index c) {
    const Component& component = circuit_.components[c];
    const Index s = model_.shaft_of_shaft[component.shaft];
    Shaft& shaft = model_.network.shafts[s];
    if (point_.state() == State::stopped || point_.state() == State::towing) {
        turn(s, 0.0, c);
        return;
    }
    const double droop = circuit_.figure(component, "droop").value_or(0.0);
    if (shaft.mover != none || (droop > 0.0 && shaft.speed)) {
        miss(component, "droop of the only prime mover on its shaft: here are several");
        return;
    }
    if (point_.is_commanded(c)) {
        if (const auto rated = need(component, "speed"))
            turn(s,
                 *rated * point_.set_share(c, false) *
                     (circuit_.is_yes(component, "reversing") ? point_.sense(c) : 1.0),
                 c);
    } else if (const auto speed = point_.figure(c, "speed")) {
        turn(s, *speed, c);
    } else {
        miss(component, "speed");
    }
    if (shaft.speed && droop > 0.0) let_go(c);
}

/// Gives the shaft the speed of its prime mover. Two on one shaft have one speed.
void ModelBuilder::turn(Index s, double speed, Index prime_mover) {
    Shaft& shaft = model_.network.shafts[s];
    if (shaft.speed && !same_speed(*shaft.speed, speed))
        model_.contradiction = fmt::format(
            "{} turns {} at {} and {} at {}: give them one speed, or open a clutch between them",
            circuit_.components[turned_by_[s]].path, model_.shaft_names[s],
            format_quantity(*shaft.speed, Dimension::speed), circuit_.components[prime_mover].path,
            format_quantity(speed, Dimension::speed));
    shaft.speed = speed;
    turned_by_[s] = prime_mover;
}

/// Of two shafts that gearboxes join one alone can have a speed that is given.
void ModelBuilder::tell_of_two(Index one, Index other, double ratio) {
    const auto& shafts = model_.network.shafts;
    model_.contradiction = fmt::format(
        "{} turns {} and {} turns {}, and gearboxes join them: {}; give one of them, or open a "
        "clutch between them",
        circuit_.components[turned_by_[one]].path, model_.shaft_names[one],
        circuit_.components[turned_by_[other]].path, model_.shaft_names[other],
        same_speed(*shafts[other].speed, ratio * *shafts[one].speed)
            ? "how they share the load is not known"
            : "their speeds are not those that the ratios ask for");
}

/// Shafts that gearboxes join turn in the ratio of these: from each shaft the others' speeds follow
/// as multiples of its own, and two ways to one shaft, or two given speeds, must come to the same.
void ModelBuilder::hold_speeds_against_gears() {
    const Network& network = model_.network;
    if (network.gears.empty()) return;
    std::vector<std::vector<Index>> gears_at(network.shafts.size());
    for (Index g = 0; g < network.gears.size(); ++g)
        for (const Index s : {network.gears[g].in, network.gears[g].out}) gears_at[s].push_back(g);
    std::vector<double> multiple(network.shafts.size(), 0.0);
    for (Index first = 0; first < multiple.size(); ++first) {
        if (multiple[first] != 0.0) continue;
        multiple[first] = 1.0;
        std::vector<Index> train{first};
        Index driven = none;
        for (std::size_t i = 0; i < train.size(); ++i) {
            const Index s = train[i];
            if (network.shafts[s].speed && turned_by_[s] != none) {
                if (driven != none) tell_of_two(driven, s, multiple[s] / multiple[driven]);
                driven = s;
            }
            for (const Index g : gears_at[s]) {
                const NetworkGear& one = network.gears[g];
                const Index other = one.in == s ? one.out : one.in;
                const double there =
                    one.in == s ? multiple[s] / one.gear.ratio : multiple[s] * one.gear.ratio;
                if (multiple[other] == 0.0) {
                    multiple[other] = there;
                    train.push_back(other);
                } else if (!same_speed(multiple[other], there)) {
                    model_.contradiction = fmt::format(
                        "the ratios of {} and of the other gearboxes between {} and {} do not fit: "
                        "the shafts lock",
                        circuit_.components[model_.gears[g]].path,
                        model_.shaft_names[std::min(s, other)],
                        model_.shaft_names[std::max(s, other)]);
                }
            }
        }
    }
}

/// Makes the torque that a prime mover gives an unknown. Nothing where its power is not given.
void ModelBuilder::let_go(Index c) {
    const Component& component = circuit_.components[c];
    const Index s = model_.shaft_of_shaft[component.shaft];
    Shaft& shaft = model_.network.shafts[s];
    if (shaft.mover != none || !shaft.speed || *shaft.speed == 0.0) return;
    need(component, "power");
    need(component, "speed");
    const auto rated = rated_mover(circuit_, c);
    if (!rated) return;
    const NetworkMover one{.mover = *rated, .shaft = s, .setting = Speed(*shaft.speed)};
    shaft.guess = *shaft.speed;
    shaft.speed.reset();
    shaft.mover = static_cast<Index>(model_.movers.size());
    model_.movers.push_back(c);
    model_.network.movers.push_back(one);
}

/// The shaft of a component; one of its own where it is on none.
Index ModelBuilder::shaft_at(Index c) {
    const Component& component = circuit_.components[c];
    if (component.shaft != none) return model_.shaft_of_shaft[component.shaft];
    model_.network.shafts.emplace_back();
    model_.shaft_names.emplace_back(component.path);
    assume(fmt::format("{}: {}", component.path, graph_.part(c) == Part::pump ? "drive" : "load"),
           "none", "it is on no shaft");
    return static_cast<Index>(model_.network.shafts.size() - 1);
}

/// A shaft on which nothing of the network stands has no balance of its own.
void ModelBuilder::settle_shafts() {
    std::vector<std::uint8_t> driven(model_.network.shafts.size(), 0);
    for (const NetworkMachine& machine : model_.network.machines) driven[machine.shaft] = 1;
    for (const NetworkCylinder& cylinder : model_.network.cylinders) driven[cylinder.shaft] = 1;
    for (const NetworkGear& gear : model_.network.gears) driven[gear.in] = driven[gear.out] = 1;
    std::vector<Index> stands_on(driven.size(), none);  // a component, by shaft
    for (Index c = 0; c < circuit_.components.size(); ++c)
        for (const Index s : {circuit_.components[c].shaft, circuit_.components[c].far_shaft})
            if (s != none) stands_on[model_.shaft_of_shaft[s]] = c;
    for (std::size_t i = 0; i < model_.machines.size(); ++i)
        stands_on[model_.network.machines[i].shaft] = model_.machines[i].component;
    for (std::size_t i = 0; i < model_.cylinders.size(); ++i)
        stands_on[model_.network.cylinders[i].shaft] = model_.cylinders[i].component;
    for (std::size_t s = 0; s < driven.size(); ++s) {
        Shaft& shaft = model_.network.shafts[s];
        if (driven[s] == 0 && !shaft.speed) shaft.speed = 0.0;
        if (shaft.is_driven()) continue;
        const Index c = stands_on[s];
        shaft.guess = point_.moves(c) ? point_.sense(c) * (shaft.straight ? 0.1 : 50.0) : 0.0;
    }
}

}  // namespace loopwright::hydraulics
