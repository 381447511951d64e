#include <algorithm>
#include <cmath>

#include <loopwright/hydraulics/model_builder.h>

/// What moves the strokes of machines beside their commands.
namespace loopwright::hydraulics {

bool ModelBuilder::add_pump_control(const Component& component, NetworkMachine& one) {
    const std::string_view control = circuit_.choice(component, "control");
    if (control == "load-sensing") {
        if (!add_load_sensing(component, one)) return false;
    } else if (control == "pressure-compensated") {
        if (const auto kept = need(component, "compensator-setting"))
            one.control.pressure_limit = Pressure(*kept);
    } else if (const auto limit = circuit_.figure(component, "pressure-limiter")) {
        if (one.stroke != 0.0) one.control.pressure_limit = Pressure(*limit);
    }
    if (one.stroke == 0.0) return true;
    if (const auto torque = circuit_.figure(component, "torque-limiter"))
        one.control.torque_limit = Torque(*torque);
    one.control.spares_mover = circuit_.is_yes(component, "anti-stall");
    return true;
}

/// It feels the load at X, and takes the stroke back above its compensator's setting as well, where
/// it has one.
bool ModelBuilder::add_load_sensing(const Component& component, NetworkMachine& one) {
    if (circuit_.figure(component, "flow-directions").value_or(1.0) == 2.0) {
        miss(component, "load-sensing control of a closed loop, which there is not");
        return false;
    }
    const Index felt = port_named(circuit_, component, "X");
    if (felt == none || graph_.lines_of(felt).empty()) {
        miss(component, "X, where its control feels the pressure of the load");
        return false;
    }
    const auto margin = need(component, "load-sensing-margin");
    if (!margin) return false;
    one.control.margin = Pressure(*margin);
    one.sensed = node_at(felt);
    if (const auto kept = circuit_.figure(component, "compensator-setting"))
        one.control.pressure_limit = Pressure(*kept);
    return true;
}

/// Where no command sets it, such a motor is at its least displacement until the pressure rises.
bool ModelBuilder::add_motor_control(Index c, NetworkMachine& one) {
    const Component& component = circuit_.components[c];
    if (!circuit_.figure(component, "begin-pressure") &&
        !circuit_.figure(component, "end-pressure"))
        return true;
    const auto begin = need(component, "begin-pressure");
    const auto end = need(component, "end-pressure");
    const auto smallest = need(component, "min-displacement");
    if (!begin || !end || !smallest) return false;
    if (*end < *begin) {
        miss(component, "end-pressure that is not below its begin-pressure");
        return false;
    }
    const double least = *smallest / one.machine.displacement.si();
    if (least >= 1.0) return true;
    one.stroke = -(point_.is_commanded(c) ? std::max(std::abs(one.stroke), least) : least);
    one.control.rise = {.begin = Pressure(*begin), .end = Pressure(*end), .least = least};
    return true;
}

/// The prime movers that anti-stall controls look at, once all machines are there.
void ModelBuilder::add_anti_stall() {
    for (std::size_t i = 0; i < model_.machines.size(); ++i) {
        NetworkMachine& one = model_.network.machines[i];
        if (!one.control.spares_mover) continue;
        const Component& component = circuit_.components[model_.machines[i].component];
        const Index mover = mover_of(model_.machines[i].component);
        if (mover == none) {
            miss(component, "prime mover that its anti-stall control could spare");
            continue;
        }
        let_go(mover);
        one.mover =
            model_.network.shafts[model_.shaft_of_shaft[circuit_.components[mover].shaft]].mover;
        if (one.mover == none)
            one.control.spares_mover = false;  // it stands
        else
            model_.network.movers[one.mover].spared = true;
    }
}

/// The prime mover of a component's drive; none where there is none, or more than one.
Index ModelBuilder::mover_of(Index c) const {
    const Drives& drives = graph_.drives();
    if (drives.of(c) == none) return none;
    Index found = none;
    for (const Index member : drives.members(drives.of(c))) {
        if (circuit_.components[member].kind->part != Part::prime_mover || member == found)
            continue;
        if (found != none) return none;
        found = member;
    }
    return found;
}

}  // namespace loopwright::hydraulics
