#include "core/net/address.h"

#include "core/net/prefix.h"
#include "tests/support/csv.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>
#include <limits>
#include <random>

namespace snug {
namespace {

constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t kLeast = std::numeric_limits<std::int64_t>::min();

Address at(std::string_view text) { return parse_address(text).value(); }

TEST(Address, DefaultsToZeroOfIpv4) {
  EXPECT_EQ(to_text(Address{}), "0.0.0.0");
  EXPECT_TRUE(Address{}.is_v4());
}

TEST(Address, ConstructsParsesPrints) {
  struct Row {
    Address value;
    const char* text;
  };
  const Row rows[] = {
      {Address::v4(0), "0.0.0.0"},
      {Address::v4(0xffffffff), "255.255.255.255"},
      {Address::v4(0x0a000001), "10.0.0.1"},
      {Address::v4(0xc0000264), "192.0.2.100"},
      {Address::v4(0x01020304), "1.2.3.4"},
      {Address::v6(0, 0), "::"},
      {Address::v6(0, 1), "::1"},
      {Address::v6(~0ULL, ~0ULL), "ffff:ffff:ffff:ffff:ffff:ffff:ffff:ffff"},
      {Address::v6(0x20010db800000000, 1), "2001:db8::1"},
      {Address::v6(0xfe80000000000000, 0x020005fffe005301), "fe80::200:5ff:fe00:5301"},
      {Address::v6(0, 0x0000ffffc0000201), "::ffff:192.0.2.1"},
      {Address::v6(0x0064ff9b00000000, 0), "64:ff9b::0.0.0.0"},
      {Address::v6(1ULL << 48U, 0), "1::"},
  };
  for (const Row& row : rows) {
    EXPECT_EQ(to_text(row.value), row.text);
    EXPECT_EQ(at(row.text), row.value) << row.text;
  }
}

TEST(Address, AppendsAfterOtherText) {
  std::string out = "via ";
  append_text(out, at("192.0.2.1"));
  append_text(out, at("::1"));
  EXPECT_EQ(out, "via 192.0.2.1::1");
}

TEST(Address, RefusesOtherForms) {
  for (const char* text : {"",
                           " ",
                           "1",
                           "1.2.3",
                           "1.2.3.4.5",
                           "1.2.3.",
                           ".1.2.3",
                           "1..2.3",
                           "256.0.0.1",
                           "1.2.3.999",
                           "01.2.3.4",
                           "1.2.3.00",
                           "1.2.3.4 ",
                           " 1.2.3.4",
                           "1.2.3.4/24",
                           "1.2.3.4:80",
                           "0x7f.0.0.1",
                           "1.2.3.a",
                           "-1.2.3.4",
                           "+1.2.3.4",
                           "1.2.3.4\n",
                           "１.2.3.4",
                           "1,2,3,4",
                           ":",
                           ":::",
                           "::1::",
                           "g::",
                           "1:2",
                           "%",
                           "[::1]",
                           "fe80::1%eth0",
                           "99999999999999999999.1.1.1",
                           "1:2:3:4:5:6:7:8:1.2.3.4",
                           "::1.2.3.4.5"})
    EXPECT_FALSE(parse_address(text).has_value()) << text;
  EXPECT_FALSE(parse_address(std::string_view("1.2.3.4\0", 8)).has_value());
}

// RFC 5952, 4291, 6052: tests/data/checks/ipv6-text.csv.
TEST(Address, AgreesWithTheTextsOfTheStandards) {
  int good = 0, bad = 0;
  for (const auto& row : test::read_checks("ipv6-text.csv")) {
    if (row.at("kind") != "address") continue;
    const auto a = parse_address(row.at("input"));
    ASSERT_EQ(a.has_value(), row.at("valid") == "yes") << row.at("input");
    ++(a ? good : bad);
    if (a) {
      EXPECT_EQ(to_text(*a), row.at("canonical")) << row.at("input");
      EXPECT_FALSE(a->is_v4());
    }
  }
  EXPECT_EQ(good, 56);
  EXPECT_EQ(bad, 24);
}

// RFC 5952 section 6: only the form that is one address is read.
TEST(Address, RefusesPorts) {
  int rows = 0;
  for (const auto& row : test::read_checks("ipv6-text.csv")) {
    if (row.at("kind") != "host+port") continue;
    ++rows;
    EXPECT_EQ(parse_address(row.at("input")).has_value(), row.at("valid") == "ambiguous") << row.at("input");
  }
  EXPECT_EQ(rows, 6);
  EXPECT_EQ(to_text(at("2001:db8::1:80")), "2001:db8::1:80");
}

// RFC 4291 section 2.4.
TEST(Address, KnowsTheTypesOfIpv6) {
  int rows = 0;
  for (const auto& row : test::read_checks("ipv6-text.csv")) {
    if (row.at("kind") != "type") continue;
    ++rows;
    const Prefix block = parse_prefix(row.at("input")).value();
    const std::string& type = row.at("canonical");
    for (const Address& a : {block.network(), block.last()}) {
      EXPECT_EQ(is_loopback(a), type == "loopback") << to_text(a);
      EXPECT_EQ(is_multicast(a), type == "multicast") << to_text(a);
      EXPECT_EQ(is_link_local(a), type == "link-local unicast") << to_text(a);
    }
    if (type == "unspecified") {
      EXPECT_EQ(special_block(block.network())->prefix, block);
    }
  }
  EXPECT_EQ(rows, 4);
}

TEST(Address, OrdersByFamilyThenNumber) {
  EXPECT_LT(at("9.255.255.255"), at("10.0.0.0"));
  EXPECT_LT(at("255.255.255.255"), at("::"));
  EXPECT_LT(at("::ffff:ffff:ffff:ffff"), at("0:0:0:1::"));
  EXPECT_NE(at("0.0.0.1"), at("::1"));
}

TEST(Address, CountsUpAndDownWithoutWrapping) {
  EXPECT_EQ(at("10.0.0.255").plus(1), at("10.0.1.0"));
  EXPECT_EQ(at("10.0.1.0").plus(-1), at("10.0.0.255"));
  EXPECT_EQ(at("255.255.255.255").plus(1), std::nullopt);
  EXPECT_EQ(at("255.255.255.255").plus(0), at("255.255.255.255"));
  EXPECT_EQ(at("0.0.0.0").plus(-1), std::nullopt);
  EXPECT_EQ(at("0.0.0.0").plus(0xffffffffLL), at("255.255.255.255"));
  EXPECT_EQ(at("0.0.0.0").plus(0x100000000LL), std::nullopt);
  EXPECT_EQ(at("0.0.0.0").plus(kMost), std::nullopt);
  EXPECT_EQ(at("255.255.255.255").plus(kLeast), std::nullopt);
  EXPECT_EQ(at("::ffff:ffff:ffff:ffff").plus(1), at("0:0:0:1::"));
  EXPECT_EQ(at("0:0:0:1::").plus(-1), at("::ffff:ffff:ffff:ffff"));
  EXPECT_EQ(at("ffff:ffff:ffff:ffff:ffff:ffff:ffff:ffff").plus(1), std::nullopt);
  EXPECT_EQ(at("::").plus(-1), std::nullopt);
  EXPECT_EQ(at("::8000:0:0:0").plus(kLeast), at("::"));
  EXPECT_EQ(at("::").plus(kMost), at("::7fff:ffff:ffff:ffff"));
  EXPECT_EQ(at("::7fff:ffff:ffff:ffff").plus(kLeast), std::nullopt);
}

TEST(Address, PrintsWhatItReadsForRandomAddresses) {
  std::mt19937_64 random(41);
  for (int i = 0; i < test::scaled(1'000'000); ++i) {
    // Words are masked so that runs of zero fields are frequent.
    std::uint64_t mask[2] = {0, 0};
    const std::uint64_t fields = random();
    for (unsigned k = 0; k < 8; ++k)
      if (((fields >> k) & 1U) != 0) mask[k / 4] |= 0xffffULL << (16 * (k % 4));
    const Address v6 = Address::v6(random() & mask[0], random() & mask[1]);
    const Address v4 = Address::v4(static_cast<std::uint32_t>(random()));
    for (const Address& a : {v4, v6}) {
      const std::string text = to_text(a);
      ASSERT_EQ(parse_address(text).value(), a) << text;
      ASSERT_LE(text.size(), a.is_v4() ? 15U : 39U) << text;
    }
  }
}

} // namespace
} // namespace snug
