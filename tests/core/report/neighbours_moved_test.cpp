#include "core/report/neighbours_moved.h"

#include "core/edit/edit.h"
#include "core/gesture/move.h"
#include "core/report/changes.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

class NeighboursMoved : public ::testing::Test {
 protected:
  void move(std::string_view name, const Spot& spot) {
    const std::vector<MachineId> ids{machine(to, name).id};
    const auto edit = move_machines(to, ids, spot);
    ASSERT_TRUE(edit);
    ASSERT_TRUE(apply(to, *edit));
  }
  const Lab from = sample("skerry-ferries");
  Lab to = from;
};

TEST_F(NeighboursMoved, NobodyWhenNothingMoved) {
  EXPECT_TRUE(moved_among_neighbours(from, to).empty());
  for (Machine& m : to.machines) m.order = m.order * 10 + 3; // other numbers, the same order
  EXPECT_TRUE(moved_among_neighbours(from, to).empty());
}

// The one that was moved, not all that stand behind it.
TEST_F(NeighboursMoved, TheOneThatWasMoved) {
  const std::vector<MachineId> order = guests_in_order(from, {});
  const std::string first = name_of(from, order.front()), last = name_of(from, order.back());
  move(last, {{}, 0, order.front()});
  EXPECT_EQ(moved_among_neighbours(from, to), std::vector<MachineId>{order.back()});
  EXPECT_EQ(place_words(to, order.back()), "first");
  EXPECT_EQ(place_words(to, order.front()), "after " + last);
  EXPECT_EQ(changes_text(changes(from, to)), "changed  " + last + ": place from after " +
                                                 name_of(from, order[order.size() - 2]) + " to first\n");
}

TEST_F(NeighboursMoved, AnotherRowIsAMove) {
  const std::vector<MachineId> order = guests_in_order(from, {});
  move(name_of(from, order.back()), {{}, 1, {}});
  EXPECT_EQ(moved_among_neighbours(from, to), std::vector<MachineId>{order.back()});
  EXPECT_EQ(place_words(to, order.back()), "first of row 2");
}

// Where it runs says it already.
TEST_F(NeighboursMoved, NotWhoRunsElsewhere) {
  move("tickets-1", {machine(from, "deck-b").id, 0, {}});
  EXPECT_TRUE(moved_among_neighbours(from, to).empty());
  EXPECT_EQ(changes_text(changes(from, to)), "changed  tickets-1: carrier from deck-a to deck-b\n");
  move("tickets-1", {});
  EXPECT_EQ(changes_text(changes(from, to)), "changed  tickets-1: carrier from deck-a to study PC\n");
}

} // namespace
} // namespace snug::test
