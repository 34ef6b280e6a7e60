#include "core/net/prefix.h"

#include "tests/support/csv.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>
#include <random>

namespace snug {
namespace {

constexpr std::int64_t kMost = INT64_MAX;

Address at(std::string_view text) { return parse_address(text).value(); }
Prefix net(std::string_view text) { return parse_prefix(text).value(); }

TEST(Prefix, DefaultsToEverythingOfIpv4) { EXPECT_EQ(to_text(Prefix{}), "0.0.0.0/0"); }

TEST(Prefix, ClearsHostBits) {
  EXPECT_EQ(to_text(Prefix::of(at("10.1.2.3"), 8)), "10.0.0.0/8");
  EXPECT_EQ(to_text(Prefix::of(at("255.255.255.255"), 0)), "0.0.0.0/0");
  EXPECT_EQ(to_text(Prefix::of(at("2001:db8:ffff:ffff:ffff::1"), 65)), "2001:db8:ffff:ffff:8000::/65");
  EXPECT_EQ(to_text(Prefix::of(at("ffff::1"), 0)), "::/0");
}

// RFC 1878, 3021, 4632: tests/data/checks/ipv4-subnets.csv.
TEST(Prefix, AgreesWithTheTablesOfTheStandards) {
  int rows = 0;
  for (const auto& row : test::read_checks("ipv4-subnets.csv")) {
    if (row.at("prefix_len").empty()) continue;
    ++rows;
    const std::string& input = row.at("input");
    const Prefix p = net(input.starts_with('/') ? "0.0.0.0" + input : input);
    EXPECT_EQ(p.length(), std::stoi(row.at("prefix_len"))) << input;
    EXPECT_EQ(to_text(p.mask()), row.at("mask")) << input;
    EXPECT_EQ(mask_text(p.length()), row.at("mask")) << input;
    EXPECT_EQ(parse_mask(row.at("mask")).value(), p.length()) << input;
    EXPECT_EQ(p.mask().as_u32(), std::stoul(row.at("hex_mask"), nullptr, 16)) << input;
    EXPECT_EQ(p.size(), std::stoll(row.at("addresses"))) << input;
    EXPECT_EQ(p.host_count(), std::stoll(row.at("usable_hosts"))) << input;
    if (row.at("network").empty()) continue;
    EXPECT_EQ(to_text(p.network()), row.at("network")) << input;
    EXPECT_EQ(to_text(p.first_host()), row.at("first_host")) << input;
    EXPECT_EQ(to_text(p.last_host()), row.at("last_host")) << input;
    EXPECT_EQ(p.is_reserved(p.last()), p.length() < 31) << input;
    if (!row.at("broadcast").empty()) {
      EXPECT_EQ(to_text(p.last()), row.at("broadcast")) << input;
    }
  }
  EXPECT_EQ(rows, 136);
}

TEST(Prefix, AgreesWithMasksAndOverlapsOfTheChecks) {
  int rows = 0;
  for (const auto& row : test::read_checks("ipv4-subnets.csv")) {
    const std::string& kind = row.at("kind");
    if (kind.starts_with("mask-")) {
      ++rows;
      EXPECT_EQ(parse_mask(row.at("input")).has_value(), kind == "mask-valid") << row.at("input");
    }
    if (kind == "overlap") {
      ++rows;
      const auto both = test::words(row.at("input"));
      EXPECT_EQ(net(both[0]).overlaps(net(both[1])), row.at("as_printed") == "yes") << row.at("input");
      EXPECT_EQ(net(both[1]).overlaps(net(both[0])), row.at("as_printed") == "yes") << row.at("input");
    }
  }
  EXPECT_EQ(rows, 14);
}

TEST(Prefix, HandlesTheEnds) {
  const Prefix all = net("0.0.0.0/0");
  EXPECT_EQ(to_text(all.last()), "255.255.255.255");
  EXPECT_EQ(to_text(all.mask()), "0.0.0.0");
  EXPECT_EQ(all.size(), 4'294'967'296);
  EXPECT_EQ(all.host_count(), 4'294'967'294);
  EXPECT_TRUE(all.contains(at("255.255.255.255")));
  EXPECT_FALSE(all.contains(at("::")));
  EXPECT_TRUE(all.is_reserved(at("0.0.0.0")));
  const Prefix pair = net("255.255.255.254/31");
  EXPECT_EQ(to_text(pair.first_host()), "255.255.255.254");
  EXPECT_EQ(to_text(pair.last_host()), "255.255.255.255");
  EXPECT_FALSE(pair.is_reserved(pair.last()));
  const Prefix one = net("255.255.255.255/32");
  EXPECT_EQ(one.first_host(), one.last_host());
  EXPECT_EQ(one.host_count(), 1);
  EXPECT_FALSE(one.is_reserved(one.network()));
  EXPECT_FALSE(net("10.0.0.0/24").is_reserved(at("10.0.1.255")));
  EXPECT_TRUE(net("10.0.0.0/24").is_reserved(at("10.0.0.255")));
}

TEST(Prefix, HandlesEveryLengthOfIpv6) {
  const Address ones = at("ffff:ffff:ffff:ffff:ffff:ffff:ffff:ffff");
  for (int length = 0; length <= 128; ++length) {
    const Prefix p = Prefix::of(ones, length);
    EXPECT_EQ(p.last(), ones);
    EXPECT_EQ(p.mask(), p.network()); // of all ones, the network is the mask
    const int host_bits = 128 - length;
    EXPECT_EQ(p.size(), host_bits >= 63 ? kMost : std::int64_t{1} << host_bits) << length;
    const std::int64_t hosts = host_bits <= 1 ? p.size()
                                              : p.size() - (host_bits > 63    ? 0
                                                            : host_bits == 63 ? 0
                                                                              : 1);
    EXPECT_EQ(p.host_count(), hosts) << length;
    EXPECT_FALSE(p.is_reserved(p.last()));
    EXPECT_EQ(p.last_host(), ones);
    EXPECT_EQ(p.first_host(), host_bits <= 1 ? p.network() : p.network().plus(1).value());
    EXPECT_EQ(parse_prefix(to_text(p)).value(), p);
    if (length > 0) {
      EXPECT_FALSE(p.contains(p.network().plus(-1).value()));
    }
  }
}

// Every address of a /16 with every length 16…32 against blocks painted by counting, at both ends of the
// address space and inside it.
TEST(Prefix, AgreesWithPaintedBlocks) {
  constexpr std::uint32_t kSize = 65'536;
  for (const std::uint32_t base : {0U, 0x0a180000U, 0xffff0000U}) {
    for (int length = 16; length <= 32; ++length) {
      const std::uint32_t block = kSize >> (length - 16);
      std::vector<std::uint32_t> owner(kSize);
      for (std::uint32_t x = 0, filled = 0, name = 0; x < kSize; ++x) {
        owner[x] = name;
        if (++filled == block) filled = 0, ++name;
      }
      for (std::uint32_t x = 0; x < kSize; ++x) {
        const Prefix p = Prefix::of(Address::v4(base + x), length);
        const std::uint32_t first = p.network().as_u32() - base, last = p.last().as_u32() - base;
        ASSERT_TRUE(owner[first] == owner[x] && (first == 0 || owner[first - 1] != owner[x])) << to_text(p);
        ASSERT_TRUE(owner[last] == owner[x] && (last == kSize - 1 || owner[last + 1] != owner[x]))
            << to_text(p);
        for (const std::uint32_t other :
             {x, x ^ 1U, (x + block) % kSize, (x + 1) % kSize, (x * 40'503U) % kSize})
          ASSERT_EQ(p.contains(Address::v4(base + other)), owner[other] == owner[x]) << to_text(p) << other;
        const bool edge = block > 2 && (x == first || x == last);
        ASSERT_EQ(p.is_reserved(Address::v4(base + x)), edge) << to_text(p);
        ASSERT_EQ(p.size(), block);
        ASSERT_EQ(p.host_count(), block > 2 ? block - 2 : block);
      }
    }
  }
}

// Bit by bit, the slow way.
bool slow_contains(const Prefix& p, const Address& a) {
  const std::uint64_t net_halves[] = {p.network().high(), p.network().low()}, halves[] = {a.high(), a.low()};
  for (int bit = 0; bit < p.length(); ++bit) {
    const int shift = 63 - bit % 64;
    if (((net_halves[bit / 64] >> shift) & 1U) != ((halves[bit / 64] >> shift) & 1U)) return false;
  }
  return true;
}

TEST(Prefix, HoldsItsLawsForRandomIpv6) {
  std::mt19937_64 random(15);
  for (int i = 0; i < test::scaled(1'000'000); ++i) {
    const Address a = Address::v6(random(), random());
    const int length = static_cast<int>(random() % 129), other_length = static_cast<int>(random() % 129);
    const Prefix p = Prefix::of(a, length);
    // An address that shares a random number of leading bits with a.
    const Bits128 tail = Bits128::ones(static_cast<int>(random() % 129));
    const Address b = Address::of(Family::v6, (a.value() & ~tail) | (Bits128{random(), random()} & tail));
    const Prefix q = Prefix::of(b, other_length);
    ASSERT_TRUE(p.contains(a) && p.contains(p.network()) && p.contains(p.last()) && p.contains(p));
    ASSERT_EQ(p.contains(b), slow_contains(p, b)) << to_text(p) << " " << to_text(b);
    ASSERT_EQ(p.overlaps(q), q.overlaps(p));
    ASSERT_EQ(p.overlaps(q), p.network() <= q.last() && q.network() <= p.last())
        << to_text(p) << " " << to_text(q);
    ASSERT_EQ(p.contains(q), p.network() <= q.network() && q.last() <= p.last())
        << to_text(p) << " " << to_text(q);
    if (const auto after = p.last().plus(1)) {
      ASSERT_FALSE(p.contains(*after)) << to_text(p);
    }
    if (const auto before = p.network().plus(-1)) {
      ASSERT_FALSE(p.contains(*before)) << to_text(p);
    }
    const auto step = static_cast<std::int64_t>(random());
    if (const auto moved = a.plus(step); moved && step != INT64_MIN) {

      ASSERT_EQ(moved->plus(-step), a) << to_text(a) << step;
    }
  }
}

TEST(AddressRange, CountsWithoutWrapping) {
  EXPECT_EQ((AddressRange{at("10.0.0.10"), at("10.0.0.10")}.size()), 1);
  EXPECT_EQ((AddressRange{at("0.0.0.0"), at("255.255.255.255")}.size()), 4'294'967'296);
  EXPECT_EQ((AddressRange{at("::"), at("::7fff:ffff:ffff:fffe")}.size()), kMost);
  EXPECT_EQ((AddressRange{at("::"), at("::7fff:ffff:ffff:fffd")}.size()), kMost - 1);
  EXPECT_EQ((AddressRange{at("::"), at("ffff:ffff:ffff:ffff:ffff:ffff:ffff:ffff")}.size()), kMost);
}

TEST(AddressRange, ContainsAndOverlapsWithinOneFamily) {
  const AddressRange pool{at("10.0.0.10"), at("10.0.0.20")};
  EXPECT_TRUE(pool.contains(at("10.0.0.10")) && pool.contains(at("10.0.0.20")));
  EXPECT_FALSE(pool.contains(at("10.0.0.9")) || pool.contains(at("10.0.0.21")) ||
               pool.contains(at("::a00:f")));
  EXPECT_TRUE(pool.overlaps({at("10.0.0.20"), at("10.0.0.30")}));
  EXPECT_FALSE(pool.overlaps({at("10.0.0.21"), at("10.0.0.30")}));
  EXPECT_FALSE(pool.overlaps({at("::"), at("ffff::")}));
}

} // namespace
} // namespace snug
