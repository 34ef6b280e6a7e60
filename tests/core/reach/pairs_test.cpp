// The fast answer for every pair against the slow one: each pair by itself, packet by packet.

#include "core/reach/pairs.h"

#include "tests/support/network_lab.h"
#include "tests/support/scale.h"

#include <array>
#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct Looked {
  std::size_t labs = 0, nodes = 0, classes = 0;
};

void compare_all_pairs(const Lab& lab, ExerciseId exercise, const ReachQuestion& shape, Looked& looked) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  Reach reach(index, addresses, exercise);
  const ReachPairs pairs(reach, shape);
  const auto nodes = reach.network().nodes();
  ++looked.labs;
  looked.nodes += nodes.size();
  looked.classes += pairs.classes().size();
  ReachQuestion q = shape;
  for (std::uint32_t a = 0; a < nodes.size(); ++a)
    for (std::uint32_t b = 0; b < nodes.size(); ++b) {
      q.from = nodes[a].id;
      q.to = nodes[b].id;
      const Reached slow = reach.ask(q).verdict;
      ASSERT_EQ(word(pairs.verdict(a, b)), word(slow)) << to_text(q.from) << " to " << to_text(q.to);
      ASSERT_EQ(reach.verdict(q), slow);
    }
}

// As wired and spoiled by people; and of ordinary size with guests that ask for their addresses.
TEST(ReachPairs, EqualTheSlowAnswerInRandomLabs) {
  constexpr int kAll = 100'000, kFew = 3'000; // few: a tenth takes minutes under sanitizers
  const int labs = scaled(kAll) == kAll ? kAll : kFew;
  Looked spoiled, usual;
  for (int i = 0; i < labs && !HasFailure(); ++i) {
    SCOPED_TRACE(i);
    Random r(static_cast<std::uint64_t>(i));
    constexpr std::array<NetworkSize, 4> kSizes{{{24, 2}, {20, 1}, {14, 3}, {8, 4}}};
    const Lab lab = network_lab(r, i % 100 == 0 ? NetworkSize{} : kSizes[r.below(kSizes.size())]);
    ReachQuestion shape;
    shape.full_size = i % 3 == 1;
    if (i % 3 == 2) shape.transport = Transport::tcp;
    compare_all_pairs(lab, i % 2 == 0 ? ExerciseId{} : lab.exercises.front().id, shape, spoiled);
    if (i % 10 == 0) compare_all_pairs(plausible_lab(r, 24, 2), {}, shape, usual);
  }
  std::cout << spoiled.nodes << " nodes in " << spoiled.classes << " classes, usual labs " << usual.nodes
            << " in " << usual.classes << "\n";
  EXPECT_LT(spoiled.classes, spoiled.nodes); // else nothing was compared
  EXPECT_LT(usual.classes, usual.nodes);
}

} // namespace
} // namespace snug::test
