#include "core/gesture/move.h"

#include "core/document/write.h"
#include "tests/support/random_lab.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

const Lab& ferries() {
  static const Lab lab = sample("skerry-ferries");
  return lab;
}
MachineId id(std::string_view name) { return machine(ferries(), name).id; }
std::string refusal(const Result<Edit>& e) { return e ? std::string() : english(e.error().message); }

TEST(MoveMachines, PutsThemIntoAHypervisor) {
  const std::vector<MachineId> one{id("tickets-1")};
  const auto edit = move_machines(ferries(), one, {id("deck-b"), 0, {}});
  ASSERT_TRUE(edit);
  EXPECT_EQ(english(edit->label), "Move tickets-1 to deck-b");
  Lab after = ferries();
  ASSERT_TRUE(apply(after, *edit));
  EXPECT_EQ(machine(after, "tickets-1").carrier, id("deck-b"));
  EXPECT_FALSE(machine(after, "tickets-1").pinned) << "only who asks for it";
  EXPECT_EQ(guests_in_order(after, id("deck-b")).back(), one.front());
  ASSERT_TRUE(apply(after, inverse(*edit)));
  EXPECT_EQ(after, ferries());
}

TEST(MoveMachines, OrderIsWhatWasAskedFor) {
  const std::vector<MachineId> order = guests_in_order(ferries(), {});
  ASSERT_GE(order.size(), 4U);
  const std::vector<MachineId> last{order.back()};
  Lab after = ferries();
  const auto edit = move_machines(after, last, {{}, find<Machine>(after, order[1])->band, order[1]});
  ASSERT_TRUE(edit);
  EXPECT_EQ(english(edit->label), "Move " + find<Machine>(after, order.back())->name);
  ASSERT_TRUE(apply(after, *edit));
  const std::vector<MachineId> now = guests_in_order(after, {});
  EXPECT_EQ(now[0], order[0]);
  EXPECT_EQ(now[1], order.back());
  EXPECT_EQ(now[2], order[1]);
}

TEST(MoveMachines, RefusesWithTheReason) {
  const std::vector<MachineId> guest{id("tickets-1")}, host{id("deck-a")};
  EXPECT_EQ(refusal(move_machines(ferries(), guest, {id("wheelhouse"), 0, {}})),
            "wheelhouse is no hypervisor: give it such a role first, then it takes guests");
  EXPECT_EQ(refusal(move_machines(ferries(), host, {id("deck-a"), 0, {}})),
            "deck-a cannot run inside itself");
  EXPECT_EQ(refusal(move_machines(ferries(), host, {id("tickets-1"), 0, {}})),
            "deck-a cannot run inside itself");
  EXPECT_EQ(refusal(move_machines(ferries(), {}, {})), "nothing is chosen");
}

TEST(Outermost, LeavesOutWhatIsInsideAnother) {
  const std::vector<AnyId> ids{id("tickets-1"), id("deck-a"), id("beacon")};
  EXPECT_EQ(outermost(ferries(), ids), (std::vector<MachineId>{id("beacon"), id("deck-a")}));
}

// DECISIONS 17: on switches the carriers on, off switches the guests off.
TEST(SetPower, TakesCarriersAndGuestsAlong) {
  Lab lab = ferries();
  Exercise e;
  e.name = "Empty";
  e.id.number = lab.facts.next_id++;
  lab.exercises.push_back(e);
  const std::vector<MachineId> guest{id("tickets-1")}, host{id("deck-a")};
  const auto on = set_power(lab, e.id, guest, true);
  ASSERT_TRUE(on);
  ASSERT_TRUE(apply(lab, *on));
  EXPECT_EQ(lab.exercises.back().on.size(), 2U);
  const auto off = set_power(lab, e.id, host, false);
  ASSERT_TRUE(off);
  ASSERT_TRUE(apply(lab, *off));
  EXPECT_TRUE(lab.exercises.back().on.empty());
  EXPECT_EQ(refusal(set_power(lab, {}, guest, true)),
            "choose an exercise first: without one everything is on");
}

// DECISIONS 19: steps of 256 MiB.
TEST(SetMemory, GoesInWholeSteps) {
  for (const auto& [asked, given] :
       {std::pair<std::int64_t, std::int64_t>{1000, 1024}, {1, 256}, {-5, 256}, {1151, 1024}, {1152, 1280}}) {
    Lab after = ferries();
    ASSERT_TRUE(apply(after, set_memory(after, id("beacon"), asked)));
    EXPECT_EQ(machine(after, "beacon").memory, given) << asked;
  }
}

} // namespace
} // namespace snug::test
