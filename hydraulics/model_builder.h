#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <loopwright/hydraulics/model.h>

namespace loopwright::hydraulics {

/// The component's port of that letter, or none.
Index port_named(const Circuit& circuit, const Component& component, std::string_view letter);

/// The table measured on a component; null where there is none.
const MeasuredTable* table_of(const Circuit& circuit, Index component);

/// Makes the network of one duty point. Private to model*.cpp.
class ModelBuilder {
  public:
    ModelBuilder(const FlowGraph& graph, const PointFigures& point,
                 std::span<const std::uint8_t> open, const Oil& oil);
    Model build();
    void renew_shafts(Model& model);

  private:
    // model.cpp: oil
    void find_nodes();
    void add_pipes();
    void add_passage(Index passage);
    void add_pressure_opened(Index passage);
    void add_reduced(Index passage);
    void add_metering(Index passage);
    void add_leg(Index passage);
    void add_spring(Index passage, const SpringValve& valve, Index pilot_port);
    Branch& add_branch(Branch::Kind kind, BranchOwner owner);
    bool is_link(Index passage) const;
    bool stands_open(Index passage) const;
    bool has_element_data(const Component& component) const;

    // model_shafts.cpp: what turns
    void build_shafts();
    void find_shafts();
    void add_prime_mover(Index component);
    void turn(Index shaft, double speed, Index prime_mover);
    void hold_speeds_against_gears();
    void tell_of_two(Index one, Index other, double ratio);
    void let_go(Index component);
    void settle_shafts();
    Index shaft_at(Index component);

    // model_machines.cpp
    void add_machines();
    void add_machine(Index component, Index displacement_passage);
    void add_cylinder(Index component, Index displacement_passage);
    std::optional<Machine> machine_of(Index component, bool pump);
    bool find_losses(const Component& component, bool pump, Machine& machine);

    // model_controls.cpp: what moves strokes. False where the machine cannot be solved.
    bool add_pump_control(const Component& component, NetworkMachine& one);
    bool add_load_sensing(const Component& component, NetworkMachine& one);
    bool add_motor_control(Index component, NetworkMachine& one);
    void add_anti_stall();
    Index mover_of(Index component) const;

    // model_tables.cpp: what was measured
    bool measures(const Component& component, std::string_view result) const;
    std::optional<MeasuredMachine> measured_machine(Index component, bool pump,
                                                    const Machine& machine) const;
    void tell_of_no_stroke(const Component& component, const MeasuredMachine& measured);
    void add_measured(Index passage);

    // model_loads.cpp: what takes torque
    void add_loads();
    void add_load(Index component);
    void add_brake(Index component);
    double forward_on(Index shaft) const;

    void miss(const Component& component, std::string_view datum);
    void assume(std::string of, std::string text, std::string_view source);
    std::optional<double> need(const Component& component, std::string_view datum);
    Index node_at(Index port) const { return model_.node_of_port[port]; }

    const FlowGraph& graph_;
    const Circuit& circuit_;
    const PointFigures& point_;
    std::span<const std::uint8_t> open_;
    Model model_;
    std::vector<Index> divider_of_;  // components
    std::vector<Index> turned_by_;   // by shaft: the prime mover that gives its speed
};

}  // namespace loopwright::hydraulics
