// What who types `loopwright check` waits: a shell, the program, a circuit of the tree, the report.
// A small circuit is to be done within 50 ms. The least wall time says what is waited on a machine
// that does nothing else; on one that does, the CPU time judges, and the benchmark fails above.
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <string>

#include <benchmark/benchmark.h>

namespace {

constexpr double most_ms = 50.0;

/// Runs a line in the shell; false where its status is another than 0.
bool ran(std::string line, rusage& usage) {
    std::string shell = "sh";
    std::string option = "-c";
    char* const arguments[] = {shell.data(), option.data(), line.data(), nullptr};
    pid_t child = 0;
    int status = 0;
    return ::posix_spawn(&child, "/bin/sh", nullptr, nullptr, arguments, environ) == 0 &&
           ::wait4(child, &status, 0, &usage) == child && status == 0;
}

double ms(const timeval& time) {
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) * 1e-3;
}

void from_the_shell(benchmark::State& state, const char* format) {
    const std::string line = std::string(LOOPWRIGHT_BENCH_PROGRAM " check --format ") + format +
                             " " LOOPWRIGHT_BENCH_CIRCUIT " >/dev/null";
    double least = 1e300;
    double cpu = 0.0;
    for (auto _ : state) {
        rusage usage = {};
        const auto begin = std::chrono::steady_clock::now();
        if (!ran(line, usage)) {
            state.SkipWithError("the check does not end with 0");
            return;
        }
        const std::chrono::duration<double, std::milli> took =
            std::chrono::steady_clock::now() - begin;
        state.SetIterationTime(took.count() * 1e-3);
        least = std::min(least, took.count());
        cpu += ms(usage.ru_utime) + ms(usage.ru_stime);
    }
    state.counters["least_ms"] = least;
    cpu /= static_cast<double>(state.iterations());
    state.counters["cpu_ms"] = cpu;
    if (std::min(least, cpu) > most_ms) state.SkipWithError("a check takes more than 50 ms");
}

}  // namespace

BENCHMARK_CAPTURE(from_the_shell, text, "text")->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(from_the_shell, sarif, "sarif")->UseManualTime()->Unit(benchmark::kMillisecond);
