#pragma once
// The lab as one would write it in an afternoon: objects by name in maps, addresses as text. Slow on purpose,
// shares nothing with the core but the lab it reads; tests hold the core against it and the benchmark
// measures the distance.

#include "core/model/lab.h"

namespace snug::bench {

struct Figures {
  std::int64_t pc_headroom = 0;     // MiB, summed over everything on and all exercises
  std::int64_t inner_headroom = 0;  // of all hypervisors, the same way
  std::int64_t addresses_twice = 0; // holders beyond the first, per layer-2 network
  std::int64_t macs_twice = 0;
  std::int64_t names_twice = 0;
  std::int64_t disk_expected = 0; // MiB on all volumes with everything on
  std::int64_t total() const {
    return pc_headroom + inner_headroom + addresses_twice + macs_twice + names_twice + disk_expected;
  }
  friend bool operator==(const Figures&, const Figures&) = default;
};

Figures naive_figures(const Lab&);

} // namespace snug::bench
