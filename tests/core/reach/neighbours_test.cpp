#include "core/reach/neighbours.h"

#include "core/budget/budget.h"
#include "core/reach/reach.h"
#include "tests/support/network_lab.h"
#include "tests/support/rule_world.h"
#include "tests/support/scale.h"

#include <array>
#include <gtest/gtest.h>

namespace snug::test {
namespace {

// Gives how many pairs surely talk.
std::size_t compare(const Lab& lab, ExerciseId exercise) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  const Neighbours neighbours(index, addresses);
  const std::vector<std::uint8_t> on = running(index, exercise);
  Reach reach(index, addresses, exercise);
  std::size_t sure = 0;
  for (std::uint32_t a = 0; a < on.size(); ++a)
    for (std::uint32_t b = 0; b < on.size(); ++b) {
      if (on[a] == 0 || on[b] == 0 || !neighbours.surely_talk(a, b)) continue;
      ReachQuestion q;
      q.from = lab.machines[a].id;
      q.to = lab.machines[b].id;
      EXPECT_EQ(reach.verdict(q), Reached::reaches) << to_text(q.from) << " to " << to_text(q.to);
      ++sure;
    }
  return sure;
}

TEST(Neighbours, WhoSurelyTalksIsReached) {
  std::size_t sure = 0;
  for (int i = 0, n = scaled(50'000); i < n && !HasFailure(); ++i) {
    SCOPED_TRACE(i);
    Random r(static_cast<std::uint64_t>(i));
    constexpr std::array<NetworkSize, 4> kSizes{{{24, 2}, {20, 1}, {14, 3}, {8, 4}}};
    const Lab lab = network_lab(r, kSizes[r.below(kSizes.size())]);
    sure += compare(lab, i % 2 == 0 ? ExerciseId{} : lab.exercises.front().id);
    if (i % 10 == 0) sure += compare(plausible_lab(r, 24, 2), {});
  }
  EXPECT_GT(sure, 1'000U);
}

// Weak host (RFC 1122, section 3.3.4.2): who holds an address answers for it by all of its cards.
TEST(Neighbours, AnAddressHeldElsewhereIsInDoubt) {
  World w;
  const MachineId mate = w.add_machine("mate"), other = w.add_machine("other");
  w.add_card(mate, w.deck, "172.22.10.77");
  w.add_card(other, w.deck, "172.22.10.78");
  const auto sure = [&] {
    const Index index(w.lab);
    const AddressesInUse addresses(index);
    return Neighbours(index, addresses).surely_talk(index.place(w.pilot), index.place(mate));
  };
  EXPECT_TRUE(sure());
  const CardId loose = w.add_card(other, w.hold, "172.22.10.77");
  w.card(loose).connected = false;
  EXPECT_FALSE(sure());
  EXPECT_GT(compare(w.lab, {}), 0U);
}

} // namespace
} // namespace snug::test
