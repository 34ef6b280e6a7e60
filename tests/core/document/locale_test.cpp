// The octets of a document do not depend on the locale (RELIABILITY row 19 of the design).

#include "core/document/read.h"
#include "core/document/schema.h"
#include "core/document/write.h"
#include "tests/support/locales.h"
#include "tests/support/random_lab.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

TEST(Locale, DocumentsAndComplaintsAreTheSameEverywhere) {
  const test::Locales restore;
  test::Random r(19);
  const Lab lab = test::plausible_lab(r, 60, 8);
  const std::string bytes = write_lab(lab);
  const std::string schema = json_schema();
  const std::string page = format_page();
  const std::string bad =
      R"({"format": "snuglab", "version": 1, "machines": [{"id": "m1", "memory": 67108865}]})";
  const std::string complaint = english(read_lab(bad, "x").error());
  const std::string numbers = R"({"format": "snuglab", "version": 1, "x": [1.50, 1e5, 123456]})";
  for (const char* name : test::kLocaleNames) {
    test::wear_locale(name);
    EXPECT_EQ(write_lab(lab), bytes) << name;
    const auto again = read_lab(bytes, "x");
    ASSERT_TRUE(again) << name;
    EXPECT_EQ(*again, lab) << name;
    EXPECT_EQ(json_schema(), schema) << name;
    EXPECT_EQ(format_page(), page) << name;
    EXPECT_EQ(english(read_lab(bad, "x").error()), complaint) << name;
    const auto kept = read_lab(numbers, "x");
    ASSERT_TRUE(kept) << name;
    EXPECT_EQ(kept->unknown.members(), R"("x":[1.50,1e5,123456])") << name;
  }
}

} // namespace
} // namespace snug
