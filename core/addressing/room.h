#pragma once
// The IPv4 host numbers of one segment: which are somebody's or kept, which are free for a fixed address.

#include "core/addressing/in_use.h"

namespace snug {

class Room {
 public:
  // Everything beyond this host number counts as taken.
  static constexpr std::int64_t kMostHosts = 65'536;
  enum class Suggested : std::uint8_t { taken, free }; // do cards' suggested addresses count?

  // Taken: network and broadcast address, what is held, the gateway, DHCP ranges and LAN pools, kept ranges.
  // The scheme's places of gateway, translator (NAT) and PC socket are kept: not free, but given away when
  // nothing else is left. Without an IPv4 prefix all is taken.
  Room(const Index&, const AddressesInUse&, std::uint32_t segment_place,
       Suggested suggested = Suggested::taken);

  bool has_prefix() const { return prefix_.has_value(); }
  const Prefix& prefix() const { return *prefix_; }
  // Number of hosts looked at: valid host numbers are 0 … size-1.
  std::int64_t size() const { return size_; }
  bool is_free(std::int64_t host) const;
  void take(std::int64_t host);
  void take(const AddressRange&);
  // The lowest free host number, first in the scheme's fixed range, then outside its DHCP range, then
  // anywhere, at last the kept places.
  std::optional<std::int64_t> lowest_free(const Numbering&) const;
  std::optional<std::int64_t> lowest_free(std::int64_t first, std::int64_t last) const;
  Address address(std::int64_t host) const;
  // Nothing outside the prefix.
  std::optional<std::int64_t> host_of(const Address&) const;

 private:
  void take_address(const std::optional<Address>&);
  void keep(std::int64_t host);
  std::optional<Prefix> prefix_;
  std::int64_t size_ = 0;
  std::vector<std::uint64_t> taken_;
  std::vector<std::int64_t> kept_;
};

// The parts of the host numbers in the order in which suggestions use them.
struct HostSpan {
  std::int64_t first = 0;
  std::int64_t last = 0;
};
std::vector<HostSpan> order_of_use(const Numbering&);

} // namespace snug
