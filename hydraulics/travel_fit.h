#pragma once

#include <memory>
#include <string>

#include <loopwright/hydraulics/operating_point.h>

/// The travel at which a load has the speed that it is to have.
namespace loopwright::hydraulics {

struct TravelFit {
    double travel = 0.0;        ///< -1 to 1, with the sign of the speed
    double speed = 0.0;         ///< rad/s of the load, without a sign
    OperatingPoint point = {};  ///< there
    bool met = false;           ///< false: the travel is all there is, and the speed too low
    std::string problem = {};   ///< why nothing is found, in words for people
};

/// Solves points of a circuit again and again, their travel changed. Keeps a copy of the circuit,
/// whose every point gives a travel that goes its way.
class TravelFitter {
  public:
    explicit TravelFitter(Circuit circuit);
    ~TravelFitter();
    TravelFitter(const TravelFitter&) = delete;
    TravelFitter& operator=(const TravelFitter&) = delete;

    /// Of the point of that index; `load`: a component. `speed` in rad/s with the sign of the
    /// travel, 0: no travel. By false position (Illinois) from `guess` on, to 1e-6 of the speed;
    /// the travel to the 1e-5 that a circuit writes.
    TravelFit fit(Index point, Index load, double speed, double guess);

  private:
    struct Solver;
    std::unique_ptr<Solver> solver_;
};

}  // namespace loopwright::hydraulics
