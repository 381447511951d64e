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

void ModelBuilder::build_shafts() {
    if (point_.is_torn())
        model_.missing.emplace_back("one sense: commands of one loop go both ways");
    find_shafts();
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
        shaft.speed = 0.0;
        return;
    }
    const double droop = circuit_.figure(component, "droop").value_or(0.0);
    if (shaft.mover != none || (droop > 0.0 && shaft.speed)) {
        miss(component, "droop of the only prime mover on its shaft: here are several");
        return;
    }
    if (point_.is_commanded(c)) {
        if (const auto rated = need(component, "speed"))
            shaft.speed = *rated * point_.set_share(c, false) *
                          (circuit_.is_yes(component, "reversing") ? point_.sense(c) : 1.0);
    } else if (const auto speed = point_.figure(c, "speed")) {
        shaft.speed = *speed;
    } else {
        miss(component, "speed");
    }
    if (shaft.speed && droop > 0.0) let_go(c);
}

/// Makes the torque that a prime mover gives an unknown. Nothing where its power is not given.
void ModelBuilder::let_go(Index c) {
    const Component& component = circuit_.components[c];
    const Index s = model_.shaft_of_shaft[component.shaft];
    Shaft& shaft = model_.network.shafts[s];
    if (shaft.mover != none || !shaft.speed || *shaft.speed == 0.0) return;
    const auto power = need(component, "power");
    const auto rated = need(component, "speed");
    if (!power || !rated) return;
    NetworkMover one{.shaft = s, .setting = Speed(*shaft.speed)};
    one.mover = {.rated_speed = Speed(*rated),
                 .rated_torque = Torque(*power / *rated),
                 .droop = circuit_.figure(component, "droop").value_or(0.0)};
    if (const auto most = circuit_.figure(component, "max-torque"))
        one.mover.max_torque = Torque(*most);
    if (const auto brakes = circuit_.figure(component, "braking-torque"))
        one.mover.braking_torque = Torque(*brakes);
    else if (const auto takes_up = circuit_.figure(component, "braking-power"))
        if (const auto highest = circuit_.figure(component, "max-speed"))
            one.mover.braking_torque = Torque(*takes_up / *highest);
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
            ? point_.sense(c)
            : 1.0;
    // Positive displacement puts oil out at A; a motor is meant to take it in there.
    one.stroke = pump ? sense * share : -share;
    if (!(pump ? add_pump_control(component, one) : add_motor_control(c, one))) return;
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
