#include "tests/support/rule_world.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <set>

namespace snug::test {

namespace {

template <typename E>
Id<E::kind> add(Lab& lab, E e) {
  e.id.number = lab.facts.next_id++;
  list_of<E>(lab).push_back(std::move(e));
  return list_of<E>(lab).back().id;
}

template <typename E>
E& get(Lab& lab, Id<E::kind> id) {
  const E* e = find<E>(lab, id);
  return const_cast<E&>(*e);
}

Offer offer(std::string service) {
  Offer o;
  o.service = std::move(service);
  return o;
}

std::string text_of(const std::vector<AnyId>& ids) {
  std::string out;
  for (const AnyId id : ids) out += (out.empty() ? "" : " ") + to_text(id);
  return out;
}

std::multiset<std::string> errors_of(const Analysis& a) {
  std::multiset<std::string> out;
  for (const Finding& f : a.findings())
    if (f.severity == Severity::error) out.insert(std::string(f.rule->id) + " " + text_of(f.places));
  return out;
}

} // namespace

Address address(std::string_view text) { return parse_address(text).value(); }
Prefix prefix(std::string_view text) { return parse_prefix(text).value(); }
RangeRow range(std::string_view first, std::string_view last) {
  RangeRow r;
  r.first = address(first);
  r.last = address(last);
  return r;
}

Card& World::card(CardId id) { return get<Card>(lab, id); }
Segment& World::segment(SegmentId id) { return get<Segment>(lab, id); }
Machine& World::machine(MachineId id) { return get<Machine>(lab, id); }

SegmentId World::add_segment(std::string name, std::string_view prefix4) {
  Segment s;
  s.name = std::move(name);
  s.passes_other_macs = Known::yes;
  if (!prefix4.empty()) s.prefix4 = prefix(prefix4);
  return add(lab, std::move(s));
}

MachineId World::add_machine(std::string name, MachineId carrier) {
  Machine m;
  m.name = std::move(name);
  m.carrier = carrier;
  return add(lab, std::move(m));
}

CardId World::add_card(MachineId m, SegmentId s, std::string_view typed) {
  Card c;
  c.machine = m;
  c.segment = s;
  if (!typed.empty()) c.addresses.emplace_back().address = address(typed);
  return add(lab, std::move(c));
}

World::World() {
  lab.facts.uid = "00112233445566778899aabbccddeeff";
  lab.facts.local_prefix6 = prefix("fd12:3456:789a::/48");
  lab.numbering.block = prefix("172.22.0.0/16");
  lab.pc.resolves_lab_names = Known::yes;
  Lan house;
  house.name = "house LAN";
  house.medium = Medium::wired;
  house.prefix4 = prefix("192.168.40.0/24");
  house.gateway4 = address("192.168.40.1");
  house.has_dhcp = Known::yes;
  house.pool = {range("192.168.40.100", "192.168.40.199")};
  lan = add(lab, std::move(house));
  lane = add_segment("Lane", "");
  segment(lane).type = SegmentKind::bridged;
  segment(lane).lan = lan;
  deck = add_segment("Deck", "172.22.10.0/24");
  segment(deck).gateway4 = address("172.22.10.1");
  segment(deck).pc_socket = true;
  hold = add_segment("Hold", "172.22.20.0/24");
  crew = add_segment("Crew", "172.22.50.0/24");
  segment(crew).type = SegmentKind::nat;
  segment(crew).ranges = {range("172.22.50.100", "172.22.50.199")};
  pilot = add_machine("pilot");
  machine(pilot).offers = {offer("names"), offer("time"), offer("directory")};
  router = add_machine("router");
  rack = add_machine("rack");
  machine(rack).processors = 2;
  machine(rack).memory = 4096;
  machine(rack).expose_virtualization = true;
  guest = add_machine("guest", rack);
  desk = add_machine("desk");
  pilot_deck = add_card(pilot, deck, "172.22.10.10");
  router_deck = add_card(router, deck, "172.22.10.1");
  router_crew = add_card(router, crew, "172.22.50.3");
  card(router_deck).forwards4 = card(router_crew).forwards4 = true;
  rack_deck = add_card(rack, deck, "172.22.10.31");
  card(rack_deck).for_management = true;
  rack_hold = add_card(rack, hold);
  card(rack_hold).carries.emplace_back().segment = hold;
  guest_hold = add_card(guest, hold, "172.22.20.41");
  desk_deck = add_card(desk, deck, "172.22.10.12");
  desk_lane = add_card(desk, lane);
  card(desk_lane).addresses.emplace_back().kind = AddressKind::dhcp;
  card(desk_lane).published = false;
  Route out;
  out.to = prefix("0.0.0.0/0");
  out.via = address("172.22.10.1");
  out.card = desk_deck;
  machine(desk).routes = {out};
}

std::vector<std::string> places_of(const Lab& lab, std::string_view rule) {
  const Analysis a(lab);
  std::vector<std::string> out;
  for (const Finding& f : a.findings())
    if (f.rule->id == rule) out.push_back(text_of(f.places));
  return out;
}

void check_case(const RuleCase& rule_case) {
  SCOPED_TRACE(std::string(rule_case.rule));
  World world;
  ASSERT_NE(find_rule(rule_case.rule), nullptr);
  EXPECT_TRUE(places_of(world.lab, rule_case.rule).empty()) << "the healthy lab has it";
  const std::string wanted = text_of(rule_case.spoil(world));
  const Analysis before(world.lab);
  const Finding* finding = nullptr;
  for (const Finding& f : before.findings()) {
    if (f.rule->id != rule_case.rule) continue;
    EXPECT_EQ(finding, nullptr) << "twice: " << text_of(f.places);
    finding = &f;
  }
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(text_of(finding->places), wanted);
  EXPECT_EQ(finding->severity, rule_case.severity);
  EXPECT_EQ(english(finding->message).find('{'), std::string::npos) << english(finding->message);
  EXPECT_FALSE(english(finding->reason).empty());
  const auto fix = before.fix(*finding);
  EXPECT_EQ(fix.has_value(), rule_case.fixable);
  if (!fix) return;
  EXPECT_FALSE(english(fix->label).empty());
  Lab fixed = world.lab;
  const auto applied = apply(fixed, fix->edit);
  ASSERT_TRUE(applied) << english(applied.error());
  EXPECT_TRUE(places_of(fixed, rule_case.rule).empty()) << english(fix->label);
  const auto errors_before = errors_of(before), errors_after = errors_of(Analysis(fixed));
  EXPECT_TRUE(
      std::includes(errors_before.begin(), errors_before.end(), errors_after.begin(), errors_after.end()))
      << "the fix \"" << english(fix->label)
      << "\" brings a new error: " << (errors_after.empty() ? "" : *errors_after.begin());
}

} // namespace snug::test
