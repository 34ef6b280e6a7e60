#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/text/carry_text.h"
#include "core/text/promise_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

// Machines and the segments that they carry, as places, in order.
std::vector<std::pair<std::uint32_t, std::uint32_t>> carried_pairs(const NetworkFacts& facts) {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> out;
  out.reserve(facts.carried.size());
  for (const auto& [card, s] : facts.carried) out.emplace_back(facts.card_machine[card], s);
  const auto by_machine = [](const auto& a, const auto& b) { return a.first < b.first; };
  if (!std::is_sorted(out.begin(), out.end(), by_machine))
    std::stable_sort(out.begin(), out.end(), by_machine);
  for (auto own = out.begin(); own != out.end();) {
    const auto end = std::find_if(own, out.end(), [own](const auto& p) { return p.first != own->first; });
    std::sort(own, end);
    own = end;
  }
  return out;
}

// Names of a hypervisor's guests on a segment, at most three.
std::vector<std::string> guests_on(const Context& c, std::uint32_t machine, SegmentId s) {
  std::vector<std::string> names;
  for (const std::uint32_t g : c.index.guests_of(machine)) {
    const auto cards = c.index.cards_of(g);
    const auto here = [&](std::uint32_t card) { return is_on(c.lab.cards[card], s); };
    if (std::none_of(cards.begin(), cards.end(), here)) continue;
    names.push_back(names.size() < 3 ? c.name(c.lab.machines[g].id) : "…");
    if (names.size() > 3) break;
  }
  return names;
}

Finding not_carried(const Context& c, std::uint32_t h, std::uint32_t s) {
  const SegmentId id = c.lab.segments[s].id;
  const std::string name = c.name(c.lab.machines[h].id);
  const bool is_cut = cut_carrier(c, h, id) != kNowhere;
  return found(
      Severity::caution,
      say(is_cut ? text::carrier_cut : text::not_carried, name, guests_on(c, h, id), segment_name(c, s)),
      say(is_cut ? text::carrier_cut_why : text::not_carried_why, name, segment_name(c, s)),
      {c.lab.machines[h].id, id});
}

// Hypervisors and their pieces come in the order of the pairs.
void check_carried(const Context& c, std::vector<Finding>& out) {
  const auto carried = carried_pairs(c.addresses.facts());
  auto at = carried.begin();
  for (const std::uint32_t h : c.index.hypervisors())
    for (const std::uint32_t s : c.addresses.domains().pieces_in(h)) {
      while (at != carried.end() && *at < std::pair(h, s)) ++at;
      if (at != carried.end() && *at == std::pair(h, s)) continue;
      out.push_back(not_carried(c, h, s));
    }
}

std::optional<Fix> fix_carried(const Context& c, const Finding& f) {
  const std::uint32_t h = c.index.place(f.places[0]);
  const SegmentId s = c.lab.segments[c.index.place(f.places[1])].id;
  if (const std::uint32_t cut = cut_carrier(c, h, s); cut != kNowhere)
    return set_one(c, say(text::fix_connect, c.name(c.lab.cards[cut].id), c.name(s)), c.lab.cards[cut].id,
                   "connected", true);
  for (const std::uint32_t card : c.index.cards_of(h)) {
    const Card& before = c.lab.cards[card];
    const auto tag = std::find_if(before.trunk.begin(), before.trunk.end(),
                                  [s](const SegmentTag& t) { return t.segment == s; });
    if (!before.connected || (before.segment != s && tag == before.trunk.end())) continue;
    Card after = before;
    SegmentTag& row = after.carries.emplace_back();
    row.segment = s;
    row.vlan = before.segment == s ? 0 : tag->vlan;
    return change_to(say(text::fix_carry, card_name(c, card), c.name(s)), before, after);
  }
  return build_fix(c, say(text::fix_new_carrier, c.name(f.places[0]), c.name(s)), [&](EditBuilder& b) {
    Card card;
    card.machine = c.lab.machines[h].id;
    card.segment = s;
    card.carries.emplace_back().segment = s;
    b.add(std::move(card));
  });
}

bool one_uplink(const Card& a, const Card& b) {
  return !a.uplink_group.empty() && a.uplink_group == b.uplink_group;
}

// Calls report(segment, first card, later card) for segments that two cards of a machine carry.
template <typename Report>
void each_loop(const Context& c, Report report) {
  struct Carried {
    std::uint32_t machine;
    SegmentId segment;
    std::uint32_t card;
    auto operator<=>(const Carried&) const = default;
  };
  const auto pairs = carried_pairs(c.addresses.facts());
  if (std::adjacent_find(pairs.begin(), pairs.end()) == pairs.end()) return;
  std::vector<Carried> all;
  all.reserve(pairs.size());
  for (const auto& [card, s] : c.addresses.facts().carried)
    all.push_back({c.addresses.facts().card_machine[card], c.lab.segments[s].id, card});
  std::sort(all.begin(), all.end());
  for (std::size_t i = 1, first = 0; i < all.size(); ++i) {
    if (all[i].machine != all[first].machine || all[i].segment != all[first].segment) first = i;
    const std::uint32_t a = all[first].card, b = all[i].card;
    if (a != b && !one_uplink(c.lab.cards[a], c.lab.cards[b])) report(all[i].segment, a, b);
  }
}

