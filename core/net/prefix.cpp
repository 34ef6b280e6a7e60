#include "core/net/prefix.h"

#include <cassert>

namespace snug {

namespace {

Bits128 host_bits(const Prefix& p) { return Bits128::ones(p.network().bits() - p.length()); }

// Networks so small that every address is a host: RFC 3021, RFC 6164.
bool is_point_to_point(const Prefix& p) { return p.network().bits() - p.length() <= 1; }

} // namespace

Address Prefix::last() const { return Address::of(family(), network_.value() | host_bits(*this)); }

Address Prefix::mask() const {
  return Address::of(family(), Bits128::ones(network_.bits()) & ~host_bits(*this));
}

bool Prefix::contains(const Prefix& p) const { return p.length_ >= length_ && contains(p.network_); }

bool Prefix::overlaps(const Prefix& p) const { return contains(p) || p.contains(*this); }

Address Prefix::first_host() const {
  if (is_point_to_point(*this)) return network_;
  return Address::of(family(), network_.value() + Bits128{0, 1});
}

Address Prefix::last_host() const {
  if (!is_v4() || is_point_to_point(*this)) return last();
  return Address::v4(last().as_u32() - 1);
}

std::int64_t Prefix::host_count() const { return AddressRange{first_host(), last_host()}.size(); }

std::int64_t Prefix::size() const { return AddressRange{network_, last()}.size(); }

std::int64_t AddressRange::size() const {
  assert(first.family() == last.family() && first <= last);
  const Bits128 less_one = last.value() - first.value();
  return less_one.saturated() == INT64_MAX ? INT64_MAX : less_one.saturated() + 1;
}

} // namespace snug
