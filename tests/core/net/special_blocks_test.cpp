#include "core/net/prefix.h"
#include "tests/support/csv.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

Address at(std::string_view text) { return parse_address(text).value(); }

// IANA special-purpose registries: tests/data/checks/special-purpose.csv.
TEST(SpecialBlocks, AreThoseOfTheRegistries) {
  int rows = 0;
  for (const auto& row : test::read_checks("special-purpose.csv")) {
    ++rows;
    const Prefix block = parse_prefix(row.at("block")).value();
    // One end of each block lies in no smaller block.
    const SpecialBlock* found = special_block(block.network());
    if (found == nullptr || found->prefix != block) found = special_block(block.last());
    ASSERT_NE(found, nullptr) << row.at("block");
    EXPECT_EQ(found->prefix, block) << row.at("block");
    EXPECT_EQ(found->name, row.at("name"));
    EXPECT_EQ(found->source, row.at("rfc"));
    EXPECT_EQ(found->source_ok, row.at("source_ok") == "true") << row.at("block");
    EXPECT_EQ(found->destination_ok, row.at("destination_ok") == "true") << row.at("block");
    EXPECT_EQ(found->forwardable, row.at("forwardable") == "true") << row.at("block");
    EXPECT_EQ(found->globally_reachable, row.at("globally_reachable") == "true") << row.at("block");
    EXPECT_EQ(found->reserved_by_protocol, row.at("reserved_by_protocol") == "true") << row.at("block");
  }
  EXPECT_EQ(rows, 53);
}

// tests/data/checks/special-purpose-probes.csv.
TEST(SpecialBlocks, MostSpecificBlockIsFound) {
  int rows = 0;
  for (const auto& row : test::read_checks("special-purpose-probes.csv")) {
    ++rows;
    const SpecialBlock* found = special_block(at(row.at("address")));
    EXPECT_EQ(found ? to_text(found->prefix) : "", row.at("most_specific_block")) << row.at("address");
    EXPECT_EQ(found ? found->name : "", row.at("name")) << row.at("address");
    if (found) {
      EXPECT_EQ(found->globally_reachable, row.at("globally_reachable") == "true") << row.at("address");
      EXPECT_EQ(found->forwardable, row.at("forwardable") == "true") << row.at("address");
    }
  }
  EXPECT_EQ(rows, 107);
}

TEST(SpecialBlocks, KindsOfAddresses) {
  for (const char* text : {"10.0.0.0", "10.255.255.255", "172.16.0.1", "172.31.255.255", "192.168.0.1",
                           "fc00::", "fdff:ffff::1"})
    EXPECT_TRUE(is_private(at(text))) << text;
  for (const char* text : {"9.255.255.255", "11.0.0.0", "172.15.255.255", "172.32.0.0", "192.167.255.255",
                           "100.64.0.1", "fbff::1", "fe00::1", "2001:db8::1", "::a00:1"})
    EXPECT_FALSE(is_private(at(text))) << text;
  EXPECT_TRUE(is_link_local(at("169.254.0.1")) && is_link_local(at("febf::1")));
  EXPECT_FALSE(is_link_local(at("169.253.255.255")) || is_link_local(at("fec0::1")));
  EXPECT_TRUE(is_multicast(at("224.0.0.1")) && is_multicast(at("239.255.255.255")) &&
              is_multicast(at("ff02::1")));
  EXPECT_FALSE(is_multicast(at("223.255.255.255")) || is_multicast(at("240.0.0.0")) ||
               is_multicast(at("fe80::1")));
  EXPECT_TRUE(is_loopback(at("127.0.0.1")) && is_loopback(at("127.255.255.255")) && is_loopback(at("::1")));
  EXPECT_FALSE(is_loopback(at("128.0.0.0")) || is_loopback(at("::2")) || is_loopback(at("::")));
}

} // namespace
} // namespace snug
