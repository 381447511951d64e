#pragma once

#include <optional>
#include <string>

#include <loopwright/hydraulics/operating_point.h>
#include <loopwright/hydraulics/standing.h>

namespace loopwright::hydraulics {

/// The oil of a circuit, or what is wanting.
Answer<Fluid> fluid_of(const Circuit& circuit);

/// What the oil is taken to be where neither point nor heat balance says.
inline constexpr double usual_oil = 323.15;  // K

/// Whether a machine can work in a state: its oil nowhere below vacuum, its prime movers neither
/// asked for more than they can nor driven without it being known what they do then.
bool is_workable(const Circuit& circuit, const Model& model, const SteadyState& state);

/// A point at one temperature of its oil.
struct Solved {
    Model model = {};
    std::optional<SteadyState> state = {};
    std::string problem = {};  ///< why there is none, or why no machine works so
};

/// Works a point out at any temperature, in K. Keeps references to all that it is given.
class PointWorker {
  public:
    PointWorker(const FlowGraph& graph, const PointFigures& point, const PointStanding& standing,
                const Fluid& fluid)
        : graph_(graph), point_(point), standing_(standing), fluid_(fluid) {}

    Solved solve(double temperature) const;
    /// Nothing where there is no steady state that a machine can work in.
    std::optional<HeatBalance> heat(double temperature, double ambient) const;

  private:
    const FlowGraph& graph_;
    const PointFigures& point_;
    const PointStanding& standing_;
    const Fluid& fluid_;
};

/// One point worked out. The result's id is the circuit's own text.
OperatingPoint work_out(const FlowGraph& graph, const PointFigures& point,
                        const PointStanding& standing, bool working);

/// Fills in what a solution means for the circuit.
void read_solution(const FlowGraph& graph, const Model& model, const SteadyState& state,
                   OperatingPoint& out);
/// Its machines and shafts only.
void read_drive(const FlowGraph& graph, const Model& model, const SteadyState& state,
                OperatingPoint& out);

}  // namespace loopwright::hydraulics
