#pragma once
// A small healthy lab that tests of rules about networks, addresses, names and time spoil in one place each.

#include "core/analyse/analyse.h"

#include <functional>
#include <string>
#include <vector>

namespace snug::test {

struct World {
  World();
  Lab lab;
  LanId lan;                        // wired, 192.168.40.0/24, DHCP .100 to .199
  SegmentId lane, deck, hold, crew; // bridged to lan; 172.22.10.0/24; 172.22.20.0/24; NAT 172.22.50.0/24
  MachineId pilot, router, rack, guest, desk; // guest runs inside rack
  CardId pilot_deck, router_deck, router_crew, rack_deck, rack_hold, guest_hold, desk_deck, desk_lane;

  Card& card(CardId);
  Segment& segment(SegmentId);
  Machine& machine(MachineId);
  Lan& its_lan() { return lab.lans.front(); }
  SegmentId add_segment(std::string name, std::string_view prefix4);
  MachineId add_machine(std::string name, MachineId carrier = {});
  // With a typed address unless it is empty.
  CardId add_card(MachineId, SegmentId, std::string_view address = {});
};

Address address(std::string_view);
Prefix prefix(std::string_view);
RangeRow range(std::string_view first, std::string_view last);

// One spoiled lab: `spoil` returns the places that the rule must report, in order.
struct RuleCase {
  std::string_view rule;
  Severity severity = Severity::error;
  bool fixable = false;
  std::function<std::vector<AnyId>(World&)> spoil;
};
// The healthy lab does not have the finding, the spoiled one has it exactly once with these places; where
// `fixable`, the fix takes it away and brings no new error.
void check_case(const RuleCase&);
// Findings of a rule: places as text ("c3 c8"), in order.
std::vector<std::string> places_of(const Lab&, std::string_view rule);

} // namespace snug::test
