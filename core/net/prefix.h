#pragma once
// Network prefixes (CIDR, RFC 4632; RFC 4291 2.3) and ranges of addresses.

#include "core/net/address.h"

#include <array>
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace snug {

// A network: host bits are always zero. Length 0…32 or 0…128. Default: 0.0.0.0/0.
class Prefix {
 public:
  constexpr Prefix() = default;
  // Clears host bits. `length` is clamped to the family's range by assertion (a bug otherwise).
  static Prefix of(const Address& any, int length);

  constexpr const Address& network() const { return network_; }
  constexpr int length() const { return length_; }
  constexpr Family family() const { return network_.family(); }
  constexpr bool is_v4() const { return network_.is_v4(); }

  Address last() const; // highest address; the broadcast address of an IPv4 net up to /30
  Address mask() const; // 255.255.255.0 …; IPv6: the same as an address
  bool contains(const Address&) const;
  bool contains(const Prefix&) const;
  bool overlaps(const Prefix&) const;
  // Network or broadcast address, which no host may have: IPv4 only, never on /31 and /32 (RFC 3021).
  bool is_reserved(const Address&) const;
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
Result<Prefix> parse_prefix(std::string_view);
std::string to_text(const Prefix&);

// An address with the length of its network: "192.0.2.5/24". Host bits stay.
struct AddressWithLength {
  Address address;
  int length = 0;
  friend bool operator==(const AddressWithLength&, const AddressWithLength&) = default;
};
Result<AddressWithLength> parse_address_with_length(std::string_view);

// A dotted mask: 255.255.255.0 gives 24. Refuses masks that are not contiguous.
Result<int> parse_mask(std::string_view);
std::string mask_text(int length); // IPv4 mask of a length

// An inclusive range within one family, first ≤ last.
struct AddressRange {
  Address first;
  Address last;
  bool contains(const Address& a) const { return first <= a && a <= last; }
  bool overlaps(const AddressRange& o) const { return first <= o.last && o.first <= last; }
  std::int64_t size() const; // saturated at INT64_MAX
  friend bool operator==(const AddressRange&, const AddressRange&) = default;
};

// A block of an IANA special-purpose registry (RFC 6890), most specific first match.
struct SpecialBlock {
  Prefix prefix;
  std::string_view name;
  std::string_view source; // RFC
  bool source_ok, destination_ok, forwardable, globally_reachable, reserved_by_protocol;
};
const SpecialBlock* special_block(const Address&); // nullptr: none
bool is_private(const Address&);                   // RFC 1918 or fc00::/7
bool is_link_local(const Address&);                // 169.254.0.0/16, fe80::/10
bool is_multicast(const Address&);
bool is_loopback(const Address&);

// RFC 1035 3.5, RFC 3596 2.5: "52.0.2.10.in-addr.arpa", nibbles under ip6.arpa. No final dot.
std::string reverse_name(const Address&);
// Zones that hold the reverse names of a prefix; several where the length is not on a label boundary,
// one RFC 2317 style zone ("0-25.2.0.192.in-addr.arpa" is not used here) is the caller's business.
std::vector<std::string> reverse_zones(const Prefix&);

} // namespace snug
