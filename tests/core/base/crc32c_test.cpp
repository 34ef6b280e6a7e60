#include "core/base/crc32c.h"

#include <gtest/gtest.h>

#include <string>

namespace snug {
namespace {

// RFC 3720 appendix B.4, whose values stand with the lowest octet first; the last is the check value that
// catalogues of checksums give for CRC-32C (from memory).
TEST(Crc32c, PublishedValues) {
  std::string up, down;
  for (int i = 0; i < 32; ++i) up += static_cast<char>(i);
  for (int i = 31; i >= 0; --i) down += static_cast<char>(i);
  EXPECT_EQ(crc32c(std::string(32, '\0')), 0x8a9136aaU);
  EXPECT_EQ(crc32c(std::string(32, '\xff')), 0x62a8ab43U);
  EXPECT_EQ(crc32c(up), 0x46dd794eU);
  EXPECT_EQ(crc32c(down), 0x113fdb5cU);
  EXPECT_EQ(crc32c("123456789"), 0xe3069283U);
  EXPECT_EQ(crc32c(""), 0U);
}

TEST(Crc32c, EveryFlippedBitIsSeen) {
  const std::string line = "0000007 {\"undo\": true}";
  const std::uint32_t right = crc32c(line);
  for (std::size_t bit = 0; bit < line.size() * 8; ++bit) {
    std::string other = line;
    other[bit / 8] = static_cast<char>(static_cast<unsigned char>(other[bit / 8]) ^ (1U << (bit % 8)));
    EXPECT_NE(crc32c(other), right) << bit;
  }
}

} // namespace
} // namespace snug
