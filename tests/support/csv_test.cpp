#include "tests/support/csv.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

// RFC 4180 section 2, items 1 to 7.
TEST(Csv, ReadsTheFormsOfTheStandard) {
  const auto rows = parse_csv("a,b,c\r\naaa,\"b\r\nbb\",ccc\r\n\"aaa\",\"b\"\"bb\",\"ccc\"\r\n x , ,");
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(rows[0].at("b"), "b\r\nbb");
  EXPECT_EQ(rows[1].at("b"), "b\"bb");
  EXPECT_EQ(rows[2].at("a"), " x ");
  EXPECT_EQ(rows[2].at("c"), "");
}

TEST(Csv, RefusesBrokenRecords) {
  for (const char* text : {"a,b\n1\n", "a,b\n1,2,3\n", "a\n\"x\n", "a\n\"x\"y\n", "a\nx\"y\n"})
    EXPECT_THROW(parse_csv(text), std::runtime_error) << text;
}

} // namespace
} // namespace snug::test
