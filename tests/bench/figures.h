#pragma once
// What the naive reference finds in a lab, read from an analysis.

#include "core/analyse/analyse.h"
#include "tests/bench/naive_lab.h"

namespace snug::bench {

Figures figures(const Analysis&);

} // namespace snug::bench
