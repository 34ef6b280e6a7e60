#pragma once
// The lab as one would write it in an afternoon: objects by name in maps, addresses as text. Slow on purpose,
// shares nothing with the core but the lab it reads; tests hold the core against it and the benchmark
// measures the distance. Budgets are those of tests/bench/naive_budget.h, for every exercise as in an
// analysis.

#include "core/model/lab.h"

namespace snug::bench {

// Sums over everything on and all exercises; memory and disk in MiB.
struct Figures {
  std::int64_t pc_headroom = 0, pc_expected = 0;
  std::int64_t inner_headroom = 0, inner_expected = 0; // of all hypervisors
  std::int64_t processors = 0;                         // products of ratios, hundredths
  std::int64_t disk_expected = 0, disk_worst = 0;      // on all stores
  std::int64_t segment_memory = 0;
  std::int64_t running = 0;
  std::int64_t addresses_twice = 0; // holders beyond the first, per layer-2 network
  std::int64_t macs_twice = 0;
  std::int64_t names_twice = 0;
  std::int64_t total() const {
    return pc_headroom + pc_expected + inner_headroom + inner_expected + processors + disk_expected +
           disk_worst + segment_memory + running + addresses_twice + macs_twice + names_twice;
  }
  friend bool operator==(const Figures&, const Figures&) = default;
};

Figures naive_figures(const Lab&);

} // namespace snug::bench
