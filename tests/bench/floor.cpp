#include "tests/bench/floor.h"

namespace snug::bench {

namespace {

template <typename T>
std::uint64_t pass(const std::vector<T>& column) {
  std::uint64_t sum = 0;
  for (const T& v : column) sum = sum * 3 + static_cast<std::uint64_t>(v);
  return sum;
}

} // namespace

std::uint64_t linear_pass(const Columns& c) {
  return pass(c.memory) ^ pass(c.disk) ^ pass(c.processors) ^ pass(c.carrier) ^ pass(c.segment) ^
         pass(c.owner) ^ pass(c.address4) ^ pass(c.address6_high) ^ pass(c.address6_low) ^ pass(c.mac) ^
         pass(c.name_hash);
}

std::uint64_t linear_pass(const std::vector<std::uint64_t>& ranges) { return pass(ranges); }

} // namespace snug::bench
