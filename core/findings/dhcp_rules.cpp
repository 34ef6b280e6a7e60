#include "core/addressing/plan.h"
#include "core/findings/dhcp_servers.h"
#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/text/address_text.h"
#include "core/text/dhcp_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

Argument lan_name(const Context& c, const Segment& s) {
  return c.index.lan(s.lan) ? Argument(std::string(c.name(s.lan))) : detail::argument(say(text::a_real_lan));
}

// Calls report(segment, card) for cards with `marks` that sit in one network with a real LAN.
template <typename Report>
void each_on_lan(const Context& c, std::uint32_t marks, Report report) {
  c.addresses.facts().each_card(marks | CardMark::connected, [&](std::uint32_t card) {
    const std::uint32_t machine = c.addresses.facts().card_machine[card];
    const auto judge = [&](std::uint32_t s) {
      if (s == kNowhere || machine == kNowhere || c.lab.segments[s].type != SegmentKind::bridged) return;
      const std::uint32_t here = c.addresses.domains().inside(c.index.carrier_of(machine), s);
      if (here == c.addresses.domains().outside(s)) report(s, card);
    };
    judge(c.addresses.facts().card_segment[card]);
    for (const SegmentTag& t : c.lab.cards[card].trunk) judge(c.index.place(t.segment));
  });
}

