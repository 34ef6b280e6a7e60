// What is handed out does not depend on the locale (RELIABILITY row 19 of the design).

#include "core/layout/draw.h"
#include "core/report/changes.h"
#include "core/report/findings_report.h"
#include "core/report/reach_report.h"
#include "core/report/svg.h"
#include "core/report/tables.h"
#include "tests/support/locales.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <sstream>

namespace snug {
namespace {

std::vector<std::string> everything(const Lab& lab, const Lab& other) {
  const Analysis a(lab);
  std::vector<std::string> out{
      svg(draw(a), {Theme::light}), findings_text(a, {{}, true}),      findings_markdown(a),
      findings_json(a, {{}, true}), changes_text(changes(lab, other)), changes_json(changes(lab, other))};
  for (const Table& t : {address_table(a), segment_table(a), machine_table(a), exercise_table(a)})
    for (const std::string& written : {csv(t), markdown(t), html(t, "de"), json(t), plain(t)})
      out.push_back(written);
  return out;
}

TEST(Locale, ExportsAreTheSameEverywhere) {
  const test::Locales restore;
  // Its numbers have more than three digits and fractions.
  const Lab lab = test::sample("sixty"), other = test::sample("mistakes");
  const std::vector<std::string> usual = everything(lab, other);
  EXPECT_NE(usual[1].find('.'), std::string::npos);
  for (const char* name : test::kLocaleNames) {
    test::wear_locale(name);
    std::ostringstream grouped;
    grouped << 1234567;
    ASSERT_EQ(grouped.str(), "1.234.567") << "the locale has no effect";
    const std::vector<std::string> here = everything(lab, other);
    for (std::size_t i = 0; i < usual.size(); ++i) EXPECT_TRUE(here[i] == usual[i]) << name << " " << i;
  }
}

} // namespace
} // namespace snug
