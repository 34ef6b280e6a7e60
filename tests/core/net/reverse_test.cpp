#include "core/net/prefix.h"
#include "tests/support/csv.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug {
namespace {

// RFC 2317 writes a slash and advises another character, such as the hyphen used here.
std::string with_hyphen(std::string name) {
  std::replace(name.begin(), name.end(), '/', '-');
  return name;
}

// RFC 1035, 2317, 3596, 6303: tests/data/checks/reverse-zones.csv.
TEST(Reverse, AgreesWithTheStandards) {
  std::map<std::string, int> rows;
  for (const auto& row : test::read_checks("reverse-zones.csv")) {
    const std::string &kind = row.at("kind"), &input = row.at("input"), &expected = row.at("expected");
    ++rows[kind];
    if (kind == "address") {
      EXPECT_EQ(reverse_name(parse_address(input).value()), expected);
    }
    if (kind == "zone" || kind == "zones-of") {

      EXPECT_EQ(reverse_zones(parse_prefix(input).value()), test::words(expected)) << input;
    }
    if (kind == "classless-zone") {

      EXPECT_EQ(classless_zone(parse_prefix(input).value()), with_hyphen(expected));
    }
  }
  EXPECT_EQ(rows["address"], 14);
  EXPECT_EQ(rows["zone"], 32);
  EXPECT_EQ(rows["zones-of"], 5);
  EXPECT_EQ(rows["classless-zone"], 3);
}

// RFC 2317 section 4: the CNAMEs of the parent zone point into the classless zones.
TEST(Reverse, NamesAddressesInClasslessZones) {
  int rows = 0;
  for (const auto& row : test::read_checks("reverse-zones.csv")) {
    if (row.at("kind") != "classless-cname") continue;
    ++rows;
    const std::string& owner = row.at("input");
    const std::string octet = owner.substr(0, owner.find('.'));
    const Address a = parse_address("192.0.2." + octet).value();
    EXPECT_EQ(reverse_name(a), owner);
    const int length = std::stoi(octet) < 128 ? 25 : 26;
    EXPECT_EQ(octet + "." + classless_zone(Prefix::of(a, length)), with_hyphen(row.at("expected")));
  }
  EXPECT_EQ(rows, 9);
}

TEST(Reverse, KeepsTheParentZoneOfSmallIpv4Networks) {
  for (const char* text : {"192.0.2.0/24", "192.0.2.128/25", "192.0.2.7/32"})
    EXPECT_EQ(reverse_zones(parse_prefix(text).value()), std::vector<std::string>{"2.0.192.in-addr.arpa"});
}

TEST(Reverse, HandlesTheEnds) {
  EXPECT_EQ(reverse_zones(parse_prefix("0.0.0.0/0").value()), std::vector<std::string>{"in-addr.arpa"});
  EXPECT_EQ(reverse_zones(parse_prefix("::/0").value()), std::vector<std::string>{"ip6.arpa"});
  const auto upper = reverse_zones(parse_prefix("128.0.0.0/1").value());
  ASSERT_EQ(upper.size(), 128U);
  EXPECT_EQ(upper.front(), "128.in-addr.arpa");
  EXPECT_EQ(upper.back(), "255.in-addr.arpa");
  const auto last = reverse_zones(parse_prefix("ffff:ffff:ffff:ffff:ffff:ffff:ffff:fff8/125").value());
  ASSERT_EQ(last.size(), 8U);
  EXPECT_EQ(last.back(), reverse_name(parse_address("ffff:ffff:ffff:ffff:ffff:ffff:ffff:ffff").value()));
}

} // namespace
} // namespace snug
