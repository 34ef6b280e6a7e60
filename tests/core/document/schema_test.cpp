#include "core/document/schema.h"

#include "core/model/field.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace snug {
namespace {

// After a change of a table: snuglab-cli format --schema > resources/schema/snuglab-1.schema.json
TEST(Schema, TheFileInResourcesIsWhatTheTablesSay) {
  EXPECT_EQ(test::bytes_of(std::string(SNUG_SOURCE_DIR) + "/resources/schema/snuglab-1.schema.json"),
            json_schema());
}

TEST(Schema, NamesEveryMemberOfEveryTable) {
  const auto schema = nlohmann::json::parse(json_schema());
  for (const Kind kind : kinds_in_document()) {
    const StructInfo& table = info_of(kind);
    const auto& members = schema["$defs"][std::string(table.collection)]["properties"];
    EXPECT_EQ(members.size(), table.fields.size() + (table.id ? 1 : 0)) << table.collection;
    for (const FieldInfo& f : table.fields) EXPECT_TRUE(members.contains(f.key)) << f.key;
  }
}

TEST(Schema, PageNamesEveryMemberOfEveryTable) {
  const std::string page = format_page();
  for (const Kind kind : kinds_in_document()) {
    const StructInfo& table = info_of(kind);
    EXPECT_NE(page.find("\n## `" + std::string(table.collection) + "`: "), std::string::npos);
    for (const FieldInfo& f : table.fields) {
      EXPECT_NE(page.find("\n| `" + std::string(f.key) + "` | "), std::string::npos) << f.key;
      if (!f.row) continue;
      for (const FieldInfo& column : f.row->fields)
        EXPECT_NE(page.find("\n| `" + std::string(column.key) + "` | "), std::string::npos) << column.key;
    }
  }
  EXPECT_NE(page.find("| `memory` | 1 … 67108864 MiB | `1024` | memory |"), std::string::npos);
}

} // namespace
} // namespace snug
