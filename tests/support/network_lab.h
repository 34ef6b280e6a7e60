#pragma once
// Random labs, as people wire and spoil them: nested, routed, translated, bridged to a physical LAN, with
// addresses that are given out; with wrong masks, duplicate addresses, missing routes, machines off,
// cards not carried, MTUs that differ.

#include "tests/support/random_lab.h"

namespace snug::test {

struct NetworkSize {
  std::size_t machines = 40; // at most
  std::size_t segments = 12; // at most
};
// Every card has a typed MAC; typed addresses have a length. The lab has one exercise.
Lab network_lab(Random&, NetworkSize = {});

} // namespace snug::test