void check_on_lan(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_on_lan(c, CardMark::server, [&](std::uint32_t s, std::uint32_t card) {
    const Segment& segment = c.lab.segments[s];
    out.push_back(
        found(Severity::error,
              say(text::dhcp_on_bridged, machine_name(c, card), segment_name(c, s), lan_name(c, segment)),
              say(text::dhcp_on_bridged_why), {segment.id, c.lab.cards[card].id}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> switch_off(const Context& c, AnyId server) {
  const std::uint32_t place = c.index.place(server);
  if (server.kind == Kind::segment) {
    Segment after = c.lab.segments[place];
    after.translator_dhcp = false;
    return change_to(say(text::fix_dhcp_off, server_name(c, server)), c.lab.segments[place], after);
  }
  Card after = c.lab.cards[place];
  after.dhcp = DhcpDuty::none;
  return change_to(say(text::fix_dhcp_off, card_name(c, place)), c.lab.cards[place], after);
}

std::optional<Fix> fix_on_lan(const Context& c, const Finding& f) { return switch_off(c, f.places[1]); }

void check_advertisements(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_on_lan(c, CardMark::advertises, [&](std::uint32_t s, std::uint32_t card) {
    const Segment& segment = c.lab.segments[s];
    const std::string name = machine_name(c, card);
    out.push_back(found(Severity::error,
                        say(text::advertisement_on_bridged, name, segment_name(c, s), lan_name(c, segment)),
                        say(text::advertisement_on_bridged_why, name), {segment.id, c.lab.cards[card].id}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_advertisements(const Context& c, const Finding& f) {
  const std::uint32_t card = c.index.place(f.places[1]);
  Card after = c.lab.cards[card];
  after.advertises = false;
  return change_to(say(text::fix_advertisement_off, card_name(c, card)), c.lab.cards[card], after);
}

void check_twice(const Context& c, std::vector<Finding>& out) {
  const std::vector<DhcpServer> servers = dhcp_servers(c);
  for (std::size_t i = 0; i < servers.size();) {
    std::size_t end = i + 1;
    while (end < servers.size() && servers[end].domain == servers[i].domain) ++end;
    const Segment& segment = c.lab.segments[servers[i].segment];
    const bool judged = servers[i].domain != kNowhere && segment.type != SegmentKind::bridged;
    if (judged && end - i > 1) {
      std::vector<AnyId> places{segment.id};
      for (std::size_t s = i; s < end; ++s)
        if (servers[s].id != places[0]) places.push_back(servers[s].id);
      out.push_back(found(Severity::error,
                          say(text::dhcp_twice, server_name(c, servers[i].id),
                              server_name(c, servers[i + 1].id), segment_name(c, servers[i].segment)),
                          say(text::dhcp_twice_why), std::move(places)));
    }
    i = end;
  }
}

// The translator's server gives way to a machine's; else the first machine's stays.
std::optional<Fix> fix_twice(const Context& c, const Finding& f) {
  const std::uint32_t s = c.index.place(f.places[0]);
  const bool translator = c.lab.segments[s].type == SegmentKind::nat && c.lab.segments[s].translator_dhcp;
  if (translator && f.places.size() == 2) return switch_off(c, f.places[0]);
  auto fix = switch_off(c, translator ? f.places[0] : f.places[2]);
  for (std::size_t i = translator ? 2 : 3; i < f.places.size(); ++i) {
    const auto more = switch_off(c, f.places[i]);
    fix->edit.steps.insert(fix->edit.steps.end(), more->edit.steps.begin(), more->edit.steps.end());
  }
  return fix;
}

// Calls report(card, segment) for connected cards with `mark` in a network where nobody answers.
template <typename Report>
void each_unanswered(const Context& c, std::uint32_t mark, const std::vector<std::uint8_t>& answered,
                     Report report) {
  c.addresses.facts().each_card(mark | CardMark::has_segment, [&](std::uint32_t card) {
    const std::uint32_t domain = c.addresses.domains().of_card(card);
    if (domain != kNowhere && !answered[domain]) report(card, c.addresses.facts().card_segment[card]);
  });
}

void check_nobody(const Context& c, std::vector<Finding>& out) {
  if ((c.addresses.facts().any_card & CardMark::asks_dhcp) == 0) return;
  each_unanswered(c, CardMark::asks_dhcp, domains_with_dhcp(c), [&](std::uint32_t card, std::uint32_t s) {
    out.push_back(found(Severity::error, say(text::dhcp_nobody, machine_name(c, card), segment_name(c, s)),
                        say(text::dhcp_nobody_why), {c.lab.cards[card].id, c.lab.segments[s].id}));
  });
}

std::optional<Fix> fix_nobody(const Context& c, const Finding& f) {
  const std::uint32_t card = c.index.place(f.places[0]), s = c.index.place(f.places[1]);
  const auto next = next_free(c.index, c.addresses, c.lab.segments[s].id, c.lab.cards[card].machine);
  if (!next) return std::nullopt;
  Card after = c.lab.cards[card];
  for (CardAddress& a : after.addresses)
    if (a.kind == AddressKind::dhcp) {
      a.kind = AddressKind::suggested;
      a.address = next;
      break;
    }
  std::erase_if(after.addresses, [](const CardAddress& a) { return a.kind == AddressKind::dhcp; });
  return change_to(
      say(text::fix_use_address, short_address(*next, c.addresses.prefix4(s)), machine_name(c, card)),
      c.lab.cards[card], after);
}

void check_slaac(const Context& c, std::vector<Finding>& out) {
  if ((c.addresses.facts().any_card & CardMark::slaac) == 0) return;
  each_unanswered(
      c, CardMark::slaac, domains_with_advertisements(c), [&](std::uint32_t card, std::uint32_t s) {
        out.push_back(found(Severity::error,
                            say(text::slaac_nobody, machine_name(c, card), segment_name(c, s)),
                            say(text::slaac_nobody_why), {c.lab.cards[card].id, c.lab.segments[s].id}));
      });
}

void check_relay(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_card(CardMark::relay, [&](std::uint32_t card) {
    if (c.lab.cards[card].relay_to) return;
    out.push_back(found(Severity::error, say(text::relay_target, card_name(c, card)),
                        say(text::relay_target_why), {c.lab.cards[card].id}));
  });
}

constexpr std::array kRules{
    Rule{"dhcp-on-bridged", Topic::addresses, Severity::error, "A machine answers DHCP on a real LAN",
         kPracticeSource, check_on_lan, fix_on_lan},
    Rule{"advertisement-on-bridged", Topic::addresses, Severity::error,
         "A machine advertises itself as an IPv6 router on a real LAN", "RFC 6104", check_advertisements,
         fix_advertisements},
    Rule{"dhcp-twice", Topic::addresses, Severity::error, "Two DHCP servers answer on one segment",
         "RFC 2131", check_twice, fix_twice},
    Rule{"dhcp-nobody", Topic::addresses, Severity::error, "A card asks DHCP where nobody answers",
         "RFC 2131", check_nobody, fix_nobody},
    Rule{"slaac-nobody", Topic::addresses, Severity::error,
         "A card makes its IPv6 address where no router advertises itself", "RFC 4862 5.5", check_slaac},
    Rule{"relay-target", Topic::addresses, Severity::error, "A DHCP relay without a server", "RFC 1542",
         check_relay},
};

} // namespace

std::span<const Rule> dhcp_rules() { return kRules; }

} // namespace snug
