#include "core/net/prefix.h"

#include "tests/support/csv.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

TEST(PrefixText, ReadsAndPrints) {
  for (const char* text : {"0.0.0.0/0", "10.0.0.0/8", "192.0.2.0/24", "192.0.2.7/32", "255.255.255.254/31",
                           "::/0", "fd00::/8", "2001:db8::/32", "2001:db8::/100", "::1/128"})
    EXPECT_EQ(to_text(parse_prefix(text).value()), text);
  std::string out = "in ";
  append_text(out, parse_prefix("10.0.0.0/24").value());
  EXPECT_EQ(out, "in 10.0.0.0/24");
}

TEST(PrefixText, RefusesOtherForms) {
  for (const char* text : {"",
                           "/",
                           "/8",
                           "10.0.0.0",
                           "10.0.0.0/",
                           "10.0.0.0/33",
                           "10.0.0.0/-1",
                           "10.0.0.0/+8",
                           "10.0.0.0/08",
                           "10.0.0.0/8 ",
                           "10.0.0.0 /8",
                           "10.0.0.0/ 8",
                           "10.0.0.1/8",
                           "10/8",
                           "10.0.0.0/8/8",
                           "10.0.0.0/0x8",
                           "10.0.0.0/4294967304",
                           "10.0.0.0/255.0.0.0",
                           "fd00::/129",
                           "fd00::1/64",
                           "fd00/8",
                           "10.0.0.0\\8"})
    EXPECT_FALSE(parse_prefix(text).has_value()) << text;
}

// RFC 4291 2.3, RFC 5952: tests/data/checks/ipv6-text.csv.
TEST(PrefixText, AgreesWithTheTextsOfTheStandards) {
  int rows = 0;
  for (const auto& row : test::read_checks("ipv6-text.csv")) {
    const std::string &kind = row.at("kind"), &valid = row.at("valid"), &input = row.at("input");
    if (kind != "prefix" && kind != "node+prefix") continue;
    ++rows;
    const auto p = parse_prefix(input);
    const auto a = parse_address_with_length(input);
    EXPECT_EQ(a.has_value(), valid != "no") << input;
    EXPECT_EQ(p.has_value(), valid == "yes" && kind == "prefix") << input;
    if (a) {
      EXPECT_EQ(to_text(Prefix::of(a->address, a->length)), row.at("canonical")) << input;
    }
    // Host bits are refused with the network that holds the address.
    if (a && !p) {
      EXPECT_NE(english(p.error().message).find(row.at("canonical")), std::string::npos) << input;
    }
  }
  EXPECT_EQ(rows, 11);
}

TEST(PrefixText, KeepsHostBitsOfAnAddressWithLength) {
  const AddressWithLength a = parse_address_with_length("192.0.2.5/24").value();
  EXPECT_EQ(to_text(a.address), "192.0.2.5");
  EXPECT_EQ(a.length, 24);
  for (const char* text : {"192.0.2.5", "192.0.2.5/", "192.0.2.5/33", "/24", "192.0.2.5/24 "})
    EXPECT_FALSE(parse_address_with_length(text).has_value()) << text;
}

TEST(PrefixText, ReadsEveryMask) {
  for (int length = 0; length <= 32; ++length) EXPECT_EQ(parse_mask(mask_text(length)).value(), length);
}

} // namespace
} // namespace snug
