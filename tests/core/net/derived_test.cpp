#include "core/net/mac.h"
#include "core/net/sha1.h"
#include "tests/support/csv.h"

#include <gtest/gtest.h>
#include <map>
#include <set>

namespace snug {
namespace {

// RFC 4193 3.2.2; the values were computed with sha1sum: tests/data/checks/mac.csv.
TEST(Derived, FollowsTheSampleAlgorithmOfTheStandard) {
  int rows = 0;
  for (const auto& row : test::read_checks("mac.csv")) {
    if (row.at("kind") != "rfc4193") continue;
    ++rows;
    const auto input = test::words(row.at("input")), expected = test::words(row.at("expected"));
    const std::uint64_t time = std::stoull(input[0].substr(4), nullptr, 16);
    const Mac mac = parse_mac(input[1].substr(4)).value();
    EXPECT_EQ("prefix=" + to_text(unique_local_prefix(time, modified_eui64(mac))), expected[1])
        << row.at("input");
  }
  EXPECT_EQ(rows, 3);
}

TEST(Derived, UniqueLocalPrefixTakesTheLowBitsOfTheHash) {
  const std::string uid = "b6f4a1c2-0d1e-4f7a-9c55-2f1d8a3e7b90";
  const Prefix p = unique_local_prefix(uid);
  EXPECT_EQ(p.length(), 48);
  EXPECT_TRUE(parse_prefix("fd00::/8").value().contains(p));
  const std::string digest = to_text(sha1(uid));
  EXPECT_EQ(p.network().high() >> 16U, std::stoull("fd" + digest.substr(30), nullptr, 16));
  EXPECT_NE(p, unique_local_prefix(uid + "x"));
}

// The vectors of the FNV authors' published test suite (from memory).
TEST(Derived, HashIsFnv1a) {
  EXPECT_EQ(fnv1a(""), 0xcbf29ce484222325ULL);
  EXPECT_EQ(fnv1a("a"), 0xaf63dc4c8601ec8cULL);
  EXPECT_EQ(fnv1a("foobar"), 0x85944171f73967e8ULL);
}

// Values that files hold: they never change. Computed by an independent program of a few lines (Python).
TEST(Derived, NeverChanges) {
  EXPECT_EQ(stable_hash(""), 0xf52a15e9a9b5e89bULL);
  EXPECT_EQ(stable_hash("lab"), 0x5e59bbdb1cd08464ULL);
  EXPECT_EQ(to_text(derived_mac("lab", 0, 1)), "82:68:71:49:e4:2d");
  EXPECT_EQ(to_text(derived_mac("lab", 3, 7)), "82:3d:78:ee:e8:5c");
}

// mac.csv kind slap: IEEE Std 802c, RFC 8948 1 (from memory): second digit 2 for addresses that are hashed.
TEST(Derived, MacIsLocalUnicastAndSpread) {
  std::map<std::uint64_t, int> first_octets;
  std::set<Mac> seen;
  constexpr int kCards = 20'000;
  for (std::uint32_t card = 0; card < kCards; ++card) {
    const Mac mac = derived_mac("5e0c4a52", card % 4, card);
    EXPECT_TRUE(mac.is_locally_administered() && mac.is_usable());
    EXPECT_EQ((mac.bits() >> 40U) & 0xfU, 2U);
    EXPECT_NE(mac.bits() >> 40U, 2U);
    ++first_octets[mac.bits() >> 40U];
    seen.insert(mac);
  }
  EXPECT_EQ(seen.size(), std::size_t{kCards});
  ASSERT_EQ(first_octets.size(), 15U);
  for (const auto& [octet, n] : first_octets) EXPECT_NEAR(n, kCards / 15.0, 200) << octet; // 5.6 deviations
}

TEST(Derived, MacDependsOnLabSeatAndCard) {
  const Mac mac = derived_mac("lab", 1, 2);
  EXPECT_EQ(derived_mac("lab", 1, 2), mac);
  EXPECT_NE(derived_mac("lab2", 1, 2), mac);
  EXPECT_NE(derived_mac("lab", 2, 2), mac);
  EXPECT_NE(derived_mac("lab", 1, 3), mac);
  EXPECT_NE(derived_mac("lab", 2, 1), mac);
}

} // namespace
} // namespace snug
