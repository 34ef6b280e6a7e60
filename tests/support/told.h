#pragma once
// Questions to a lab and how the answer is told.

#include "core/reach/explain.h"
#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

namespace snug::test {

inline constexpr AnyId kOutside{Kind::outside, 0};

struct Told {
  Reached verdict;
  std::string id, sentence;
};

inline Told ask(const Lab& lab, const ReachQuestion& q, ExerciseId exercise = {}) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  Reach reach(index, addresses, exercise);
  const ReachAnswer a = reach.ask(q);
  const Message m = explain(index, reach, q, a);
  EXPECT_EQ(a.verdict == Reached::reaches, !a.end.has_value());
  std::string way = english(m);
  for (const ReachStep& s : a.steps)
    way +=
        "\n  " + to_text(s.node) + " " + std::to_string(static_cast<int>(s.what)) + " " + to_text(s.address);
  return {a.verdict, std::string(m.id()), way};
}

inline ReachQuestion between(AnyId from, AnyId to) {
  ReachQuestion q;
  q.from = from;
  q.to = to;
  return q;
}

} // namespace snug::test
