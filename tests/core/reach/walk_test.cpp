// Where random labs showed the walk to be wrong: each once, by hand.

#include "core/reach/reach.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

// Machines and cards by few words.
struct Wired {
  Lab lab;
  SegmentId segment(std::int32_t mtu = 1500) {
    Segment s;
    s.mtu = mtu;
    return add(s);
  }
  MachineId machine() { return add(Machine{}); }
  CardId card(MachineId m, SegmentId s, const std::vector<std::string>& addresses) {
    Card c;
    c.machine = m;
    c.segment = s;
    c.forwards4 = true;
    for (const std::string& text : addresses) {
      CardAddress& row = c.addresses.emplace_back();
      row.kind = text == "dhcp" ? AddressKind::dhcp : AddressKind::typed;
      if (text == "dhcp") continue;
      const auto parsed = parse_address_with_length(text);
      row.address = parsed->address;
      row.length = parsed->length;
    }
    const CardId id = add(c);
    of(id).mac = Mac(0x0200'0000'0000ULL | id.number);
    return id;
  }
  void route(MachineId m, const char* to, const char* via, CardId by = {}) {
    Route r;
    r.to = *parse_prefix(to);
    if (*via != '\0') r.via = *parse_address(via);
    r.card = by;
    for (Machine& machine : lab.machines)
      if (machine.id == m) machine.routes.push_back(r);
  }
  Card& of(CardId id) {
    for (Card& c : lab.cards)
      if (c.id == id) return c;
    throw std::out_of_range("card");
  }
  ReachAnswer ask(MachineId from, MachineId to, Transport t = Transport::icmp, bool full_size = false,
                  const char* target = "") const {
    const Index index(lab);
    const AddressesInUse addresses(index);
    Reach reach(index, addresses);
    ReachQuestion q;
    q.from = from;
    q.to = to;
    q.transport = t;
    q.full_size = full_size;
    if (*target != '\0') q.target = *parse_address(target);
    return reach.ask(q);
  }

 private:
  template <typename E>
  Id<E::kind> add(E e) {
    e.id.number = lab.facts.next_id++;
    list_of<E>(lab).push_back(e);
    return e.id;
  }
};

// a - first - middle (short) - last - b
struct Narrow : Wired {
  MachineId a = machine(), first = machine(), last = machine(), b = machine();
  Narrow() {
    const SegmentId left = segment(), middle = segment(1400), right = segment();
    card(a, left, {"10.0.1.10/24"});
    card(first, left, {"10.0.1.1/24"});
    card(first, middle, {"10.0.2.1/24"});
    card(last, middle, {"10.0.2.2/24"});
    card(last, right, {"10.0.3.1/24"});
    card(b, right, {"10.0.3.10/24"});
    route(a, "0.0.0.0/0", "10.0.1.1");
    route(first, "10.0.3.0/24", "10.0.2.2");
    route(last, "10.0.1.0/24", "10.0.2.1");
    route(b, "0.0.0.0/0", "10.0.3.1");
  }
};

// RFC 1191: the router says which size passes, and TCP goes on with it.
TEST(Walk, TcpLearnsTheSizeOfAShortLinkOnTheWay) {
  Narrow w;
  EXPECT_EQ(w.ask(w.a, w.b, Transport::tcp, true).verdict, Reached::reaches);
}

// Questions by one router, answers by another one that translates: an echo is let through, UDP is not known
// there and gets a new source, which nobody asked.
TEST(Walk, AnAnswerFromAnotherAddressIsNoneForUdp) {
  Wired w;
  const SegmentId left = w.segment(), right = w.segment();
  const MachineId a = w.machine(), there = w.machine(), back = w.machine(), b = w.machine();
  w.card(a, left, {"10.0.1.10/24"});
  w.card(there, left, {"10.0.1.1/24"});
  w.card(there, right, {"10.0.2.1/24"});
  w.of(w.card(back, left, {"10.0.1.2/24"})).translates = true;
  w.card(back, right, {"10.0.2.2/24"});
  w.card(b, right, {"10.0.2.10/24"});
  w.route(a, "0.0.0.0/0", "10.0.1.1");
  w.route(b, "0.0.0.0/0", "10.0.2.2");
  EXPECT_EQ(w.ask(a, b, Transport::icmp).verdict, Reached::reaches);
  EXPECT_EQ(w.ask(a, b, Transport::tcp).verdict, Reached::reaches);
  const ReachAnswer udp = w.ask(a, b, Transport::udp);
  EXPECT_EQ(udp.verdict, Reached::one_way);
  ASSERT_TRUE(udp.end);
  EXPECT_EQ(udp.end->what, Decision::other_source);
  EXPECT_EQ(udp.end->address, *parse_address("10.0.1.2"));
}

