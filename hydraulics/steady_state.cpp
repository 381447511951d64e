#include <loopwright/hydraulics/steady_state.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::hydraulics {

namespace {

/// Of scaled residuals: 1e-15 m3/s, 1e-6 Pa.
constexpr double solved = 1e-12;
constexpr int most_steps = 60;
constexpr int most_steps_ahead = 8;
/// A step is halved so often at most before the way is given up.
constexpr int most_halvings = 14;
/// A step need not better the last residual, only the worst of so many (Grippo, Lampariello and
/// Lucidi 1986, from memory): the way round a corner may lead uphill for a while.
constexpr std::size_t remembered = 8;

/// Of the run-up: a step of time is solved when its residual, over its inertia, is below this.
constexpr double near_enough = 1e-3;
constexpr int most_time_steps = 200;
constexpr int most_steps_in_time = 20;
constexpr double most_inertia = 1e9;
/// The share of the inertia that a success leaves: boldly at first, then step by step.
constexpr double steps_longer[] = {0.4, 0.75};
constexpr double shorter = 8.0;
/// Below this inertia so little moves that the steady state may be tried for.
constexpr double nearly_still = 1e-2;
constexpr double run_up_leak = 1e-6;

}  // namespace

SteadyStateSolver::SteadyStateSolver(const Network& network)
    : network_(network),
      equations_(network),
      elimination_(equations_.size(), equations_.places()),
      unknowns_(equations_.guess()),
      residuals_(equations_.size()),
      jacobian_(elimination_.places().size()),
      step_(equations_.size()),
      tried_(equations_.size()),
      before_(equations_.size()),
      closed_(equations_.size()),
      last_(equations_.size()) {}

void SteadyStateSolver::begin_anew() {
    unknowns_ = equations_.guess();
    warm_ = false;
}

double SteadyStateSolver::measure(std::span<const double> residuals) const {
    // Four sums at once, so that none waits for the last addition.
    std::array<double, 4> sums{};
    std::size_t k = 0;
    for (; k + sums.size() <= residuals.size(); k += sums.size())
        for (std::size_t i = 0; i < sums.size(); ++i)
            sums[i] += residuals[k + i] * residuals[k + i];
    for (; k < residuals.size(); ++k) sums[0] += residuals[k] * residuals[k];
    return sums[0] + sums[1] + (sums[2] + sums[3]);
}

bool SteadyStateSolver::newton(const Smoothing& smoothing, int most, double good_enough) {
    // Written so that a figure that is no number is not good.
    const auto all_good = [&] {
        return std::all_of(residuals_.begin(), residuals_.end(),
                           [&](double one) { return std::abs(one) <= good_enough; });
    };
    equations_.evaluate(unknowns_, smoothing, residuals_, jacobian_);
    std::array<double, remembered> sizes{};
    for (int i = 0; i < most; ++i) {
        // One step at least: oil that is shut in feels its leak too little to be told by a
        // residual.
        if (i > 0 && all_good()) return true;
        sizes[static_cast<std::size_t>(i) % remembered] = measure(residuals_);
        const double before = *std::max_element(sizes.begin(), sizes.end());
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
            if (after < (1.0 - 1e-4 * share) * before || all_good()) break;
            if (halving >= most_halvings) {
                unknowns_ = tried_;
                equations_.evaluate(unknowns_, smoothing, residuals_, jacobian_);
                return false;
            }
        }
    }
    return all_good();
}

/// From standstill in steps of time, as the circuit would by itself: what flows into a node raises
/// its pressure, what torque is left turns the shaft faster. Each step is an implicit one, solved
/// by Newton's; the next is longer after a success, shorter after a failure. Brakes that were off
/// come in where all else has settled: whether they stay off is for the pressure to say that is
/// there then.
bool SteadyStateSolver::run_up(bool brakes_off, double longer) {
    unknowns_ = equations_.guess();
    double inertia = 1.0;
    for (int step = 0; step < most_time_steps && inertia < most_inertia; ++step) {
        before_ = unknowns_;
        const Smoothing slowed{
            .leak = run_up_leak, .inertia = inertia, .brakes_off = brakes_off, .before = before_};
        if (!newton(slowed, most_steps_in_time, near_enough * std::min(1.0, inertia))) {
            unknowns_ = before_;
            inertia *= shorter;
            continue;
        }
        inertia *= longer;
        if (inertia > nearly_still) continue;
        before_ = unknowns_;
        if (!brakes_off) {
            if (newton({}, most_steps, solved)) return true;
            unknowns_ = before_;
        } else if (newton({.brakes_off = true}, most_steps, solved)) {
            before_ = unknowns_;
            if (newton({}, most_steps, solved)) return true;
            // They drag: on from here in steps of time again, with what they hold.
            unknowns_ = before_;
            brakes_off = false;
            inertia = 1.0;
        } else {
            unknowns_ = before_;
        }
    }
    return false;
}

