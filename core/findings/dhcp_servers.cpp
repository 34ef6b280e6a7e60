#include "core/findings/dhcp_servers.h"

#include "core/findings/network_tools.h"
#include "core/text/address_text.h"

#include <algorithm>
#include <tuple>

namespace snug {

namespace {

std::uint32_t domain_of(const Context& c, std::uint32_t card, std::uint32_t segment) {
  const std::uint32_t m = c.addresses.facts().card_machine[card];
  return m == kNowhere ? kNowhere : c.addresses.domains().inside(c.index.carrier_of(m), segment);
}

void mark(std::vector<std::uint8_t>& domains, std::uint32_t domain) {
  if (domain != kNowhere) domains[domain] = 1;
}

} // namespace

std::uint32_t served_segment(const Context& c, std::uint32_t card_place) {
  const Card& card = c.lab.cards[card_place];
  if (!card.ranges.empty()) return c.addresses.segment_for(c.index, card_place, card.ranges.front().first);
  return c.addresses.facts().card_segment[card_place];
}

std::vector<DhcpServer> dhcp_servers(const Context& c) {
  std::vector<DhcpServer> out;
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    const Segment& segment = c.lab.segments[s];
    if (segment.type == SegmentKind::nat && segment.translator_dhcp)
      out.push_back({s, c.addresses.domains().outside(s), segment.id});
  }
  c.addresses.facts().each_card(CardMark::server | CardMark::connected, [&](std::uint32_t card) {
    const std::uint32_t s = served_segment(c, card);
    if (s != kNowhere) out.push_back({s, domain_of(c, card, s), c.lab.cards[card].id});
  });
  std::stable_sort(out.begin(), out.end(), [](const DhcpServer& a, const DhcpServer& b) {
    return std::tie(a.domain, a.segment) < std::tie(b.domain, b.segment);
  });
  return out;
}

std::vector<std::uint8_t> domains_with_dhcp(const Context& c) {
  std::vector<std::uint8_t> domains(c.addresses.domains().count(), 0);
  for (const DhcpServer& s : dhcp_servers(c)) mark(domains, s.domain);
  c.addresses.facts().each_card(CardMark::relay | CardMark::connected, [&](std::uint32_t card) {
    mark(domains, c.addresses.domains().of_card(card));
    for (const SegmentTag& t : c.lab.cards[card].trunk)
      if (const std::uint32_t s = c.index.place(t.segment); s != kNowhere)
        mark(domains, domain_of(c, card, s));
  });
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    if (c.lab.segments[s].type != SegmentKind::bridged) continue;
    const Lan* lan = c.index.lan(c.lab.segments[s].lan);
    if (!lan || lan->has_dhcp != Known::no) mark(domains, c.addresses.domains().outside(s));
  }
  return domains;
}

std::vector<std::uint8_t> domains_with_advertisements(const Context& c) {
  std::vector<std::uint8_t> domains(c.addresses.domains().count(), 0);
  c.addresses.facts().each_card(CardMark::advertises | CardMark::connected, [&](std::uint32_t card) {
    mark(domains, c.addresses.domains().of_card(card));
    for (const SegmentTag& t : c.lab.cards[card].trunk)
      if (const std::uint32_t s = c.index.place(t.segment); s != kNowhere)
        mark(domains, domain_of(c, card, s));
  });
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s)
    if (c.lab.segments[s].type == SegmentKind::bridged) mark(domains, c.addresses.domains().outside(s));
  return domains;
}

Argument server_name(const Context& c, AnyId server) {
  const std::uint32_t place = c.index.place(server);
  if (server.kind == Kind::card) return machine_name(c, place);
  if (server.kind == Kind::segment) return detail::argument(say(text::translator_of, segment_name(c, place)));
  return c.name(server);
}

} // namespace snug
