#include "core/roles/read_roles.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

std::string file_with(std::string_view roles) {
  return "{\n  \"format\": \"snuglab-roles\",\n  \"version\": 1,\n  \"roles\": [" + std::string(roles) +
         "]\n}\n";
}

TEST(ReadRoles, ReadsWhatAPersonWrote) {
  const auto roles = read_roles(file_with(R"({"id": "o1", "key": "kiosk", "title": "Kiosk", "lean_usual": 768,
    "offers": [{"service": "web", "port": 443}], "colour": "red"})"),
                                "own.json");
  ASSERT_TRUE(roles.has_value()) << english(roles.error());
  ASSERT_EQ(roles->size(), 1U);
  EXPECT_EQ(roles->front().title, "Kiosk");
  EXPECT_EQ(roles->front().lean_usual, 768);
  EXPECT_EQ(roles->front().lean_least, 512);
  ASSERT_EQ(roles->front().offers.size(), 1U);
  EXPECT_EQ(roles->front().offers.front().port, 443);
  EXPECT_FALSE(roles->front().unknown.empty());
}

TEST(ReadRoles, AFileWithoutRolesIsEmpty) {
  const auto roles = read_roles("{\"format\": \"snuglab-roles\", \"version\": 1}", "own.json");
  ASSERT_TRUE(roles.has_value());
  EXPECT_TRUE(roles->empty());
}

// Each bad file with the complaint it gets, word for word.
TEST(ReadRoles, SaysWhatIsWrongAndWhere) {
  struct Row {
    std::string bytes;
    std::string complaint;
  };
  const std::vector<Row> rows{
      {file_with(R"({"id": "o1", "key": "a", "title": "A", "processors": 0})"),
       R"(own.json:4:66: /roles/0/processors: processors is 0; it must lie between 1 and 1024)"},
      {file_with(R"({"id": "o1", "title": "A"})"),
       R"(own.json:4:13: /roles/0: a role needs a key, like "web-server")"},
      {file_with(R"({"id": "o1", "key": "a"})"), R"(own.json:4:13: /roles/0: the role "a" needs a title)"},
      {file_with(R"({"key": "a", "title": "A"})"),
       R"(own.json:4:13: /roles/0: this role has no id: give it one of its own, like "id": "o12")"},
      {file_with(R"({"id": "o1", "key": "a", "title": "A"}, {"id": "o2", "key": "a", "title": "B"})"),
       R"(own.json:4:73: /roles/1/key: the key "a" was given already at line 4, column 33: give this role another one)"},
      {file_with(R"({"id": "o1", "key": "a", "title": "A", "lean_least": 2048})"),
       R"(own.json:4:13: /roles/0: "lean_usual" of "a" is 1.0 GiB, less than "lean_least", which is 2.0 GiB: an installer refuses below the first mark, the second is the least, the third the usual memory)"},
      {file_with(R"({"id": "o1", "key": "a", "title": "A", "current_refused_below": 513})"),
       R"(own.json:4:13: /roles/0: "current_least" of "a" is 512 MiB, less than "current_refused_below", which is 513 MiB: an installer refuses below the first mark, the second is the least, the third the usual memory)"},
      {file_with(R"({"id": "o1", "key": "a", "title": "A", "is_hypervisor": true, "lean_footprint": 1024})"),
       R"(own.json:4:93: /roles/0/lean_footprint: "lean_footprint" of "a" is 1.0 GiB: with the usual memory, 1.0 GiB, nothing is left for guests: lower it, or raise the usual memory)"},
      {file_with(R"({"id": "o1", "key": "a", "title": "A", "offers": [{"service": "x", "port": 70000}]})"),
       R"(own.json:4:88: /roles/0/offers/0/port: port is 70000; it must lie between 0 and 65535)"},
      {file_with(R"({"id": "o1", "key": "a", "title": "A", "needs": [{"service": "x", "from": "m1"}]})"),
       R"(own.json:4:87: /roles/0/needs/0/from: from names m1, but the document has no machine with this id: correct it, or add that machine)"},
      {"{\"format\": \"snuglab-roles\", \"version\": 1, \"roles\": [], \"machines\": [{\"id\": \"m1\"}]}",
       R"(own.json:1:56: /machines: a file of roles holds no "machines": take it away)"},
      {"{\"format\": \"snuglab-roles\", \"version\": 1, \"pc\": {\"cores\": 6}}",
       R"(own.json:1:43: /pc: a file of roles holds no "pc": take it away)"},
      {"{\"format\": \"snuglab-roles\", \"version\": 2}",
       R"(own.json:1:40: /version: these roles have format version 2, but this program reads versions up to 1: open the file with the Snuglab that wrote it or a later one; the file is unchanged)"},
      {"{\"format\": \"snuglab\", \"version\": 1}",
       R"(own.json:1:12: /format: this document has the format "snuglab", a file of roles has "format": "snuglab-roles": choose another file)"},
      {"{\"version\": 1}",
       R"(own.json:1:1: this is not a file of roles: begin it with "format": "snuglab-roles" and "version": 1)"},
      {"[]",
       R"(own.json:1:1: this is JSON, but not a file of roles, which is an object in braces: choose another file)"},
      {"{\"format\": \"snuglab-roles\", \"version\": 1, \"roles\": [}",
       R"(own.json:1:53: } does not belong here: take it away, or complete what stands before it)"},
  };
  for (const Row& row : rows) {
    const auto roles = read_roles(row.bytes, "own.json");
    ASSERT_FALSE(roles.has_value()) << row.bytes;
    EXPECT_EQ(english(roles.error()), row.complaint);
  }
}

} // namespace
} // namespace snug
