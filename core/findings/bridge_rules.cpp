#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/findings/tools.h"
#include "core/text/extras_text.h"
#include "core/text/segment_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

template <typename Report>
void each_bridged(const Context& c, Report report) {
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s)
    if (c.lab.segments[s].type == SegmentKind::bridged) report(s, c.index.lan(c.lab.segments[s].lan));
}

void check_no_lan(const Context& c, std::vector<Finding>& out) {
  each_bridged(c, [&](std::uint32_t s, const Lan* lan) {
    if (!lan)
      out.push_back(found(Severity::error, say(text::bridged_no_lan, segment_name(c, s)),
                          say(text::bridged_no_lan_why), {c.lab.segments[s].id}));
  });
}

std::optional<Fix> fix_no_lan(const Context& c, const Finding& f) {
  if (c.lab.lans.empty()) {
    Lan lan;
    lan.name = english(say(text::extras_lan, Count{1}));
    return build_fix(c, say(text::fix_add_lan, c.name(f.places[0])), [&](EditBuilder& b) {
      const LanId id = b.add(lan);
      b.set(f.places[0], "lan", AnyId(id));
    });
  }
  if (c.lab.lans.size() != 1) return std::nullopt;
  const Segment& s = c.lab.segments[c.index.place(f.places[0])];
  Segment after = s;
  after.lan = c.lab.lans[0].id;
  return change_to(say(text::fix_bridge_to, c.name(s.id), c.name(after.lan)), s, after);
}

template <typename T>
bool differ(const std::optional<T>& own, const std::optional<T>& lan) {
  return own && lan && *own != *lan;
}

void check_prefix(const Context& c, std::vector<Finding>& out) {
  each_bridged(c, [&](std::uint32_t s, const Lan* lan) {
    const Segment& segment = c.lab.segments[s];
    if (!lan) return;
    const bool four = differ(segment.prefix4, lan->prefix4);
    if (!four && !differ(segment.prefix6, lan->prefix6)) return;
    out.push_back(found(Severity::error,
                        say(text::bridged_prefix, segment_name(c, s),
                            to_text(four ? *segment.prefix4 : *segment.prefix6), c.name(lan->id),
                            to_text(four ? *lan->prefix4 : *lan->prefix6)),
                        say(text::bridged_prefix_why), {segment.id, lan->id}));
  });
}

std::optional<Fix> fix_prefix(const Context& c, const Finding& f) {
  const Segment& s = c.lab.segments[c.index.place(f.places[0])];
  const Lan& lan = c.lab.lans[c.index.place(f.places[1])];
  Segment after = s;
  if (differ(s.prefix4, lan.prefix4)) after.prefix4.reset();
  if (differ(s.prefix6, lan.prefix6)) after.prefix6.reset();
  return change_to(say(text::fix_lan_prefix, c.name(lan.id)), s, after);
}

// Hypervisors directly on the PC whose guests meet the LAN.
void check_wireless(const Context& c, std::vector<Finding>& out) {
  each_bridged(c, [&](std::uint32_t s, const Lan* lan) {
    if (!lan || lan->medium != Medium::wireless) return;
    for (const std::uint32_t h : c.index.hypervisors()) {
      const bool meets = c.addresses.domains().inside(h, s) == c.addresses.domains().outside(s);
      if (c.index.carrier_of(h) != kNowhere || !meets) continue;
      const AnyId id = c.lab.machines[h].id;
      out.push_back(found(Severity::error,
                          say(text::bridged_wireless, c.name(id), segment_name(c, s), c.name(lan->id)),
                          say(text::bridged_wireless_why), {id, c.lab.segments[s].id}));
    }
  });
}

// Cards that send into each network outside: those that only carry send nothing of their own.
std::vector<std::int64_t> senders(const Context& c) {
  std::vector<std::int64_t> count(c.addresses.domains().count(), 0);
  const NetworkFacts& facts = c.addresses.facts();
  for (std::uint32_t card = 0; card < facts.card_marks.size(); ++card) {
    if ((facts.card_marks[card] & CardMark::only_carries) != 0) continue;
    if (const std::uint32_t d = c.addresses.domains().of_card(card); d != kNowhere) ++count[d];
    if ((facts.card_marks[card] & CardMark::trunk) == 0) continue;
    const std::uint32_t m = facts.card_machine[card];
    for (const SegmentTag& t : c.lab.cards[card].trunk)
      if (const std::uint32_t s = c.index.place(t.segment); s != kNowhere && m != kNowhere)
        if (const std::uint32_t d = c.addresses.domains().inside(c.index.carrier_of(m), s); d != kNowhere)
          ++count[d];
  }
  return count;
}

void check_wired(const Context& c, std::vector<Finding>& out) {
  std::vector<std::int64_t> count;
  each_bridged(c, [&](std::uint32_t s, const Lan* lan) {
    if (!lan || lan->medium != Medium::wired) return;
    if (count.empty()) count = senders(c);
    const std::int64_t n = count[c.addresses.domains().outside(s)];
    if (n > 0)
      out.push_back(found(Severity::note,
                          say(text::bridged_wired, segment_name(c, s), Count{n}, c.name(lan->id)),
                          say(text::bridged_wired_why), {c.lab.segments[s].id}));
  });
}

constexpr std::array kRules{
    Rule{"bridged-no-lan", Topic::networks, Severity::error, "A bridged segment without a LAN",
         kPracticeSource, check_no_lan, fix_no_lan},
    Rule{"bridged-prefix", Topic::networks, Severity::error,
         "A bridged segment has another prefix than its LAN", "RFC 4632", check_prefix, fix_prefix},
    Rule{"bridged-wireless", Topic::networks, Severity::error, "Inner guests on a wireless LAN",
         "IEEE 802.11 (a station sends with its own address), from memory", check_wireless},
    Rule{"bridged-wired", Topic::networks, Severity::note, "How many MACs a wall socket sees",
         kPracticeSource, check_wired},
};

} // namespace

std::span<const Rule> bridge_rules() { return kRules; }

} // namespace snug
