#pragma once

#include <map>
#include <optional>
#include <span>
#include <vector>

#include <loopwright/hydraulics/motions.h>
#include <loopwright/hydraulics/point_worker.h>
#include <loopwright/hydraulics/sweep.h>

namespace loopwright::hydraulics {

/// Works out points that lie near one another, each from the last one's solution; from a cold start
/// where that leads nowhere, or where another state than that of a cold start may be found.
class SweepWorker {
  public:
    /// Keeps references to circuit and axes.
    SweepWorker(const Circuit& circuit, Index point, std::span<const SweepAxis> axes);
    SweepWorker(const SweepWorker&) = delete;
    SweepWorker& operator=(const SweepWorker&) = delete;

    std::vector<SweepColumn> columns();

    /// Forgets all that was found: the next row is worked out as if it were the first one.
    void begin_anew();
    /// `values`: by axis, SI; `cells`: by column, SI. False where there is no steady state that a
    /// machine can work in.
    bool work(std::span<const double> values, std::span<double> cells);

  private:
    void set(std::size_t axis, double si);
    PointFigures figures();
    const PointStanding& standing_of(const PointFigures& figures);
    bool build(const PointFigures& figures, double temperature);
    bool solve(const PointFigures& figures, double temperature);
    bool is_beyond_doubt(const SteadyState& state) const;
    std::optional<double> temperature_of(const PointFigures& figures);

    /// What a model's oil ways were built for.
    struct Built {
        std::vector<State> alike = {};
        double temperature = 0.0;
        friend bool operator==(const Built&, const Built&) = default;
    };

    Circuit circuit_;  // its data are changed from row to row
    FlowGraph graph_;
    Index point_;
    std::span<const SweepAxis> axes_;
    Answer<Fluid> fluid_;
    bool can_balance_;
    std::optional<Motions> motions_;  // where commands go both ways
    std::map<std::vector<State>, PointStanding> standing_;
    Model model_;
    std::optional<Built> built_;
    std::vector<Index> shape_;
    std::optional<SteadyStateSolver> solver_;  // of model_
    std::optional<SteadyState> state_;
    std::optional<double> balanced_;  // K, of the last row
};

}  // namespace loopwright::hydraulics
