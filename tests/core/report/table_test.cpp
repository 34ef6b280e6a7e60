#include "core/report/table.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

namespace snug {
namespace {

Table hostile() {
  Table t;
  t.title = "<b>Skerry</b> & co";
  t.columns = {{"name", "Name"}, {"n", "Number"}};
  t.rows.push_back({MachineId{1}, {std::string("=1+1, \"quoted\""), std::int64_t{-5}}});
  t.rows.push_back({{}, {std::string("a|b <script>"), {}}});
  return t;
}

// RFC 4180: CRLF, quotes doubled; OWASP: no field begins with a formula character, numbers stay numbers.
TEST(TableCsv, FollowsRfc4180AndGuardsFormulas) {
  EXPECT_EQ(csv(hostile()), "Name,Number\r\n\"'=1+1, \"\"quoted\"\"\",-5\r\na|b <script>,\r\n");
}

TEST(TableTabs, ACellStaysInItsCell) {
  Table t = hostile();
  t.rows[1].cells[0] = std::string("one\ttwo\r\nthree\x1b");
  EXPECT_EQ(tab_separated(t), "Name\tNumber\n'=1+1, \"quoted\"\t-5\none two three\t\n");
}

TEST(TableMarkdown, KeepsTextOutOfTheMarkup) {
  const std::string text = markdown(hostile());
  EXPECT_EQ(text.find("<script>"), std::string::npos);
  EXPECT_NE(text.find("| --- | ---: |"), std::string::npos) << text;
  EXPECT_EQ(text.find("a|b"), std::string::npos) << text;
}

TEST(TableForReading, LeavesOutColumnsThatNobodyFills) {
  Table t = hostile();
  t.columns.push_back({"vlan", "VLAN"});
  for (TableRow& row : t.rows) row.cells.emplace_back();
  t.columns.push_back({"note", "Note"});
  for (TableRow& row : t.rows) row.cells.emplace_back(std::string());
  for (const std::string& text : {markdown(t), html(t, "en"), plain(t)}) {
    EXPECT_EQ(text.find("VLAN"), std::string::npos) << text;
    EXPECT_EQ(text.find("Note"), std::string::npos) << text;
    EXPECT_NE(text.find("Number"), std::string::npos) << "one row has it: " << text;
  }
  EXPECT_NE(csv(t).find("VLAN"), std::string::npos) << "programs find every column";
  t.rows.clear();
  EXPECT_NE(markdown(t).find("VLAN"), std::string::npos) << "where there are no rows all of it is shown";
}

// For a terminal: columns below each other, no control characters, no markup.
TEST(TablePlain, StandsInColumns) {
  Table t = hostile();
  t.rows[1].cells[0] = std::string("Skärf\x1b[31m");
  const std::string text = plain(t);
  EXPECT_TRUE(text.starts_with("<b>Skerry</b> & co\n\n"
                               "Name            Number\n"
                               "=1+1, \"quoted\"  -5\n"
                               "Skärf"))
      << text;
  EXPECT_EQ(text.find('\x1b'), std::string::npos) << text;
  EXPECT_EQ(text.find('|'), std::string::npos) << text;
}

TEST(TableHtml, IsOneDocumentWithoutMarkupFromText) {
  const std::string text = html(hostile(), "en\" onload=\"x");
  EXPECT_EQ(text.find("<script>"), std::string::npos);
  EXPECT_EQ(text.find("\" onload"), std::string::npos);
  EXPECT_NE(text.find("&lt;b&gt;Skerry&lt;/b&gt; &amp; co"), std::string::npos);
  EXPECT_NE(text.find("<td class=\"n\">-5</td>"), std::string::npos);
}

TEST(TableJson, IsReadByTheLibraryAndLeavesOutWhatIsNotThere) {
  const auto j = nlohmann::json::parse(json(hostile()));
  EXPECT_EQ(j["title"], "<b>Skerry</b> & co");
  EXPECT_EQ(j["rows"][0], nlohmann::json::parse(R"({"id": "m1", "name": "=1+1, \"quoted\"", "n": -5})"));
  EXPECT_EQ(j["rows"][1], nlohmann::json::parse(R"({"name": "a|b <script>"})"));
  EXPECT_TRUE(nlohmann::json::parse(json(Table{}))["rows"].empty());
}

} // namespace
} // namespace snug
