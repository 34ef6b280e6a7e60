#include "core/budget/memory.h"

#include "core/base/size.h"
#include "core/roles/catalogue.h"
#include "tests/support/csv.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"
#include "tests/support/ship_lab.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::Random;
using test::Ship;

std::int64_t limit(const std::string& id) {
  for (const auto& row : test::read_checks("limits.csv"))
    if (row.at("id") == id) return std::stoll(row.at("value"));
  ADD_FAILURE() << id;
  return 0;
}

// tests/data/checks/limits.csv: entry size and entries of a table from memory of the processor manuals, the
// rest arithmetic.
TEST(PageTables, LastLevelAsInTheCheckValues) {
  EXPECT_EQ(page_tables(1024) * kBytesPerMib, limit("page-leaf-bytes")); // 1 GiB
  EXPECT_EQ(page_tables(1024) * kBytesPerMib, limit("page-leaf-per-gib") * limit("page-entry"));
  const std::pair<const char*, std::int64_t> trees[] = {{"page-tree-1g", 1},     {"page-tree-4g", 4},
                                                        {"page-tree-16g", 16},   {"page-tree-64g", 64},
                                                        {"page-tree-512g", 512}, {"page-tree-1024g", 1024}};
  for (const auto& [id, gib] : trees) {
    // The whole tree is the last level and, above it, one table of 4 KiB for each 512 below, up to one root.
    std::int64_t tables = gib * 1024 * 1024 * 1024 / 4096 / limit("page-table");
    EXPECT_EQ(tables * 4096, page_tables(gib * 1024) * kBytesPerMib) << id;
    std::int64_t all = tables;
    for (int level = 0; level < 3; ++level) all += tables = (tables + 511) / 512;
    EXPECT_EQ(all * 4096, limit(id)) << id;
  }
}

TEST(PageTables, AreRoundedUpToAMib) {
  EXPECT_EQ(page_tables(0), 0);
  EXPECT_EQ(page_tables(1), 1);
  EXPECT_EQ(page_tables(512), 1);
  EXPECT_EQ(page_tables(513), 2);
}

// MODEL: 200 MiB and 16 a processor on the PC, 64 and 8 inside; a hypervisor's page tables twice.
TEST(Takes, MemoryAndOverhead) {
  Ship ship;
  const Index index(ship.lab);
  EXPECT_EQ(takes(index, index.place(ship.helm)), 12288 + 200 + 2 * 16 + 24);
  EXPECT_EQ(takes(index, index.place(ship.deck_a)), 8192 + 200 + 2 * 16 + 2 * 16);
  EXPECT_EQ(takes(index, index.place(ship.tickets)), 2048 + 64 + 2 * 8 + 4);
}

// The look sketch: a management server of 10 GiB with two processors "takes 10.2 GiB".
TEST(Takes, AsInTheSketch) {
  Ship ship;
  ship.machine(ship.helm).memory = 10240;
  const Index index(ship.lab);
  EXPECT_EQ(takes(index, index.place(ship.helm)), 10492);
  EXPECT_EQ(show_mib(10492), "10.2 GiB");
}

TEST(Footprint, TypedThenTheRolesThenTheRules) {
  Ship ship;
  const auto of_deck = [&] {
    const Index index(ship.lab);
    return footprint(index, index.place(ship.deck_a));
  };
  EXPECT_EQ(of_deck(), 2048);
  ship.role(ship.hypervisor).lean_footprint = 1536;
  ship.lab.facts.sizes = SizeSet::lean;
  EXPECT_EQ(of_deck(), 1536);
  ship.machine(ship.deck_a).footprint = 1000;
  EXPECT_EQ(of_deck(), 1000);
  ship.machine(ship.deck_a).footprint.reset();
  ship.machine(ship.deck_a).role = {};
  ship.lab.rules.default_footprint = 1234;
  EXPECT_EQ(of_deck(), 1234);
}

