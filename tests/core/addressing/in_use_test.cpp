#include "core/addressing/in_use.h"

#include "tests/support/random_lab.h"
#include "tests/support/rule_world.h"
#include "tests/support/scale.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <map>
#include <set>

namespace snug::test {

TEST(AddressesInUse, HoldsCardsSocketTranslatorAndRouter) {
  World w;
  const Index index(w.lab);
  const AddressesInUse in_use(index);
  std::map<std::string, Holder> held;
  for (const HeldAddress& h : in_use.all()) held[to_text(h.address)] = h.holder;
  EXPECT_EQ(held.at("172.22.10.254"), Holder::pc_socket);
  EXPECT_EQ(held.at("172.22.50.1"), Holder::translator); // the first usable address (DECISIONS 14)
  EXPECT_EQ(held.at("192.168.40.1"), Holder::lan_router);
  EXPECT_EQ(held.at("172.22.20.41"), Holder::card);
  EXPECT_EQ(in_use.gateway4(index.place(w.crew)), address("172.22.50.1"));
  EXPECT_EQ(in_use.gateway4(index.place(w.lane)), address("192.168.40.1"));
  EXPECT_EQ(in_use.prefix4(index.place(w.lane)), prefix("192.168.40.0/24"));
  EXPECT_EQ(in_use.ranges(index.place(w.lane)).size(), 1U);
  EXPECT_EQ(in_use.ranges(index.place(w.crew))[0].server, AnyId(w.crew));
}

TEST(AddressesInUse, TypedTranslatorIsTheGateway) {
  World w;
  w.segment(w.crew).translator4 = address("172.22.50.2");
  const Index index(w.lab);
  EXPECT_EQ(AddressesInUse(index).gateway4(index.place(w.crew)), address("172.22.50.2"));
  w.segment(w.crew).gateway4 = address("172.22.50.3");
  EXPECT_EQ(AddressesInUse(index).gateway4(index.place(w.crew)), address("172.22.50.3"));
}

TEST(AddressesInUse, TrunkAddressesBelongToTheSegmentThatHoldsThem) {
  World w;
  const CardId c = w.add_card(w.pilot, {}, "172.22.20.10");
  for (const SegmentId s : {w.deck, w.hold}) w.card(c).trunk.emplace_back().segment = s;
  const Index index(w.lab);
  const AddressesInUse in_use(index);
  const auto held = in_use.with(index.place(w.hold), address("172.22.20.10"));
  ASSERT_EQ(held.size(), 1U);
  EXPECT_EQ(held[0].card, index.place(c));
  EXPECT_EQ(held[0].domain, in_use.domains().outside(index.place(w.hold)));
}

TEST(AddressesInUse, SortedBySegmentThenAddress) {
  Random random(11);
  for (int i = 0, n = scaled(2'000); i < n; ++i) {
    const Lab lab = random_lab(random, 12);
    const Index index(lab);
    const AddressesInUse in_use(index);
    EXPECT_TRUE(std::is_sorted(in_use.all().begin(), in_use.all().end(), [](const auto& a, const auto& b) {
      return std::tie(a.segment, a.address) < std::tie(b.segment, b.address);
    }));
    std::size_t rows = 0, counted = 0;
    for (const Card& c : lab.cards)
      for (const CardAddress& a : c.addresses)
        rows += a.address && (a.kind == AddressKind::typed || a.kind == AddressKind::suggested) ? 1 : 0;
    for (const HeldAddress& h : in_use.all()) counted += h.holder == Holder::card ? 1 : 0;
    EXPECT_EQ(rows, counted);
  }
}

// Oracle: a card's network by walking up while some connected card carries the segment.
TEST(Domains, AgreeWithWalkingUp) {
  Random random(5);
  for (int i = 0, n = scaled(3'000); i < n; ++i) {
    const Lab lab = random_lab(random, 14);
    const Index index(lab);
    const Domains domains(index);
    // (carrier, segment) where the walk ends names a network; bridged ones go by LAN and VLAN id.
    using Net = std::tuple<std::uint32_t, std::uint32_t, std::uint32_t, std::int32_t>;
    const auto walk = [&](std::uint32_t carrier, std::uint32_t s) -> Net {
      for (bool up = true; carrier != kNowhere && up;) {
        up = false;
        for (const std::uint32_t c : index.cards_of(carrier))
          for (const SegmentTag& t : lab.cards[c].carries)
            up = up || (lab.cards[c].connected && index.place(t.segment) == s);
        if (up) carrier = index.carrier_of(carrier);
      }
      const Segment& segment = lab.segments[s];
      if (carrier == kNowhere && segment.type == SegmentKind::bridged && segment.lan)
        return {kNowhere, kNowhere, segment.lan.number, segment.vlan};
      return {carrier, s, 0, 0};
    };
    std::map<Net, std::uint32_t> number;
    std::set<std::uint32_t> used;
    for (std::uint32_t c = 0; c < lab.cards.size(); ++c) {
      const std::uint32_t s = index.place(lab.cards[c].segment), m = index.place(lab.cards[c].machine);
      if (!lab.cards[c].connected || s == kNowhere) {
        const bool carries =
            std::any_of(lab.cards[c].carries.begin(), lab.cards[c].carries.end(),
                        [&](const SegmentTag& t) { return s != kNowhere && index.place(t.segment) == s; });
        EXPECT_TRUE(domains.of_card(c) == kNowhere ||
                    (carries && domains.of_card(c) == domains.inside(m, s)));
        continue;
      }
      const auto [it, fresh] = number.emplace(walk(index.carrier_of(m), s), domains.of_card(c));
      EXPECT_EQ(it->second, domains.of_card(c));
      if (fresh) {
        EXPECT_TRUE(used.insert(domains.of_card(c)).second) << "two networks, one number";
      }
    }
  }
}

// The hypervisor's own end stays on the switch inside; of two such uplinks, the first one's.
TEST(Domains, AnUplinkWithoutCableHasItsEndInside) {
  World w;
  w.card(w.rack_hold).connected = false;
  w.card(w.rack_hold).addresses.emplace_back().address = w.card(w.guest_hold).addresses.front().address;
  const CardId second = w.add_card(w.rack, w.hold, "172.22.20.99");
  w.card(second).carries.emplace_back().segment = w.hold;
  w.card(second).connected = false;
  const Index index(w.lab);
  const AddressesInUse in_use(index);
  const std::uint32_t hold = index.place(w.hold), inside = in_use.domains().inside(index.place(w.rack), hold);
  EXPECT_EQ(in_use.domains().of_card(index.place(w.rack_hold)), inside);
  EXPECT_EQ(in_use.domains().of_card(index.place(second)), kNowhere);
  EXPECT_NE(inside, in_use.domains().outside(hold));
  EXPECT_EQ(in_use.equal().size(), 1U);

  w.card(second).connected = true;
  const Index joined(w.lab);
  EXPECT_EQ(Domains(joined).of_card(joined.place(w.rack_hold)), kNowhere);
}

// Oracle: all pairs (RELIABILITY row 34).
TEST(AddressConflicts, EqualAllPairs) {
  Random random(3);
  for (int i = 0, n = scaled(100'000) / 100; i < n; ++i) {
    World w;
    for (std::size_t k = 4 + random.below(20); k > 0; --k) {
      const SegmentId s = random.chance(50) ? w.deck : w.hold;
      const MachineId m = random.chance(50) ? w.pilot : w.guest;
      const std::string a =
          (s == w.deck ? "172.22.10." : "172.22.20.") + std::to_string(10 + random.below(12));
      const CardId c = w.add_card(m, s, a);
      w.card(c).connected = random.chance(80);
    }
    const Index index(w.lab);
    const AddressesInUse in_use(index);
    std::set<std::string> clashes; // addresses that two connected cards of one network hold
    for (const HeldAddress& a : in_use.all())
      for (const HeldAddress& b : in_use.all())
        if (std::tie(a.holder, a.card, a.row, a.segment) != std::tie(b.holder, b.card, b.row, b.segment) &&
            a.address == b.address && a.domain == b.domain && a.domain != kNowhere)
          clashes.insert(to_text(a.address) + "/" + std::to_string(a.domain));
    const Analysis analysis(w.lab);
    std::set<AnyId> named;
    bool any = false;
    for (const Finding& f : analysis.findings())
      if (f.rule->id == "address-twice") {
        any = true;
        named.insert(f.places.begin(), f.places.end());
      }
    EXPECT_EQ(any, !clashes.empty());
    for (const HeldAddress& h : in_use.all())
      if (h.holder == Holder::card) {
        EXPECT_EQ(named.contains(w.lab.cards[h.card].id),
                  clashes.contains(to_text(h.address) + "/" + std::to_string(h.domain)))
            << to_text(h.address);
      }
  }
}

} // namespace snug::test
