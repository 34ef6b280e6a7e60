#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/net/limits.h"
#include "core/text/carry_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

struct Tag {
  std::int32_t vlan = 0;
  SegmentId segment;
  friend auto operator<=>(const Tag&, const Tag&) = default;
};

std::vector<Tag> tags_of(const Card& card) {
  std::vector<Tag> tags;
  if (card.segment) tags.push_back({0, card.segment});
  for (const auto* rows : {&card.trunk, &card.carries})
    for (const SegmentTag& t : *rows) tags.push_back({t.vlan, t.segment});
  std::sort(tags.begin(), tags.end());
  tags.erase(std::unique(tags.begin(), tags.end()), tags.end());
  return tags;
}

// The others have one segment, without VLAN id.
template <typename Report>
void each_tagged(const Context& c, Report report) {
  c.addresses.facts().each_card(CardMark::mixed_tags, report);
}

void check_tags(const Context& c, bool untagged, std::vector<Finding>& out) {
  each_tagged(c, [&](std::uint32_t card) {
    const std::vector<Tag> tags = tags_of(c.lab.cards[card]);
    const auto twice = std::adjacent_find(tags.begin(), tags.end(), [&](const Tag& a, const Tag& b) {
      return a.vlan == b.vlan && (a.vlan == 0) == untagged;
    });
    if (twice == tags.end()) return;
    const std::string one = c.name(twice->segment), other = c.name((twice + 1)->segment);
    out.push_back(
        found(Severity::error,
              untagged ? say(text::untagged_twice, card_name(c, card), one, other)
                       : say(text::vlan_twice, card_name(c, card), std::to_string(twice->vlan), one, other),
              say(untagged ? text::untagged_twice_why : text::vlan_twice_why), {c.lab.cards[card].id}));
  });
}

void check_untagged(const Context& c, std::vector<Finding>& out) { check_tags(c, true, out); }
void check_vlan(const Context& c, std::vector<Finding>& out) { check_tags(c, false, out); }

bool differs(const Segment& s, std::int32_t vlan) { return s.vlan != 0 && vlan != 0 && s.vlan != vlan; }

