#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include <loopwright/hydraulics/equations.h>

/// What equations are written over: the one notes where terms stand, the other works them out.
/// Private to equations.cpp.
namespace loopwright::hydraulics {

template <std::size_t N>
using Variables = std::array<std::uint32_t, N>;

/// Notes where terms stand.
class Equations::Collector {
  public:
    double value(std::uint32_t /*variable*/) const { return 0.5; }
    double moved(std::uint32_t /*variable*/) const { return 0.0; }
    Smoothing smoothing() const { return {.leak = 1.0}; }

    template <std::size_t N>
    void add(std::uint32_t row, const Dual<N>& /*term*/, const Variables<N>& variables) {
        for (const std::uint32_t variable : variables) terms.push_back({row, variable});
    }

    /// All that are put in, whether or not they are of an unknown.
    std::vector<MatrixPlace> terms;
};

class Equations::Evaluator {
  public:
    Evaluator(const Equations& equations, std::span<const double> unknowns,
              const Smoothing& smoothing, std::span<double> residuals, std::span<double> jacobian)
        : equations_(equations),
          unknowns_(unknowns),
          smoothing_(smoothing),
          residuals_(residuals),
          jacobian_(jacobian),
          slot_(equations.slots_.data()),
          slot_scale_(equations.slot_scales_.data()) {}

    double value(std::uint32_t variable) const { return equations_.figures_[variable]; }
    /// Since the begin of the step of time, scaled.
    double moved(std::uint32_t variable) const {
        return smoothing_.inertia > 0.0 && variable < unknowns_.size()
                   ? unknowns_[variable] - smoothing_.before[variable]
                   : 0.0;
    }
    const Smoothing& smoothing() const { return smoothing_; }

    template <std::size_t N>
    void add(std::uint32_t row, const Dual<N>& term, const Variables<N>& /*variables*/) {
        if (row < residuals_.size()) {
            residuals_[row] += equations_.row_scale_[row] * term.value;
            for (std::size_t i = 0; i < N; ++i)
                if (slot_[i] < jacobian_.size())
                    jacobian_[slot_[i]] += term.slope[i] * slot_scale_[i];
        }
        slot_ += N;
        slot_scale_ += N;
    }

  private:
    const Equations& equations_;
    std::span<const double> unknowns_;
    Smoothing smoothing_;
    std::span<double> residuals_;
    std::span<double> jacobian_;
    const std::uint32_t* slot_;
    const double* slot_scale_;
};

}  // namespace loopwright::hydraulics
