#include "core/net/subnets.h"

#include "tests/support/csv.h"
#include "tests/support/scale.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <random>

namespace snug {
namespace {

Prefix net(std::string_view text) { return parse_prefix(text).value(); }

std::vector<Prefix> nets(const std::string& text) {
  std::vector<Prefix> out;
  for (const std::string& word : test::words(text)) out.push_back(net(word));
  return out;
}

std::string joined(const std::vector<Prefix>& prefixes) {
  std::string out;
  for (const Prefix& p : prefixes) out += (out.empty() ? "" : " ") + to_text(p);
  return out;
}

std::string refusal(const Prefix& p, int length) {
  const auto parts = subnets_of(p, length);
  return parts ? "" : english(parts.error().message);
}

TEST(Subnets, DividesEqually) {
  EXPECT_EQ(joined(subnets_of(net("10.0.0.0/8"), 8).value()), "10.0.0.0/8");
  EXPECT_EQ(joined(subnets_of(net("192.0.2.0/24"), 26).value()),
            "192.0.2.0/26 192.0.2.64/26 192.0.2.128/26 192.0.2.192/26");
  EXPECT_EQ(joined(subnets_of(net("255.255.255.254/31"), 32).value()),
            "255.255.255.254/32 255.255.255.255/32");
  EXPECT_EQ(joined(subnets_of(net("::/0"), 1).value()), "::/1 8000::/1");
  const auto sites = subnets_of(net("fd00:0:1::/48"), 64).value();
  ASSERT_EQ(sites.size(), 65'536U); // RFC 4193 3.1: 16 bits of subnet id
  EXPECT_EQ(to_text(sites.back()), "fd00:0:1:ffff::/64");
}

TEST(Subnets, RefusesWithASentence) {
  EXPECT_EQ(refusal(net("10.0.0.0/24"), 23),
            "10.0.0.0/24 cannot be divided into /23 networks: they are larger than it");
  EXPECT_EQ(refusal(net("10.0.0.0/24"), 33), "/33 is no length of an IPv4 prefix: it is at most /32");
  EXPECT_EQ(refusal(net("10.0.0.0/8"), 25),
            "10.0.0.0/8 divided into /25 networks gives more than 65536 of them");
}

// RFC 4632 section 6.1 (from memory, confirmed with ipaddress): sizes asked for by C1 to C6 in one block.
TEST(Subnets, AllocatesTheWorkedExample) {
  std::map<std::string, Prefix> customers;
  for (const auto& row : test::read_checks("ipv4-subnets.csv"))
    if (row.at("kind") == "allocation") customers[row.at("id")] = net(row.at("input"));
  ASSERT_EQ(customers.size(), 7U);
  const Prefix block = customers.at("cidr-block");
  std::vector<Prefix> taken;
  for (const char* id : {"cidr-C1", "cidr-C2", "cidr-C3", "cidr-C4", "cidr-C5", "cidr-C6"}) {
    const Prefix& expected = customers.at(id);
    EXPECT_EQ(lowest_free(block, expected.length(), taken), expected) << id;
    taken.push_back(expected);
  }
}

TEST(Subnets, FindsNothingWhereNothingFits) {
  const Prefix block = net("255.255.255.0/24");
  EXPECT_EQ(lowest_free(block, 25, nets("255.255.255.0/25 255.255.255.128/25")), std::nullopt);
  EXPECT_EQ(lowest_free(block, 25, nets("255.255.255.1/32 255.255.255.255/32")), std::nullopt);
  EXPECT_EQ(lowest_free(block, 32, nets("0.0.0.0/0")), std::nullopt);
  EXPECT_EQ(lowest_free(block, 23, {}), std::nullopt);
  EXPECT_EQ(lowest_free(block, 33, {}), std::nullopt);
  EXPECT_EQ(lowest_free(block, 32, nets("::/0 255.255.254.0/24")), net("255.255.255.0/32"));
  EXPECT_EQ(lowest_free(net("fd00::/8"), 64, nets("fd00::/64 fd00:0:0:1::/128")), net("fd00:0:0:2::/64"));
}

// One byte an address; a /20 at both ends of the address space.
TEST(Subnets, AgreesWithABitmap) {
  std::mt19937_64 random(20);
  for (int i = 0; i < test::scaled(5'000); ++i) {
    const Prefix block = Prefix::of(Address::v4(i % 2 == 0 ? 0 : 0xffffffff), 22);
    const std::uint32_t base = block.network().as_u32();
    std::vector<char> used(1024, 0);
    std::vector<Prefix> taken;
    for (std::uint64_t n = random() % 12; n > 0; --n) {
      const Prefix t = Prefix::of(Address::v4(base + static_cast<std::uint32_t>(random() % 1024)),
                                  24 + static_cast<int>(random() % 9));
      taken.push_back(t);
      for (std::int64_t x = 0; x < t.size(); ++x)
        used[t.network().as_u32() - base + static_cast<std::size_t>(x)] = 1;
    }
    for (int length = 22; length <= 32; ++length) {
      const std::ptrdiff_t size = 1024 >> (length - 22);
      std::optional<Prefix> expected;
      for (std::ptrdiff_t x = 0; x < 1024 && !expected; x += size)
        if (std::count(used.begin() + x, used.begin() + x + size, 1) == 0)
          expected = Prefix::of(Address::v4(base + static_cast<std::uint32_t>(x)), length);
      ASSERT_EQ(lowest_free(block, length, taken), expected) << joined(taken) << " /" << length;
    }
    std::vector<char> after(1024, 0);
    const auto fewest = aggregate(taken);
    for (const Prefix& t : fewest)
      for (std::int64_t x = 0; x < t.size(); ++x)
        ++after[t.network().as_u32() - base + static_cast<std::size_t>(x)];
    ASSERT_EQ(after, used) << joined(taken);
    for (std::size_t k = 1; k < fewest.size(); ++k)
      ASSERT_FALSE(fewest[k].length() == fewest[k - 1].length() &&
                   Prefix::of(fewest[k].network(), fewest[k].length() - 1).contains(fewest[k - 1]));
  }
}

// ipv4-subnets.csv kind aggregate: RFC 4632, RFC 2317 section 2, python3 ipaddress.collapse_addresses.
TEST(Subnets, AggregatesLikeTheChecks) {
  int rows = 0;
  for (const auto& row : test::read_checks("ipv4-subnets.csv")) {
    if (row.at("kind") != "aggregate") continue;
    ++rows;
    EXPECT_EQ(joined(aggregate(nets(row.at("input")))), row.at("as_printed")) << row.at("id");
  }
  EXPECT_EQ(rows, 6);
}

TEST(Subnets, AggregatesTheEnds) {
  EXPECT_EQ(joined(aggregate({})), "");
  EXPECT_EQ(joined(aggregate(nets("128.0.0.0/1 0.0.0.0/1 8000::/1 ::/1"))), "0.0.0.0/0 ::/0");
  EXPECT_EQ(joined(aggregate(nets("0.0.0.0/0 10.0.0.0/8 10.0.0.0/8"))), "0.0.0.0/0");
  EXPECT_EQ(joined(aggregate(nets("255.255.255.255/32 255.255.255.254/32"))), "255.255.255.254/31");
  EXPECT_EQ(joined(aggregate(nets("255.255.255.255/32 ::/128"))), "255.255.255.255/32 ::/128");
}

// ipv4-subnets.csv: each usable host count needs its own length, one more host the next shorter one.
TEST(Subnets, ChoosesTheSmallestNetworkForHosts) {
  int rows = 0;
  for (const auto& row : test::read_checks("ipv4-subnets.csv")) {
    if (row.at("usable_hosts").empty()) continue;
    ++rows;
    const std::int64_t hosts = std::stoll(row.at("usable_hosts"));
    const int length = std::stoi(row.at("prefix_len"));
    EXPECT_EQ(length_for_hosts(hosts, SmallNetworks::as_hosts), hosts == 2 ? 31 : length) << row.at("id");
    EXPECT_EQ(length_for_hosts(hosts), std::min(length, 30)) << row.at("id");
    if (length > 0 && length <= 30) {
      EXPECT_EQ(length_for_hosts(hosts + 1), length - 1) << row.at("id");
    }
  }
  EXPECT_EQ(rows, 136);
  EXPECT_EQ(length_for_hosts(0), std::nullopt);
  EXPECT_EQ(length_for_hosts(-1), std::nullopt);
  EXPECT_EQ(length_for_hosts(4'294'967'295), std::nullopt);
  EXPECT_EQ(length_for_hosts(3, SmallNetworks::as_hosts), 29);
}

} // namespace
} // namespace snug
