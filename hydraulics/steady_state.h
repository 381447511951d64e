#pragma once

#include <array>
#include <optional>
#include <vector>

#include <loopwright/hydraulics/equations.h>

namespace loopwright::hydraulics {

/// A solution in SI, in the order of the network's tables.
struct SteadyState {
    std::vector<double> pressures = {};     ///< of nodes, Pa
    std::vector<double> speeds = {};        ///< of shafts, rad/s
    std::vector<double> flows = {};         ///< of branches, m3/s from `from` to `to`
    std::vector<double> gear_torques = {};  ///< at their ends in, N.m
    std::vector<MachineState> machines = {};
    std::vector<double> mover_torques = {};  ///< that they give, N.m
    std::vector<double> shares_left = {};    ///< of set strokes, by what spares each mover
    /// Largest flow that is not accounted for at a node, over the largest flow of all.
    double mass_residual = 0.0;
    /// Power put in by the shafts that are driven, less all that is taken out or lost, over the
    /// largest power of all.
    double energy_residual = 0.0;
    int steps = 0;  ///< of Newton
};

/// Which balance does not close.
struct NoSteadyState {
    BalanceOf worst = {};
};

/// Solves one network after another of the same shape; each solution is where the next one begins.
class SteadyStateSolver {
  public:
    /// Keeps a reference to the network, whose figures may change between the calls.
    explicit SteadyStateSolver(const Network& network);

    /// Nothing where no steady state is found; `trouble` says why then.
    std::optional<SteadyState> solve();
    /// From the last solution alone, where the next is near; nothing where there is none, or where
    /// it leads nowhere. Then the next `solve` begins anew.
    std::optional<SteadyState> follow();
    const NoSteadyState& trouble() const { return trouble_; }

    /// Forgets the last solution.
    void begin_anew();

  private:
    bool newton(const Smoothing& smoothing, int most_steps, double good_enough);
    void go_on();
    bool run_up(bool brakes_off, double longer);
    bool run_up();
    double measure(std::span<const double> residuals) const;
    SteadyState result();

    const Network& network_;
    Equations equations_;
    Elimination elimination_;
    std::vector<double> unknowns_;
    std::vector<double> residuals_;
    std::vector<double> jacobian_;
    std::vector<double> step_;
    std::vector<double> tried_;
    std::vector<double> before_;
    std::vector<double> closed_;
    /// Of each unknown the solutions before the last one, the latest first; while warm_.
    std::vector<std::array<double, 3>> last_;
    bool warm_ = false;
    int steps_ = 0;
    NoSteadyState trouble_;
};

}  // namespace loopwright::hydraulics
