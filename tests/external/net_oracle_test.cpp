#include "core/net/subnets.h"
#include "tests/support/csv.h"
#include "tests/support/process.h"
#include "tests/support/scale.h"

#include <arpa/inet.h>
#include <gtest/gtest.h>
#include <random>
#include <sstream>
#include <unistd.h>

namespace snug {
namespace {

constexpr const char* kPython = "/usr/bin/python3";

struct Random {
  std::mt19937_64 bits;
  explicit Random(unsigned seed) : bits(seed) {}

  int below(int n) { return static_cast<int>(bits() % static_cast<unsigned>(n)); }

  // Half IPv4; the fields of IPv6 are often zero, its first ones often those of a well-known block.
  Address address() {
    if (below(2) == 0) return Address::v4(static_cast<std::uint32_t>(bits()));
    std::uint64_t mask[2] = {0, 0};
    for (int k = 0; k < 8; ++k)
      if (below(2) == 0) mask[k / 4] |= 0xffffULL << static_cast<unsigned>(16 * (k % 4));
    static constexpr std::uint64_t kStarts[] = {0, 0xfe80000000000000, 0xff02000000000000,
                                                0x0064ff9b00000000};
    if (below(8) == 0) mask[0] = 0, mask[1] &= below(2) == 0 ? 0xffffffffULL : ~0ULL;
    const std::uint64_t low = below(4) == 0 ? bits() | 0x0000ffff00000000ULL : bits();
    return Address::v6((bits() & mask[0]) | kStarts[below(4)], low & mask[1]);
  }
  Prefix prefix() {
    const Address a = address();
    return Prefix::of(a, below(a.bits() + 1));
  }
  // One that often lies in or around p.
  Prefix near(const Prefix& p) {
    const Address a = below(4) == 0 ? address() : p.last();
    return Prefix::of(a, below(a.bits() + 1));
  }
};

bool has_python() { return access(kPython, X_OK) == 0; }

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> out;
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}

std::vector<std::string> ask_python(const std::string& questions) {
  const std::string script = std::string(SNUG_SOURCE_DIR) + "/tests/external/net_oracle.py";
  const test::Ran ran = test::run_program({kPython, script}, questions);
  EXPECT_EQ(ran.code, 0) << ran.err;
  return lines_of(ran.out);
}

template <typename T>
bool is_dotted(const T& ours) {
  return !ours.is_v4() && to_text(ours).find('.') != std::string::npos;
}

// Python writes no dotted forms of IPv6: those are compared as numbers.
void expect_same(const Address& ours, const std::string& theirs) {
  ASSERT_EQ(parse_address(theirs).value(), ours) << theirs;
  if (!is_dotted(ours)) {
    ASSERT_EQ(to_text(ours), theirs);
  }
}

void expect_same(const Prefix& ours, const std::string& theirs) {
  ASSERT_EQ(parse_prefix(theirs).value(), ours) << theirs;
  if (!is_dotted(ours)) {
    ASSERT_EQ(to_text(ours), theirs);
  }
}

std::string hexadecimal(std::uint64_t high, std::uint64_t low) {
  std::string out;
  for (const std::uint64_t half : {high, low})
    for (unsigned shift = 64; shift > 0;) {
      shift -= 4;
      const char digit = "0123456789abcdef"[(half >> shift) & 0xfU];
      if (!out.empty() || digit != '0') out += digit;
    }
  return out.empty() ? "0" : out;
}

const char* flag(bool value) { return value ? "1" : "0"; }

TEST(NetOracle, AddressesAgreeWithPython) {
  if (!has_python()) GTEST_SKIP() << "skipped: /usr/bin/python3 is not installed";
  Random random(1);
  std::vector<Address> addresses;
  std::string questions;
  for (int i = 0; i < 10'000; ++i)
    questions += "a " + to_text(addresses.emplace_back(random.address())) + "\n";
  const auto answers = ask_python(questions);
  ASSERT_EQ(answers.size(), addresses.size());
  for (std::size_t i = 0; i < addresses.size(); ++i) {
    const Address& a = addresses[i];
    const auto said = test::words(answers[i]);
    ASSERT_EQ(said.size(), 6U);
    ASSERT_NO_FATAL_FAILURE(expect_same(a, said[0]));
    ASSERT_EQ(hexadecimal(a.high(), a.low()), said[1]) << said[0];
    ASSERT_EQ(flag(is_loopback(a)), said[2]) << said[0];
    ASSERT_EQ(flag(is_multicast(a)), said[3]) << said[0];
    ASSERT_EQ(flag(is_link_local(a)), said[4]) << said[0];
    ASSERT_EQ(reverse_name(a), said[5]);
  }
}

TEST(NetOracle, PrefixesAgreeWithPython) {
  if (!has_python()) GTEST_SKIP() << "skipped: /usr/bin/python3 is not installed";
  Random random(2);
  std::vector<std::pair<Prefix, Prefix>> pairs;
  std::string questions;
  for (int i = 0; i < 10'000; ++i) {
    const Prefix p = random.prefix();
    pairs.emplace_back(p, random.near(p));
    questions += "p " + to_text(p) + " " + to_text(pairs.back().second) + "\n";
  }
  const auto answers = ask_python(questions);
  ASSERT_EQ(answers.size(), pairs.size());
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    const auto& [p, other] = pairs[i];
    const auto said = test::words(answers[i]);
    ASSERT_EQ(said.size(), 8U);
    ASSERT_NO_FATAL_FAILURE(expect_same(p, said[0]));
    ASSERT_NO_FATAL_FAILURE(expect_same(p.last(), said[1]));
    ASSERT_NO_FATAL_FAILURE(expect_same(p.mask(), said[2]));
    const bool huge = said[3].size() > 19 || (said[3].size() == 19 && said[3] > std::to_string(INT64_MAX));
    ASSERT_EQ(std::to_string(p.size()), huge ? std::to_string(INT64_MAX) : said[3]) << said[0];
    ASSERT_NO_FATAL_FAILURE(expect_same(p.first_host(), said[4]));
    ASSERT_NO_FATAL_FAILURE(expect_same(p.last_host(), said[5]));
    ASSERT_EQ(flag(p.overlaps(other)), said[6]) << said[0] << " " << to_text(other);
    ASSERT_EQ(flag(p.contains(other)), said[7]) << said[0] << " " << to_text(other);
  }
}

TEST(NetOracle, AggregationAgreesWithPython) {
  if (!has_python()) GTEST_SKIP() << "skipped: /usr/bin/python3 is not installed";
  Random random(3);
  std::vector<std::vector<Prefix>> groups;
  std::string questions;
  for (int i = 0; i < 1'000; ++i) {
    auto& group = groups.emplace_back();
    // Short prefixes, or the end of the last ones, so that many are neighbours.
    for (int n = 1 + random.below(12); n > 0; --n) {
      const bool v4 = random.below(2) == 0;
      const Address a = v4 ? Address::v4(0xfffffff0U | static_cast<std::uint32_t>(random.below(16)))
                           : Address::v6(random.bits() << 60U, 0);
      group.push_back(Prefix::of(a, v4 ? 28 + random.below(5) : random.below(5)));
    }
    questions += "c";
    for (const Prefix& p : group) questions += " " + to_text(p);
    questions += "\n";
  }
  const auto answers = ask_python(questions);
  ASSERT_EQ(answers.size(), groups.size());
  for (std::size_t i = 0; i < groups.size(); ++i) {
    std::string ours;
    for (const Prefix& p : aggregate(groups[i])) ours += (ours.empty() ? "" : " ") + to_text(p);
    ASSERT_EQ(ours, answers[i]);
  }
}

// Texts of addresses with one to three characters changed, put in or taken out.
std::vector<std::string> broken_texts(int count) {
  Random random(4);
  static constexpr std::string_view kCharacters = "0123456789abcdefABCDEF::::....%/ gx-+";
  std::vector<std::string> out;
  for (int i = 0; i < count; ++i) {
    std::string text = to_text(random.address());
    for (int edits = 1 + random.below(3); edits > 0 && !text.empty(); --edits) {
      const auto at = static_cast<std::size_t>(random.below(static_cast<int>(text.size())));
      const char c =
          kCharacters[static_cast<std::size_t>(random.below(static_cast<int>(kCharacters.size())))];
      const int kind = random.below(3);
      if (kind == 0) text[at] = c;
      if (kind == 1) text.insert(at, 1, c);
      if (kind == 2) text.erase(at, 1);
    }
    out.push_back(text);
  }
  return out;
}

TEST(NetOracle, RefusesWhatGlibcRefuses) {
  int good = 0;
  const auto texts = broken_texts(test::scaled(1'000'000));
  for (const std::string& text : texts) {
    in_addr v4{};
    in6_addr v6{};
    const bool is4 = inet_pton(AF_INET, text.c_str(), &v4) == 1,
               is6 = inet_pton(AF_INET6, text.c_str(), &v6) == 1;
    const auto ours = parse_address(text);
    ASSERT_EQ(ours.has_value(), is4 || is6) << text;
    if (!ours) {
      ASSERT_FALSE(english(ours.error().message).empty()) << text;
      continue;
    }
    ++good;
    if (is4) {
      ASSERT_EQ(ours->as_u32(), ntohl(v4.s_addr)) << text;
    }
    for (unsigned k = 0; is6 && k < 16; ++k) {
      const std::uint64_t half = k < 8 ? ours->high() : ours->low();
      ASSERT_EQ((half >> (56 - 8 * (k % 8))) & 0xffU, v6.s6_addr[k]) << text;
    }
  }
  EXPECT_GT(good, static_cast<int>(texts.size() / 10));
  EXPECT_LT(good, static_cast<int>(texts.size() * 9 / 10));
}

TEST(NetOracle, RefusesWhatPythonRefuses) {
  if (!has_python()) GTEST_SKIP() << "skipped: /usr/bin/python3 is not installed";
  const auto texts = broken_texts(10'000);
  std::string questions;
  for (const std::string& text : texts) {
    questions += "t ";
    for (const char c : text) {
      questions += "0123456789abcdef"[static_cast<unsigned char>(c) >> 4U];
      questions += "0123456789abcdef"[static_cast<unsigned char>(c) & 0xfU];
    }
    questions += "\n";
  }
  const auto answers = ask_python(questions);
  ASSERT_EQ(answers.size(), texts.size());
  for (std::size_t i = 0; i < texts.size(); ++i)
    ASSERT_EQ(flag(parse_address(texts[i]).has_value()), answers[i]) << texts[i];
}

// glibc writes 64:ff9b::/96 in hexadecimal, which RFC 6052 allows too.
TEST(NetOracle, PrintsWhatGlibcPrints) {
  Random random(5);
  const Prefix translation = parse_prefix("64:ff9b::/96").value();
  for (int i = 0; i < 10'000; ++i) {
    const Address a = random.address();
    if (translation.contains(a)) continue;
    char text[INET6_ADDRSTRLEN];
    if (a.is_v4()) {
      in_addr raw{};
      raw.s_addr = htonl(a.as_u32());
      ASSERT_EQ(to_text(a), inet_ntop(AF_INET, &raw, text, sizeof text));
      continue;
    }
    in6_addr raw{};
    for (unsigned k = 0; k < 16; ++k)
      raw.s6_addr[k] = static_cast<std::uint8_t>((k < 8 ? a.high() : a.low()) >> (56 - 8 * (k % 8)));
    ASSERT_EQ(to_text(a), inet_ntop(AF_INET6, &raw, text, sizeof text));
  }
}

} // namespace
} // namespace snug
