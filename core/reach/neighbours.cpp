#include "core/reach/neighbours.h"

#include "core/addressing/sort_keys.h"

#include <algorithm>

namespace snug {

namespace {

constexpr std::int32_t kLeastMtu = 104; // more than a small packet of either family

bool is_plain(const Machine& m) { return m.reverse_filter == ReverseFilter::off; }

} // namespace

Neighbours::Neighbours(const Index& index, const AddressesInUse& addresses)
    : index_(index), addresses_(addresses) {
  const NetworkFacts& facts = index.facts();
  const Lab& lab = index.lab();
  plain_machine_.reserve(lab.machines.size());
  for (const Machine& m : lab.machines) plain_machine_.push_back(is_plain(m) ? 1 : 0);
  plain_.reserve(lab.cards.size());
  for (std::uint32_t c = 0; c < lab.cards.size(); ++c) {
    plain_.push_back(plain(c));
    // What DHCP or advertisements will bring is not known here.
    constexpr std::uint32_t kGiven = CardMark::asks_dhcp | CardMark::slaac;
    const std::uint32_t m = facts.card_machine[c];
    if ((facts.card_marks[c] & kGiven) != 0 && m != kNowhere) plain_machine_[m] = 0;
  }
  for (const WideKey& k : maybe_repeated(facts.card_mac)) plain_[k.place].segment = kNowhere;
  for (const Conflicts::Run& run : addresses.equal())
    for (const HeldAddress& h : addresses.all().part(run.first, run.count))
      if (h.holder == Holder::card) plain_[h.card].segment = kNowhere;
}

Neighbours::Plain Neighbours::plain(std::uint32_t c) const {
  const NetworkFacts& facts = index_.facts();
  constexpr std::uint32_t kNeeded = CardMark::connected | CardMark::has_segment | CardMark::has_address;
  constexpr std::uint32_t kNever =
      CardMark::trunk | CardMark::carries | CardMark::own_mtu | CardMark::odd_mac;
  const std::uint32_t marks = facts.card_marks[c], s = facts.card_segment[c];
  if ((marks & kNeeded) != kNeeded || (marks & kNever) != 0) return {};
  const Card& card = index_.lab().cards[c];
  const Segment& segment = index_.lab().segments[s];
  if (card.separated || card.translates || segment.mtu < kLeastMtu || segment.type == SegmentKind::bridged)
    return {};
  // Without a mark in its segment an address is a host of its prefix, with its length.
  if (!addresses_.prefix4(s) || addresses_.has_marks(s, Family::v4)) return {};
  Plain out;
  for (const CardAddress& a : card.addresses) {
    if (!a.address || !a.address->is_v4()) continue;
    if (out.segment != kNowhere || is_loopback(*a.address) || is_multicast(*a.address)) return {};
    out = {s, *a.address};
  }
  return out;
}

// Whether what a machine sends to a neighbour of this card leaves by it: no other card and no route is
// nearer.
bool Neighbours::keeps_to(std::uint32_t machine, std::uint32_t card, const Address& to) const {
  for (const std::uint32_t other : index_.cards_of(machine)) {
    if (other == card) continue;
    for (const CardAddress& a : index_.lab().cards[other].addresses) {
      if (!a.address || !a.address->is_v4()) continue;
      const std::uint32_t s = addresses_.segment_for(index_, other, *a.address);
      const auto p = s == kNowhere ? std::nullopt : addresses_.prefix4(s);
      const std::int32_t length = a.length ? *a.length : p && p->is_v4() ? p->length() : 32;
      if (Prefix::of(*a.address, std::clamp(length, 0, 32)).contains(to)) return false;
    }
  }
  const std::vector<Route>& routes = index_.lab().machines[machine].routes;
  return std::none_of(routes.begin(), routes.end(),
                      [&](const Route& r) { return r.to.length() > 0 && r.to.contains(to); });
}

bool Neighbours::surely_talk(std::uint32_t a, std::uint32_t b) const {
  if (a == b || index_.carrier_of(a) != index_.carrier_of(b)) return false;
  if (plain_machine_[a] == 0 || plain_machine_[b] == 0) return false;
  for (const std::uint32_t from : index_.cards_of(a)) {
    if (plain_[from].segment == kNowhere) continue;
    for (const std::uint32_t to : index_.cards_of(b))
      if (plain_[to].segment == plain_[from].segment)
        return keeps_to(a, from, plain_[to].address) && keeps_to(b, to, plain_[from].address);
  }
  return false;
}

} // namespace snug
