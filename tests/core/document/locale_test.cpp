// The octets of a document do not depend on the locale (RELIABILITY row 19 of the design).

#include "core/document/read.h"
#include "core/document/schema.h"
#include "core/document/write.h"
#include "tests/support/random_lab.h"

#include <clocale>
#include <gtest/gtest.h>
#include <locale>

namespace snug {
namespace {

// Groups by threes with '.' and has ',' as decimal point, as German does, whether or not such a locale is
// installed.
class Grouping : public std::numpunct<char> {
 protected:
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

class Locales {
 public:
  Locales() : global_(std::locale()), c_(std::setlocale(LC_ALL, nullptr)) {}
  ~Locales() {
    std::setlocale(LC_ALL, c_.c_str());
    std::locale::global(global_);
  }
  Locales(const Locales&) = delete;
  Locales& operator=(const Locales&) = delete;
  Locales(Locales&&) = delete;
  Locales& operator=(Locales&&) = delete;

 private:
  std::locale global_;
  std::string c_;
};

TEST(Locale, DocumentsAndComplaintsAreTheSameEverywhere) {
  const Locales restore;
  test::Random r(19);
  const Lab lab = test::plausible_lab(r, 60, 8);
  const std::string bytes = write_lab(lab);
  const std::string schema = json_schema();
  const std::string page = format_page();
  const std::string bad =
      R"({"format": "snuglab", "version": 1, "machines": [{"id": "m1", "memory": 67108865}]})";
  const std::string complaint = english(read_lab(bad, "x").error());
  const std::string numbers = R"({"format": "snuglab", "version": 1, "x": [1.50, 1e5, 123456]})";
  std::locale::global(std::locale(std::locale::classic(), new Grouping));
  // C names; those that are not installed leave the locale as it is.
  for (const char* name : {"C", "de_DE.UTF-8", "tr_TR.UTF-8", "ar_EG.UTF-8"}) {
    std::setlocale(LC_ALL, name);
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
