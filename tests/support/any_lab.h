#pragma once
// Random labs for RapidCheck. Its headers are large: tests that need no generator include random_lab.h alone.

#include "tests/support/random_lab.h"

#include <rapidcheck.h>

namespace snug::test {

inline rc::Gen<Lab> any_lab(std::size_t most = 6) {
  return rc::gen::map(rc::gen::arbitrary<std::uint64_t>(), [most](std::uint64_t seed) {
    Random r(seed);
    return random_lab(r, most);
  });
}

} // namespace snug::test
