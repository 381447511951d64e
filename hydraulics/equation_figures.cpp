#include <algorithm>

#include <loopwright/hydraulics/equations.h>

/// What the unknowns stand for.
namespace loopwright::hydraulics {

std::vector<double> Equations::guess() const { return guess_; }

double Equations::pressure(std::span<const double> unknowns, Index node) const {
    return figure(unknowns, node_variable_[node]);
}
double Equations::speed(std::span<const double> unknowns, Index shaft) const {
    return figure(unknowns, shaft_variable_[shaft]);
}
double Equations::flow(std::span<const double> unknowns, Index branch) const {
    return figure(unknowns, branch_variable_[branch]);
}
double Equations::gear_torque(std::span<const double> unknowns, Index gear) const {
    return figure(unknowns, gear_variable_[gear]);
}
double Equations::stroke(std::span<const double> unknowns, Index machine) const {
    return network_.machines[machine].control.acts() ? figure(unknowns, stroke_variable_[machine])
                                                     : network_.machines[machine].stroke;
}
double Equations::mover_torque(std::span<const double> unknowns, Index mover) const {
    return figure(unknowns, mover_variable_[mover]);
}
double Equations::share_left(std::span<const double> unknowns, Index mover) const {
    return figure(unknowns, share_variable_[mover]);
}

MachineState Equations::state_of(std::span<const double> unknowns, Index m) const {
    const NetworkMachine& machine = network_.machines[m];
    return {.pressure_a = pressure(unknowns, machine.a),
            .pressure_b = pressure(unknowns, machine.b),
            .pressure_case = pressure(unknowns, machine.housing),
            .shaft_speed = speed(unknowns, machine.shaft),
            .relative_displacement = stroke(unknowns, m),
            .dynamic_viscosity = network_.oil.dynamic_viscosity().si()};
}

void Equations::leaks(std::span<const double> unknowns, double leak,
                      std::span<double> taken) const {
    std::fill(taken.begin(), taken.end(), 0.0);
    for (const std::uint32_t variable : node_variable_)
        if (variable < taken.size()) taken[variable] = leak * unknowns[variable];
}

}  // namespace loopwright::hydraulics
