#include "core/net/mac.h"
#include "core/net/sha1.h"
#include "tests/support/csv.h"
#include "tests/support/process.h"

#include <algorithm>
#include <filesystem>
#include <gtest/gtest.h>
#include <random>
#include <set>

namespace snug {
namespace {

const std::string kRegistry = "/usr/share/ieee-data/";

bool has_registry() { return std::filesystem::exists(kRegistry + "oui.csv"); }

std::string digits(const Mac& mac) {
  std::string out = to_text(mac);
  std::erase(out, ':');
  std::transform(out.begin(), out.end(), out.begin(),
                 [](char c) { return c >= 'a' ? static_cast<char>(c - 32) : c; });
  return out;
}

std::set<std::string> assignments(const std::string& file) {
  std::set<std::string> out;
  for (const auto& row : test::read_csv(kRegistry + file)) out.insert(row.at("Assignment"));
  return out;
}

// Debian package ieee-data: MA-L, MA-M, MA-S and IAB assignments of 24, 28 and 36 bits.
TEST(MacOracle, NoDerivedMacIsInAnAssignedBlock) {
  if (!has_registry()) GTEST_SKIP() << "skipped: the package ieee-data is not installed";
  std::set<std::string> assigned;
  for (const char* file : {"oui.csv", "mam.csv", "oui36.csv", "iab.csv"}) assigned.merge(assignments(file));
  ASSERT_GT(assigned.size(), 30'000U);
  for (std::uint32_t card = 0; card < 10'000; ++card) {
    const std::string mac = digits(derived_mac("5e0c4a52-11f7", card / 100, card));
    for (const std::size_t length : {6U, 7U, 9U})
      ASSERT_FALSE(assigned.contains(mac.substr(0, length))) << mac;
  }
  // No assignment begins with any first octet that a derived MAC can have, so this holds for all of them.
  for (const std::string& block : assigned) EXPECT_FALSE(block[1] == '2' && block[0] != '0') << block;
}

// mac.csv rows oui, oui-count, oui-local, oui-group describe the same registry.
TEST(MacOracle, RegistryIsTheOneOfTheChecks) {
  if (!has_registry()) GTEST_SKIP() << "skipped: the package ieee-data is not installed";
  const auto records = test::read_csv(kRegistry + "oui.csv");
  std::set<std::string> local, group, expected_local, expected_group;
  for (const auto& row : records) {
    const Mac first(std::stoull(row.at("Assignment"), nullptr, 16) << 24U);
    if (first.is_locally_administered() && !first.is_group()) local.insert(row.at("Assignment"));
    if (first.is_group()) group.insert(row.at("Assignment"));
  }
  for (const auto& row : test::read_checks("mac.csv")) {
    const auto inputs = test::words(row.at("input"));
    if (row.at("kind") == "oui-count") {
      EXPECT_GE(records.size(), std::stoul(row.at("expected")));
    }
    if (row.at("kind") == "oui-local") expected_local.insert(inputs.begin(), inputs.end());
    if (row.at("kind") == "oui-group") expected_group.insert(inputs.begin(), inputs.end());
  }
  EXPECT_EQ(local, expected_local);
  EXPECT_EQ(group, expected_group);
}

TEST(Sha1Oracle, AgreesWithSha1sum) {
  std::mt19937_64 random(160);
  constexpr std::size_t kSizes[]{0, 1, 54, 55, 56, 57, 63, 64, 65, 118, 119, 120, 127, 128, 129, 10'000};
  for (const std::size_t size : kSizes) {
    std::string bytes;
    for (std::size_t i = 0; i < size; ++i) bytes += static_cast<char>(random() & 0xffU);
    const test::Ran ran = test::run_program({"sha1sum"}, bytes);
    if (ran.code == 127) GTEST_SKIP() << "skipped: sha1sum is not installed";
    ASSERT_EQ(ran.out.substr(0, 40), to_text(sha1(bytes))) << size << " octets";
  }
}

} // namespace
} // namespace snug
