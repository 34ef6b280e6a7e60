#include "core/model/field_text.h"

#include "core/model/store.h"
#include "tests/support/random_lab.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace snug::test {
namespace {

const FieldInfo& field(Kind kind, std::string_view key) { return *info_of(kind).field(key); }

TEST(FieldText, ReadsWhatPeopleType) {
  const struct {
    Kind kind;
    std::string_view key, typed, shown;
  } kRows[]{{Kind::machine, "memory", " 3.5g ", "3.5 GiB"},
            {Kind::machine, "memory", "4096", "4 GiB"},
            {Kind::machine, "processors", "2", "2"},
            {Kind::machine, "expected_percent", "80 %", "80"},
            {Kind::rules, "pc_processor_ratio", "3,5", "3.5"},
            {Kind::rules, "pc_processor_ratio", "3", "3"},
            {Kind::rules, "pc_processor_ratio", "3.05", "3.05"},
            {Kind::machine, "pinned", "yes", "yes"},
            {Kind::segment, "prefix4", "192.0.2.0/24", "192.0.2.0/24"},
            {Kind::exercise, "date", "2027-02-14", "2027-02-14"},
            {Kind::machine, "carrier", "m3", "m3"},
            {Kind::machine, "carrier", "", ""}};
  for (const auto& r : kRows) {
    const auto value = value_of_line(field(r.kind, r.key), r.typed);
    ASSERT_TRUE(value) << r.typed << ": " << english(value.error());
    EXPECT_EQ(line_of(field(r.kind, r.key), *value), r.shown);
  }
}

TEST(FieldText, TellsHowASizeIsUnderstood) {
  const FieldInfo& memory = field(Kind::machine, "memory");
  for (const auto& [typed, told] : std::initializer_list<std::pair<std::string_view, std::string_view>>{
           {"32", "= 32 MiB; for 32 GiB write 32g"},
           {" 4096 ", "= 4 GiB"},
           {"3.5g", "= 3.5 GiB"},
           {"32m", "= 32 MiB"}}) {
    const auto echo = echo_of_line(memory, typed);
    ASSERT_TRUE(echo) << typed;
    EXPECT_EQ(english(*echo), told);
  }
  for (const std::string_view typed : {"", "3.5 GiB", "4 GB", "much"})
    EXPECT_FALSE(echo_of_line(memory, typed)) << typed;
  EXPECT_FALSE(echo_of_line(field(Kind::machine, "processors"), "2"));
}

TEST(FieldText, RefusesWithTheReason) {
  for (const auto& [kind, key, typed] :
       std::initializer_list<std::tuple<Kind, std::string_view, std::string_view>>{
           {Kind::machine, "memory", ""},
           {Kind::machine, "memory", "4 GB"},
           {Kind::machine, "memory", "much"},
           {Kind::machine, "processors", "two"},
           {Kind::machine, "processors", "99999"},
           {Kind::rules, "pc_processor_ratio", "1.005"},
           {Kind::rules, "pc_processor_ratio", "."},
           {Kind::segment, "prefix4", "192.0.2.1/24"},
           {Kind::machine, "carrier", "s3"},
           {Kind::machine, "pinned", "maybe"}}) {
    const auto value = value_of_line(field(kind, key), typed);
    ASSERT_FALSE(value) << key << " took " << typed;
    EXPECT_FALSE(english(value.error()).empty());
  }
}

// What a line shows is read back as the same value.
RC_GTEST_PROP(FieldText, ShowsWhatItReads, ()) {
  Random random(*rc::gen::arbitrary<std::uint64_t>());
  const Lab lab = random_lab(random, 6);
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    for (std::size_t i = 0; i < store.count(lab); ++i)
      for (const FieldInfo& f : store.table->fields) {
        if (!is_one_line(f)) continue;
        const Value value = f.get(store.at(lab, i));
        const auto again = value_of_line(f, line_of(f, value));
        RC_ASSERT(again.has_value());
        RC_ASSERT(*again == value);
      }
  }
}

} // namespace
} // namespace snug::test