void check_loop(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_loop(c, [&](SegmentId s, std::uint32_t a, std::uint32_t b) {
    out.push_back(found(Severity::error, say(text::carry_loop, machine_name(c, a), c.name(s)),
                        say(text::carry_loop_why), {c.lab.cards[a].id, c.lab.cards[b].id, s}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_loop(const Context& c, const Finding& f) {
  const std::uint32_t first = c.index.place(f.places[0]), later = c.index.place(f.places[1]);
  const Card& before = c.lab.cards[later];
  Card after = before;
  std::erase_if(after.carries, [&](const SegmentTag& t) { return AnyId(t.segment) == f.places[2]; });
  return change_to(say(text::fix_one_carrier, card_name(c, first), c.name(f.places[2])), before, after);
}

// Calls report(card, segment) for carrying cards and segments that `may_matter` and guests inside are on.
template <typename MayMatter, typename Report>
void each_carried(const Context& c, MayMatter may_matter, Report report) {
  for (const auto& [card, s] : c.addresses.facts().carried) {
    const std::uint32_t m = c.addresses.facts().card_machine[card];
    if (may_matter(card, s) && c.addresses.domains().inside(m, s) != kNowhere) report(card, s);
  }
}

bool is_wireless(const Context& c, std::uint32_t s) {
  const Segment& segment = c.lab.segments[s];
  const Lan* lan = segment.type == SegmentKind::bridged ? c.index.lan(segment.lan) : nullptr;
  return lan && lan->medium == Medium::wireless;
}

void check_macs(const Context& c, Known state, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  const bool unknown = state == Known::unknown;
  const auto may_matter = [&](std::uint32_t, std::uint32_t s) {
    return c.lab.segments[s].passes_other_macs == state && (!unknown || !is_wireless(c, s));
  };
  each_carried(c, may_matter, [&](std::uint32_t card, std::uint32_t s) {
    const std::string segment = segment_name(c, s), machine = machine_name(c, card);
    out.push_back(found(unknown ? Severity::note : Severity::error,
                        say(unknown ? text::macs_unknown : text::macs_not_passed, segment, machine),
                        say(unknown ? text::macs_unknown_why : text::macs_not_passed_why),
                        {c.lab.cards[card].id, c.lab.segments[s].id}));
  });
  drop_repeated(out, before);
}

void check_macs_unknown(const Context& c, std::vector<Finding>& out) { check_macs(c, Known::unknown, out); }
void check_macs_no(const Context& c, std::vector<Finding>& out) { check_macs(c, Known::no, out); }

std::optional<Fix> fix_macs_no(const Context& c, const Finding& f) {
  const Segment& before = c.lab.segments[c.index.place(f.places[1])];
  Segment after = before;
  after.passes_other_macs = Known::yes;
  return change_to(say(text::fix_pass_macs, c.name(before.id)), before, after);
}

void check_own_mac(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  if ((c.addresses.facts().any_card & CardMark::own_mac_only) == 0) return;
  const auto may_matter = [&](std::uint32_t card, std::uint32_t) { return c.lab.cards[card].own_mac_only; };
  each_carried(c, may_matter, [&](std::uint32_t card, std::uint32_t) {
    out.push_back(found(Severity::error, say(text::own_mac_only, card_name(c, card)),
                        say(text::macs_not_passed_why), {c.lab.cards[card].id}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_own_mac(const Context& c, const Finding& f) {
  const std::uint32_t card = c.index.place(f.places[0]);
  Card after = c.lab.cards[card];
  after.own_mac_only = false;
  return change_to(say(text::fix_pass_macs, card_name(c, card)), c.lab.cards[card], after);
}

constexpr std::array kRules{
    Rule{"segment-not-carried", Topic::networks, Severity::caution,
         "Inner guests are on a segment that no card of their hypervisor carries", kPracticeSource,
         check_carried, fix_carried},
    Rule{"loop", Topic::networks, Severity::error, "Two cards of a hypervisor carry one segment",
         "IEEE 802.1D (a bridged network has no loops), from memory", check_loop, fix_loop},
    Rule{"macs-unknown", Topic::networks, Severity::note,
         "Nobody looked whether a segment passes inner guests' MACs", kPracticeSource, check_macs_unknown},
    Rule{"macs-not-passed", Topic::networks, Severity::error, "A segment does not pass inner guests' MACs",
         kPracticeSource, check_macs_no, fix_macs_no},
    Rule{"own-mac-only", Topic::networks, Severity::error, "A carrying card sends only its own MAC",
         kPracticeSource, check_own_mac, fix_own_mac},
};

} // namespace

std::span<const Rule> carry_rules() { return kRules; }

} // namespace snug
