// Key figures of the samples, worked out by hand from MODEL's rules; the arithmetic stands in the test.

#include "core/budget/memory.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>
#include <map>

namespace snug {
namespace {

using test::sample;

std::map<std::string, std::int64_t> takes_of(const Lab& lab) {
  const Index index(lab);
  std::map<std::string, std::int64_t> out;
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m) out[lab.machines[m].name] = takes(index, m);
  return out;
}

// Headroom of the PC (of: empty) or of a hypervisor; `in`: name of an exercise, empty: everything on.
std::int64_t headroom(const Analysis& a, std::string_view in, std::string_view of = {}) {
  const ExerciseId e = in.empty() ? ExerciseId{} : test::exercise(a.lab(), in);
  const AnyId id = of.empty() ? AnyId{Kind::pc, 0} : AnyId(test::machine(a.lab(), of).id);
  for (const MemoryBudget& b : a.budgets(e).memory)
    if (b.of == id) return b.headroom();
  ADD_FAILURE() << of;
  return 0;
}

// MODEL: memory + 200 + 16 a processor + 1 MiB of page tables for each 512 MiB, twice for a hypervisor;
// inside a hypervisor 64 and 8.
TEST(SkerryFerries, TakesOfEachMachine) {
  const std::map<std::string, std::int64_t> by_hand{
      {"beacon", 4096 + 200 + 2 * 16 + 8},       {"wheelhouse", 10240 + 200 + 2 * 16 + 20},
      {"hold", 4096 + 200 + 2 * 16 + 8},         {"gangway", 1024 + 200 + 16 + 2},
      {"deck-a", 10240 + 200 + 4 * 16 + 2 * 20}, {"deck-b", 10240 + 200 + 4 * 16 + 2 * 20},
      {"tickets-1", 2048 + 64 + 8 + 4},          {"tickets-db", 3072 + 64 + 2 * 8 + 6},
      {"manifest", 2048 + 64 + 8 + 4},
  };
  EXPECT_EQ(takes_of(sample("skerry-ferries")), by_hand);
}

TEST(SkerryFerries, HeadroomOfThePc) {
  const Lab lab = sample("skerry-ferries");
  const Analysis a = analyse(lab);
  const std::int64_t budget = 48 * 1024 - 6 * 1024; // 6 GiB for its own system
  const std::int64_t beacon = 4336, wheelhouse = 10492, hold = 4336, gangway = 1242, deck = 10544;
  EXPECT_EQ(headroom(a, ""), budget - beacon - wheelhouse - hold - gangway - 2 * deck);
  EXPECT_EQ(headroom(a, ""), 1514); // 1.5 GiB: less than the 2 kept free
  EXPECT_EQ(headroom(a, "Names and logins"), budget - beacon);
  EXPECT_EQ(headroom(a, "A shared hold"), budget - beacon - hold - 2 * deck);
  EXPECT_EQ(headroom(a, "Hands on the wheel"), budget - beacon - hold - 2 * deck - wheelhouse);
  EXPECT_EQ(headroom(a, "Move a running guest"), 1514);
  EXPECT_EQ(headroom(a, "The ticket office opens"), 1514 + wheelhouse);
  const MemoryBudget& pc = a.budgets(ExerciseId{}).memory.front();
  EXPECT_EQ(pc.verdict(), Verdict::tight);
  EXPECT_EQ(show_mib(pc.taken), "40.5 GiB");
}

TEST(SkerryFerries, RoomsOfTheDecks) {
  const Lab lab = sample("skerry-ferries");
  const Analysis a = analyse(lab);
  const std::int64_t inside = 10240 - 2048; // the hypervisor's own part
  const std::int64_t tickets_1 = 2124, tickets_db = 3158, manifest = 2124;
  EXPECT_EQ(headroom(a, "", "deck-a"), inside - tickets_1 - tickets_db);
  EXPECT_EQ(headroom(a, "", "deck-b"), inside - manifest);
  EXPECT_EQ(headroom(a, "A shared hold", "deck-a"), inside);
  EXPECT_EQ(headroom(a, "Hands on the wheel", "deck-a"), inside - tickets_db);
  EXPECT_EQ(headroom(a, "Hands on the wheel", "deck-b"), inside);
  EXPECT_EQ(headroom(a, "Move a running guest", "deck-b"), inside - manifest);
  // Room for one more guest with one processor: what is left less 72, less 1 for each 512 (rounded up).
  const auto& memory = a.budgets(ExerciseId{}).memory;
  ASSERT_EQ(memory.size(), 3U);
  EXPECT_EQ(room_for_guest(a.index(), memory[1]), 2910 - 72 - 6);  // 2832: 2832 / 512 = 5.5
  EXPECT_EQ(room_for_guest(a.index(), memory[2]), 6068 - 72 - 12); // 5984: 5984 / 512 = 11.7
}

TEST(SkerryFerries, ExpectedUse) {
  const Lab lab = sample("skerry-ferries");
  const Analysis a = analyse(lab);
  // Percent of the memory, rounded up, and the whole overhead.
  const std::int64_t beacon = 2458 + 240, wheelhouse = 7680 + 252, hold = 2048 + 240, gangway = 308 + 218;
  const std::int64_t tickets_1 = 1434 + 76, tickets_db = 2612 + 86, manifest = 1024 + 76;
  const std::int64_t deck_a = 2048 + 304 + tickets_1 + tickets_db, deck_b = 2048 + 304 + manifest;
  EXPECT_EQ(a.budgets(ExerciseId{}).memory.front().expected,
            beacon + wheelhouse + hold + gangway + deck_a + deck_b);
}

TEST(SkerryFerries, Processors) {
  const Lab lab = sample("skerry-ferries");
  const auto processors = analyse(lab).budgets(ExerciseId{}).processors;
  ASSERT_EQ(processors.size(), 3U);
  EXPECT_EQ(processors[0].power, 8 * 100 + 8 * 25); // eight cores, a quarter for each second thread
  EXPECT_EQ(processors[0].running, 2 + 2 + 2 + 1 + 4 + 4);
  EXPECT_EQ(processors[0].ratio, 150);
  EXPECT_EQ(processors[1].running, 1 + 2);
  EXPECT_EQ(processors[1].ratio, 75);    // three on four
  EXPECT_EQ(processors[1].product, 113); // 0.75 * 1.5 = 1.125, rounded up
  EXPECT_EQ(processors[2].ratio, 25);
}

TEST(SkerryFerries, Disks) {
  const Lab lab = sample("skerry-ferries");
  const auto disks = analyse(lab).budgets(ExerciseId{}).disks;
  ASSERT_EQ(disks.size(), 3U);                    // the volume, cargo-bay, manuals
  EXPECT_EQ(disks[0].budget, 640 * 1024 - 95335); // 10 % of 931 GiB (953344), rounded up
  EXPECT_EQ(disks[0].worst, (40 + 60 + 16 + 300 + 4 + 40 + 40) * 1024);
  EXPECT_EQ(disks[0].expected, (20 + 36 + 8 + 120 + 2 + 20 + 20) * 1024);
  EXPECT_EQ(disks[1].budget, 200 * 1024);
  EXPECT_EQ(disks[1].worst, (20 + 40 + 20) * 1024);
  EXPECT_EQ(disks[1].expected, (10 + 24 + 10) * 1024);
  EXPECT_EQ(disks[2].budget, 60 * 1024);
  EXPECT_EQ(disks[2].worst, 0);
}

TEST(SkerryFerries, AddressesOfTheSegments) {
  const Lab lab = sample("skerry-ferries");
  const Analysis a = analyse(lab);
  struct Row {
    std::string_view name;
    std::int64_t used, reserved;
  };
  const std::vector<Row> by_hand{
      {"House LAN", 2, 100},  // wheelhouse and the house router; the pool .100 to .199
      {"Steering", 5, 0},     // .10 .12 .20 .31 (twice, counted once) .254
      {"Cargo", 3, 0},        // .20 .31 .32
      {"Transfer", 2, 0},     // .31 .32
      {"Passengers", 5, 100}, // .1 .10 .41 .42 .254; beacon's DHCP
      {"Crew", 3, 100},       // .1 (translator) .3 .42; the translator's DHCP
  };
  const auto& segments = a.budgets(ExerciseId{}).segments;
  ASSERT_EQ(segments.size(), by_hand.size());
  for (std::size_t i = 0; i < by_hand.size(); ++i) {
    EXPECT_EQ(lab.segments[i].name, by_hand[i].name);
    EXPECT_EQ(segments[i].usable, 254) << by_hand[i].name;
    EXPECT_EQ(segments[i].used, by_hand[i].used) << by_hand[i].name;
    EXPECT_EQ(segments[i].reserved, by_hand[i].reserved) << by_hand[i].name;
  }
  // On Transfer are the two decks; the memory of their guests is inside theirs.
  EXPECT_EQ(segments[3].memory, 2 * 10544);
}

TEST(SkerryFerries, OnOtherPcs) {
  const Lab lab = sample("skerry-ferries");
  const Analysis a = analyse(lab);
  const ExerciseBudgets& all = a.budgets(ExerciseId{});
  EXPECT_EQ(on_pc_of(32 * 1024, all).headroom(), 26 * 1024 - 41494); // over by 14.5 GiB
  EXPECT_EQ(on_pc_of(32 * 1024, all).verdict(), Verdict::over);
  EXPECT_EQ(on_pc_of(64 * 1024, all).headroom(), 56 * 1024 - 41494);
  EXPECT_EQ(on_pc_of(64 * 1024, all).verdict(), Verdict::fits);
}

TEST(SkerryFerries16, HeadroomOfEveryExercise) {
  const Lab lab = sample("skerry-ferries-16");
  const Analysis a = analyse(lab);
  const std::int64_t budget = 16 * 1024 - 4 * 1024; // 4 GiB for its own system
  const std::int64_t beacon = 1024 + 200 + 16 + 2, wheelhouse = 3072 + 200 + 2 * 16 + 6;
  const std::int64_t small = 512 + 200 + 16 + 1; // hold, gangway
  const std::int64_t deck_a = 2560 + 200 + 2 * 16 + 2 * 5, deck_b = 3584 + 200 + 2 * 16 + 2 * 7;
  EXPECT_EQ(headroom(a, ""), budget - beacon - wheelhouse - 2 * small - deck_a - deck_b);
  EXPECT_EQ(headroom(a, ""), -354);
  EXPECT_EQ(headroom(a, "Names and logins"), budget - beacon);
  EXPECT_EQ(headroom(a, "A shared hold"), budget - beacon - small - deck_a - deck_b);
  EXPECT_EQ(headroom(a, "Hands on the wheel"), 375);
  EXPECT_EQ(headroom(a, "Move a running guest"), 375);
  EXPECT_EQ(headroom(a, "The ticket office opens"), -354 + wheelhouse);
  // A lean hypervisor keeps 1.5 GiB. deck-a: tickets-1; deck-b: tickets-db and manifest.
  EXPECT_EQ(headroom(a, "", "deck-a"), 2560 - 1536 - (512 + 64 + 8 + 1));
  EXPECT_EQ(headroom(a, "", "deck-b"), 3584 - 1536 - (1024 + 64 + 8 + 2) - (512 + 64 + 8 + 1));
  // tickets-1 fits into deck-b while manifest is off: that is the exercise.
  EXPECT_GE(headroom(a, "Move a running guest", "deck-b"), 585);
}

TEST(BranchOffice, Headroom) {
  const Lab lab = sample("branch-office");
  const Analysis a = analyse(lab);
  const std::int64_t two_gib = 2048 + 200 + 2 * 16 + 4, proofs = 1024 + 200 + 16 + 2,
                     router = 512 + 200 + 16 + 1;
  EXPECT_EQ(headroom(a, ""), 12 * 1024 - 3 * two_gib - proofs - 2 * router);
  EXPECT_EQ(headroom(a, "Two networks, one router"), 12 * 1024 - 2 * two_gib - proofs - router);
  EXPECT_EQ(headroom(a, "Across the line"), 12 * 1024 - 2 * two_gib - proofs - 2 * router);
  const auto& segments = a.budgets(ExerciseId{}).segments;
  ASSERT_EQ(segments.size(), 5U);
  EXPECT_EQ(lab.segments[3].name, "Line"); // a /31: two addresses, both used (RFC 3021)
  EXPECT_EQ(segments[3].usable, 2);
  EXPECT_EQ(segments[3].used, 2);
  EXPECT_EQ(segments[3].free(), 0);
}

TEST(BranchOffice, PrivatePrefixComesFromTheIdentity) {
  const Lab lab = sample("branch-office"); // RFC 4193: fd, then 40 bits of the hash
  EXPECT_EQ(lab.facts.local_prefix6, unique_local_prefix(lab.facts.uid));
  for (const Segment& s : lab.segments)
    EXPECT_TRUE(!s.prefix6 || lab.facts.local_prefix6->contains(*s.prefix6)) << s.name;
}

TEST(Mistakes, Headroom) {
  const Lab lab = sample("mistakes");
  const Analysis a = analyse(lab);
  const std::int64_t budget = 32 * 1024 - 6 * 1024;
  const std::int64_t mast = 1536 + 232 + 3, four_gib = 4096 + 232 + 8, rack_a = 8192 + 216 + 2 * 16;
  const std::int64_t rack_b = 6144 + 232 + 2 * 12, gate = 1024 + 216 + 2, news = 2048 + 216 + 4;
  const std::int64_t encoder = 4096 + 200 + 8 * 16 + 8;
  EXPECT_EQ(headroom(a, ""), budget - mast - 3 * four_gib - rack_a - rack_b - 2 * gate - news - encoder);
  EXPECT_EQ(headroom(a, "Quiet morning"), budget - mast - four_gib); // player cannot run: rack-b is off
  EXPECT_EQ(headroom(a, "No tape"), budget - mast - rack_b);
  EXPECT_EQ(headroom(a, "", "rack-b"), 6144 - 2048 - (3072 + 64 + 4 * 8 + 6) - (3072 + 64 + 8 + 6));
}

TEST(Sixty, SizeAndHeadroom) {
  const Lab lab = sample("sixty");
  EXPECT_EQ(lab.machines.size(), 60U);
  EXPECT_EQ(lab.segments.size(), 12U);
  const Analysis a = analyse(lab);
  EXPECT_FALSE(a.has_error());
  const std::int64_t budget = 256 * 1024 - 8 * 1024;
  const std::int64_t hall = 30720 + 200 + 8 * 16 + 2 * 60, helm = 12288 + 232 + 24;
  const std::int64_t four2 = 4096 + 232 + 8, four1 = 4096 + 216 + 8, two1 = 2048 + 216 + 4,
                     one1 = 1024 + 216 + 2;
  // lantern, lamp, vault-1, vault-2, watch, attic · post · seal, diary · clock, index, porter, gate, doorway,
  // doorstep, sieve, third
  const std::int64_t others = helm + 6 * four2 + four1 + 2 * two1 + 8 * one1;
  EXPECT_EQ(headroom(a, ""), budget - 6 * hall - others);
  EXPECT_EQ(headroom(a, "Two halls down"), budget - 4 * hall - others);
  const std::int64_t core = helm + 4 * four2 + 4 * one1; // lantern to gate
  EXPECT_EQ(headroom(a, "Desks only"), budget - core - 2 * hall - one1);
  EXPECT_EQ(headroom(a, "Library day"), budget - core - hall);
  EXPECT_EQ(headroom(a, "Desks only", "hall-1"), 30720 - 2048 - 6 * (4096 + 64 + 2 * 8 + 8));
}

TEST(Empty, HasNothingAndKeepsEverythingFree) {
  const Lab lab = sample("empty");
  EXPECT_TRUE(lab.machines.empty());
  EXPECT_EQ(headroom(analyse(lab), ""), 12 * 1024);
}

} // namespace
} // namespace snug
