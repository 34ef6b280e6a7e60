#include "tests/support/told.h"

namespace snug::test {
namespace {

TEST(Explain, AnInnerGuestReachesOutsideItsHypervisorOnlyWhereItsSegmentIsCarried) {
  World w;
  const MachineId store = w.add_machine("store");
  w.add_card(store, w.hold, "172.22.20.77");
  EXPECT_EQ(ask(w.lab, between(w.guest, store)).verdict, Reached::reaches);
  w.card(w.rack_hold).carries.clear();
  const Told t = ask(w.lab, between(w.guest, store));
  EXPECT_EQ(t.verdict, Reached::does_not_reach);
  EXPECT_EQ(t.id, "reach-island");
  EXPECT_NE(t.sentence.find("carry Hold"), std::string::npos) << t.sentence;
}

// The hypervisor's own end sits on the switch inside, which its guests keep up.
TEST(Explain, AnUplinkWithoutCableCutsOffWhatIsOutsideOnly) {
  World w;
  w.add_card(w.add_machine("store"), w.hold, "172.22.20.77");
  const MachineId store = w.lab.machines.back().id;
  const MachineId mate = w.add_machine("mate", w.rack);
  w.add_card(mate, w.hold, "172.22.20.42");
  w.card(w.rack_hold).addresses.emplace_back().address = address("172.22.20.31");
  w.card(w.rack_hold).connected = false;
  for (const MachineId inside : {w.guest, mate}) {
    EXPECT_EQ(ask(w.lab, between(inside, w.rack)).verdict, Reached::reaches);
    EXPECT_EQ(ask(w.lab, between(w.rack, inside)).verdict, Reached::reaches);
  }
  for (const auto& [from, to] :
       {std::pair(w.guest, store), {store, w.guest}, {w.rack, store}, {store, w.rack}}) {
    const Told t = ask(w.lab, between(from, to));
    EXPECT_EQ(t.verdict, Reached::does_not_reach);
    EXPECT_EQ(t.id, "reach-uplink-cut") << t.sentence;
  }
  EXPECT_NE(
      ask(w.lab, between(w.guest, store)).sentence.find("carries Hold out of rack, but is not connected"),
      std::string::npos);
}

// Nobody is plugged in: the address is there all the same, its own network is not.
TEST(Explain, ASwitchWithoutCarrierIsAsGoodAsACardWithoutOne) {
  World w;
  w.card(w.rack_hold).addresses.emplace_back().address = address("172.22.20.31");
  w.card(w.rack_hold).connected = false;
  Exercise e;
  e.id.number = w.lab.facts.next_id++;
  e.on = {w.rack, w.desk};
  w.lab.exercises.push_back(e);
  Route& r = w.machine(w.desk).routes.emplace_back();
  r.to = prefix("172.22.20.0/24");
  r.via = address("172.22.10.31");
  const Told t = ask(w.lab, between(w.rack, w.guest), e.id);
  EXPECT_EQ(t.id, "reach-disconnected") << t.sentence;
  ReachQuestion q = between(w.desk, w.rack);
  q.target = address("172.22.20.31");
  EXPECT_EQ(ask(w.lab, q, e.id).verdict, Reached::reaches) << ask(w.lab, q, e.id).sentence;
}

struct Inside {
  World w;
  MachineId store = w.add_machine("store");
  Inside() { w.add_card(store, w.hold, "172.22.20.77"); }
  Told told(AnyId from, AnyId to) const { return ask(w.lab, between(from, to)); }
};

TEST(Explain, OnlyItsOwnMacPassesAHypervisorsCard) {
  Inside i;
  i.w.card(i.w.rack_hold).own_mac_only = true;
  for (const Told& t : {i.told(i.w.guest, i.store), i.told(i.store, i.w.guest)}) {
    EXPECT_EQ(t.id, "reach-other-macs") << t.sentence;
    EXPECT_TRUE(
        t.sentence.starts_with("rack card 2 sends only its own MAC, so nothing of guest gets out of rack"))
        << t.sentence;
  }
}

TEST(Explain, ASegmentThatDoesNotPassOtherMacsIsNamed) {
  Inside i;
  i.w.segment(i.w.hold).passes_other_macs = Known::no;
  const Told t = i.told(i.w.guest, i.store);
  EXPECT_EQ(t.id, "reach-segment-macs") << t.sentence;
  EXPECT_NE(t.sentence.find("Let Hold pass other MACs"), std::string::npos) << t.sentence;
}

// No setting of a card helps there, so it is told first; also where only the lease did not come.
TEST(Explain, AWirelessLanTakesNoFramesOfGuestsInside) {
  World w;
  w.its_lan().medium = Medium::wireless;
  w.card(w.rack_hold).own_mac_only = true;
  w.card(w.rack_hold).segment = w.card(w.guest_hold).segment = w.lane;
  w.card(w.rack_hold).carries.front().segment = w.lane;
  CardAddress& row = w.card(w.guest_hold).addresses.front();
  row.address = address("192.168.40.77");
  Route& r = w.machine(w.guest).routes.emplace_back();
  r.via = address("192.168.40.1");
  EXPECT_EQ(ask(w.lab, between(w.guest, kOutside)).id, "reach-wireless");
  w.machine(w.guest).routes.clear();
  row.address.reset();
  row.kind = AddressKind::dhcp;
  const Told t = ask(w.lab, between(w.guest, kOutside));
  EXPECT_EQ(t.id, "reach-wireless") << t.sentence;
  EXPECT_NE(t.sentence.find("nothing of guest"), std::string::npos) << t.sentence;
  EXPECT_EQ(ask(w.lab, between(w.pilot, w.guest)).id, "reach-wireless");
}

} // namespace
} // namespace snug::test
