#include "core/document/new_lab.h"

#include <gtest/gtest.h>
#include <set>

namespace snug {
namespace {

TEST(NewLab, UidsAreThirtyTwoDigitsAndDiffer) {
  std::set<std::string> seen;
  for (int i = 0; i < 1000; ++i) {
    const std::string uid = random_uid();
    EXPECT_EQ(uid.size(), 32U);
    EXPECT_EQ(uid.find_first_not_of("0123456789abcdef"), std::string::npos) << uid;
    seen.insert(uid);
  }
  EXPECT_EQ(seen.size(), 1000U);
}

TEST(NewLab, BlankIsADefaultLabWithAnIdentity) {
  Lab expected;
  expected.facts.uid = "u";
  EXPECT_EQ(blank_lab("u"), expected);
}

Address address(const char* text) { return parse_address(text).value(); }

TEST(NewLab, CopyHasItsOwnIdentity) {
  Lab lab = blank_lab("first");
  lab.facts.local_prefix6 = unique_local_prefix("first");
  const std::uint64_t high = lab.facts.local_prefix6->network().high();
  Segment s;
  s.id.number = 1;
  s.prefix6 = Prefix::of(Address::v6(high | 7U, 0), 64);
  s.kept.push_back({{}, Address::v6(high | 7U, 16), Address::v6(high | 7U, 31)});
  s.gateway6 = address("fe80::1");
  s.prefix4 = parse_prefix("10.0.7.0/24").value();
  lab.segments.push_back(s);
  Card derived;
  derived.id.number = 2;
  derived.mac_source = MacSource::derived;
  derived.mac = derived_mac("first", 0, 2);
  derived.addresses.push_back({{}, AddressKind::suggested, Address::v6(high | 7U, 10), std::nullopt});
  derived.addresses.push_back({{}, AddressKind::typed, address("2001:db8::10"), std::nullopt});
  Card typed;
  typed.id.number = 3;
  typed.mac_source = MacSource::typed;
  typed.mac = parse_mac("02:00:5e:00:53:01").value();
  lab.cards = {derived, typed};

  const Lab copy = copy_as_template(lab, "second");
  const std::uint64_t other = unique_local_prefix("second").network().high();
  ASSERT_NE(other, high);
  Lab expected = lab;
  expected.facts.uid = "second";
  expected.facts.local_prefix6 = unique_local_prefix("second");
  expected.segments[0].prefix6 = Prefix::of(Address::v6(other | 7U, 0), 64);
  expected.segments[0].kept[0] = {{}, Address::v6(other | 7U, 16), Address::v6(other | 7U, 31)};
  expected.cards[0].mac = derived_mac("second", 0, 2);
  expected.cards[0].addresses[0].address = Address::v6(other | 7U, 10);
  EXPECT_EQ(copy, expected);
}

} // namespace
} // namespace snug