/// Each unknown to where its last places lead: staying, along a line or along a parabola, whichever
/// would have found the last place best. So what has just gone round a corner leads nothing astray.
void SteadyStateSolver::go_on() {
    for (std::size_t k = 0; k < unknowns_.size(); ++k) {
        std::array<double, 3>& last = last_[k];
        const double now = unknowns_[k];
        const double step = now - last[0];
        const double turn = step - (last[0] - last[1]);
        const double bend = turn - (last[0] - 2.0 * last[1] + last[2]);
        if (std::abs(turn) <= std::abs(step)) unknowns_[k] += step;
        if (std::abs(bend) <= std::min(std::abs(step), std::abs(turn)))
            unknowns_[k] = now + step + turn;
        last = {now, last[0], last[1]};
    }
}

bool SteadyStateSolver::run_up() {
    const bool brakes = std::any_of(network_.loads.begin(), network_.loads.end(),
                                    [](const NetworkLoad& load) { return load.off_at_first; });
    for (const double longer : steps_longer)
        if (brakes && run_up(true, longer)) return true;
    return std::any_of(std::begin(steps_longer), std::end(steps_longer),
                       [&](double longer) { return run_up(false, longer); });
}

std::optional<SteadyState> SteadyStateSolver::follow() {
    steps_ = 0;
    if (!warm_) return std::nullopt;
    // On from the last ones; where that leads astray, from the last one.
    before_ = unknowns_;
    go_on();
    if (newton({}, most_steps_ahead, solved)) return result();
    unknowns_ = before_;
    if (newton({}, most_steps, solved)) return result();
    warm_ = false;
    return std::nullopt;
}

std::optional<SteadyState> SteadyStateSolver::solve() {
    if (auto followed = follow()) return followed;
    if (!run_up()) {
        std::size_t worst = 0;
        for (std::size_t i = 1; i < residuals_.size(); ++i)
            if (!(std::abs(residuals_[i]) <= std::abs(residuals_[worst]))) worst = i;
        trouble_ = {.worst = equations_.size() == 0 ? BalanceOf{} : equations_.balance(worst)};
        begin_anew();
        return std::nullopt;
    }
    warm_ = true;
    for (std::size_t k = 0; k < unknowns_.size(); ++k) last_[k].fill(unknowns_[k]);
    return result();
}

/// The state found, less what leaked on the way to it. That is so little that one step with the
/// last Jacobian takes it off; oil that is shut in keeps its pressure, since that has no other
/// hold.
SteadyState SteadyStateSolver::result() {
    equations_.leaks(unknowns_, Smoothing::least_leak, step_);
    elimination_.solve(step_);
    for (std::size_t k = 0; k < unknowns_.size(); ++k) closed_[k] = unknowns_[k] - step_[k];
    SteadyState state;
    state.steps = steps_;
    state.pressures.reserve(network_.nodes.size());
    state.speeds.reserve(network_.shafts.size());
    state.flows.reserve(network_.branches.size());
    state.gear_torques.reserve(network_.gears.size());
    state.machines.reserve(network_.machines.size());
    for (Index i = 0; i < network_.nodes.size(); ++i)
        state.pressures.push_back(equations_.pressure(closed_, i));
    for (Index i = 0; i < network_.shafts.size(); ++i)
        state.speeds.push_back(equations_.speed(closed_, i));
    for (Index i = 0; i < network_.branches.size(); ++i)
        state.flows.push_back(equations_.flow(closed_, i));
    for (Index i = 0; i < network_.gears.size(); ++i)
        state.gear_torques.push_back(equations_.gear_torque(closed_, i));
    for (Index i = 0; i < network_.machines.size(); ++i)
        state.machines.push_back(equations_.state_of(closed_, i));
    for (Index i = 0; i < network_.movers.size(); ++i) {
        state.mover_torques.push_back(equations_.mover_torque(closed_, i));
        state.shares_left.push_back(equations_.share_left(closed_, i));
    }
    return state;
}

}  // namespace loopwright::hydraulics
