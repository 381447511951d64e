#include <loopwright/rules/charged_loops.h>

#include <algorithm>

namespace loopwright {

namespace {

bool holds(const std::vector<Index>& components, Index component) {
    return std::find(components.begin(), components.end(), component) != components.end();
}

Index outlet_of(const Circuit& circuit, Index pump) {
    const Range ports = circuit.components[pump].ports;
    Index outlet = ports.begin;
    for (Index port = ports.begin; port < ports.end; ++port)
        if (circuit.ports[port].use == PortUse::outlet) outlet = port;
    return outlet;
}

}  // namespace

std::vector<ChargedLoop> charged_loops(const AtWork& at) {
    std::vector<ChargedLoop> charged;
    for (const LoopInfo& loop : at.structure.loops) {
        const auto balance =
            std::find_if(at.point.charge.begin(), at.point.charge.end(),
                         [&](const hydraulics::ChargeBalance& one) {
                             return std::any_of(loop.pumps.begin(), loop.pumps.end(),
                                                [&](Index p) { return holds(one.machines, p); });
                         });
        if (balance != at.point.charge.end()) charged.push_back({&loop, &*balance});
    }
    return charged;
}

std::vector<ChargedLoop> known_charged_loops(const AtWork& at) {
    std::vector<ChargedLoop> charged = charged_loops(at);
    if (at.is_torn())
        std::erase_if(charged, [&](const ChargedLoop& one) {
            return !at.is_torn_at(outlet_of(at.circuit(), one.balance->source));
        });
    return charged;
}

double charge_line_pressure(const AtWork& at, const ChargedLoop& charged) {
    return std::max(at.pressure(outlet_of(at.circuit(), charged.balance->source)),
                    hydraulics::vacuum);
}

double charge_given(const hydraulics::ChargeBalance& balance) {
    double given = balance.given;
    for (const hydraulics::ChargeUse& use : balance.uses)
        if (use.flow < 0.0) given -= use.flow;  // another pump of the same line
    return given;
}

std::vector<std::string_view> unknown_leakage(const AtWork& at, Docket& docket,
                                              const ChargedLoop& charged) {
    std::vector<Index> machines = charged.balance->machines;
    machines.push_back(charged.balance->source);
    return unknown_losses(at, docket, machines, Loss::leakage);
}

std::vector<Step> steps_of(const ChargedLoop& charged) {
    std::vector<Step> steps{
        {ElementType::component, charged.balance->source, none, none, "charges"}};
    for (const auto* machines : {&charged.loop->pumps, &charged.loop->actuators})
        for (const Index machine : *machines)
            steps.push_back({ElementType::component, machine, none, none, "is charged"});
    return steps;
}

}  // namespace loopwright
