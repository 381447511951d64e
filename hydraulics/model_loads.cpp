#include <algorithm>

#include <fmt/format.h>

#include <loopwright/hydraulics/model_builder.h>

/// What stands on shafts and takes torque from them.
namespace loopwright::hydraulics {

void ModelBuilder::add_loads() {
    for (Index c = 0; c < circuit_.components.size(); ++c) {
        const Component& component = circuit_.components[c];
        if (component.shaft == none) continue;
        if (component.kind->part == Part::load) add_load(c);
        if (component.kind->part == Part::brake) add_brake(c);
    }
}

/// The sense in which a network's shaft turns while its actuators go forward: 1, or -1 behind a
/// gearbox that turns it round; 1 too where no actuator turns it.
double ModelBuilder::forward_on(Index shaft) const {
    std::vector<double> sense(model_.network.shafts.size(), 0.0);
    std::vector<Index> queue{shaft};
    sense[shaft] = 1.0;
    const auto has_actuator = [&](Index s) {
        for (std::size_t i = 0; i < model_.machines.size(); ++i)
            if (model_.network.machines[i].shaft == s &&
                graph_.part(model_.machines[i].component) == Part::actuator)
                return true;
        return false;
    };
    for (std::size_t i = 0; i < queue.size(); ++i) {
        if (has_actuator(queue[i])) return sense[queue[i]];
        for (const NetworkGear& gear : model_.network.gears) {
            if (gear.in != queue[i] && gear.out != queue[i]) continue;
            const Index other = gear.in == queue[i] ? gear.out : gear.in;
            if (sense[other] != 0.0) continue;
            sense[other] = sense[queue[i]] * (gear.gear.ratio < 0.0 ? -1.0 : 1.0);
            queue.push_back(other);
        }
    }
    return 1.0;
}

void ModelBuilder::add_load(Index c) {
    const Component& component = circuit_.components[c];
    NetworkLoad load;
    load.shaft = model_.shaft_of_shaft[component.shaft];
    const bool straight = model_.network.shafts[load.shaft].straight;
    const std::string_view pulls = circuit_.is_yes(component, "overrunning")
                                       ? circuit_.choice(component, "overrunning-sense")
                                       : std::string_view();
    const double forward = forward_on(load.shaft);
    const bool one_way = pulls == "forward" || pulls == "reverse";
    const std::string_view effort = straight ? "force" : "torque";
    // A grade or mass of the point goes before the load's own torque, which a torque of it
    // replaces.
    const bool weighed = point_.set_figure(c, "grade") || point_.set_figure(c, "mass");
    const auto torque = weighed ? point_.set_figure(c, effort) : point_.figure(c, effort);
    const auto mass = point_.figure(c, "mass");
    const auto radius = circuit_.figure(component, "wheel-radius");
    if (torque) {
        // One that pulls one way does so whichever way it moves; another resists, or drives.
        load.torque = Torque(*torque);
        load.kind = NetworkLoad::Kind::opposing;
        if (one_way) {
            load.kind = NetworkLoad::Kind::constant;
            load.torque = Torque(*torque * (pulls == "forward" ? -forward : forward));
        } else if (*torque < 0.0) {
            load.kind = NetworkLoad::Kind::constant;
            load.torque = Torque(*torque * point_.sense(c) * forward);
        }
    } else if (circuit_.is_yes(component, "vehicle") && mass && radius) {
        const auto rolling = need(component, "rolling-resistance");
        if (!rolling) return;
        load.kind = NetworkLoad::Kind::vehicle;
        load.vehicle = {
            .mass = Mass(*mass),
            .wheel_radius = Length(*radius),
            .grade = Grade(point_.set_figure(c, "grade").value_or(0.0) * point_.sense(c) * forward),
            .rolling_resistance = *rolling};
    } else if (one_way && mass && radius) {
        load.kind = NetworkLoad::Kind::constant;
        const Torque weight =
            load_torque(Hoist{.mass = Mass(*mass), .drum_radius = Length(*radius)});
        load.torque = weight * (pulls == "forward" ? -forward : forward);
    } else {
        miss(component, effort);
        return;
    }
    model_.loads.push_back(c);
    model_.network.loads.push_back(load);
}

void ModelBuilder::add_brake(Index c) {
    const Component& component = circuit_.components[c];
    NetworkLoad load{.kind = NetworkLoad::Kind::brake,
                     .shaft = model_.shaft_of_shaft[component.shaft]};
    const bool spring = circuit_.choice(component, "applied") != "pressure";
    const auto torque = circuit_.figure(component, "torque");
    const auto begins = circuit_.figure(component, spring ? "release-pressure" : "apply-pressure");
    const auto completes = circuit_.figure(component, "full-release-pressure");
    for (Index port = component.ports.begin; port < component.ports.end; ++port)
        if (!graph_.lines_of(port).empty()) load.brake_node = node_at(port);
    const bool known = torque && begins && load.brake_node != none;
    if (!known) {
        if (point_.moves(c) || point_.state(c) == State::neutral)
            assume(fmt::format("{}: torque", component.path), "none",
                   "taken for released: torque, pressures or line are not given");
        else
            miss(component, torque ? "release-pressure" : "torque");
        return;
    }
    load.off_at_first = point_.moves(c);
    load.brake = {.spring_applied = spring,
                  .torque = Torque(*torque),
                  .begins = Pressure(spring ? *begins : 0.0),
                  .completes = Pressure(spring ? completes.value_or(*begins * 1.0001 + 1.0)
                                               : std::max(*begins, 1.0))};
    model_.loads.push_back(c);
    model_.network.loads.push_back(load);
}

}  // namespace loopwright::hydraulics
