#include <algorithm>

#include <fmt/format.h>

#include <loopwright/graph/disjoint_sets.h>
#include <loopwright/hydraulics/model_builder.h>
#include <loopwright/hydraulics/wilson.h>

namespace loopwright::hydraulics {

namespace {

Index drain_of(const Circuit& circuit, const Component& component) {
    for (Index port = component.ports.begin; port < component.ports.end; ++port)
        if (circuit.ports[port].use == PortUse::drain) return port;
    return none;
}

}  // namespace

Index port_named(const Circuit& circuit, const Component& component, std::string_view letter) {
    for (Index port = component.ports.begin; port < component.ports.end; ++port)
        if (circuit.ports[port].letter == letter) return port;
    return none;
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
    for (Index c = 0; c < circuit_.components.size(); ++c) {
        const Component& component = circuit_.components[c];
        if (component.kind->part == Part::prime_mover && component.shaft != none) {
            Shaft& shaft = model_.network.shafts[model_.shaft_of_shaft[component.shaft]];
            const bool stands = point_.state() == State::stopped || point_.state() == State::towing;
            if (stands) {
                shaft.speed = 0.0;
            } else if (point_.is_commanded(c)) {
                if (const auto rated = need(component, "speed"))
                    shaft.speed = *rated * point_.set_share(c, false) *
                                  (circuit_.is_yes(component, "reversing") ? point_.sense() : 1.0);
            } else if (const auto speed = point_.figure(c, "speed")) {
                shaft.speed = *speed;
            } else {
                miss(component, "speed");
            }
        }
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

/// The shaft of a component; one of its own where it is on none.
Index ModelBuilder::shaft_at(Index c) {
    const Component& component = circuit_.components[c];
    if (component.shaft != none) return model_.shaft_of_shaft[component.shaft];
    model_.network.shafts.emplace_back();
    model_.shaft_names.emplace_back(component.path);
    assume(fmt::format("{}: load", component.path), "none", "it is on no shaft");
    return static_cast<Index>(model_.network.shafts.size() - 1);
}

void ModelBuilder::add_machines() {
    for (Index c = 0; c < circuit_.components.size(); ++c) {
        const Component& component = circuit_.components[c];
        const Part part = graph_.part(c);
        if (part != Part::pump && part != Part::actuator) continue;
        Index displacement = none;
        for (Index p = component.passages.begin; p < component.passages.end; ++p)
            if (circuit_.passages[p].passage == PassageClass::displacement) displacement = p;
        const auto& specs = component.kind->attributes;
        if (std::any_of(specs.begin(), specs.end(),
                        [](const AttributeSpec& spec) { return spec.name == "rods"; }))
            add_cylinder(c, displacement);
        else if (displacement != none)
            add_machine(c, displacement);
    }
}

void ModelBuilder::add_machine(Index c, Index displacement_passage) {
    const Component& component = circuit_.components[c];
    const Passage& passage = circuit_.passages[displacement_passage];
    const bool pump = graph_.part(c) == Part::pump;
    const std::optional<Machine> machine = machine_of(c, pump);
    if (!machine) return;
    NetworkMachine one;
    one.machine = *machine;
    const Index a = port_named(circuit_, component, "A");
    const Index b = port_named(circuit_, component, "B");
    const bool lettered = a != none && b != none;
    MachineOwner owner{.component = c,
                       .a = lettered ? a : passage.to,
                       .b = lettered ? b : passage.from,
                       .housing = drain_of(circuit_, component)};
    one.a = node_at(owner.a);
    one.b = node_at(owner.b);
    const Index drain = owner.housing;
    // Drained inside, a one-way pump leaks to its inlet, all others across their ports.
    one.housing = drain != none ? node_at(drain) : one.b;
    if (drain == none && (lettered || !pump)) one.machine.case_share = 0.0;
    if (drain == none) owner.housing = owner.b;
    one.shaft = shaft_at(c);
    const double share = point_.set_share(c, pump);
    const bool two_way = circuit_.figure(component, "flow-directions").value_or(1.0) == 2.0;
    const bool reversing_shaft = graph_.drives().at(c).reversing;
    const double sense =
        pump && two_way && circuit_.is_yes(component, "variable") && !reversing_shaft
            ? point_.sense()
            : 1.0;
    // Positive displacement puts oil out at A; a motor is meant to take it in there.
    one.stroke = pump ? sense * share : -share;
    const std::string_view control = circuit_.choice(component, "control");
    if (pump && control == "load-sensing") {
        miss(component, "load-sensing, which is not solved yet");
        return;
    }
    if (pump && control == "pressure-compensated") {
        if (const auto kept = need(component, "compensator-setting")) one.pressure_limit = *kept;
    } else if (const auto limit = circuit_.figure(component, "pressure-limiter"); pump && limit) {
        if (one.stroke != 0.0) one.pressure_limit = *limit;
    }
    model_.machines.push_back(owner);
    model_.network.machines.push_back(one);
}

/// Size and losses; nothing where a figure is missing that it cannot do without.
std::optional<Machine> ModelBuilder::machine_of(Index c, bool pump) {
    const Component& component = circuit_.components[c];
    const auto displacement = need(component, "displacement");
    if (!displacement) return std::nullopt;
    Machine machine{.displacement = Displacement(*displacement)};
    machine.case_share = circuit_.figure(component, "case-leakage-share").value_or(1.0);
    if (!find_losses(component, pump, machine)) return std::nullopt;
    return machine;
}

bool ModelBuilder::find_losses(const Component& component, bool pump, Machine& machine) {
    const auto figure = [&](std::string_view name) { return circuit_.figure(component, name); };
    const auto slip = figure("slip-coefficient");
    const auto drag = figure("drag-coefficient");
    const auto friction = figure("friction-coefficient");
    const auto volumetric = figure("volumetric-efficiency");
    const auto torque = figure("torque-efficiency");
    const auto leakage = figure("leakage-coefficient");
    if (slip) machine.losses.slip = *slip;
    if (drag) machine.losses.drag = *drag;
    if (friction) machine.losses.friction = *friction;
    const bool from_efficiency = (!slip && volumetric) || (!drag && !friction && torque);
    if (from_efficiency) {
        const auto pressure = need(component, "rated-pressure");
        const auto speed = need(component, "rated-speed");
        const auto viscosity = need(component, "rated-viscosity");
        if (!pressure || !speed || !viscosity) return false;
        const RatedPoint rated{
            .pressure = Pressure(*pressure),
            .speed = Speed(*speed),
            .viscosity = DynamicViscosity(*viscosity * model_.network.oil.density.si())};
        const Work work = pump ? Work::pump : Work::motor;
        if (!slip && volumetric) {
            const auto found = slip_from(work, *volumetric, rated);
            if (!found) {
                miss(component, "volumetric-efficiency: " + found.reason());
                return false;
            }
            machine.losses.slip = *found;
        }
        if (!drag && !friction && torque) {
            const double share = figure("drag-share").value_or(0.5);
            const auto found = torque_losses_from(work, *torque, share, rated);
            if (!found) {
                miss(component, "torque-efficiency: " + found.reason());
                return false;
            }
            machine.losses.drag = found->drag;
            machine.losses.friction = found->friction;
            assume(fmt::format("{}.drag-share", component.path), fmt::format("{:.3g}", share),
                   "how the loss of torque divides over drag and friction");
        }
    }
    if (!slip && !volumetric && leakage) machine.leakage = Leakage(*leakage);
    if (!slip && !volumetric && !leakage)
        assume(fmt::format("{}: leakage", component.path), "none",
               "neither efficiency nor coefficient given");
    if (!drag && !friction && !torque)
        assume(fmt::format("{}: loss of torque", component.path), "none",
               "neither efficiency nor coefficient given");
    return true;
}

void ModelBuilder::add_cylinder(Index c, Index displacement_passage) {
    const Component& component = circuit_.components[c];
    const auto bore = need(component, "bore");
    if (!bore) return;
    const auto rod = circuit_.figure(component, "rod");
    const auto ratio = circuit_.figure(component, "area-ratio");
    const int rods = static_cast<int>(circuit_.figure(component, "rods").value_or(1.0));
    const bool double_acting = displacement_passage != none;
    if (double_acting && !rod && !ratio) {
        miss(component, "rod");
        return;
    }
    NetworkCylinder one;
    one.cylinder = Cylinder::of(Length(*bore), Length(rod.value_or(0.0)), rods);
    if (!double_acting) one.cylinder.rod_side = Area(0.0);
    if (double_acting && !rod) one.cylinder.rod_side = one.cylinder.cap * (1.0 / *ratio);
    one.cylinder.force_efficiency = circuit_.figure(component, "force-efficiency").value_or(1.0);
    const auto leaks = circuit_.figure(component, "cross-leakage");
    const auto rated = circuit_.figure(component, "rated-pressure");
    if (leaks && rated && *rated > 0.0) one.cylinder.leakage = Leakage(*leaks / *rated);
    const MachineOwner owner{.component = c,
                             .a = port_named(circuit_, component, "A"),
                             .b = double_acting ? port_named(circuit_, component, "B") : none};
    one.a = node_at(owner.a);
    if (double_acting) one.b = node_at(owner.b);
    one.shaft = shaft_at(c);
    model_.network.shafts[one.shaft].straight = true;
    model_.cylinders.push_back(owner);
    model_.network.cylinders.push_back(one);
}

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
    const auto torque = point_.figure(c, straight ? "force" : "torque");
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
            load.torque = Torque(*torque * point_.sense() * forward);
        }
    } else if (circuit_.is_yes(component, "vehicle") && mass && radius) {
        const auto rolling = need(component, "rolling-resistance");
        if (!rolling) return;
        load.kind = NetworkLoad::Kind::vehicle;
        load.vehicle = {
            .mass = Mass(*mass),
            .wheel_radius = Length(*radius),
            .grade = Grade(point_.set_figure(c, "grade").value_or(0.0) * point_.sense() * forward),
            .rolling_resistance = *rolling};
    } else if (one_way && mass && radius) {
        load.kind = NetworkLoad::Kind::constant;
        const Torque weight =
            load_torque(Hoist{.mass = Mass(*mass), .drum_radius = Length(*radius)});
        load.torque = weight * (pulls == "forward" ? -forward : forward);
    } else {
        miss(component, straight ? "force" : "torque");
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
        if (point_.moves() || point_.state() == State::neutral)
            assume(fmt::format("{}: torque", component.path), "none",
                   "taken for released: torque, pressures or line are not given");
        else
            miss(component, torque ? "release-pressure" : "torque");
        return;
    }
    load.off_at_first = point_.moves();
    load.brake = {.spring_applied = spring,
                  .torque = Torque(*torque),
                  .begins = Pressure(spring ? *begins : 0.0),
                  .completes = Pressure(spring ? completes.value_or(*begins * 1.0001 + 1.0)
                                               : std::max(*begins, 1.0))};
    model_.loads.push_back(c);
    model_.network.loads.push_back(load);
}

/// A shaft on which nothing of the network stands has no balance of its own.
void ModelBuilder::settle_shafts() {
    std::vector<std::uint8_t> driven(model_.network.shafts.size(), 0);
    for (const NetworkMachine& machine : model_.network.machines) driven[machine.shaft] = 1;
    for (const NetworkCylinder& cylinder : model_.network.cylinders) driven[cylinder.shaft] = 1;
    for (const NetworkGear& gear : model_.network.gears) driven[gear.in] = driven[gear.out] = 1;
    for (std::size_t s = 0; s < driven.size(); ++s) {
        Shaft& shaft = model_.network.shafts[s];
        if (driven[s] == 0 && !shaft.speed) shaft.speed = 0.0;
        if (!shaft.speed)
            shaft.guess = point_.moves() ? point_.sense() * (shaft.straight ? 0.1 : 50.0) : 0.0;
    }
}

}  // namespace loopwright::hydraulics
