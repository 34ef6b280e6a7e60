#include "core/base/size.h"

#include "tests/support/csv.h"

#include <gtest/gtest.h>
#include <random>

namespace snug {
namespace {

struct Good {
  const char* text;
  std::int64_t mib;
};

TEST(Size, Reads) {
  const Good rows[] = {{"4096", 4096},
                       {"0", 0},
                       {"007", 7},
                       {"4096 MiB", 4096},
                       {"4 GiB", 4096},
                       {"4gib", 4096},
                       {"4G", 4096},
                       {"3.5g", 3584},
                       {"3,5 GiB", 3584},
                       {" 3.5 GiB ", 3584},
                       {"3.5\u00a0GiB", 3584},
                       {"1.5t", 1'572'864},
                       {"512m", 512},
                       {"1.024 GiB", 1049}, // 1048.576
                       {"1,024 GiB", 1049},
                       {"0.5 GiB", 512},
                       {"0.5 MiB", 1}, // half up
                       {"0.499 MiB", 0},
                       {"0.0009765625 GiB", 1},
                       {"0.000000000001 TiB", 0},
                       {"64 TiB", kMaxMib},
                       {"67108864", kMaxMib},
                       {"67108864.4 MiB", kMaxMib}};
  for (const Good& row : rows) {
    const auto mib = parse_mib(row.text);
    ASSERT_TRUE(mib.has_value()) << row.text << ": " << english(mib.error().message);
    EXPECT_EQ(*mib, row.mib) << row.text;
  }
}

TEST(Size, RefusesWithASentence) {
  struct Row {
    const char* text;
    const char* sentence;
  };
  const Row rows[] = {
      {"", "a size is missing: write one like 4 GiB or 512 MiB"},
      {"  ", "a size is missing: write one like 4 GiB or 512 MiB"},
      {"GiB", "\"GiB\" does not start with a number: sizes look like 4 GiB or 512 MiB"},
      {"+4", "\"+4\" does not start with a number: sizes look like 4 GiB or 512 MiB"},
      {"-4 GiB", "\"-4 GiB\" is negative: a size is zero or more"},
      {"1.024,5", "\"1.024,5\" has more than one separator: write it without grouping, like 1024.5"},
      {"1,024.5 GiB", "\"1,024.5 GiB\" has more than one separator: write it without grouping, like 1024.5"},
      {"1.024.000", "\"1.024.000\" has more than one separator: write it without grouping, like 1024000"},
      {"4. GiB", "\"4. GiB\" needs a digit on both sides of the separator"},
      {".5 GiB", "\".5 GiB\" needs a digit on both sides of the separator"},
      {"1.024",
       "\"1.024\" can be read in two ways: write 1024 for 1024 MiB, or give the unit, like 1.024 GiB"},
      {"3.5", "\"3.5\" has a fraction but no unit: write 3.5 GiB or whole MiB"},
      {"0.512", "\"0.512\" has a fraction but no unit: write 0.512 GiB or whole MiB"},
      {"4 GB",
       "\"4 GB\": GB counts in powers of ten, sizes here in powers of two: write 4 GiB if that is meant, or "
       "3815 MiB for exactly that many bytes"},
      {"4 KiB", "\"4 KiB\": KiB is not a unit of size: use MiB, GiB or TiB"},
      {"4 g b", "\"4 g b\": g b is not a unit of size: use MiB, GiB or TiB"},
      {"4 GiB 2", "\"4 GiB 2\": GiB 2 is not a unit of size: use MiB, GiB or TiB"},
      {"1e3", "\"1e3\": e3 is not a unit of size: use MiB, GiB or TiB"},
      {"65 TiB", "\"65 TiB\" is more than 65536.0 GiB, the largest size that can be planned"},
      {"67108865", "\"67108865\" is more than 65536.0 GiB, the largest size that can be planned"},
      {"99999999999999999999999999",
       "\"99999999999999999999999999\" is more than 65536.0 GiB, the largest size that "
       "can be planned"},
      {"99999999999999999999 TB",
       "\"99999999999999999999 TB\" is more than 65536.0 GiB, the largest size that can be planned"},
      {"0.1234567890123 TiB",
       "\"0.1234567890123 TiB\" has 13 digits after the separator: at most 12 are read"},
  };
  for (const Row& row : rows) {
    const auto mib = parse_mib(row.text);
    ASSERT_FALSE(mib.has_value()) << row.text;
    EXPECT_EQ(english(mib.error().message), row.sentence);
  }
}

TEST(Size, WritesTheShorterText) {
  const Good rows[] = {{"0 MiB", 0},           {"512 MiB", 512},
                       {"1 GiB", 1024},        {"4 GiB", 4096},
                       {"3.5 GiB", 3584},      {"4097 MiB", 4097},
                       {"1.25 GiB", 1280},     {"1152 MiB", 1152},
                       {"65536 GiB", kMaxMib}, {"67108863 MiB", kMaxMib - 1}};
  for (const Good& row : rows) EXPECT_EQ(mib_text(row.mib), row.text);
}

TEST(Size, ReadsWhatItWrites) {
  for (std::int64_t mib = 0; mib <= 70'000; ++mib) ASSERT_EQ(parse_mib(mib_text(mib)).value(), mib);
  std::mt19937_64 random(1024);
  for (int i = 0; i < 10'000; ++i) {
    const auto mib = static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(kMaxMib + 1));
    ASSERT_EQ(parse_mib(mib_text(mib)).value(), mib);
  }
}

// IEC 80000-13 units: tests/data/checks/limits.csv.
TEST(Size, UnitsAreThoseOfTheStandard) {
  std::map<std::string, std::string> limit;
  for (const auto& row : test::read_checks("limits.csv")) limit[row.at("id")] = row.at("value");
  EXPECT_EQ(std::to_string(kBytesPerMib), limit.at("iec-MiB"));
  EXPECT_EQ(std::to_string(parse_mib("1 GiB").value() * kBytesPerMib), limit.at("iec-GiB"));
  EXPECT_EQ(std::to_string(parse_mib("1 TiB").value() * kBytesPerMib), limit.at("iec-TiB"));
}

// limits.csv tb-in-gib 931.3226 and gb500-in-gib 465.6613: whole MiB, half up; 1 GB and 1 MB by arithmetic.
TEST(Size, SaysWhatDecimalUnitsAre) {
  const Good rows[] = {{"1 TB", 953'674},
                       {"500 GB", 476'837},
                       {"1GB", 954},
                       {"1 mb", 1},
                       {"1.5 GB", 1431},
                       {"0,25 tb", 238'419},
                       {"0.123456789012 TB", 117'738},
                       {"1.0000005 MB", 1}};
  for (const Good& row : rows) {
    const auto mib = parse_mib(row.text);
    ASSERT_FALSE(mib.has_value()) << row.text;
    const std::string sentence = english(mib.error().message);
    EXPECT_NE(sentence.find(" " + std::to_string(row.mib) + " MiB for exactly"), std::string::npos)
        << sentence;
  }
}

} // namespace
} // namespace snug
