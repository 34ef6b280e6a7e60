#include "core/addressing/room.h"

#include <algorithm>
#include <bit>

namespace snug {

namespace {

constexpr std::int64_t kWord = 64;

std::uint64_t bit(std::int64_t host) { return std::uint64_t{1} << static_cast<unsigned>(host % kWord); }
std::size_t word_of(std::int64_t host) { return static_cast<std::size_t>(host / kWord); }

} // namespace

Room::Room(const Index& index, const AddressesInUse& in_use, std::uint32_t segment_place, Suggested suggested)
    : prefix_(in_use.prefix4(segment_place)) {
  if (prefix_ && !prefix_->is_v4()) prefix_.reset();
  if (!prefix_) return;
  size_ = std::min(prefix_->size(), kMostHosts);
  taken_.assign(word_of(size_ - 1) + 1, 0);
  const Segment& segment = index.lab().segments[segment_place];
  const Numbering& scheme = index.lab().numbering;
  if (prefix_->is_reserved(prefix_->network())) {
    take(0);
    take(prefix_->size() - 1);
  }
  for (const HeldAddress& h : in_use.on(segment_place))
    if (h.holder != Holder::card || h.kind != AddressKind::suggested || suggested == Suggested::taken)
      take_address(h.address);
  for (const AddressesInUse::Range& r : in_use.ranges(segment_place)) take(r.range);
  for (const RangeRow& r : segment.kept)
    if (r.first.family() == r.last.family() && r.first <= r.last) take({r.first, r.last});
  take_address(in_use.gateway4(segment_place));
  const bool point_to_point = size_ <= 2;
  if (point_to_point) return;
  if (!in_use.gateway4(segment_place) && scheme.gateway > 0) keep(scheme.gateway);
  if (scheme.pc_socket > 0 && segment.type != SegmentKind::bridged) keep(scheme.pc_socket);
  if (segment.type == SegmentKind::nat && !in_use.translator(segment_place)) keep(scheme.translator);
}

void Room::take_address(const std::optional<Address>& a) {
  if (!a) return;
  if (const auto host = host_of(*a)) take(*host);
}

bool Room::is_free(std::int64_t host) const {
  return host >= 0 && host < size_ && (taken_[word_of(host)] & bit(host)) == 0;
}

void Room::take(std::int64_t host) {
  if (host < 0 || host >= size_) return;
  taken_[word_of(host)] |= bit(host);
  std::erase(kept_, host);
}

void Room::keep(std::int64_t host) {
  if (!is_free(host)) return;
  take(host);
  kept_.push_back(host);
}

void Room::take(const AddressRange& range) {
  if (!prefix_ || !range.first.is_v4()) return;
  const std::int64_t base = prefix_->network().as_u32();
  const std::int64_t first = std::max<std::int64_t>(range.first.as_u32() - base, 0);
  const std::int64_t last = std::min<std::int64_t>(range.last.as_u32() - base, size_ - 1);
  for (std::int64_t host = first; host <= last; ++host) take(host);
}

std::optional<std::int64_t> Room::lowest_free(std::int64_t first, std::int64_t last) const {
  last = std::min(last, size_ - 1);
  for (std::int64_t host = std::max<std::int64_t>(first, 0); host <= last;) {
    const std::uint64_t free = ~taken_[word_of(host)] >> static_cast<unsigned>(host % kWord);
    if (free != 0) {
      host += std::countr_zero(free);
      return host <= last ? std::optional(host) : std::nullopt;
    }
    host += kWord - host % kWord;
  }
  return std::nullopt;
}

std::optional<std::int64_t> Room::lowest_free(const Numbering& scheme) const {
  for (const HostSpan& s : order_of_use(scheme))
    if (const auto host = lowest_free(s.first, s.last)) return host;
  return kept_.empty() ? std::nullopt : std::optional(kept_.front());
}

Address Room::address(std::int64_t host) const {
  return Address::v4(prefix_->network().as_u32() + static_cast<std::uint32_t>(host));
}

std::optional<std::int64_t> Room::host_of(const Address& a) const {
  if (!prefix_ || !prefix_->contains(a)) return std::nullopt;
  return static_cast<std::int64_t>(a.as_u32()) - prefix_->network().as_u32();
}

std::vector<HostSpan> order_of_use(const Numbering& n) {
  return {{n.fixed_first, n.fixed_last},
          {0, n.dhcp_first - 1},
          {n.dhcp_last + 1, Room::kMostHosts - 1},
          {0, Room::kMostHosts - 1}};
}

} // namespace snug
