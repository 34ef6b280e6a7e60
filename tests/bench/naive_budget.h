#pragma once
// Budgets the plain way: objects by name in maps, recursion down the tree, rules of MODEL word by word. The
// oracle of core/budget, and what its speed is measured against.

#include "core/model/lab.h"

#include <map>
#include <string>
#include <vector>

namespace snug::test {

struct NaiveMemory {
  std::int64_t budget = 0;
  std::int64_t taken = 0;
  std::int64_t expected = 0;
};
struct NaiveProcessors {
  std::int64_t running = 0;
  std::int64_t power = 0;
  std::int64_t ratio = 0;
  std::int64_t product = 0;
};
struct NaiveDisk {
  std::int64_t budget = 0;
  std::int64_t expected = 0;
  std::int64_t worst = 0;
};

// By the text of an id: "pc", "m12", "v1".
struct NaiveBudgets {
  std::map<std::string, bool> running;
  std::map<std::string, NaiveMemory> memory;
  std::map<std::string, NaiveProcessors> processors;
  std::map<std::string, NaiveDisk> disks;
  std::map<std::string, std::int64_t> segment_memory;
};
// Everything on first, then the exercises in the order of the lab.
std::vector<NaiveBudgets> naive_budgets(const Lab&);

} // namespace snug::test
