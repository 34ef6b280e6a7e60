#include "core/reach/need_list.h"

#include "core/reach/promises.h"
#include "tests/support/network_lab.h"
#include "tests/support/scale.h"

#include <algorithm>
#include <array>
#include <gtest/gtest.h>

namespace snug::test {
namespace {

constexpr std::array<const char*, 3> kServices{"names", "time", "storage"};

// Offers and needs at random, own ones and of roles.
void add_services(Random& r, Lab& lab) {
  const auto service = [&r] { return std::string(kServices[r.below(kServices.size())]); };
  const auto need = [&](std::vector<Need>& needs) {
    Need& n = needs.emplace_back();
    n.service = service();
    if (r.chance(30)) n.from = lab.machines[r.below(lab.machines.size())].id;
  };
  for (Role& role : lab.roles)
    if (r.chance(50)) need(role.needs);
  for (Machine& m : lab.machines) {
    if (r.chance(30)) {
      Offer& o = m.offers.emplace_back();
      o.service = service();
      o.transport = Transport::icmp;
    }
    if (r.chance(40)) need(m.needs);
  }
}

std::size_t compare(const Lab& lab) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  Offerings offerings(index);
  Reach reach(index, addresses);
  const std::vector<ListedNeed> listed = list_needs(index, addresses);
  std::size_t at = 0, served = 0;
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m)
    for (const Need& n : needs_of(index, m)) {
      const std::vector<std::uint32_t>& servers = offerings.of(n.service);
      if (!n.from && std::find(servers.begin(), servers.end(), m) != servers.end()) continue; // himself
      if (at == listed.size()) {
        ADD_FAILURE() << "too few";
        return served;
      }
      const ListedNeed& l = listed[at++];
      EXPECT_EQ(l.machine, m);
      EXPECT_EQ(l.need->service, n.service);
      EXPECT_EQ(l.need->from, n.from);
      if (l.server == kNowhere) continue;
      ++served;
      EXPECT_NE(std::find(servers.begin(), servers.end(), l.server), servers.end());
      const Judged j = judge(reach, index, offerings, lab.machines[m].id, n);
      EXPECT_TRUE(j.counts && j.kept) << to_text(AnyId(lab.machines[m].id)) << " needs " << n.service;
    }
  EXPECT_EQ(at, listed.size());
  return served;
}

TEST(NeedList, NamesEveryNeedAndOnlyServersThatServe) {
  std::size_t served = 0;
  for (int i = 0, n = scaled(5'000); i < n && !HasFailure(); ++i) {
    SCOPED_TRACE(i);
    Random r(static_cast<std::uint64_t>(i));
    Lab lab = i % 4 == 0 ? network_lab(r, {20, 1}) : plausible_lab(r, 24, 2);
    add_services(r, lab);
    served += compare(lab);
  }
  EXPECT_GT(served, 50U);
}

} // namespace
} // namespace snug::test
