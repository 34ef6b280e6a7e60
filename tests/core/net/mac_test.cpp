#include "core/net/mac.h"

#include "tests/support/csv.h"

#include <gtest/gtest.h>
#include <random>

namespace snug {
namespace {

Mac mac(std::string_view text) { return parse_mac(text).value(); }

// Forms and bits: tests/data/checks/mac.csv (IEEE Std 802 from memory, RFC 9542 from memory, RFC 7043).
TEST(Mac, AgreesWithFormsAndBitsOfTheChecks) {
  int rows = 0;
  for (const auto& row : test::read_checks("mac.csv")) {
    if (row.at("kind") != "mac" && row.at("kind") != "bits") continue;
    ++rows;
    const auto m = parse_mac(row.at("input"));
    ASSERT_EQ(m.has_value(), row.at("valid") == "yes") << row.at("input");
    if (!m) continue;
    EXPECT_EQ(to_text(*m), row.at("canonical"));
    EXPECT_EQ(!m->is_group(), row.at("unicast") == "yes") << row.at("input");
    EXPECT_EQ(m->is_locally_administered(), row.at("locally_administered") == "yes") << row.at("input");
  }
  EXPECT_EQ(rows, 38);
}

TEST(Mac, TellsWhatACardCanUse) {
  EXPECT_TRUE(mac("00:00:5e:00:53:01").is_usable());
  EXPECT_FALSE(mac("00:00:00:00:00:00").is_usable());
  EXPECT_FALSE(mac("ff:ff:ff:ff:ff:ff").is_usable());
  EXPECT_FALSE(mac("01:00:5e:90:10:00").is_usable());
}

TEST(Mac, RefusesWithASentence) {
  struct Row {
    const char* text;
    const char* sentence;
  };
  const Row rows[] = {
      {"", "a MAC address is missing: write one like 02:00:5e:00:53:01"},
      {" 00:00:5E:00:53:01", "\" 00:00:5E:00:53:01\" has spaces around it: write 00:00:5e:00:53:01"},
      {"00:00:5e:00:53:zz",
       "\"00:00:5e:00:53:zz\" is not a MAC address: z is neither a hexadecimal digit nor a separator"},
      {"00-00:5e:00:53:01", "\"00-00:5e:00:53:01\" mixes separators: write 00:00:5e:00:53:01"},
      {"0:0:5e:0:53:1", "\"0:0:5e:0:53:1\" leaves out zeros: write two digits everywhere, 00:00:5e:00:53:01"},
      {"00:00:5e:ff:fe:00:53:01",
       "\"00:00:5e:ff:fe:00:53:01\" has eight octets, which is an EUI-64: a MAC address has "
       "six, like 02:00:5e:00:53:01"},
      {"00:00:5e:00:53",
       "\"00:00:5e:00:53\" has 10 hexadecimal digits: a MAC address has twelve, like 02:00:5e:00:53:01"},
      {"000.05e.005.301", "\"000.05e.005.301\" groups its digits in another way: write 00:00:5e:00:53:01"},
      {":", "\":\" has 0 hexadecimal digits: a MAC address has twelve, like 02:00:5e:00:53:01"},
      {"a", "\"a\" has one hexadecimal digit: a MAC address has twelve, like 02:00:5e:00:53:01"},
      {"00:00:5e:00:53:0\u0430",
       "\"00:00:5e:00:53:0\u0430\" is not a MAC address: \u0430 (U+0430) is neither a "
       "hexadecimal digit nor a separator"},
  };
  for (const Row& row : rows) {
    const auto m = parse_mac(row.text);
    ASSERT_FALSE(m.has_value()) << row.text;
    EXPECT_EQ(english(m.error().message), row.sentence);
  }
}

TEST(Mac, RefusesOtherForms) {
  for (const char* text :
       {"00:00:5e:00:53:1", "00:00:5e:00:53:01:", ":00:00:5e:00:53:01", "00.00.5e.00.53.01", "0000:5e00:5301",
        "0000-5e00-5301", "00005e0053011", "00005e005301 ", "0x005e005301", "00:00:5e:00:5301",
        "000:05e:005:301", "00:00:5e:00:53-01", "::::::::::::::::::"})
    EXPECT_FALSE(parse_mac(text).has_value()) << text;
}

TEST(Mac, PrintsWhatItReads) {
  std::mt19937_64 random(48);
  for (int i = 0; i < 10'000; ++i) {
    const Mac m(random());
    ASSERT_EQ(mac(to_text(m)), m);
  }
  std::string out = "card ";
  append_text(out, Mac(0x00005e005301));
  EXPECT_EQ(out, "card 00:00:5e:00:53:01");
}

// RFC 4291 Appendix A: tests/data/checks/mac.csv.
TEST(Mac, GivesTheInterfaceIdentifierOfTheStandard) {
  int rows = 0;
  for (const auto& row : test::read_checks("mac.csv")) {
    if (row.at("kind") != "eui64" || row.at("canonical").empty()) continue;
    ++rows;
    const std::uint64_t id = modified_eui64(mac(row.at("input")));
    const auto expected = test::words(row.at("expected"));
    const Address in_network = parse_address(expected.back()).value();
    EXPECT_EQ(to_text(Address::v6(in_network.high(), id)), expected.back());
    if (expected.size() == 1) continue;
    std::string octets = expected.front();
    std::erase(octets, ':');
    EXPECT_EQ(id, std::stoull(octets, nullptr, 16)) << row.at("input");
  }
  EXPECT_EQ(rows, 6);
}

} // namespace
} // namespace snug
