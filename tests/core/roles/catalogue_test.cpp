#include "core/roles/catalogue.h"

#include "core/analyse/analyse.h"
#include "core/roles/read_roles.h"

#include <gtest/gtest.h>
#include <set>

namespace snug {
namespace {

constexpr std::int64_t kGib = 1024;

TEST(Catalogue, IsOfFourteenRolesOrMoreWithKeysOfTheirOwn) {
  EXPECT_GE(catalogue().size(), 14U);
  std::set<std::string> keys, titles;
  for (const Role& r : catalogue()) {
    EXPECT_TRUE(keys.insert(r.key).second) << r.key;
    EXPECT_TRUE(titles.insert(r.title).second) << r.title;
    EXPECT_TRUE(r.source.starts_with("common practice, no published source")) << r.key;
    EXPECT_GT(r.install_seconds, 0) << r.key;
    EXPECT_GT(r.ready_seconds, 0) << r.key;
  }
  EXPECT_EQ(find_role("no-such-role"), nullptr);
}

// DECISIONS 21 (common practice, no published source): least and usual in MiB.
TEST(Catalogue, SizesOfTheEightCommonRoles) {
  struct Row {
    std::string_view key;
    std::int64_t lean_least, lean_usual, current_least, current_usual;
  };
  const std::vector<Row> decided{
      {"directory-server", 1 * kGib, 2 * kGib, 2 * kGib, 4 * kGib},
      {"management-server", 3 * kGib, 8 * kGib, 10 * kGib, 12 * kGib},
      {"nested-hypervisor", 2560, 5 * kGib, 4 * kGib, 8 * kGib},
      {"shared-storage", 512, 2 * kGib, 1 * kGib, 4 * kGib},
      {"router", 512, 1 * kGib, 512, 1 * kGib},
      {"name-server", 512, 1 * kGib, 512, 1 * kGib},
      {"application", 512, 2 * kGib, 1 * kGib, 2 * kGib},
      {"desktop-client", 2 * kGib, 4 * kGib, 4 * kGib, 8 * kGib},
  };
  for (std::size_t i = 0; i < decided.size(); ++i) {
    const Row& row = decided[i];
    const Role* r = find_role(row.key);
    ASSERT_NE(r, nullptr) << row.key;
    EXPECT_EQ(r, &catalogue()[i]) << "order of the parts list";
    EXPECT_EQ(r->lean_least, row.lean_least) << row.key;
    EXPECT_EQ(r->lean_usual, row.lean_usual) << row.key;
    EXPECT_EQ(r->current_least, row.current_least) << row.key;
    EXPECT_EQ(r->current_usual, row.current_usual) << row.key;
  }
  EXPECT_EQ(find_role("nested-hypervisor")->lean_footprint, 1536);
  EXPECT_EQ(find_role("nested-hypervisor")->current_footprint, 2048);
}

// MODEL (common practice, no published source): directory 2 to 4 minutes, hypervisor 3 to 5, management 8
// to 15.
TEST(Catalogue, TimesToReady) {
  const auto minutes = [](std::string_view key) { return find_role(key)->ready_seconds / 60; };
  EXPECT_TRUE(minutes("directory-server") >= 2 && minutes("directory-server") <= 4);
  EXPECT_TRUE(minutes("nested-hypervisor") >= 3 && minutes("nested-hypervisor") <= 5);
  EXPECT_TRUE(minutes("management-server") >= 8 && minutes("management-server") <= 15);
}

// Well-known ports from the RFC named beside each (the numbers from memory; the RFCs and the IANA registry of
// service names agree on them).
TEST(Catalogue, PortsOfTheServices) {
  struct Row {
    std::string_view key, service;
    Transport transport;
    std::int32_t port;
  };
  const std::vector<Row> known{
      {"directory-server", "names", Transport::udp, 53},        // RFC 1035 4.2.1
      {"directory-server", "time", Transport::udp, 123},        // RFC 5905
      {"directory-server", "directory", Transport::tcp, 389},   // RFC 4511
      {"directory-server", "login", Transport::tcp, 88},        // RFC 4120 7.2.3
      {"management-server", "management", Transport::tcp, 443}, // RFC 9110 4.2.2
      {"shared-storage", "storage", Transport::tcp, 3260},      // RFC 7143
      {"shared-storage", "storage", Transport::tcp, 2049},      // RFC 7530
      {"name-server", "names", Transport::tcp, 53},             // RFC 1035 4.2.2
      {"web-server", "web", Transport::tcp, 80},                // RFC 9110 4.2.1
      {"mail-server", "mail", Transport::tcp, 25},              // RFC 5321 4.5.4.2
      {"mail-server", "mail", Transport::tcp, 587},             // RFC 6409
      {"mail-server", "mail", Transport::tcp, 993},             // RFC 8314
      {"time-server", "time", Transport::udp, 123},             // RFC 5905
      {"dhcp-server", "addresses", Transport::udp, 67},         // RFC 2131 4.1
      {"monitoring", "traps", Transport::udp, 162},             // RFC 3417
      {"log-collector", "logs", Transport::udp, 514},           // RFC 5426
      {"log-collector", "logs", Transport::tcp, 6514},          // RFC 5425
      {"jump-host", "remote shell", Transport::tcp, 22},        // RFC 4251
      {"vpn-gateway", "vpn", Transport::udp, 500},              // RFC 7296
      {"vpn-gateway", "vpn", Transport::udp, 4500},             // RFC 7296, RFC 3948
  };
  for (const Row& row : known) {
    const Role* r = find_role(row.key);
    ASSERT_NE(r, nullptr) << row.key;
    const auto is = [&](const Offer& o) {
      return o.service == row.service && o.transport == row.transport && o.port == row.port;
    };
    EXPECT_TRUE(std::any_of(r->offers.begin(), r->offers.end(), is)) << row.key << ' ' << row.port;
  }
}

// The five machines of the smallest nested lab, each of the catalogue.
std::int64_t five_machines(std::int64_t pc_gib, SizeSet sizes, bool usual) {
  Lab lab;
  lab.pc.installed = pc_gib * kGib;
  EditBuilder edit(lab);
  for (const std::string_view key : {"directory-server", "management-server", "nested-hypervisor",
                                     "nested-hypervisor", "shared-storage"}) {
    const Role* role = find_role(key);
    Machine m = machine_from(*role, sizes);
    m.role = use_role(edit, *role);
    if (!usual) m.memory = sizes == SizeSet::lean ? role->lean_least : role->current_least;
    edit.add(std::move(m));
  }
  EXPECT_EQ(edit.lab().roles.size(), 4U);
  return analyse(edit.lab()).budgets(ExerciseId{}).memory.front().headroom();
}

// Facts of the trade (common practice, no published source): one directory server, one management server, two
// nested hypervisors and one storage machine want at least 16 GiB and are comfortable in 32.
TEST(Catalogue, FiveMachinesFitWhereTheTradeSaysTheyDo) {
  EXPECT_GE(five_machines(16, SizeSet::lean, false), kGib); // and 1 GiB stays free
  EXPECT_LT(five_machines(8, SizeSet::lean, false), 0);
  EXPECT_GE(five_machines(32, SizeSet::lean, true), 2 * kGib);
  EXPECT_LT(five_machines(16, SizeSet::lean, true), 0);
  EXPECT_GE(five_machines(48, SizeSet::current, true), 2 * kGib);
  EXPECT_LT(five_machines(32, SizeSet::current, true), 0);
}

TEST(Catalogue, MachineOfUsualSize) {
  const Role* role = find_role("nested-hypervisor");
  const Machine lean = machine_from(*role, SizeSet::lean);
  EXPECT_EQ(lean.memory, 5 * kGib);
  EXPECT_EQ(lean.processors, 2);
  EXPECT_TRUE(lean.expose_virtualization);
  EXPECT_EQ(machine_from(*role, SizeSet::current).memory, 8 * kGib);
  EXPECT_FALSE(machine_from(*find_role("router"), SizeSet::lean).expose_virtualization);
}

TEST(Catalogue, ALabHoldsOneCopyOfARole) {
  const Lab lab;
  EditBuilder edit(lab);
  const RoleId first = use_role(edit, *find_role("router"));
  const RoleId again = use_role(edit, *find_role("router"));
  const RoleId other = use_role(edit, *find_role("name-server"));
  EXPECT_EQ(first, again);
  EXPECT_NE(first, other);
  ASSERT_EQ(edit.lab().roles.size(), 2U);
  Role copy = edit.lab().roles.front();
  copy.id = find_role("router")->id;
  EXPECT_EQ(copy, *find_role("router"));
}

TEST(Catalogue, OwnRolesReplaceAndFollow) {
  Role router;
  router.key = "router";
  router.title = "Our router";
  Role kiosk;
  kiosk.key = "kiosk";
  kiosk.title = "Kiosk";
  const auto all = extended(catalogue(), {kiosk, router});
  ASSERT_EQ(all.size(), catalogue().size() + 1);
  EXPECT_EQ(all.back().title, "Kiosk");
  EXPECT_EQ(all[4].title, "Our router");
  EXPECT_EQ(all[3], catalogue()[3]);
}

} // namespace
} // namespace snug
