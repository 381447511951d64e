#include <loopwright/hydraulics/steady_state.h>

#include <algorithm>
#include <cmath>

namespace loopwright::hydraulics {

namespace {

/// Of scaled residuals: 1e-15 m3/s, 1e-6 Pa.
constexpr double solved = 1e-12;
/// On the way there, with what is shut and open smoothed.
constexpr double near_enough = 1e-3;
constexpr int most_steps = 60;
/// A step is halved so often at most before the way is given up.
constexpr int most_halvings = 14;
/// From oil that leaks everywhere to oil that does not.
constexpr double leaks[] = {1e-1, 1e-2, 1e-3, 1e-4, 1e-6, 1e-8, 1e-10};
/// From nearly a resistance to a valve that is either shut or open.
constexpr double roundings[] = {1.0, 0.3, 0.1, 0.03, 1e-2, 3e-3, 1e-3, 1e-4, 1e-5, 1e-6};

}  // namespace

SteadyStateSolver::SteadyStateSolver(const Network& network)
    : network_(network),
      equations_(network),
      elimination_(equations_.size(), equations_.places()),
      unknowns_(equations_.guess()),
      residuals_(equations_.size()),
      jacobian_(elimination_.places().size()),
      step_(equations_.size()),
      tried_(equations_.size()) {}

void SteadyStateSolver::begin_anew() {
    unknowns_ = equations_.guess();
    warm_ = false;
}

double SteadyStateSolver::measure(std::span<const double> residuals) const {
    double sum = 0.0;
    for (const double one : residuals) sum += one * one;
    return sum;
}

bool SteadyStateSolver::newton(const Smoothing& smoothing, int most, double good_enough) {
    const auto largest = [&] {
        double size = 0.0;
        for (const double one : residuals_) size = std::max(size, std::abs(one));
        return std::isfinite(size) ? size : 1e300;
    };
    equations_.evaluate(unknowns_, smoothing, residuals_, jacobian_);
    for (int i = 0; i < most; ++i) {
        if (largest() <= good_enough) return true;
        const double before = measure(residuals_);
        if (!elimination_.factor(jacobian_)) return false;
        step_ = residuals_;
        elimination_.solve(step_);
        ++steps_;
        double share = 1.0;
        tried_ = unknowns_;
        for (int halving = 0;; ++halving, share *= 0.5) {
            for (std::size_t k = 0; k < unknowns_.size(); ++k)
                unknowns_[k] = tried_[k] - share * step_[k];
            equations_.evaluate(unknowns_, smoothing, residuals_, jacobian_);
            const double after = measure(residuals_);
            if (after < (1.0 - 1e-4 * share) * before || largest() <= good_enough) break;
            if (halving >= most_halvings) {
                unknowns_ = tried_;
                equations_.evaluate(unknowns_, smoothing, residuals_, jacobian_);
                return false;
            }
        }
    }
    return largest() <= good_enough;
}

std::optional<SteadyState> SteadyStateSolver::solve() {
    steps_ = 0;
    if (warm_ && newton({}, most_steps, solved)) return result();
    bool found = false;
    for (const bool asked : {true, false}) {
        unknowns_ = equations_.guess();
        for (const double leak : leaks)
            newton({.leak = leak, .asked = asked}, most_steps, near_enough * leak);
        found = newton({}, most_steps, solved);
        if (found) break;
    }
    for (const bool asked : {true, false}) {
        if (found) break;
        unknowns_ = equations_.guess();
        for (const double rounding : roundings)
            newton({.rounding = rounding, .leak = 1e-2 * rounding, .asked = asked}, most_steps,
                   near_enough * rounding);
        for (const double leak : leaks)
            if (leak < 1e-8) newton({.leak = leak, .asked = asked}, most_steps, near_enough * leak);
        found = newton({}, most_steps, solved);
    }
    if (!found) {
        std::size_t worst = 0;
        for (std::size_t i = 1; i < residuals_.size(); ++i)
            if (!(std::abs(residuals_[i]) <= std::abs(residuals_[worst]))) worst = i;
        trouble_ = {.worst = equations_.size() == 0 ? BalanceOf{} : equations_.balance(worst)};
        begin_anew();
        return std::nullopt;
    }
    warm_ = true;
    return result();
}

SteadyState SteadyStateSolver::result() const {
    SteadyState state;
    state.steps = steps_;
    for (Index i = 0; i < network_.nodes.size(); ++i)
        state.pressures.push_back(equations_.pressure(unknowns_, i));
    for (Index i = 0; i < network_.shafts.size(); ++i)
        state.speeds.push_back(equations_.speed(unknowns_, i));
    for (Index i = 0; i < network_.branches.size(); ++i)
        state.flows.push_back(equations_.flow(unknowns_, i));
    for (Index i = 0; i < network_.gears.size(); ++i)
        state.gear_torques.push_back(equations_.gear_torque(unknowns_, i));
    for (Index i = 0; i < network_.machines.size(); ++i)
        state.machines.push_back(equations_.state_of(unknowns_, i));
    return state;
}

}  // namespace loopwright::hydraulics
