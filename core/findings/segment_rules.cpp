#include "core/addressing/sort_keys.h"
#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/net/host_name.h"
#include "core/text/carry_text.h"
#include "core/text/segment_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

void check_no_prefix(const Context& c, std::vector<Finding>& out) {
  const auto& used = c.addresses.facts().segment_used;
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    if (!used[s] || c.addresses.prefix4(s) || c.addresses.prefix6(s)) continue;
    out.push_back(found(Severity::note, say(text::segment_no_prefix, segment_name(c, s)),
                        say(text::segment_no_prefix_why), {c.lab.segments[s].id}));
  }
}

void check_empty(const Context& c, std::vector<Finding>& out) {
  const auto& used = c.addresses.facts().segment_used;
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s)
    if (!used[s])
      out.push_back(found(Severity::note, say(text::segment_empty, segment_name(c, s)),
                          say(text::segment_empty_why), {c.lab.segments[s].id}));
}

void check_names(const Context& c, std::vector<Finding>& out) {
  std::vector<std::uint64_t> hashes;
  hashes.reserve(c.lab.segments.size());
  for (const Segment& s : c.lab.segments)
    hashes.push_back(s.name.empty() ? 0 : std::hash<std::string>{}(s.name) | 1U);
  std::vector<std::uint32_t> order;
  for (const WideKey& k : maybe_repeated(hashes)) order.push_back(k.place);
  std::stable_sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
    return c.lab.segments[a].name < c.lab.segments[b].name;
  });
  for (std::size_t i = 1; i < order.size(); ++i) {
    const Segment& before = c.lab.segments[order[i - 1]];
    const Segment& s = c.lab.segments[order[i]];
    if (before.name == s.name)
      out.push_back(found(Severity::caution, say(text::segment_name_twice, s.name),
                          say(text::segment_name_twice_why), {before.id, s.id}));
  }
}

void check_unplugged(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_card(CardMark::unplugged, [&](std::uint32_t card) {
    out.push_back(found(Severity::note, say(text::card_unplugged, card_name(c, card)),
                        say(text::card_unplugged_why), {c.lab.cards[card].id}));
  });
}

// Where there is nothing to plug a card into, none is missed.
void check_no_card(const Context& c, std::vector<Finding>& out) {
  if (c.lab.segments.empty()) return;
  std::vector<AnyId> places;
  for (std::uint32_t m = 0; m < c.lab.machines.size(); ++m)
    if (c.index.cards_of(m).empty()) places.push_back(c.lab.machines[m].id);
  note_of_all(c, std::move(places), {text::machine_no_card, text::machine_no_card_more},
              say(text::machine_no_card_why), out);
}

void check_nat_reach(const Context& c, std::vector<Finding>& out) {
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    const Segment& segment = c.lab.segments[s];
    if (segment.type != SegmentKind::nat) continue;
    const Lan* lan = c.index.lan(segment.lan);
    out.push_back(found(Severity::note,
                        lan ? say(text::nat_reaches_lan, segment_name(c, s), c.name(lan->id))
                            : say(text::nat_reaches_lan_any, segment_name(c, s)),
                        say(text::nat_reaches_lan_why), {segment.id}));
  }
}

void check_nat_lan(const Context& c, std::vector<Finding>& out) {
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    const Segment& segment = c.lab.segments[s];
    const Lan* lan = segment.type == SegmentKind::nat ? c.index.lan(segment.lan) : nullptr;
    if (!lan || (lan->prefix4 && lan->gateway4)) continue;
    const std::string name = segment_name(c, s), through = c.name(lan->id);
    out.push_back(found(Severity::caution,
                        say(lan->prefix4 ? text::nat_lan_no_gateway : text::nat_lan_bare, name, through),
                        say(text::nat_lan_why, name, through), {segment.id, lan->id}));
  }
}

void check_nat6(const Context& c, std::vector<Finding>& out) {
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    const Segment& segment = c.lab.segments[s];
    if (segment.type == SegmentKind::nat && segment.prefix6)
      out.push_back(found(Severity::caution,
                          say(text::nat_ipv6, segment_name(c, s), to_text(*segment.prefix6)),
                          say(text::nat_ipv6_why), {segment.id}));
  }
}

void check_forward_twice(const Context& c, std::vector<Finding>& out) {
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    const Segment& segment = c.lab.segments[s];
    if (segment.type != SegmentKind::nat) continue;
    std::vector<std::pair<Transport, std::int32_t>> ports;
    for (const PortForward& p : segment.forwards) ports.emplace_back(p.transport, p.port);
    std::sort(ports.begin(), ports.end());
    const auto twice = std::adjacent_find(ports.begin(), ports.end());
    if (twice != ports.end())
      out.push_back(found(
          Severity::error,
          say(text::forward_twice, segment_name(c, s), word(twice->first), std::to_string(twice->second)),
          say(text::forward_twice_why), {segment.id}));
  }
}

bool has_address_on(const Context& c, std::uint32_t machine, std::uint32_t segment) {
  constexpr std::uint32_t kAddress = CardMark::has_address | CardMark::asks_dhcp;
  const auto here = [&](std::uint32_t card) {
    return c.addresses.facts().card_segment[card] == segment &&
           (c.addresses.facts().card_marks[card] & kAddress) != 0;
  };
  const auto cards = c.index.cards_of(machine);
  return std::any_of(cards.begin(), cards.end(), here);
}

void check_forward_target(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    if (c.lab.segments[s].type != SegmentKind::nat) continue;
    for (const PortForward& p : c.lab.segments[s].forwards) {
      const std::uint32_t m = c.index.place(p.machine);
      if (m == kNowhere || has_address_on(c, m, s)) continue;
      out.push_back(found(Severity::error,
                          say(text::forward_elsewhere, segment_name(c, s), c.name(p.machine)),
                          say(text::forward_elsewhere_why), {c.lab.segments[s].id, p.machine}));
    }
  }
  drop_repeated(out, before);
}

constexpr std::array kRules{
    Rule{"segment-no-prefix", Topic::networks, Severity::note, "A segment has no prefix", kPracticeSource,
         check_no_prefix},
    Rule{"segment-empty", Topic::networks, Severity::note, "No card is on a segment", kPracticeSource,
         check_empty},
    Rule{"segment-name-twice", Topic::networks, Severity::caution, "Two segments have one name",
         kPracticeSource, check_names},
    Rule{"card-unplugged", Topic::networks, Severity::note, "A card is on no segment", kPracticeSource,
         check_unplugged},
    Rule{"machine-no-card", Topic::networks, Severity::note, "A machine has no card", kPracticeSource,
         check_no_card},
    Rule{"nat-reaches-lan", Topic::networks, Severity::note,
         "What is behind a translator still reaches the LAN", "RFC 3022", check_nat_reach},
    Rule{"nat-lan-unknown", Topic::networks, Severity::caution,
         "The plan does not know how a translator's LAN leads on", "RFC 1122 section 3.3.1.1", check_nat_lan},
    Rule{"nat-ipv6", Topic::networks, Severity::caution, "A NAT segment has an IPv6 prefix", "RFC 3022",
         check_nat6},
    Rule{"forward-twice", Topic::networks, Severity::error, "Two port forwards use one port", "RFC 3022",
         check_forward_twice},
    Rule{"forward-elsewhere", Topic::networks, Severity::error,
         "A port forward leads to a machine without address on the segment", "RFC 3022",
         check_forward_target},
};

} // namespace

std::span<const Rule> segment_rules() { return kRules; }

} // namespace snug
