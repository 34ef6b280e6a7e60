#include "core/reach/promises.h"
#include "tests/support/told.h"

namespace snug::test {
namespace {

// web is behind Crew's translator, with port 8080 outside led to its port 80.
struct Web : World {
  MachineId web = add_machine("web");
  CardId web_crew = add_card(web, crew, "172.22.50.30");
  Web() {
    Route r;
    r.via = address("172.22.50.1");
    machine(web).routes = {r};
    Offer o;
    o.service = "web";
    o.port = 80;
    machine(web).offers = {o};
    PortForward f;
    f.port = 8080;
    f.machine = web;
    f.to_port = 80;
    segment(crew).forwards = {f};
  }
  ReachQuestion question(AnyId from, std::int32_t port = 80) const {
    ReachQuestion q = between(from, web);
    q.transport = Transport::tcp;
    q.port = port;
    return q;
  }
  Promise promise(AnyId from, PromiseKind kind, std::int32_t port) const {
    Promise p;
    p.from = from;
    p.to = web;
    p.must = kind;
    if (port != 0) p.transport = Transport::tcp;
    p.port = port;
    return p;
  }
};

bool is_kept(const Lab& lab, const Promise& p) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  Reach reach(index, addresses);
  const Judged j = judge(reach, index, p);
  EXPECT_TRUE(j.counts);
  return j.kept;
}

TEST(Forwards, AServiceIsReachedThroughTheTranslator) {
  const Web w;
  const Told near = ask(w.lab, w.question(w.lan)), far = ask(w.lab, w.question(kOutside));
  EXPECT_EQ(near.verdict, Reached::reaches) << near.sentence;
  EXPECT_EQ(near.id, "reach-forwarded");
  EXPECT_NE(near.sentence.find("by port 8080 of the PC"), std::string::npos) << near.sentence;
  EXPECT_EQ(far.verdict, Reached::reaches) << far.sentence;
  EXPECT_EQ(far.id, "reach-forwarded-twice");
  EXPECT_NE(far.sentence.find("if house LAN passes that port on"), std::string::npos) << far.sentence;
  EXPECT_EQ(ask(w.lab, w.question(w.desk)).id, "reach-forwarded");
  EXPECT_EQ(ask(w.lab, w.question(w.router)).id, "reach-ok") << "a neighbour needs no forward";
}

TEST(Forwards, TheWayTellsWhichPortWasUsed) {
  const Web w;
  const Index index(w.lab);
  const AddressesInUse addresses(index);
  Reach reach(index, addresses);
  const ReachAnswer a = reach.ask(w.question(w.lan));
  EXPECT_EQ(reach.verdict(w.question(w.lan)), Reached::reaches);
  int redirected = 0;
  for (const ReachStep& s : a.steps) {
    if (s.what != Decision::redirects) continue;
    ++redirected;
    EXPECT_EQ(s.node, AnyId(w.crew));
    EXPECT_EQ(s.service, 8080);
    EXPECT_EQ(s.address, address("172.22.50.30"));
    EXPECT_FALSE(s.back);
  }
  EXPECT_EQ(redirected, 1);
}

TEST(Forwards, OnlyWhatTheyNameGetsIn) {
  Web w;
  EXPECT_EQ(ask(w.lab, w.question(w.lan, 443)).verdict, Reached::does_not_reach);
  EXPECT_EQ(ask(w.lab, between(w.lan, w.web)).id, "reach-behind");
  ReachQuestion udp = w.question(w.lan);
  udp.transport = Transport::udp;
  EXPECT_EQ(ask(w.lab, udp).verdict, Reached::does_not_reach);
  w.machine(w.web).routes.clear();
  EXPECT_EQ(ask(w.lab, w.question(w.lan)).verdict, Reached::one_way);
  w.machine(w.web).offers.clear();
  w.segment(w.crew).forwards.front().machine = w.pilot; // has no address there
  EXPECT_EQ(ask(w.lab, w.question(w.lan)).verdict, Reached::does_not_reach);
}

TEST(Forwards, PromisesKnowThem) {
  Web w;
  EXPECT_TRUE(is_kept(w.lab, w.promise(kOutside, PromiseKind::reach, 80)));
  EXPECT_FALSE(is_kept(w.lab, w.promise(kOutside, PromiseKind::never, 80)));
  EXPECT_FALSE(is_kept(w.lab, w.promise(kOutside, PromiseKind::never, 0)));
  EXPECT_TRUE(is_kept(w.lab, w.promise(kOutside, PromiseKind::never, 443)));
  w.machine(w.web).offers.clear();
  EXPECT_FALSE(is_kept(w.lab, w.promise(kOutside, PromiseKind::never, 0))) << "it arrives all the same";
  w.segment(w.crew).forwards.clear();
  EXPECT_TRUE(is_kept(w.lab, w.promise(kOutside, PromiseKind::never, 0)));
}

// Two that differ in nothing but a forward are not asked for as one.
TEST(Forwards, WhoHasOneIsAClassOfItsOwn) {
  Web w;
  const MachineId twin = w.add_machine("twin");
  w.add_card(twin, w.crew, "172.22.50.31");
  w.machine(twin).routes = w.machine(w.web).routes;
  const auto alike = [&] {
    const Index index(w.lab);
    const AddressesInUse addresses(index);
    Reach reach(index, addresses);
    const ReachNetwork& n = reach.network();
    return reach.classes().of(n.node_of(w.web)) == reach.classes().of(n.node_of(twin));
  };
  EXPECT_FALSE(alike());
  w.segment(w.crew).forwards.clear();
  EXPECT_TRUE(alike());
}

} // namespace
} // namespace snug::test
