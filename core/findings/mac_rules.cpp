#include "core/addressing/sort_keys.h"
#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/text/route_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

std::vector<std::uint32_t> domains_of(const Context& c, std::uint32_t card) {
  std::vector<std::uint32_t> out;
  const std::uint32_t own = c.addresses.domains().of_card(card);
  if (own != kNowhere) out.push_back(own);
  const std::uint32_t marks = c.addresses.facts().card_marks[card];
  const std::uint32_t machine = c.addresses.facts().card_machine[card];
  if ((marks & CardMark::connected) == 0 || machine == kNowhere) return out;
  for (const auto* rows : {&c.lab.cards[card].trunk, &c.lab.cards[card].carries})
    for (const SegmentTag& t : *rows) {
      const std::uint32_t s = c.index.place(t.segment);
      if (s != kNowhere) out.push_back(c.addresses.domains().inside(c.index.carrier_of(machine), s));
    }
  return out;
}

bool one_uplink(const Context& c, std::uint32_t a, std::uint32_t b) {
  const Card& x = c.lab.cards[a];
  const Card& y = c.lab.cards[b];
  return x.machine == y.machine && !x.uplink_group.empty() && x.uplink_group == y.uplink_group;
}

// Cards with one MAC: each but the first of its network is reported with that first one.
void report_run(const Context& c, std::span<const WideKey> run, std::vector<Finding>& out) {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> by_domain; // domain, card
  for (const WideKey& k : run)
    for (const std::uint32_t d : domains_of(c, k.place))
      if (d != kNowhere) by_domain.emplace_back(d, k.place);
  std::sort(by_domain.begin(), by_domain.end());
  by_domain.erase(std::unique(by_domain.begin(), by_domain.end()), by_domain.end());
  std::size_t start = 0;
  for (std::size_t i = 1; i < by_domain.size(); ++i) {
    if (by_domain[i].first != by_domain[start].first) start = i;
    const std::uint32_t first = by_domain[start].second, later = by_domain[i].second;
    if (i == start || one_uplink(c, first, later)) continue;
    out.push_back(found(
        Severity::error,
        say(text::mac_twice, card_name(c, first), card_name(c, later), to_text(*c.lab.cards[first].mac)),
        say(text::mac_twice_why), {c.lab.cards[first].id, c.lab.cards[later].id}));
  }
}

void check_twice(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  std::vector<WideKey> keys = maybe_repeated(c.addresses.facts().card_mac);
  sort_wide_keys(keys);
  for (std::size_t start = 0; start < keys.size();) {
    std::size_t end = start + 1;
    while (end < keys.size() && keys[end].low == keys[start].low) ++end;
    if (end - start > 1) report_run(c, std::span(keys).subspan(start, end - start), out);
    start = end;
  }
  drop_repeated(out, before);
}

// A derived MAC, which no other card has.
std::optional<Fix> derive(const Context& c, std::uint32_t card) {
  const Card& before = c.lab.cards[card];
  Card after = before;
  std::uint32_t seat = 0;
  const auto is_taken = [&](const Mac& m) {
    return std::any_of(c.lab.cards.begin(), c.lab.cards.end(),
                       [&](const Card& o) { return o.id != before.id && o.mac == m; });
  };
  do after.mac = derived_mac(c.lab.facts.uid, seat++, before.id.number);
  while (is_taken(*after.mac));
  after.mac_source = MacSource::derived;
  return change_to(say(text::fix_derive_mac, to_text(*after.mac), card_name(c, card)), before, after);
}

std::optional<Fix> program_chooses(const Context& c, std::uint32_t card) {
  Card after = c.lab.cards[card];
  after.mac.reset();
  after.mac_source = MacSource::program;
  return change_to(say(text::fix_program_mac, card_name(c, card)), c.lab.cards[card], after);
}

bool is_on_pc(const Context& c, std::uint32_t card) {
  const std::uint32_t m = c.addresses.facts().card_machine[card];
  return m != kNowhere && c.index.carrier_of(m) == kNowhere;
}

bool is_refused(const Context& c, std::uint32_t card) {
  return c.lab.pc.typed_macs_allowed == Known::no && is_on_pc(c, card);
}

std::optional<Fix> fix_mac(const Context& c, const Finding& f) {
  const std::uint32_t card = c.index.place(f.places.back());
  return is_refused(c, card) ? program_chooses(c, card) : derive(c, card);
}

void check_group(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_card(CardMark::odd_mac, [&](std::uint32_t card) {
    const Mac mac = *c.lab.cards[card].mac;
    out.push_back(found(Severity::error,
                        mac.is_group() ? say(text::mac_group, to_text(mac), card_name(c, card))
                                       : say(text::mac_zero, card_name(c, card)),
                        say(text::mac_group_why), {c.lab.cards[card].id}));
  });
}

void check_refused(const Context& c, std::vector<Finding>& out) {
  if (c.lab.pc.typed_macs_allowed != Known::no) return;
  c.addresses.facts().each_card(CardMark::has_mac, [&](std::uint32_t card) {
    const Card& k = c.lab.cards[card];
    if (k.mac_source == MacSource::program || !is_on_pc(c, card)) return;
    out.push_back(found(Severity::error, say(text::mac_refused, card_name(c, card), to_text(*k.mac)),
                        say(text::mac_refused_why), {k.id}));
  });
}

std::optional<Fix> fix_refused(const Context& c, const Finding& f) {
  return program_chooses(c, c.index.place(f.places[0]));
}

constexpr std::array kRules{
    Rule{"mac-twice", Topic::addresses, Severity::error, "Two cards on one network have one MAC",
         "IEEE 802.3", check_twice, fix_mac},
    Rule{"mac-group", Topic::addresses, Severity::error, "A MAC that no card can have", "IEEE 802",
         check_group, fix_mac},
    Rule{"mac-refused", Topic::addresses, Severity::error,
         "A fixed MAC where the virtualization program allows none", kPracticeSource, check_refused,
         fix_refused},
};

} // namespace

std::span<const Rule> mac_rules() { return kRules; }

} // namespace snug
