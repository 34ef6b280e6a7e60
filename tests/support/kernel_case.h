#pragma once
// Topologies of tests/data/checks/kernel-reachability.json (format "kernel-reachability 1") as labs, and what
// a Linux kernel did with them.

#include "core/reach/reach.h"

#include <map>
#include <string>
#include <vector>

namespace snug::test {

struct Observation {
  ReachQuestion question;
  std::string text; // "a to 10.0.1.10 of b, 8000 octets"
  bool ok = false;
  bool varies = false;
  bool arrived = false; // the request was counted at `to`
};

struct KernelCase {
  std::string name;
  Lab lab;
  ReachAssumptions assumptions;
  std::vector<Observation> observed;
  // What the model has no field for; empty: the case is expressed.
  std::vector<std::string> not_expressible;
};

// Throws std::runtime_error when the file is not of that format.
std::vector<KernelCase> read_kernel_cases(const std::string& path);

} // namespace snug::test
