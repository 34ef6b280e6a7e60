#include "core/addressing/host_plan.h"

#include <algorithm>
#include <set>

namespace snug {

namespace {

constexpr std::int64_t kFirstOfCount = 0x1000; // where counting starts when there are no digits to repeat

bool is_row6(const CardAddress& a) {
  return a.kind == AddressKind::slaac || (a.address && !a.address->is_v4());
}

bool is_suggested6(const CardAddress& a) {
  return a.kind == AddressKind::suggested && a.address && !a.address->is_v4();
}

// Host number of the card's IPv4 address on its segment, typed ones too.
std::optional<std::int64_t> number4(const Card& card, const std::optional<Prefix>& prefix4) {
  if (!prefix4) return std::nullopt;
  for (const CardAddress& a : card.addresses)
    if (a.address && prefix4->contains(*a.address))
      return static_cast<std::int64_t>(a.address->as_u32()) - prefix4->network().as_u32();
  return std::nullopt;
}

std::optional<Address> first_free6(const Prefix& prefix, std::optional<std::int64_t> number,
                                   const std::set<Address>& taken) {
  if (number)
    if (const auto same = same_digits6(prefix, *number); same && !taken.contains(*same)) return same;
  auto at = prefix.network().plus(kFirstOfCount);
  while (at && prefix.contains(*at) && taken.contains(*at)) at = at->plus(1);
  return at && prefix.contains(*at) ? at : std::nullopt;
}

std::set<Address> typed6(const Index& index, const AddressesInUse& in_use) {
  std::set<Address> taken;
  for (std::uint32_t s = 0; s < index.lab().segments.size(); ++s)
    if (const auto gateway = in_use.gateway6(s)) taken.insert(*gateway);
  for (const HeldAddress& h : in_use.all())
    if (!h.address.is_v4() && h.kind != AddressKind::suggested) taken.insert(h.address);
  return taken;
}

// The row that the plan may set: a suggested one, or a new one on a card without IPv6 whose other addresses
// are all suggested.
CardAddress* row_for(Card& card) {
  const auto found = std::find_if(card.addresses.begin(), card.addresses.end(), is_suggested6);
  if (found != card.addresses.end()) return &*found;
  const bool laid_out =
      !card.addresses.empty() && std::all_of(card.addresses.begin(), card.addresses.end(), [](const auto& a) {
        return a.kind == AddressKind::suggested && !is_row6(a);
      });
  const bool empty6 = card.addresses.empty() && !only_carries(card);
  if (!laid_out && !empty6) return nullptr;
  card.addresses.emplace_back().kind = AddressKind::suggested;
  return &card.addresses.back();
}

} // namespace

std::optional<Address> same_digits6(const Prefix& prefix, std::int64_t host) {
  if (host < 0) return std::nullopt;
  std::uint64_t digits = 0;
  unsigned shift = 0;
  for (std::int64_t rest = host; rest > 0 && shift < 64; rest /= 10, shift += 4)
    digits |= static_cast<std::uint64_t>(rest % 10) << shift;
  const auto address = prefix.network().plus(static_cast<std::int64_t>(digits));
  if (!address || !prefix.contains(*address) || digits == 0) return std::nullopt;
  return address;
}

void plan_hosts6(Lab& lab) {
  const Index index(lab);
  const AddressesInUse in_use(index);
  std::set<Address> taken = typed6(index, in_use);
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m)
    for (const std::uint32_t c : index.cards_of(m)) {
      const std::uint32_t s = in_use.facts().card_segment[c];
      if (s == kNowhere || lab.segments[s].type == SegmentKind::bridged || !in_use.prefix6(s)) continue;
      Card& card = lab.cards[c];
      CardAddress* row = row_for(card);
      if (!row) continue;
      const auto address = first_free6(*in_use.prefix6(s), number4(card, in_use.prefix4(s)), taken);
      if (address) {
        row->address = address;
        taken.insert(*address);
      } else if (!row->address) {
        card.addresses.pop_back();
      }
    }
}

} // namespace snug
