#pragma once
// Network prefixes (CIDR, RFC 4632; RFC 4291 2.3) and ranges of addresses.

#include "core/net/address.h"

#include <cassert>
#include <compare>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace snug {

// A network: host bits are always zero. Length 0…32 or 0…128. Default: 0.0.0.0/0. Ordered by network, then
// the larger network first.
class Prefix {
 public:
  constexpr Prefix() = default;
  // Clears host bits. A length outside the family's range is a bug (asserted).
  static constexpr Prefix of(const Address& any, int length) {
    assert(length >= 0 && length <= any.bits());
    Prefix p;
    p.network_ = Address::of(any.family(), any.value() & ~Bits128::ones(any.bits() - length));
    p.length_ = length;
    return p;
  }

  constexpr const Address& network() const { return network_; }
  constexpr int length() const { return length_; }
  constexpr Family family() const { return network_.family(); }
  constexpr bool is_v4() const { return network_.is_v4(); }

  Address last() const; // highest address; the broadcast address of an IPv4 net up to /30
  Address mask() const; // 255.255.255.0 …; IPv6: the same as an address
  constexpr bool contains(const Address& a) const {
    const Bits128 host_bits = Bits128::ones(network_.bits() - length_);
    return a.family() == family() && (a.value() & ~host_bits) == network_.value();
  }
  bool contains(const Prefix&) const; // itself too
  bool overlaps(const Prefix&) const;
  // Network or broadcast address, which no host may have: IPv4 only, never on /31 and /32 (RFC 3021).
  constexpr bool is_reserved(const Address& a) const {
    if (!is_v4() || !a.is_v4() || length_ > 30) return false;
    return a.as_u32() == network_.as_u32() || a.as_u32() == (network_.as_u32() | ~0U >> length_);
  }
  // First and last address a host may have. IPv6: from network+1 (::0 is the subnet-router anycast
  // address, RFC 4291 2.6.1) except on /127 (RFC 6164) and /128.
  Address first_host() const;
  Address last_host() const;
  // Number of host addresses, saturated at INT64_MAX.
  std::int64_t host_count() const;
  // Number of all addresses, saturated at INT64_MAX.
  std::int64_t size() const;
  friend constexpr auto operator<=>(const Prefix&, const Prefix&) = default;

 private:
  Address network_;
  int length_ = 0;
};

// "10.0.0.0/8", "fd00::/8". Host bits that are set are refused with the prefix that was probably meant.
// Does not allocate on success.
Result<Prefix> parse_prefix(std::string_view);
// The network's text without dotted parts up to /96 ("::ffff:0:0/96").
std::string to_text(const Prefix&);
void append_text(std::string&, const Prefix&);

// An address with the length of its network: "192.0.2.5/24". Host bits stay.
struct AddressWithLength {
  Address address;
  int length = 0;
  friend bool operator==(const AddressWithLength&, const AddressWithLength&) = default;
};
Result<AddressWithLength> parse_address_with_length(std::string_view);

// A dotted mask: 255.255.255.0 gives 24. Refuses masks that are not contiguous, and host masks (0.0.0.255).
Result<int> parse_mask(std::string_view);
std::string mask_text(int length); // IPv4 mask of a length 0…32

// An inclusive range within one family, first ≤ last.
struct AddressRange {
  Address first;
  Address last;
  bool contains(const Address& a) const { return first <= a && a <= last; }
  bool overlaps(const AddressRange& o) const { return first <= o.last && o.first <= last; }
  std::int64_t size() const; // saturated at INT64_MAX
  friend bool operator==(const AddressRange&, const AddressRange&) = default;
};

// A block of an IANA special-purpose registry (RFC 6890) or multicast (RFC 5771, RFC 4291 2.7). A flag is
// false where the registry says "N/A" or nothing (blocks that are given up, multicast).
struct SpecialBlock {
  Prefix prefix;
  std::string_view name;
  std::string_view source; // RFC
  bool source_ok, destination_ok, forwardable, globally_reachable, reserved_by_protocol;
};
// The most specific block that holds the address; nullptr: none.
const SpecialBlock* special_block(const Address&);
bool is_private(const Address&);                 // RFC 1918 or fc00::/7
constexpr bool is_link_local(const Address& a) { // 169.254.0.0/16, fe80::/10
  return a.is_v4() ? a.as_u32() >> 16U == 0xa9feU : a.high() >> 54U == 0xfe80U >> 6U;
}
bool is_multicast(const Address&); // 224.0.0.0/4, ff00::/8
bool is_loopback(const Address&);  // 127.0.0.0/8, ::1

// RFC 1035 3.5, RFC 3596 2.5: "52.0.2.10.in-addr.arpa", nibbles under ip6.arpa. No final dot.
std::string reverse_name(const Address&);
// The zones that hold the reverse names of a prefix, lowest first: one on a label boundary, else all of the
// next longer label (172.16.0.0/12 has sixteen, RFC 6303 4.1). An IPv4 prefix longer than /24 has the one
// zone of its /24; see classless_zone for RFC 2317.
std::vector<std::string> reverse_zones(const Prefix&);
// RFC 2317 zone of an IPv4 prefix of /25…/32, with the hyphen the RFC advises: "0-25.2.0.192.in-addr.arpa".
// The reverse name of an address in it is the last octet, a dot and this zone.
std::string classless_zone(const Prefix&);

} // namespace snug
