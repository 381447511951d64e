// Sweeps of a whole circuit as `solve --sweep` goes through them: `./dev bench`. CPU time is that
// of all threads together, so that it is the time on one core. million_points.py takes the use of
// the cores and the memory of the program itself.
#include <fstream>
#include <sstream>
#include <string_view>

#include <benchmark/benchmark.h>

#include <loopwright/hydraulics/sweep.h>
#include <loopwright/parser/reader.h>

namespace loopwright {
namespace {

/// The ice resurfacer over pedal and load, 41 x 41.
void sweep_resurfacer(benchmark::State& state, bool balanced) {
    std::stringstream text;
    text << std::ifstream(LOOPWRIGHT_BENCH_CIRCUIT).rdbuf();
    // Its points say what temperature the oil has; without that its heat is balanced.
    std::string xml = text.str();
    constexpr std::string_view oil = " oil=\"";
    for (std::size_t at = 0; balanced && (at = xml.find(oil, at)) != std::string::npos;)
        xml.erase(at, xml.find('"', at + oil.size()) + 1 - at);
    const ReadResult read = read_circuit_text(xml, "ice-resurfacer.xml", {}, {});
    if (!read.circuit) {
        state.SkipWithError("the circuit cannot be read");
        return;
    }
    std::size_t solved = 0;
    for (auto _ : state) {
        std::string trouble;
        std::vector<hydraulics::SweepAxis> axes;
        for (const char* const axis : {"travel=0%..100%:41", "torque=0N.m..400N.m:41"})
            axes.push_back(*hydraulics::read_axis(*read.circuit, axis, trouble));
        const hydraulics::Sweep sweep(*read.circuit, "surfacing", std::move(axes));
        sweep.run([](const auto&) { return std::string(); },
                  [&](const auto& rows, std::string_view) {
                      for (const auto one : rows.solved) solved += one;
                  });
    }
    state.counters["solved"] = benchmark::Counter(static_cast<double>(solved) / (41.0 * 41.0),
                                                  benchmark::Counter::kAvgIterations);
}

BENCHMARK_CAPTURE(sweep_resurfacer, at_given_temperature, false)
    ->MeasureProcessCPUTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(sweep_resurfacer, with_heat_balance, true)
    ->MeasureProcessCPUTime()
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace loopwright
