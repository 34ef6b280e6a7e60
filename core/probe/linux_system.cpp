// The questions to a running Linux system: statvfs(3), getifaddrs(3).
#ifdef __linux__

#include "core/probe/facts.h"

#include <array>
#include <bit>
#include <cstring>
#include <ifaddrs.h>
#include <limits>
#include <memory>
#include <netinet/in.h>
#include <sys/statvfs.h>

namespace snug {

namespace {

std::optional<VolumeSpace> space_of(const std::string& mount_point) {
  struct statvfs info {};
  if (::statvfs(mount_point.c_str(), &info) != 0 || info.f_frsize == 0) return std::nullopt;
  const std::uint64_t unit = info.f_frsize;
  if (info.f_blocks > std::numeric_limits<std::uint64_t>::max() / unit || info.f_bavail > info.f_blocks)
    return std::nullopt;
  return VolumeSpace{info.f_blocks * unit, info.f_bavail * unit};
}

template <typename Bytes>
std::uint64_t big_endian(const Bytes& bytes, std::size_t first, std::size_t count) {
  std::uint64_t value = 0;
  for (std::size_t i = first; i < first + count; ++i) value = (value << 8U) | bytes[i];
  return value;
}

// The kernel's structure for a family, copied out of the general one.
template <typename T>
T specific(const sockaddr* general) {
  T out{};
  std::memcpy(&out, general, sizeof out);
  return out;
}

std::optional<Address> address_of(const sockaddr* general) {
  if (general == nullptr) return std::nullopt;
  std::array<std::uint8_t, 16> bytes{};
  if (general->sa_family == AF_INET) {
    const auto v4 = specific<sockaddr_in>(general);
    std::memcpy(bytes.data(), &v4.sin_addr, 4);
    return Address::v4(static_cast<std::uint32_t>(big_endian(bytes, 0, 4)));
  }
  if (general->sa_family != AF_INET6) return std::nullopt;
  const auto v6 = specific<sockaddr_in6>(general);
  std::memcpy(bytes.data(), &v6.sin6_addr, 16);
  return Address::v6(big_endian(bytes, 0, 8), big_endian(bytes, 8, 8));
}

// Length of a mask; nothing if it is not contiguous.
std::optional<int> length_of(const Address& mask) {
  const int length =
      mask.is_v4() ? std::popcount(mask.as_u32()) : std::popcount(mask.high()) + std::popcount(mask.low());
  return Prefix::of(mask, length).mask() == mask ? std::optional(length) : std::nullopt;
}

std::optional<std::vector<InterfaceAddress>> addresses_of_cards() {
  ifaddrs* list = nullptr;
  if (::getifaddrs(&list) != 0) return std::nullopt;
  const std::unique_ptr<ifaddrs, decltype(&::freeifaddrs)> owner(list, &::freeifaddrs);
  std::vector<InterfaceAddress> out;
  for (const ifaddrs* at = list; at != nullptr; at = at->ifa_next) {
    const auto address = address_of(at->ifa_addr);
    const auto mask = address_of(at->ifa_netmask);
    const auto length = mask ? length_of(*mask) : std::nullopt;
    if (address && length && mask->family() == address->family())
      out.push_back({at->ifa_name, {*address, *length}});
  }
  return out;
}

} // namespace

ProbeRoot this_pc() { return {"/", space_of, addresses_of_cards}; }

} // namespace snug

#endif
