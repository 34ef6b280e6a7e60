#include "core/reach/neighbours.h"

#include "core/addressing/sort_keys.h"

#include <algorithm>

namespace snug {

namespace {

constexpr std::int32_t kLeastMtu = 104; // more than a small packet of either family

// Of a segment: the length of its IPv4 prefix (32: none), and whether it is plain.
constexpr std::int32_t kPlain = 0x80, kLengthBits = 0x3f;

std::uint32_t value4(const AddressRow& row) { return static_cast<std::uint32_t>(row.low); }

bool same_start(std::uint32_t a, std::uint32_t b, std::int32_t length) {
  return length == 0 || ((a ^ b) >> static_cast<std::uint32_t>(32 - length)) == 0;
}

} // namespace

Neighbours::Neighbours(const Index& index, const AddressesInUse& addresses)
    : index_(index), facts_(index.facts()), addresses_(addresses),
      plain_machine_(index.lab().machines.size(), 1), plain_(index.lab().cards.size()) {
  const Lab& lab = index.lab();
  plain_segment_.reserve(lab.segments.size());
  // Without a mark in its segment an address is a host of its prefix, with its length.
  for (std::uint32_t s = 0; s < lab.segments.size(); ++s) {
    const std::optional<Prefix>& prefix = addresses.prefix(s, Family::v4);
    const bool plain = lab.segments[s].mtu >= kLeastMtu && lab.segments[s].type != SegmentKind::bridged &&
                       prefix && !addresses.has_marks(s, Family::v4);
    const std::int32_t length = prefix && prefix->is_v4() ? prefix->length() : 32;
    plain_segment_.push_back(static_cast<std::uint8_t>(length | (plain ? kPlain : 0)));
  }
  find_plain();
  drop_shared();
  facts_.each_machine(MachineMark::filters, [this](std::uint32_t m) { plain_machine_[m] = 0; });
}

// What DHCP or advertisements will bring is not known here.
void Neighbours::find_plain() {
  const std::span<const AddressRow> all = facts_.addresses;
  constexpr std::uint32_t kGiven = CardMark::asks_dhcp | CardMark::slaac;
  std::uint32_t row = 0;
  first_row_.reserve(plain_.size() + 1);
  for (std::uint32_t c = 0; c < plain_.size(); ++c) {
    first_row_.push_back(row);
    std::uint32_t v4 = 0, last = 0;
    for (; row < all.size() && all[row].card == c; ++row) {
      if (all[row].is_v6) continue;
      ++v4;
      last = row;
    }
    if (v4 == 1 && is_plain(c) && !is_loopback(all[last].address()) && !is_multicast(all[last].address()))
      plain_[c] = {facts_.card_segment[c], value4(all[last])};
    const std::uint32_t m = facts_.card_machine[c];
    if ((facts_.card_marks[c] & kGiven) != 0 && m != kNowhere) plain_machine_[m] = 0;
  }
  first_row_.push_back(row);
}

bool Neighbours::is_plain(std::uint32_t c) const {
  constexpr std::uint32_t kNeeded = CardMark::connected | CardMark::has_segment | CardMark::has_address;
  constexpr std::uint32_t kNever = CardMark::trunk | CardMark::carries | CardMark::own_mtu |
                                   CardMark::odd_mac | CardMark::separated | CardMark::translates;
  const std::uint32_t marks = facts_.card_marks[c];
  return (marks & kNeeded) == kNeeded && (marks & kNever) == 0 &&
         (plain_segment_[facts_.card_segment[c]] & kPlain) != 0;
}

// Cards with a MAC or an address that another one has too. Who holds an address answers for it by all of its
// cards (RFC 1122, section 3.3.4.2: weak host), so other segments and cards without a cable count.
void Neighbours::drop_shared() {
  for (const WideKey& k : maybe_repeated(facts_.card_mac)) plain_[k.place].segment = kNowhere;
  constexpr std::uint64_t kHeld = std::uint64_t{1} << 32U;
  const std::span<const AddressRow> rows = facts_.addresses;
  std::vector<std::uint64_t> held(rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) held[i] = rows[i].is_v6 ? 0 : kHeld | value4(rows[i]);
  const auto add = [&held](const std::optional<Address>& a) {
    if (a && a->is_v4()) held.push_back(kHeld | static_cast<std::uint32_t>(a->low()));
  };
  for (std::uint32_t s = 0; s < plain_segment_.size(); ++s) {
    add(addresses_.pc_address4(s));
    add(addresses_.translator(s));
  }
  for (const Lan& lan : index_.lab().lans) add(lan.gateway4);
  for (const WideKey& k : maybe_repeated(held))
    if (k.place < rows.size()) plain_[rows[k.place].card].segment = kNowhere;
}

std::span<const AddressRow> Neighbours::rows(std::uint32_t card) const {
  return std::span(facts_.addresses).subspan(first_row_[card], first_row_[card + 1] - first_row_[card]);
}

std::int32_t Neighbours::length4(const AddressRow& row) const {
  if (row.length != AddressRow::kNoLength) return row.length;
  const bool trunk = (facts_.card_marks[row.card] & CardMark::trunk) != 0;
  const std::uint32_t s =
      trunk ? addresses_.segment_for(index_, row.card, row.address()) : facts_.card_segment[row.card];
  return s == kNowhere ? 32 : plain_segment_[s] & kLengthBits;
}

// Whether what a machine sends to a neighbour of this card leaves by it: no other card and no route is
// nearer.
bool Neighbours::keeps_to(std::uint32_t machine, std::uint32_t card, std::uint32_t to) const {
  for (const std::uint32_t other : index_.cards_of(machine)) {
    if (other == card) continue;
    for (const AddressRow& row : rows(other))
      if (!row.is_v6 && same_start(value4(row), to, length4(row))) return false;
  }
  if ((facts_.machine_marks[machine] & MachineMark::routes) == 0) return true;
  const std::vector<Route>& routes = index_.lab().machines[machine].routes;
  const Address address = Address::v4(to);
  return std::none_of(routes.begin(), routes.end(),
                      [&address](const Route& r) { return r.to.length() > 0 && r.to.contains(address); });
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