void check_vlan_differs(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_tagged(c, [&](std::uint32_t card) {
    for (const Tag& t : tags_of(c.lab.cards[card])) {
      const Segment* s = c.index.segment(t.segment);
      if (!s || !differs(*s, t.vlan)) continue;
      out.push_back(found(Severity::caution,
                          say(text::vlan_differs, card_name(c, card), c.name(s->id), std::to_string(t.vlan),
                              std::to_string(s->vlan)),
                          say(text::vlan_differs_why), {c.lab.cards[card].id, s->id}));
    }
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_vlan_differs(const Context& c, const Finding& f) {
  const std::uint32_t card = c.index.place(f.places[0]);
  const Segment& s = c.lab.segments[c.index.place(f.places[1])];
  const std::vector<Tag> now = tags_of(c.lab.cards[card]);
  if (std::any_of(now.begin(), now.end(),
                  [&s](const Tag& t) { return t.vlan == s.vlan && t.segment != s.id; }))
    return std::nullopt;
  Card after = c.lab.cards[card];
  for (auto* rows : {&after.trunk, &after.carries})
    for (SegmentTag& t : *rows)
      if (t.segment == s.id && differs(s, t.vlan)) t.vlan = s.vlan;
  return change_to(say(text::fix_use_vlan, std::to_string(s.vlan), c.name(s.id)), c.lab.cards[card], after);
}

// Segments of a card, by place: its own and its trunk's.
std::vector<std::uint32_t> segments_of(const Context& c, std::uint32_t card) {
  std::vector<std::uint32_t> out;
  for (const Tag& t : tags_of(c.lab.cards[card]))
    if (const std::uint32_t s = c.index.place(t.segment); s != kNowhere) out.push_back(s);
  return out;
}

template <typename Report>
void each_own_mtu(const Context& c, Report report) {
  c.addresses.facts().each_card(CardMark::own_mtu, [&](std::uint32_t card) {
    for (const std::uint32_t s : segments_of(c, card)) report(card, s, *c.lab.cards[card].mtu);
  });
}

Message mtu_message(const Context& c, const Template& t, std::uint32_t card, std::uint32_t s) {
  return say(t, card_name(c, card), std::to_string(*c.lab.cards[card].mtu), segment_name(c, s),
             std::to_string(c.lab.segments[s].mtu));
}

void check_mtu_over(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_own_mtu(c, [&](std::uint32_t card, std::uint32_t s, std::int32_t mtu) {
    if (mtu > c.lab.segments[s].mtu)
      out.push_back(found(Severity::error, mtu_message(c, text::mtu_over, card, s), say(text::mtu_over_why),
                          {c.lab.cards[card].id, c.lab.segments[s].id}));
  });
  drop_repeated(out, before);
}

void check_mtu_under(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_own_mtu(c, [&](std::uint32_t card, std::uint32_t s, std::int32_t mtu) {
    if (c.lab.segments[s].mtu > kEthernetMtu && mtu < c.lab.segments[s].mtu)
      out.push_back(found(Severity::caution, mtu_message(c, text::mtu_under, card, s),
                          say(text::mtu_under_why), {c.lab.cards[card].id, c.lab.segments[s].id}));
  });
  drop_repeated(out, before);
}

// The segment's MTU; on a card with several segments the smallest of theirs.
std::optional<Fix> fix_mtu(const Context& c, const Finding& f) {
  const std::uint32_t card = c.index.place(f.places[0]);
  Card after = c.lab.cards[card];
  std::int32_t least = c.lab.segments[c.index.place(f.places[1])].mtu;
  bool same = true;
  for (const std::uint32_t s : segments_of(c, card)) {
    same = same && c.lab.segments[s].mtu == least;
    least = std::min(least, c.lab.segments[s].mtu);
  }
  if (!same && f.rule && f.rule->severity != Severity::error) return std::nullopt;
  after.mtu = same ? std::nullopt : std::optional(least);
  return change_to(say(text::fix_mtu, std::to_string(least), card_name(c, card)), c.lab.cards[card], after);
}

void check_mtu6(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s)
    if (c.addresses.prefix6(s) && c.lab.segments[s].mtu < kIpv6LeastMtu)
      out.push_back(found(Severity::error,
                          say(text::mtu_ipv6, segment_name(c, s), std::to_string(c.lab.segments[s].mtu)),
                          say(text::mtu_ipv6_why), {c.lab.segments[s].id}));
  each_own_mtu(c, [&](std::uint32_t card, std::uint32_t s, std::int32_t mtu) {
    if (!c.addresses.prefix6(s) || mtu >= kIpv6LeastMtu || c.lab.segments[s].mtu < kIpv6LeastMtu) return;
    out.push_back(found(Severity::error, say(text::mtu_ipv6, card_name(c, card), std::to_string(mtu)),
                        say(text::mtu_ipv6_why), {c.lab.cards[card].id, c.lab.segments[s].id}));
  });
  drop_repeated(out, before);
}

// 1280 octets, the least of IPv6.
std::optional<Fix> fix_mtu6(const Context& c, const Finding& f) {
  const std::uint32_t place = c.index.place(f.places[0]);
  const Message label = say(text::fix_mtu, std::to_string(kIpv6LeastMtu), c.name(f.places[0]));
  if (f.places[0].kind == Kind::card) {
    Card after = c.lab.cards[place];
    after.mtu = kIpv6LeastMtu;
    return change_to(label, c.lab.cards[place], after);
  }
  Segment after = c.lab.segments[place];
  after.mtu = kIpv6LeastMtu;
  return change_to(label, c.lab.segments[place], after);
}

constexpr std::array kRules{
    Rule{"untagged-twice", Topic::networks, Severity::error, "A card has two segments without VLAN id",
         "IEEE 802.1Q, from memory", check_untagged},
    Rule{"vlan-twice", Topic::networks, Severity::error, "A card uses one VLAN id for two segments",
         "IEEE 802.1Q, from memory", check_vlan},
    Rule{"vlan-differs", Topic::networks, Severity::caution,
         "A card has another VLAN id for a segment than it has", "IEEE 802.1Q, from memory",
         check_vlan_differs, fix_vlan_differs},
    Rule{"mtu-over", Topic::networks, Severity::error, "A card sends larger frames than its segment passes",
         kPracticeSource, check_mtu_over, fix_mtu},
    Rule{"mtu-under", Topic::networks, Severity::caution, "A card takes smaller frames than its segment has",
         kPracticeSource, check_mtu_under, fix_mtu},
    Rule{"mtu-ipv6", Topic::networks, Severity::error, "IPv6 on a link of less than 1280 octets",
         "RFC 8200 5", check_mtu6, fix_mtu6},
};

} // namespace

std::span<const Rule> frame_rules() { return kRules; }

} // namespace snug
