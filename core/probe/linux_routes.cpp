// Default routes. Sources: proc(5), /proc/net/route; Linux net/ipv6/route.c for ipv6_route;
// uapi/linux/route.h for the flags.
#include "core/probe/linux_parts.h"

#include <algorithm>
#include <bit>

namespace snug::system_facts {

namespace {

constexpr unsigned kUp = 1;      // RTF_UP
constexpr unsigned kGateway = 2; // RTF_GATEWAY

void add(std::vector<Address>& out, const Address& address) {
  if (std::find(out.begin(), out.end(), address) == out.end()) out.push_back(address);
}

bool is_gateway(std::string_view flags) {
  const auto value = parse_number<unsigned>(flags, 16);
  return value && (*value & (kUp | kGateway)) == (kUp | kGateway);
}

bool is_zero(std::string_view digits) {
  return !digits.empty() && digits.find_first_not_of('0') == std::string_view::npos;
}

// The kernel prints the four bytes of an address as one number of its own byte order.
Address of_own_order(std::uint32_t value) {
  if constexpr (std::endian::native == std::endian::big) return Address::v4(value);
  return Address::v4((value >> 24U) | ((value >> 8U) & 0xff00U) | ((value << 8U) & 0xff0000U) |
                     (value << 24U));
}

void add_v4(std::vector<Address>& out, const std::vector<std::string_view>& row, const std::string& card) {
  if (row.size() < 8 || row[0] != card || !is_zero(row[1]) || !is_zero(row[7]) || !is_gateway(row[3])) return;
  const auto via = parse_number<std::uint32_t>(row[2], 16);
  if (via && *via != 0) add(out, of_own_order(*via));
}

void add_v6(std::vector<Address>& out, const std::vector<std::string_view>& row, const std::string& card) {
  if (row.size() < 10 || row[9] != card || !is_zero(row[0]) || !is_zero(row[1]) || !is_gateway(row[8]))
    return;
  if (row[4].size() != 32 || is_zero(row[4])) return;
  const auto high = parse_number<std::uint64_t>(row[4].substr(0, 16), 16);
  const auto low = parse_number<std::uint64_t>(row[4].substr(16), 16);
  if (high && low) add(out, Address::v6(*high, *low));
}

} // namespace

std::vector<Address> linux_gateways(const SystemTree& tree, const std::string& card) {
  std::vector<Address> out;
  const auto v4 = tree.text("proc/net/route");
  for (const std::string_view line : lines(v4 ? *v4 : std::string_view())) add_v4(out, words(line), card);
  const auto v6 = tree.text("proc/net/ipv6_route");
  for (const std::string_view line : lines(v6 ? *v6 : std::string_view())) add_v6(out, words(line), card);
  return out;
}

} // namespace snug::system_facts
