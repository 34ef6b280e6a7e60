#pragma once
// How measurements are registered and run.

#include <benchmark/benchmark.h>

#include <cstddef>
#include <string>

namespace snug::bench {

inline void add(const char* name, void (*run)(benchmark::State&, std::size_t), std::size_t n) {
  benchmark::RegisterBenchmark((std::string(name) + "/" + std::to_string(n)).c_str(),
                               [run, n](benchmark::State& state) { run(state, n); })
      ->Unit(benchmark::kMicrosecond);
}

// The exit code of main.
inline int run_all(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}

} // namespace snug::bench
