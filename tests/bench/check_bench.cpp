// Whole check (parse to verdict objects with witnesses) against pugixml parsing the same bytes, in
// one run: `./dev bench`. The ratio at 10 000 components is the figure that the project keeps.
#include <malloc.h>

#include <benchmark/benchmark.h>
#include <pugixml.hpp>

#include <loopwright/parser/reader.h>
#include <loopwright/rules/check.h>
#include <loopwright/rules/registry.h>
#include <loopwright/tests/support/generated_circuit.h>

namespace {

using Shape = std::string (*)(unsigned);

void parse_alone(benchmark::State& state, Shape shape) {
    const std::string xml = shape(static_cast<unsigned>(state.range(0)));
    for (auto _ : state) {
        pugi::xml_document document;
        benchmark::DoNotOptimize(document.load_buffer(xml.data(), xml.size()));
    }
    state.counters["bytes_per_component"] =
        static_cast<double>(xml.size()) / static_cast<double>(state.range(0));
}

/// The largest circuits are above the limit of a file; they show how the cost grows.
loopwright::ReadResult read(const std::string& xml) {
    loopwright::ReadLimits limits;
    limits.file_bytes = std::size_t{64} << 20;
    return loopwright::read_circuit_text(xml, "generated.xml", {}, {limits});
}

void read_model(benchmark::State& state, Shape shape) {
    const std::string xml = shape(static_cast<unsigned>(state.range(0)));
    for (auto _ : state) benchmark::DoNotOptimize(read(xml));
}

void whole_check(benchmark::State& state, Shape shape) {
    const std::string xml = shape(static_cast<unsigned>(state.range(0)));
    double work = 0.0;
    for (auto _ : state) {
        const loopwright::ReadResult model = read(xml);
        if (!model.circuit) {
            state.SkipWithError("the generated circuit cannot be read");
            return;
        }
        const loopwright::CheckResult result =
            loopwright::check(*model.circuit, loopwright::rules());
        work = static_cast<double>(result.work);
        benchmark::DoNotOptimize(result.verdicts.data());
    }
    state.counters["visits"] = work;
}

}  // namespace

#define SIZES ->Arg(100)->Arg(1000)->Arg(10000)->Arg(100000)->Unit(benchmark::kMicrosecond)
BENCHMARK_CAPTURE(parse_alone, many_loops, loopwright::testing::many_loops) SIZES;
BENCHMARK_CAPTURE(read_model, many_loops, loopwright::testing::many_loops) SIZES;
BENCHMARK_CAPTURE(whole_check, many_loops, loopwright::testing::many_loops) SIZES;
BENCHMARK_CAPTURE(parse_alone, long_chains, loopwright::testing::long_chains) SIZES;
BENCHMARK_CAPTURE(read_model, long_chains, loopwright::testing::long_chains) SIZES;
BENCHMARK_CAPTURE(whole_check, long_chains, loopwright::testing::long_chains) SIZES;
// The argument is the number of valves: 16 have 65 536 combinations of positions.
BENCHMARK_CAPTURE(whole_check, valves_in_a_loop, loopwright::testing::valves_in_a_loop)
    ->Arg(8)
    ->Arg(16)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(whole_check, valves_side_by_side, loopwright::testing::valves_side_by_side)
    ->Arg(16)
    ->Unit(benchmark::kMillisecond);

// Warm means that memory once had is kept: else each round pays for its pages anew, ours and
// pugixml's alike, and the figure is that of the kernel.
int main(int count, char** arguments) {
    mallopt(M_MMAP_THRESHOLD, 32 << 20);
    mallopt(M_TRIM_THRESHOLD, -1);
    mallopt(M_TOP_PAD, 256 << 20);
    benchmark::Initialize(&count, arguments);
    if (benchmark::ReportUnrecognizedArguments(count, arguments)) return 2;
    benchmark::RunSpecifiedBenchmarks();
    benchmark::Shutdown();
    return 0;
}
