#include "core/addressing/plan.h"
#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/text/address_text.h"
#include "core/text/carry_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

const Lan* lan_without_pool(const Context& c, std::uint32_t segment) {
  const Segment& s = c.lab.segments[segment];
  const Lan* lan = s.type == SegmentKind::bridged ? c.index.lan(s.lan) : nullptr;
  return lan && lan->has_dhcp != Known::no && lan->pool.empty() ? lan : nullptr;
}

void check_pool(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    if (!lan_without_pool(c, s)) continue;
    for (const HeldAddress& h : c.addresses.on(s)) {
      const bool on_lan = h.domain == c.addresses.domains().outside(s);
      if (h.holder != Holder::card || !on_lan || !h.address.is_v4()) continue;
      const Argument name = holder_name(c, h);
      out.push_back(found(Severity::caution,
                          say(text::lan_pool_unknown, name, to_text(h.address), segment_name(c, s)),
                          say(text::lan_pool_unknown_why, name), {c.lab.cards[h.card].id}));
    }
  }
  drop_repeated(out, before);
}

std::optional<Fix> fix_pool(const Context& c, const Finding& f) {
  const std::uint32_t card = c.index.place(f.places[0]);
  Card after = c.lab.cards[card];
  bool asks = false;
  for (CardAddress& a : after.addresses) {
    if (!a.address || !a.address->is_v4()) continue;
    a.kind = asks ? AddressKind::none : AddressKind::dhcp;
    a.address.reset();
    a.length.reset();
    asks = true;
  }
  return change_to(say(text::fix_ask_dhcp, machine_name(c, card)), c.lab.cards[card], after);
}

bool lacks_address(const Context& c, std::uint32_t card) {
  const NetworkFacts& facts = c.addresses.facts();
  const std::uint32_t s = facts.card_segment[card];
  const bool has_prefix = c.addresses.prefix4(s) || c.addresses.prefix6(s);
  return has_prefix && (facts.card_marks[card] & CardMark::only_carries) == 0;
}

void check_missing(const Context& c, std::vector<Finding>& out) {
  for (const std::uint32_t mark : {CardMark::no_rows, CardMark::incomplete})
    c.addresses.facts().each_card(mark | CardMark::has_segment, [&](std::uint32_t card) {
      if (!lacks_address(c, card)) return;
      const std::uint32_t s = c.addresses.facts().card_segment[card];
      out.push_back(found(Severity::note,
                          say(text::address_missing, machine_name(c, card), segment_name(c, s)),
                          say(text::address_missing_why), {c.lab.cards[card].id, c.lab.segments[s].id}));
    });
}

std::optional<Fix> fix_missing(const Context& c, const Finding& f) {
  const std::uint32_t card = c.index.place(f.places[0]), s = c.index.place(f.places[1]);
  const auto next = next_free(c.index, c.addresses, c.lab.segments[s].id, c.lab.cards[card].machine);
  if (!next) return std::nullopt;
  Card after = c.lab.cards[card];
  auto row = std::find_if(after.addresses.begin(), after.addresses.end(), [](const CardAddress& a) {
    return !a.address && (a.kind == AddressKind::typed || a.kind == AddressKind::suggested);
  });
  if (row == after.addresses.end()) row = after.addresses.emplace(after.addresses.end());
  row->kind = AddressKind::suggested;
  row->address = next;
  row->length.reset();
  return change_to(
      say(text::fix_use_address, short_address(*next, c.addresses.prefix4(s)), machine_name(c, card)),
      c.lab.cards[card], after);
}

void check_hollow(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_card(CardMark::only_carries, [&](std::uint32_t card) {
    constexpr std::uint32_t kAny =
        CardMark::has_address | CardMark::asks_dhcp | CardMark::slaac | CardMark::incomplete;
    if ((c.addresses.facts().card_marks[card] & kAny) == 0) return;
    out.push_back(found(Severity::caution, say(text::hollow_address, card_name(c, card)),
                        say(text::hollow_address_why), {c.lab.cards[card].id}));
  });
}

std::optional<Fix> fix_hollow(const Context& c, const Finding& f) {
  const std::uint32_t card = c.index.place(f.places[0]);
  Card after = c.lab.cards[card];
  after.addresses.clear();
  return change_to(say(text::fix_no_address, card_name(c, card)), c.lab.cards[card], after);
}

// Where no card of the machine is for management yet, this one most likely is.
bool is_likely_for_management(const Context& c, const Finding& f) {
  const std::uint32_t machine = c.index.machine_of_card(c.index.place(f.places[0]));
  if (machine == kNowhere) return false;
  const auto cards = c.index.cards_of(machine);
  return std::none_of(cards.begin(), cards.end(),
                      [&c](std::uint32_t card) { return c.lab.cards[card].for_management; });
}

std::optional<Fix> say_management(const Context& c, const Finding& f) {
  const Card& card = c.lab.cards[c.index.place(f.places[0])];
  Card after = card;
  after.for_management = true;
  return change_to(say(text::fix_for_management, card_name(c, c.index.place(f.places[0]))), card, after);
}

std::optional<Fix> first_fix_hollow(const Context& c, const Finding& f) {
  return is_likely_for_management(c, f) ? say_management(c, f) : fix_hollow(c, f);
}

std::optional<Fix> other_fix_hollow(const Context& c, const Finding& f) {
  return is_likely_for_management(c, f) ? fix_hollow(c, f) : say_management(c, f);
}

constexpr std::array kRules{
    Rule{"lan-pool-unknown", Topic::addresses, Severity::caution,
         "A fixed address on a LAN whose DHCP pool nobody knows", kPracticeSource, check_pool, fix_pool},
    Rule{"address-missing", Topic::addresses, Severity::note, "A card has no address yet", kPracticeSource,
         check_missing, fix_missing},
    Rule{"carrying-address", Topic::addresses, Severity::caution,
         "A card that only carries guests' traffic has an address", kPracticeSource, check_hollow,
         first_fix_hollow, other_fix_hollow},
};

} // namespace

std::span<const Rule> card_address_rules() { return kRules; }

} // namespace snug