// A next hop is looked for among what is on link; a narrower route with a next hop of its own does not hide
// it.
TEST(Walk, ANextHopBehindAWiderLinkIsTaken) {
  Wired w;
  const SegmentId left = w.segment(), right = w.segment(), far = w.segment();
  const MachineId a = w.machine(), router = w.machine(), b = w.machine();
  w.card(a, left, {"10.0.3.1/24"});
  w.card(a, right, {"10.0.1.1/23"});
  w.card(router, right, {"10.0.1.3/23"});
  w.card(router, far, {"10.0.4.1/24"});
  w.card(b, far, {"10.0.4.10/24"});
  w.route(a, "10.0.1.0/24", "10.0.3.3");
  w.route(a, "10.0.4.0/24", "10.0.1.3");
  w.route(b, "0.0.0.0/0", "10.0.4.1");
  const ReachAnswer answer = w.ask(a, b);
  ASSERT_FALSE(answer.steps.empty());
  EXPECT_EQ(answer.steps.front().what, Decision::sends);
  EXPECT_EQ(answer.steps.front().address, *parse_address("10.0.1.3"));
}

// What goes out by a route without next hop bears the card's first address.
TEST(Walk, ARouteOnLinkUsesTheFirstAddress) {
  Wired w;
  const SegmentId s = w.segment();
  const MachineId a = w.machine(), b = w.machine();
  const CardId own = w.card(a, s, {"10.0.1.5/24", "10.0.9.5/24"});
  w.card(b, s, {"10.0.9.7/24"});
  EXPECT_EQ(w.ask(a, b).verdict, Reached::reaches);
  w.route(a, "10.0.9.0/25", "", own);
  EXPECT_EQ(w.ask(a, b).verdict, Reached::one_way) << "b knows no way to 10.0.1.5";
}

// The first that was set decides what an address is.
TEST(Walk, AnAddressThatWasABroadcastAddressBeforeAnswersNobody) {
  for (const bool before : {true, false}) {
    Wired w;
    const SegmentId s = w.segment(), other = w.segment();
    const MachineId a = w.machine(), b = w.machine();
    w.card(a, s, {"10.0.5.2/24"});
    if (before) w.card(b, other, {"10.0.5.1/28"});
    w.card(b, s, {"10.0.5.15/24"});
    if (!before) w.card(b, other, {"10.0.5.1/28"});
    EXPECT_EQ(w.ask(a, b, Transport::icmp, false, "10.0.5.15").verdict == Reached::does_not_reach, before);
  }
}

// IPv6 with two ways that are equal: an echo goes back by the card where it came in.
TEST(Walk, AnEchoGoesBackByItsCardWhereTwoWaysAreEqual) {
  Wired w;
  const SegmentId s = w.segment();
  const MachineId a = w.machine(), b = w.machine();
  w.card(a, s, {"fd00:1::1/64"});
  w.of(w.card(b, s, {"fd00:1::2/64"})).connected = false;
  w.card(b, s, {"fd00:1::3/64"});
  EXPECT_EQ(w.ask(a, b, Transport::icmp, false, "fd00:1::3").verdict, Reached::reaches);
}

struct TwoServers : Wired {
  SegmentId s = segment();
  MachineId one = machine(), two = machine(), a = machine(), b = machine();
  explicit TwoServers(const char* last_of_one) {
    serve(card(one, s, {"10.0.1.1/24"}), "10.0.1.100", last_of_one);
    serve(card(two, s, {"10.0.2.1/24"}), "10.0.2.100", "10.0.2.199");
    card(a, s, {"dhcp"});
    card(b, s, {"dhcp"});
  }
  void serve(CardId c, const char* first, const char* last) {
    of(c).dhcp = DhcpDuty::server;
    RangeRow& r = of(c).ranges.emplace_back();
    r.first = *parse_address(first);
    r.last = *parse_address(last);
  }
};

// Each may take the one or the other: they meet only where both take the same.
TEST(Walk, TwoCardsMayTakeDifferentServers) {
  TwoServers w("10.0.1.199");
  const ReachAnswer answer = w.ask(w.a, w.b);
  EXPECT_EQ(answer.verdict, Reached::unreliable);
  EXPECT_TRUE(answer.unsure_lease);
}

// A server that has nothing left says nothing (RFC 2131 4.3.1): the other one is taken.
TEST(Walk, AServerWithoutAddressesIsNoChoice) {
  TwoServers w("10.0.1.100");
  for (Card& c : w.lab.cards)
    if (c.machine == w.one) c.addresses.front().address = *parse_address("10.0.1.100");
  for (Card& c : w.lab.cards)
    if (c.machine == w.one) c.addresses.front().length = 24;
  EXPECT_EQ(w.ask(w.a, w.b).verdict, Reached::reaches);
}

} // namespace
} // namespace snug::test
