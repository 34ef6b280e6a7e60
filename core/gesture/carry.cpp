#include "core/gesture/carry.h"

#include "core/gesture/fill.h"
#include "core/text/hand_text.h"

#include <algorithm>

namespace snug {

namespace {

constexpr std::int32_t kVlanStep = 10; // common practice, no published source
constexpr std::int32_t kMostVlan = 4094;

auto names(SegmentId s) {
  return [s](const SegmentTag& t) { return t.segment == s; };
}
bool carries(const Card& c, SegmentId s) { return std::any_of(c.carries.begin(), c.carries.end(), names(s)); }

template <typename Each>
void each_tag(const Lab& lab, Each each) {
  for (const Card& c : lab.cards)
    for (const auto* list : {&c.trunk, &c.carries})
      for (const SegmentTag& t : *list) each(c, t);
}

bool has_untagged(const Card& c) {
  const auto bare = [](const SegmentTag& t) { return t.vlan == 0; };
  return c.segment || std::any_of(c.trunk.begin(), c.trunk.end(), bare) ||
         std::any_of(c.carries.begin(), c.carries.end(), bare);
}

std::int32_t vlan_for(const Lab& lab, const Card& card, SegmentId segment) {
  if (card.segment == segment || !has_untagged(card)) return 0;
  for (const SegmentTag& t : card.trunk)
    if (t.segment == segment) return t.vlan;
  if (const std::int32_t own = find<Segment>(lab, segment)->vlan; own != 0) return own;
  std::int32_t elsewhere = 0;
  std::vector<std::int32_t> used;
  each_tag(lab, [&](const Card&, const SegmentTag& t) {
    if (t.segment == segment && elsewhere == 0) elsewhere = t.vlan;
    used.push_back(t.vlan);
  });
  if (elsewhere != 0) return elsewhere;
  for (const Segment& s : lab.segments) used.push_back(s.vlan);
  for (std::int32_t id = kVlanStep; id <= kMostVlan; id += kVlanStep)
    if (std::find(used.begin(), used.end(), id) == used.end()) return id;
  return 0;
}

} // namespace

bool is_hollow(const Card& card, SegmentId segment) {
  return carries(card, segment) && (card.segment != segment || only_carries(card));
}

Result<Edit> carry(const Lab& lab, CardId id, SegmentId segment) {
  const Index index(lab);
  const Card& card = *index.card(id);
  const std::string name = name_of(lab, id);
  const std::uint32_t machine = index.place(card.machine);
  if (machine == kNowhere || !index.is_hypervisor(machine))
    return fail(text::hand_no_guests, name_of(lab, card.machine));
  if (carries(card, segment)) return fail(text::hand_carries, name, name_of(lab, segment));
  Lab after = lab;
  Card& changed = after.cards[index.place(id)];
  SegmentTag& tag = changed.carries.emplace_back();
  tag.segment = segment;
  tag.vlan = vlan_for(lab, card, segment);
  if (!card.segment && card.trunk.empty() && card.carries.empty()) changed.segment = segment;
  return detail::edit_between(lab, after, say(text::hand_carry, name, name_of(lab, segment)));
}

Result<Edit> carry_no_more(const Lab& lab, CardId id, SegmentId segment) {
  const Index index(lab);
  const Card& card = *index.card(id);
  if (!carries(card, segment)) return fail(text::hand_carries_not, name_of(lab, id), name_of(lab, segment));
  Lab after = lab;
  Card& changed = after.cards[index.place(id)];
  if (card.segment == segment && is_hollow(card, segment) && card.addresses.empty()) changed.segment = {};
  std::erase_if(changed.carries, names(segment));
  return detail::edit_between(lab, after,
                              say(text::hand_carry_no_more, name_of(lab, id), name_of(lab, segment)));
}

namespace {

bool is_inside(const Index& index, std::uint32_t machine, std::uint32_t carrier) {
  for (std::uint32_t at = index.carrier_of(machine); at != kNowhere; at = index.carrier_of(at))
    if (at == carrier) return true;
  return false;
}

// Machines with a card on a segment that meets its network outside of all hypervisors, inside one or not.
std::vector<std::string> joined(const Analysis& a, std::uint32_t carrier, std::uint32_t segment,
                                bool inside) {
  const Index& index = a.index();
  const Domains& domains = a.addresses().domains();
  std::vector<std::string> out;
  for (std::uint32_t c = 0; c < a.lab().cards.size(); ++c) {
    if (index.segment_of_card(c) != segment || domains.of_card(c) != domains.outside(segment)) continue;
    const std::uint32_t m = index.machine_of_card(c);
    if (m == carrier || is_inside(index, m, carrier) != inside || only_carries(a.lab().cards[c])) continue;
    const std::string name = name_of(a.lab(), a.lab().machines[m].id);
    if (std::find(out.begin(), out.end(), name) == out.end()) out.push_back(name);
  }
  return out;
}

std::vector<std::string> without(std::vector<std::string> all, const std::vector<std::string>& some) {
  std::erase_if(all,
                [&](const std::string& s) { return std::find(some.begin(), some.end(), s) != some.end(); });
  return all;
}

std::vector<std::string> few(std::vector<std::string> names) {
  constexpr std::size_t kMost = 4;
  if (names.size() <= kMost) return names;
  names.resize(kMost);
  names.emplace_back("…");
  return names;
}

} // namespace

std::vector<Message> carriage_says(const Analysis& now, const Analysis& then, CardId id, SegmentId segment) {
  const Card& card = *then.index().card(id);
  const std::uint32_t carrier = then.index().place(card.machine), s = then.index().place(segment);
  const std::string on = name_of(then.lab(), segment);
  std::vector<Message> out;
  const auto tag = std::find_if(card.carries.begin(), card.carries.end(), names(segment));
  if (tag != card.carries.end() && tag->vlan != 0)
    out.push_back(say(text::hand_with_vlan, on, Count{tag->vlan}));
  // Frames of inner guests are dropped there: the finding says so.
  if (then.lab().segments[s].passes_other_macs == Known::no) return out;
  const auto before = joined(now, carrier, s, true), after = joined(then, carrier, s, true);
  const auto others = few(joined(then, carrier, s, false));
  if (const auto come = few(without(after, before)); !come.empty())
    out.push_back(others.empty() ? say(text::hand_joins, come, on)
                                 : say(text::hand_reaches, come, on, others));
  if (const auto go = few(without(before, after)); !go.empty())
    out.push_back(say(text::hand_alone, go, on, name_of(then.lab(), card.machine)));
  if (after.empty() && before.empty())
    out.push_back(say(text::hand_nobody, name_of(then.lab(), card.machine), on));
  return out;
}

} // namespace snug