// MODEL: min(memory, footprint + what is expected inside), never typed.
TEST(ExpectedUse, OfAHypervisorIsDerived) {
  Ship ship;
  ship.machine(ship.deck_a).expected_percent = 1;
  ship.machine(ship.tickets).expected_percent = 50;
  const auto expected_of_pc = [&] {
    const Index index(ship.lab);
    std::vector<std::uint8_t> on(ship.lab.machines.size(), 0);
    on[index.place(ship.deck_a)] = on[index.place(ship.tickets)] = 1;
    const GuestCosts costs = guest_costs(index);
    return memory_budgets(ship.lab.pc, costs, insides(costs, on))[0].expected;
  };
  EXPECT_EQ(expected_of_pc(), 2048 + (1024 + 84) + 264);
  ship.machine(ship.tickets).memory = 16000; // expected inside is more than deck-a has
  EXPECT_EQ(expected_of_pc(), 8192 + 264);
}

// One MiB more would not fit (DECISIONS 19).
TEST(Room, IsTheLargestGuestThatFits) {
  Ship ship;
  const Index index(ship.lab);
  for (int seed = 0; seed < test::scaled(2000); ++seed) {
    Random r(static_cast<std::uint64_t>(seed));
    MemoryBudget b;
    const bool inner = r.chance(50);
    b.of = inner ? AnyId(ship.deck_a) : AnyId{Kind::pc, 0};
    b.budget = r.between(-100, 40'000);
    b.keep_free = inner ? 0 : r.between(0, 4000);
    const std::int64_t overhead = inner ? 64 + 8 : 200 + 16;
    const std::int64_t room = room_for_guest(index, b);
    ASSERT_GE(room, 0);
    const std::int64_t left = b.headroom() - b.keep_free;
    ASSERT_TRUE(room == 0 || room + overhead + page_tables(room) <= left);
    ASSERT_GT(room + 1 + overhead + page_tables(room + 1), left);
  }
}

// Facts of the trade (MODEL: Roles, the issue): common practice, no published source. Directory, management,
// two nested hypervisors and storage of the catalogue.
enum class Size : std::uint8_t { least, usual };
Lab five_machines(SizeSet set, Size size) {
  Lab lab;
  lab.facts.sizes = set;
  for (const char* key : {"directory-server", "management-server", "nested-hypervisor", "nested-hypervisor",
                          "shared-storage"}) {
    const Role* role = find_role(key);
    if (!role) return {};
    EditBuilder edit(lab);
    Machine m = machine_from(*role, set);
    m.role = use_role(edit, *role);
    m.name = key;
    if (size == Size::least) m.memory = set == SizeSet::lean ? role->lean_least : role->current_least;
    edit.add(m);
    if (!apply(lab, std::move(edit).take({}))) return {};
  }
  return lab;
}
Verdict on_pc(const Lab& lab, std::int64_t gib) {
  const Index index(lab);
  return on_pc_of(gib * 1024, budgets_of(index, AddressesInUse(index))[0]).verdict();
}

TEST(TradeFacts, FiveMachinesOnPcsOfEverySize) {
  const Lab lean_least = five_machines(SizeSet::lean, Size::least);
  const Lab lean = five_machines(SizeSet::lean, Size::usual);
  const Lab current = five_machines(SizeSet::current, Size::usual);
  ASSERT_EQ(lean_least.machines.size(), 5U);
  EXPECT_EQ(on_pc(lean_least, 16), Verdict::fits);
  EXPECT_EQ(on_pc(lean, 16), Verdict::over);
  EXPECT_EQ(on_pc(lean, 32), Verdict::fits);
  EXPECT_EQ(on_pc(current, 32), Verdict::over);
  EXPECT_EQ(on_pc(current, 48), Verdict::fits);
  EXPECT_EQ(on_pc(current, 64), Verdict::fits);
}

} // namespace
} // namespace snug
