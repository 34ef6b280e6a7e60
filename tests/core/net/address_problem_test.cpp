#include "core/net/address.h"
#include "core/net/prefix.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

struct Row {
  const char* text;
  const char* sentence;
};

TEST(AddressProblem, SaysWhatIsWrongAndWhatWasMeant) {
  const Row rows[] = {
      {"", "an address is missing: write one like 192.0.2.10 or 2001:db8::10"},
      {"10.0.0.1 ", "\"10.0.0.1 \" has spaces around it: write 10.0.0.1"},
      {"\t::1", "\"\t::1\" has spaces around it: write ::1"},
      {"10.0.0.1/24", "\"10.0.0.1/24\" has a prefix length: only the address 10.0.0.1 belongs here"},
      {"[2001:db8::1]:80",
       "\"[2001:db8::1]:80\" has brackets, which are for an address with a port: write 2001:db8::1"},
      {"10.0.0.1:8080", "\"10.0.0.1:8080\" has a port: only the address 10.0.0.1 belongs here"},
      {"fe80::1%eth0", "\"fe80::1%eth0\" names a zone (\"eth0\"): only the address fe80::1 belongs here"},
      {"ferry-db",
       "\"ferry-db\" is not an address: write digits like 192.0.2.10 or 2001:db8::10, not a name"},
      {"10.0.0", "\"10.0.0\" has 3 numbers: an IPv4 address has four, like 192.0.2.10"},
      {"10", "\"10\" has one number: an IPv4 address has four, like 192.0.2.10"},
      {"10.0..1", "\"10.0..1\" has a dot without a number beside it: an IPv4 address looks like 192.0.2.10"},
      {"10.0.0.256", "\"10.0.0.256\": 256 is too large, a number in an IPv4 address is at most 255"},
      {"010.0.0.1", "\"010.0.0.1\": 010 starts with a zero, which some programs read as octal: write 10"},
      {"10.0.0.00", "\"10.0.0.00\": 00 starts with a zero, which some programs read as octal: write 0"},
      {"10,0.0.1", "\"10,0.0.1\" is not an address: , does not belong in one"},
      {"10.0.0.\u0661", "\"10.0.0.\u0661\" is not an address: \u0661 (U+0661) does not belong in one"},
      {"10.0.0.1\u202e1", "\"10.0.0.1\u202e1\" is not an address: U+202E does not belong in one"},
      {"2001:db8::g", "\"2001:db8::g\" is not an address: g does not belong in one"},
      {"12345::", "\"12345::\": 12345 has 5 digits, a field of an IPv6 address has one to four"},
      {"1:2:3:4:5:6:7",
       "\"1:2:3:4:5:6:7\" has 7 of the eight fields of an IPv6 address: write \"::\" once where "
       "zeros are left out"},
      {"1:2:3:4:5:6:7:8:9",
       "\"1:2:3:4:5:6:7:8:9\" has 9 fields: an IPv6 address has eight, and \"::\" stands for at "
       "least one"},
      {"1::2::3", "\"1::2::3\" has \"::\" more than once: it may stand for zeros only once"},
      {"1:::2", "\"1:::2\" has three colons in a row: write two"},
      {":1:2:3:4:5:6:7:8",
       "\":1:2:3:4:5:6:7:8\" starts or ends with a single colon: write \"::\" where zeros are "
       "left out"},
      {"192.0.2.1::",
       "\"192.0.2.1::\": the dotted part 192.0.2.1 may only stand at the end of an IPv6 address"},
      {"::192.0.2.256", "\"::192.0.2.256\": 256 is too large, a number in an IPv4 address is at most 255"},
      {"::192.0.2", "\"::192.0.2\" has 3 numbers: an IPv4 address has four, like 192.0.2.10"},
      {"1:2:3:4:5:6:7:1.2.3.4",
       "\"1:2:3:4:5:6:7:1.2.3.4\" has 9 fields: an IPv6 address has eight, and \"::\" stands "
       "for at least one"},
  };
  for (const Row& row : rows) {
    const auto a = parse_address(row.text);
    ASSERT_FALSE(a.has_value()) << row.text;
    EXPECT_EQ(english(a.error().message), row.sentence);
  }
}

TEST(AddressProblem, ShortensWhatIsVeryLong) {
  const auto a = parse_address(std::string(100'000, '1'));
  ASSERT_FALSE(a.has_value());
  EXPECT_LT(english(a.error().message).size(), 300U);
}

TEST(AddressProblem, SaysWhatIsWrongWithPrefixes) {
  const Row rows[] = {
      {"", "a prefix is missing: write one like 10.0.0.0/24 or fd00::/64"},
      {"/24", "a prefix is missing: write one like 10.0.0.0/24 or fd00::/64"},
      {" 10.0.0.0/8", "\" 10.0.0.0/8\" has spaces around it: write 10.0.0.0/8"},
      {"10.0.0.0", "\"10.0.0.0\" has no length: write it after a slash, like 10.0.0.0/24"},
      {"fd00::", "\"fd00::\" has no length: write it after a slash, like fd00::/64"},
      {"10.0.0.0/", "\"10.0.0.0/\" has nothing after the slash: write the length, like 10.0.0.0/24"},
      {"10.0.0.0/-1", "\"10.0.0.0/-1\": \"-1\" is not a length: write a whole number from 0 to 32"},
      {"fd00::/x", "\"fd00::/x\": \"x\" is not a length: write a whole number from 0 to 128"},
      {"10.0.0.0/08", "\"10.0.0.0/08\": the length 08 starts with a zero: write 8"},
      {"10.0.0.0/33", "\"10.0.0.0/33\": the length 33 is too large: an IPv4 prefix has at most 32 bits"},
      {"fd00::/999999999999",
       "\"fd00::/999999999999\": the length 999999999999 is too large: an IPv6 prefix has at "
       "most 128 bits"},
      {"10.0.0.0/255.255.0.0", "\"10.0.0.0/255.255.0.0\" has a mask after the slash: write 10.0.0.0/16"},
      {"10.0.0.5/24", "\"10.0.0.5/24\" is an address inside a network: the network itself is 10.0.0.0/24"},
      {"10.0.0.256/24", "\"10.0.0.256\": 256 is too large, a number in an IPv4 address is at most 255"},
      {"10.0.0.0/24/24", "\"10.0.0.0/24/24\": \"24/24\" is not a length: write a whole number from 0 to 32"},
  };
  for (const Row& row : rows) {
    const auto p = parse_prefix(row.text);
    ASSERT_FALSE(p.has_value()) << row.text;
    EXPECT_EQ(english(p.error().message), row.sentence);
  }
}

TEST(AddressProblem, SaysWhatIsWrongWithMasks) {
  const Row rows[] = {
      {"255.0.255.0",
       "\"255.0.255.0\" is not a mask: its ones must come first and its zeros last, like 255.255.255.0"},
      {"0.0.0.255", "\"0.0.0.255\" is a mask turned around: write 255.255.255.0"},
      {"ffff::", "\"ffff::\" is an IPv6 address: a mask is written like 255.255.255.0"},
      {"24", "\"24\" has one number: an IPv4 address has four, like 192.0.2.10"},
  };
  for (const Row& row : rows) {
    const auto m = parse_mask(row.text);
    ASSERT_FALSE(m.has_value()) << row.text;
    EXPECT_EQ(english(m.error().message), row.sentence);
  }
}

} // namespace
} // namespace snug
