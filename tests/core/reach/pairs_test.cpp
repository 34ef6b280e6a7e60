// The fast answer for every pair against the slow one: each pair by itself, packet by packet.

#include "core/reach/pairs.h"

#include "tests/bench/routed_lab.h"
#include "tests/support/network_lab.h"
#include "tests/support/scale.h"

#include <array>
#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct Looked {
  std::size_t labs = 0, nodes = 0, classes = 0;
  std::size_t pairs = 0, asked = 0, reached = 0; // of classes; of nodes
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
  looked.pairs += std::size_t{pairs.classes().size()} * pairs.classes().size();
  looked.asked += pairs.asked();
  ReachQuestion q = shape;
  for (std::uint32_t a = 0; a < nodes.size(); ++a)
    for (std::uint32_t b = 0; b < nodes.size(); ++b) {
      q.from = nodes[a].id;
      q.to = nodes[b].id;
      const Reached slow = reach.ask(q).verdict;
      ASSERT_EQ(word(pairs.verdict(a, b)), word(slow)) << to_text(q.from) << " to " << to_text(q.to);
      ASSERT_EQ(reach.verdict(q), slow);
      looked.reached += slow == Reached::reaches ? 1 : 0;
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
  EXPECT_LT(spoiled.asked, spoiled.pairs); // else no row decided anything
}

template <typename List>
auto& any_of(List& list, Random& r) {
  return list[r.below(list.size())];
}

// One of the mistakes that people make in a routed lab.
void spoil(Lab& lab, Random& r) {
  Card& card = any_of(lab.cards, r);
  Machine& machine = any_of(lab.machines, r);
  switch (r.below(11)) {
  case 0:
    card.addresses = any_of(lab.cards, r).addresses; // an address twice
    break;
  case 1:
    card.connected = false;
    break;
  case 2:
    card.forwards4 = !card.forwards4;
    break;
  case 3:
    card.mtu = r.chance(50) ? 68 : 1400;
    break;
  case 4:
    card.segment = any_of(lab.segments, r).id;
    break;
  case 5:
    card.addresses.front().length = static_cast<std::int32_t>(8 + r.below(25));
    break;
  case 6:
    card.translates = true;
    break;
  case 7:
    machine.reverse_filter = r.chance(50) ? ReverseFilter::strict : ReverseFilter::loose;
    break;
  case 8:
    machine.routes = any_of(lab.machines, r).routes;
    break;
  case 9:
    if (!machine.routes.empty()) machine.routes.erase(machine.routes.begin());
    break;
  default:
    card.mac = any_of(lab.cards, r).mac;
    break;
  }
}

// Routers in a row, each between two of the segments 10.0.0.0/24, 10.0.1.0/24 …
Lab chain_lab(std::uint32_t routers) {
  Lab lab;
  std::uint32_t& id = lab.facts.next_id;
  const auto net = [](std::uint32_t i, std::uint32_t host) {
    return Address::v4(0x0a00'0000U | i << 8U | host);
  };
  for (std::uint32_t i = 0; i <= routers; ++i) {
    Segment& s = lab.segments.emplace_back();
    s.id.number = id++;
    s.name = "net-" + std::to_string(i);
    s.prefix4 = Prefix::of(net(i, 0), 24);
  }
  const auto card = [&](MachineId m, std::uint32_t segment, std::uint32_t host) {
    Card& c = lab.cards.emplace_back();
    c.id.number = id++;
    c.machine = m;
    c.segment = lab.segments[segment].id;
    c.addresses.push_back({{}, AddressKind::typed, net(segment, host), std::nullopt});
    c.mac = Mac(0x0200'0000'0000ULL | c.id.number);
    c.forwards4 = true;
  };
  for (std::uint32_t i = 0; i < routers; ++i) {
    Machine& m = lab.machines.emplace_back();
    m.id.number = id++;
    m.name = "router-" + std::to_string(i);
    const auto route = [&](const Prefix& to, const Address& via) {
      Route& r = m.routes.emplace_back();
      r.to = to;
      r.via = via;
    };
    route({}, net(i + 1, 2));
    for (std::uint32_t j = 0; j < i; ++j) route(Prefix::of(net(j, 0), 24), net(i, 1));
    card(m.id, i, 2);
    card(m.id, i + 1, 1);
  }
  return lab;
}

// A packet starts with a hop limit of 64 (RFC 1700, IP default TTL): where a way may be as long, each is
// asked.
TEST(ReachPairs, AWayAsLongAsTheHopLimitIsAsked) {
  Looked within, apart, beyond;
  compare_all_pairs(chain_lab(40), {}, {}, within);
  EXPECT_EQ(within.asked, 0U);
  EXPECT_GE(within.reached, std::size_t{40} * 40);
  Lab two = chain_lab(80);
  two.cards[80].connected = false; // of the router in the middle
  compare_all_pairs(two, {}, {}, apart);
  EXPECT_EQ(apart.asked, 0U);
  compare_all_pairs(chain_lab(70), {}, {}, beyond);
  EXPECT_GT(beyond.asked, beyond.pairs / 2);
  EXPECT_LT(beyond.reached, std::size_t{70} * 70); // the ends do not reach each other
}

TEST(ReachPairs, EqualTheSlowAnswerInRoutedLabs) {
  Looked looked;
  for (int i = 0, n = scaled(600); i < n && !HasFailure(); ++i) {
    SCOPED_TRACE(i);
    Random r(static_cast<std::uint64_t>(i));
    Lab lab = bench::routed_lab(100 + r.below(30));
    for (std::size_t mistakes = r.below(8); mistakes > 0; --mistakes) spoil(lab, r);
    Exercise some;
    some.id.number = lab.facts.next_id++;
    some.name = "some";
    for (const Machine& m : lab.machines)
      if (r.chance(95)) some.on.push_back(m.id);
    lab.exercises.push_back(some);
    ReachQuestion shape;
    shape.full_size = i % 3 == 1;
    if (i % 3 == 2) shape.transport = Transport::tcp;
    compare_all_pairs(lab, i % 2 == 0 ? ExerciseId{} : some.id, shape, looked);
  }
  std::cout << looked.asked << " of " << looked.pairs << " pairs of classes were asked, " << looked.reached
            << " pairs of nodes reach\n";
  EXPECT_LT(looked.asked * 2, looked.pairs);
  EXPECT_GT(looked.reached, 0U);
}

} // namespace
} // namespace snug::test
