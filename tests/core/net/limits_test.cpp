#include "core/net/limits.h"

#include "core/net/host_name.h"
#include "core/net/prefix.h"
#include "tests/support/csv.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

std::map<std::string, std::string> limits() {
  std::map<std::string, std::string> out;
  for (const auto& row : test::read_checks("limits.csv")) out[row.at("id")] = row.at("value");
  return out;
}

// tests/data/checks/limits.csv names the source of each.
TEST(Limits, AreThoseOfTheStandards) {
  const auto limit = limits();
  const std::map<std::string, int> ours{
      {"vlan-id-min", kMinVlan},       {"vlan-id-max", kMaxVlan},      {"ipv4-forward-min", kIpv4LeastMtu},
      {"ipv6-mtu-min", kIpv6LeastMtu}, {"ipv4-total-max", kIpMostMtu}, {"ethernet-mtu", kEthernetMtu},
      {"jumbo-mtu", kJumboMtu},        {"dns-label-max", kMaxLabel},   {"dns-name-text-max", kMaxDomainName},
      {"ipv6-iid", kInterfaceIdBits},  {"host-name-must", kMaxLabel},  {"dhcp-mtu-option-min", kIpv4LeastMtu},
  };
  for (const auto& [id, value] : ours) EXPECT_EQ(std::to_string(value), limit.at(id)) << id;
  EXPECT_EQ(1 << std::stoi(limit.at("vlan-id-bits")), kMaxVlan + 2); // 0 and 4095 are no identifiers
  EXPECT_EQ(8 + std::stoi(test::words(limit.at("ula-parts"))[0]), kUniqueLocalSiteLength);
}

TEST(Limits, VlanIdentifiers) {
  for (const int id : {1, 2, 4093, 4094}) EXPECT_TRUE(is_vlan_id(id)) << id;
  for (const int id : {-1, 0, 4095, 4096, 65'537}) EXPECT_FALSE(is_vlan_id(id)) << id;
}

// RFC 1918 section 3: 17,891,328 addresses in all.
TEST(Limits, PrivateBlocks) {
  std::int64_t addresses = 0;
  for (const std::string& text : test::words(limits().at("ipv4-private"))) {
    const Prefix p = parse_prefix(text).value();
    addresses += p.size();
    EXPECT_TRUE(is_private(p.network()) && is_private(p.last())) << text;
    EXPECT_FALSE(is_private(*p.network().plus(-1)) || is_private(*p.last().plus(1))) << text;
  }
  EXPECT_EQ(addresses, 17'891'328);
}

TEST(Limits, HoldForNames) {
  const std::string label(kMaxLabel, 'a');
  EXPECT_TRUE(check_host_label(label).has_value());
  EXPECT_FALSE(check_host_label(label + "a").has_value());
  const std::string name = label + "." + label + "." + label + "." + std::string(61, 'b');
  ASSERT_EQ(name.size(), std::size_t{kMaxDomainName});
  EXPECT_TRUE(check_domain_name(name).has_value());
  EXPECT_TRUE(check_domain_name(name + ".").has_value());
  EXPECT_FALSE(check_domain_name(name + "b").has_value());
}

} // namespace
} // namespace snug
