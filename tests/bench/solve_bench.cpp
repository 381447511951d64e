// Steady states over a sweep of 41 x 41 strokes and loads: `./dev bench`. The figures that the
// project keeps are the points a second from a warm start, 15 components a drive, and the share
// that is solved from a cold one. scipy_ratio.py sets the first against scipy's `root`.
#include <cstdlib>
#include <fstream>
#include <optional>
#include <sstream>

#include <benchmark/benchmark.h>

#include <loopwright/hydraulics/duty.h>
#include <loopwright/hydraulics/model.h>
#include <loopwright/hydraulics/standing.h>
#include <loopwright/hydraulics/steady_state.h>
#include <loopwright/parser/reader.h>
#include <loopwright/tests/support/figured_circuit.h>

namespace loopwright::hydraulics {
namespace {

constexpr int steps = 41;

struct Span {
    double from;
    double to;
    double at(int step) const { return from + (to - from) * step / (steps - 1); }
};

/// A network of which all loop pumps take one stroke and all loads one torque.
class Sweep {
  public:
    Sweep(const std::string& xml, Span strokes, Span torques)
        : read_(read_circuit_text(xml, "sweep.xml", {}, {})), strokes_(strokes), torques_(torques) {
        if (!read_.circuit) return;
        const FlowGraph graph(*read_.circuit);
        const std::vector<PointFigures> points{PointFigures(*read_.circuit, 0)};
        const auto standing = standings(graph, points);
        const Oil oil{Density(850.0), KinematicViscosity(30e-6)};
        model_ = model_of(graph, points[0], standing[0].open, oil);
        if (!model_.missing.empty()) return;
        for (std::size_t i = 0; i < model_.machines.size(); ++i) {
            const Component& part = read_.circuit->components[model_.machines[i].component];
            if (read_.circuit->figure(part, "flow-directions") == 2.0) pumps_.push_back(i);
        }
        solver_.emplace(model_.network);
    }
    Sweep(const Sweep&) = delete;
    Sweep& operator=(const Sweep&) = delete;

    bool is_ready() const { return solver_.has_value(); }
    SteadyStateSolver& solver() { return *solver_; }

    /// There and back, so that each point lies beside the last one.
    std::optional<SteadyState> next() {
        const int row = count_ / steps % steps;
        const int column = count_ % steps;
        ++count_;
        for (const std::size_t pump : pumps_)
            model_.network.machines[pump].stroke = strokes_.at(row);
        for (NetworkLoad& load : model_.network.loads)
            load.torque = Torque(torques_.at(row % 2 == 0 ? column : steps - 1 - column));
        return solver_->solve();
    }

  private:
    ReadResult read_;
    Span strokes_;
    Span torques_;
    Model model_;
    std::vector<std::size_t> pumps_;
    std::optional<SteadyStateSolver> solver_;
    int count_ = 0;
};

/// From standstill to full stroke, from no load to what opens the relief valves.
constexpr Span all_strokes{0.0, 1.0};
constexpr Span all_torques{0.0, 480.0};

void warm_points(benchmark::State& state, Sweep& sweep) {
    if (!sweep.is_ready()) {
        state.SkipWithError("the circuit cannot be solved");
        return;
    }
    sweep.next();
    double newton_steps = 0.0;
    double failed = 0.0;
    for (auto _ : state) {
        const auto found = sweep.next();
        if (found)
            newton_steps += found->steps;
        else
            ++failed;
    }
    state.SetItemsProcessed(state.iterations());
    state.counters["newton_steps"] =
        benchmark::Counter(newton_steps, benchmark::Counter::kAvgIterations);
    state.counters["failed"] = failed;
}

void warm_sweep(benchmark::State& state) {
    Sweep sweep(testing::figured_drives(static_cast<unsigned>(state.range(0))), all_strokes,
                all_torques);
    warm_points(state, sweep);
    state.counters["components"] = 15.0 * static_cast<double>(state.range(0));
}

void cold_sweep(benchmark::State& state) {
    Sweep sweep(testing::figured_drives(1), all_strokes, all_torques);
    double solved = 0.0;
    for (auto _ : state) {
        sweep.solver().begin_anew();
        if (sweep.next()) ++solved;
    }
    state.SetItemsProcessed(state.iterations());
    state.counters["solved"] = benchmark::Counter(solved, benchmark::Counter::kAvgIterations);
}

/// Of the circuit in a file, while its reliefs are shut: what scipy_ratio.py does as well.
void warm_sweep_of_file(benchmark::State& state) {
    const char* const file = std::getenv("LOOPWRIGHT_BENCH_CIRCUIT");
    std::stringstream text;
    if (file != nullptr) text << std::ifstream(file).rdbuf();
    Sweep sweep(text.str(), {0.5, 1.0}, {20.0, 200.0});
    warm_points(state, sweep);
}

}  // namespace
}  // namespace loopwright::hydraulics

BENCHMARK(loopwright::hydraulics::warm_sweep)
    ->Arg(1)
    ->Arg(2)
    ->Arg(67)
    ->Unit(benchmark::kMicrosecond);
BENCHMARK(loopwright::hydraulics::cold_sweep)->Iterations(41 * 41)->Unit(benchmark::kMicrosecond);
BENCHMARK(loopwright::hydraulics::warm_sweep_of_file)->Unit(benchmark::kMicrosecond);
