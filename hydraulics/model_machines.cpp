#include <algorithm>

#include <fmt/format.h>

#include <loopwright/hydraulics/model_builder.h>
#include <loopwright/hydraulics/wilson.h>

// Pumps, motors and cylinders.

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
    one.measured = measured_machine(c, pump, one.machine);
    if (one.measured && one.stroke == 0.0) tell_of_no_stroke(component, *one.measured);
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
    const bool flow_measured =
        measures(component, "flow") || measures(component, "volumetric-efficiency");
    const bool torque_measured =
        measures(component, "torque") || measures(component, "mechanical-efficiency");
    const bool slip_sought = !slip && volumetric && !flow_measured;
    const bool losses_sought = !drag && !friction && torque && !torque_measured;
    const bool from_efficiency = slip_sought || losses_sought;
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
        if (slip_sought) {
            const auto found = slip_from(work, *volumetric, rated);
            if (!found) {
                miss(component, "volumetric-efficiency: " + found.reason());
                return false;
            }
            machine.losses.slip = *found;
        }
        if (losses_sought) {
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
    if (!slip && !volumetric && !leakage && !flow_measured)
        assume(fmt::format("{}: leakage", component.path), "none",
               "neither efficiency nor coefficient given");
    if (!drag && !friction && !torque && !torque_measured)
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

}  // namespace loopwright::hydraulics
