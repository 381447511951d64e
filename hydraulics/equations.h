#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/hydraulics/elimination.h>
#include <loopwright/hydraulics/network.h>

namespace loopwright::hydraulics {

/// What an equation balances.
enum class Balance : std::uint8_t {
    flow,    ///< at a node
    law,     ///< of a branch
    torque,  ///< on a shaft
    gear,    ///< speeds of a gear's shafts
    stroke,  ///< of a machine with a control of its own
    mover,   ///< speed and torque of a prime mover
    share,   ///< of the strokes, that spares a prime mover
};
struct BalanceOf {
    Balance balance = Balance::flow;
    Index index = none;  ///< into the network's table
};

/// What makes equations easier than they are, on the way to their solution.
struct Smoothing {
    /// From every node to the atmosphere, scaled flow over scaled pressure. The least is kept until
    /// the state is found: the pressure of oil that is shut in falls with it to that of what feeds
    /// it.
    double leak = least_leak;
    static constexpr double least_leak = 1e-11;
    /// Of oil that gives way at every node and of mass on every shaft, over a step of time: what it
    /// takes to move away from `before`, as scaled flow over scaled pressure, torque over speed.
    double inertia = 0.0;
    bool brakes_off = false;              ///< those that are off at first (NetworkLoad)
    std::span<const double> before = {};  ///< unknowns at the step's begin; read with inertia only
};

/// The equations of a network, as many as unknowns, with their exact Jacobian. Unknowns and
/// equations are scaled to about 1: pressures by 10 bar, flows by 60 L/min, speeds by 100 rad/s,
/// torques by 100 N.m.
class Equations {
  public:
    /// Keeps a reference to the network, whose figures may change, not its shape.
    explicit Equations(const Network& network);

    std::size_t size() const { return rows_.size(); }
    const BalanceOf& balance(std::size_t row) const { return rows_[row]; }
    std::vector<MatrixPlace> places() const { return places_; }

    /// Scaled unknowns to begin with.
    std::vector<double> guess() const;

    /// Residuals and, in the order of `places`, the Jacobian at `unknowns`, all scaled.
    void evaluate(std::span<const double> unknowns, const Smoothing& smoothing,
                  std::span<double> residuals, std::span<double> jacobian);

    /// What the leak of a smoothing takes from each balance, scaled.
    void leaks(std::span<const double> unknowns, double leak, std::span<double> taken) const;

    // Figures of the unknowns, SI; of what is fixed, as given.
    double pressure(std::span<const double> unknowns, Index node) const;
    double speed(std::span<const double> unknowns, Index shaft) const;
    double flow(std::span<const double> unknowns, Index branch) const;
    double gear_torque(std::span<const double> unknowns, Index gear) const;
    double stroke(std::span<const double> unknowns, Index machine) const;
    double mover_torque(std::span<const double> unknowns, Index mover) const;
    /// Of set strokes what is left, 1 where nothing spares it.
    double share_left(std::span<const double> unknowns, Index mover) const;
    MachineState state_of(std::span<const double> unknowns, Index machine) const;

  private:
    class Collector;
    class Evaluator;

    double figure(std::span<const double> unknowns, std::uint32_t variable) const;
    std::uint32_t add_unknown(double scale, double guess, double row_scale, BalanceOf balance);
    std::uint32_t add_fixed(double value);

    /// Hands each term of each equation to `sink`, always in the same order.
    template <class Sink>
    void assemble(Sink& sink) const;
    template <class Sink>
    void assemble_branch(Sink& sink, Index i) const;
    template <class Sink>
    void assemble_divider(Sink& sink, Index d) const;
    template <class Sink>
    void assemble_machine(Sink& sink, Index i) const;
    template <class Sink>
    void assemble_stroke(Sink& sink, Index i, const MachineLaw& law) const;
    template <class Sink>
    void assemble_mover(Sink& sink, Index i) const;
    template <class Sink>
    void assemble_load(Sink& sink, const NetworkLoad& load) const;

    const Network& network_;
    // Variables: the unknowns, then what is fixed.
    std::vector<std::uint32_t> node_variable_;
    std::vector<std::uint32_t> shaft_variable_;
    std::vector<std::uint32_t> branch_variable_;
    std::vector<std::uint32_t> gear_variable_;
    std::vector<std::uint32_t> stroke_variable_;
    std::vector<std::uint32_t> mover_variable_;  // torques
    std::vector<std::uint32_t> share_variable_;
    std::uint32_t whole_ = 0;  // a share of 1
    std::uint32_t atmosphere_ = 0;
    std::vector<std::vector<Index>> legs_;  // branches, by divider
    std::vector<double> fixed_;
    std::vector<double> figures_;  // of all variables where they are evaluated, SI
    std::vector<BalanceOf> rows_;
    std::vector<double> scale_;
    std::vector<double> row_scale_;  // what a residual is multiplied with
    std::vector<double> guess_;
    std::vector<MatrixPlace> places_;
    std::vector<std::uint32_t> slots_;  // of each term that is put in, in order
    std::vector<double> slot_scales_;   // what its slope is multiplied with
};

}  // namespace loopwright::hydraulics
