#include "core/document/migrate.h"

#include "core/document/read_with.h"
#include "core/document/write.h"
#include "core/model/field.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

const std::string kDocuments = std::string(SNUG_SOURCE_DIR) + "/tests/data/documents/";

// One file for every version that was given to people, never edited (RELIABILITY row 33 of the design). It
// holds every member of every table.
TEST(Migrate, EveryVersionLoadsAndSavesToTheCurrentOctets) {
  for (std::int64_t version = 1; version <= kFormatVersion; ++version) {
    const std::string file = kDocuments + "v" + std::to_string(version) + ".snuglab";
    const auto loaded = load_file(file);
    ASSERT_TRUE(loaded) << english(loaded.error());
    EXPECT_EQ(write_lab(loaded->lab), test::bytes_of(kDocuments + "current.snuglab"));
  }
}

TEST(Migrate, GoldenFileHoldsEveryMember) {
  const std::string bytes = test::bytes_of(kDocuments + "current.snuglab");
  for (const Kind kind : kinds_in_document())
    for (const FieldInfo& f : info_of(kind).fields) {
      EXPECT_NE(bytes.find("\"" + std::string(f.key) + "\": "), std::string::npos) << f.key;
      if (!f.row) continue;
      for (const FieldInfo& column : f.row->fields)
        EXPECT_NE(bytes.find("\"" + std::string(column.key) + "\": "), std::string::npos) << column.key;
    }
}

// A made-up version 0 that called machines "boxes", and one before it that had sizes in GiB.
void boxes_to_machines(nlohmann::ordered_json& document, std::vector<Message>&) {
  if (!document.contains("boxes")) return;
  document["machines"] = document["boxes"];
  document.erase("boxes");
}
void gib_to_mib(nlohmann::ordered_json& document, std::vector<Message>& notes) {
  for (auto& box : document["boxes"]) {
    if (!box.contains("gib")) continue;
    box["memory"] = box["gib"].get<int>() * 1024;
    box.erase("gib");
  }
  static constexpr Template kNote{"test-note", "sizes are MiB now"};
  notes.push_back(say(kNote));
}
constexpr std::array<Migration, 2> kSteps{{{-1, &gib_to_mib}, {0, &boxes_to_machines}}};

TEST(Migrate, StepsRunOneAfterTheOther) {
  const auto loaded = detail::read_with(
      R"({"format": "snuglab", "version": -1, "boxes": [{"id": "m1", "gib": 3, "hereafter": 1.50}]})", "x",
      kSteps);
  ASSERT_TRUE(loaded) << english(loaded.error());
  ASSERT_EQ(loaded->lab.machines.size(), 1U);
  EXPECT_EQ(loaded->lab.machines[0].memory, 3072);
  std::vector<std::string> notes;
  for (const Message& m : loaded->notes) notes.emplace_back(m.id());
  EXPECT_EQ(notes, (std::vector<std::string>{"test-note", "document-migrated", "kept-unknown"}));
  const auto later =
      detail::read_with(R"({"format": "snuglab", "version": 0, "boxes": [{"id": "m1"}]})", "x", kSteps);
  ASSERT_TRUE(later);
  EXPECT_EQ(later->lab.machines[0].memory, 1024);
}

TEST(Migrate, FaultsOfOldVersionsAreSaidWithTheirPath) {
  const auto bad = detail::read_with(
      R"({"format": "snuglab", "version": 0, "boxes": [{"id": "m1", "memory": 0}]})", "old.snuglab", kSteps);
  ASSERT_FALSE(bad);
  EXPECT_EQ(english(bad.error()),
            "old.snuglab: /machines/0/memory: memory is 0 MiB; it must lie between 1 MiB and 65536 GiB");
  const auto twice = detail::read_with(
      "{\"format\": \"snuglab\", \"version\": 0,\n \"boxes\": 1, \"boxes\": 2}", "x", kSteps);
  ASSERT_FALSE(twice);
  EXPECT_EQ(english(twice.error()), "x:2:14: /boxes: \"boxes\" stands twice in one object, first at line 2, "
                                    "column 2: take one of them away");
  const auto before = detail::read_with(R"({"format": "snuglab", "version": -2})", "x", kSteps);
  ASSERT_FALSE(before);
  EXPECT_EQ(before.error().message.id(), "document-version-form");
}

TEST(Migrate, AMissingStepIsSaid) {
  std::vector<Message> notes;
  const auto text = migrate(R"({"version": -1})", -1, 1, std::span(kSteps).subspan(1), notes);
  ASSERT_FALSE(text);
  EXPECT_EQ(text.error().message.id(), "document-older");
}

TEST(Migrate, StepsOfTheProgramReachTheCurrentVersion) {
  std::int64_t version = migrations().empty() ? kFormatVersion : migrations().front().from;
  for (const Migration& m : migrations()) EXPECT_EQ(m.from, version++);
  EXPECT_EQ(version, kFormatVersion);
}

} // namespace
} // namespace snug
