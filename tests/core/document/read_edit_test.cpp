#include "core/document/read_edit.h"

#include "core/edit/build.h"
#include "core/edit/edit_json.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::Random;

std::string written(const Edit& e) {
  std::string out;
  append_edit(out, e);
  return out;
}

// Every edit comes back as what it was: the same steps, so the same lab and the same way back.
TEST(ReadEdit, WhatIsWrittenComesBack) {
  for (int seed = 0; seed < test::scaled(3'000); ++seed) {
    Random r(static_cast<std::uint64_t>(seed));
    const Lab lab = test::random_lab(r, 4);
    const Edit e = seed % 2 == 0 ? test::random_edit(r, lab) : difference(lab, test::random_lab(r, 4));
    const std::string json = written(e);
    ASSERT_EQ(json.find('\n'), std::string::npos) << json;
    const auto back = read_edit(json);
    ASSERT_TRUE(back) << seed << ": " << english(back.error()) << "\n" << json;
    ASSERT_EQ(english(back->label), e.label.empty() ? "" : english(e.label));
    ASSERT_TRUE(back->steps == e.steps) << seed << "\n" << json;
    ASSERT_EQ(written(*back), json);
    Lab one = lab, other = lab;
    ASSERT_TRUE(apply(one, e));
    ASSERT_TRUE(apply(other, *back)) << seed;
    ASSERT_TRUE(one == other) << seed;
    ASSERT_TRUE(apply(other, inverse(*back))) << seed;
    ASSERT_TRUE(other == lab) << seed;
  }
}

TEST(ReadEdit, WhatIsNotKnownComesBack) {
  Machine m;
  m.id.number = 7;
  m.unknown = Unknown("\"later\":{\"a\":[1,\" \"]}");
  const auto element = std::make_shared<const AnyElement>(m);
  const AnyId id{Kind::machine, 7};
  const Edit e{{},
               {InsertElement{0, element}, SetUnknown{id, m.unknown, Unknown()},
                SetUnknown{AnyId{Kind::pc, 0}, Unknown(), Unknown("\"x\":1,\"y\":\"z\"")}}};
  const auto back = read_edit(written(e));
  ASSERT_TRUE(back) << english(back.error());
  EXPECT_TRUE(back->steps == e.steps);
}

// A row of a list keeps what is not known of it.
TEST(ReadEdit, RowsKeepWhatIsNotKnown) {
  Card c;
  c.id.number = 3;
  CardAddress row;
  row.unknown = Unknown("\"later\":true");
  c.addresses.push_back(row);
  const FieldInfo* field = info<Card>().field("addresses");
  ASSERT_NE(field, nullptr);
  const Edit e{{}, {SetField{c.id, field, Value::list({}), field->get(&c)}}};
  const auto back = read_edit(written(e));
  ASSERT_TRUE(back) << english(back.error()) << written(e);
  EXPECT_TRUE(back->steps == e.steps) << written(e);
}

// As deep as a document may hold it (64 levels) it can stand in an edit.
TEST(ReadEdit, DeepAsADocument) {
  const auto deep = [](std::size_t levels) { // below "machines" and the machine: 3 levels
    Machine m;
    m.id.number = 1;
    m.unknown = Unknown("\"x\":" + std::string(levels, '[') + std::string(levels, ']'));
    return written(Edit{{}, {InsertElement{0, std::make_shared<const AnyElement>(m)}}});
  };
  EXPECT_TRUE(read_edit(deep(61)));
  EXPECT_FALSE(read_edit(deep(62)));
  const auto far = read_edit(deep(1'000'000));
  ASSERT_FALSE(far);
  EXPECT_EQ(far.error().message.id(), "json-deep");
}

TEST(ReadEdit, RefusesWhatItDoesNotWrite) {
  const auto refused = [](std::string_view steps, std::string_view id, std::string_view path) {
    const auto read = read_edit("{\"label\": \"x\", \"edits\": [" + std::string(steps) + "]}");
    ASSERT_FALSE(read) << steps;
    EXPECT_EQ(read.error().message.id(), id) << steps << " " << english(read.error());
    EXPECT_EQ(read.error().path, path) << steps;
  };
  refused(R"({"set": "m1", "field": "memory", "before": 1, "after": 2, "why": 3})", "edit-member",
          "/edits/0");
  refused(R"({"set": "m1", "field": "memory", "before": 1})", "edit-member-missing", "/edits/0");
  refused(R"({"set": "m1", "field": "memroy", "before": 1, "after": 2})", "edit-member", "/edits/0/field");
  refused(R"({"set": "m1", "field": "memory", "before": 1, "after": "2"})", "value-type", "/edits/0/after");
  refused(R"({"set": "m1", "field": "memory", "before": 1, "after": 2.5})", "value-type", "/edits/0/after");
  refused(R"({"set": "m1", "field": "memory", "before": 0, "after": 2})", "value-range", "/edits/0/before");
  refused(R"({"set": "m1", "field": "carrier", "before": null, "after": "c1"})", "value-kind",
          "/edits/0/after");
  refused(R"({"set": "m01", "field": "memory", "before": 1, "after": 2})", "edit-form", "/edits/0/set");
  refused(R"({"set": "outside", "field": "memory", "before": 1, "after": 2})", "edit-form", "/edits/0/set");
  refused(R"({"set": 5, "field": "memory", "before": 1, "after": 2})", "edit-form", "/edits/0/set");
  refused(R"({"set": "m1", "unknown": {"before": {}, "after": {"memory": 1}}})", "edit-known",
          "/edits/0/unknown/after");
  refused(R"({"set": "m1", "unknown": {"before": {}}})", "edit-member-missing", "/edits/0/unknown");
  refused(R"({"insert": {"id": "m1"}, "place": -1})", "edit-form", "/edits/0/place");
  refused(R"({"insert": {"id": "m1"}, "place": 99999999999999999999})", "edit-form", "/edits/0/place");
  refused(R"({"insert": {"name": "x"}, "place": 1})", "edit-member-missing", "/edits/0/insert");
  refused(R"({"insert": {"id": "pc"}, "place": 1})", "edit-form", "/edits/0/insert");
  refused(R"({"insert": {"id": "m1", "id": "m2"}, "place": 1})", "json-twice", "");
  refused(R"({"insert": [], "place": 1})", "edit-form", "/edits/0/insert");
  refused(R"(7)", "edit-form", "/edits/0");
  for (const char* whole : {"", "{", "[]", "null", "{}", "{\"label\": 1, \"edits\": []}",
                            "{\"label\": \"x\"}", "{\"label\": \"x\", \"edits\": {}}",
                            "{\"label\": \"x\", \"edits\": []} {}", "{\"label\": \"\xff\", \"edits\": []}"})
    EXPECT_FALSE(read_edit(whole)) << whole;
}

// Text cut or changed anywhere is refused or another edit, never a crash.
TEST(ReadEdit, DamagedText) {
  Random r(11);
  const Lab lab = test::random_lab(r, 4);
  const std::string json = written(difference(lab, test::random_lab(r, 4)));
  for (std::size_t n = 0; n < json.size(); n += 1 + json.size() / 500)
    EXPECT_FALSE(read_edit(std::string_view(json).substr(0, n))) << n;
  for (int i = 0; i < test::scaled(3'000); ++i) {
    std::string other = json;
    for (std::size_t k = 1 + r.below(4); k > 0; --k)
      other[r.below(other.size())] = static_cast<char>(r.below(256));
    if (const auto read = read_edit(other)) {
      const auto again = read_edit(written(*read));
      ASSERT_TRUE(again) << english(again.error());
      EXPECT_TRUE(again->steps == read->steps);
    }
  }
}

} // namespace
} // namespace snug
