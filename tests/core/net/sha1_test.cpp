#include "core/net/sha1.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

// FIPS 180-2 appendix A.1 to A.3 and the empty message of the NIST example values (from memory; the external
// tests compare with sha1sum).
TEST(Sha1, AgreesWithPublishedVectors) {
  EXPECT_EQ(to_text(sha1("abc")), "a9993e364706816aba3e25717850c26c9cd0d89d");
  EXPECT_EQ(to_text(sha1("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")),
            "84983e441c3bd26ebaae4aa1f95129e5e54670f1");
  EXPECT_EQ(to_text(sha1(std::string(1'000'000, 'a'))), "34aa973cd4c4daa4f61eeb2bdbad27316534016f");
  EXPECT_EQ(to_text(sha1("")), "da39a3ee5e6b4b0d3255bfef95601890afd80709");
}

} // namespace
} // namespace snug
