#include "core/model/field.h"

#include "core/model/lab.h"
#include "core/model/store.h"
#include "tests/support/random_lab.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <set>

namespace snug {
namespace {

std::vector<const StructInfo*> all_tables() {
  std::vector<const StructInfo*> out;
  std::set<const StructInfo*> seen;
  for (const Kind kind : kinds_in_document()) {
    out.push_back(&info_of(kind));
    for (const FieldInfo& f : info_of(kind).fields)
      if (f.row && seen.insert(f.row).second) out.push_back(f.row);
  }
  return out;
}

TEST(FieldTable, KeysAreUniqueWordsAndEveryFieldHasALabel) {
  for (const StructInfo* table : all_tables()) {
    std::set<std::string_view> keys{"id"};
    for (const FieldInfo& f : table->fields) {
      EXPECT_TRUE(keys.insert(f.key).second) << table->noun.text << "." << f.key;
      EXPECT_TRUE(std::all_of(f.key.begin(), f.key.end(), [](unsigned char c) {
        return std::islower(c) || std::isdigit(c) || c == '_';
      })) << f.key;
      EXPECT_FALSE(f.label.text.empty()) << f.key;
      EXPECT_EQ(table->field(f.key), &f);
    }
    EXPECT_EQ(table->field("no such key"), nullptr);
  }
}

TEST(FieldTable, IntegersHaveARangeAndReferencesAKind) {
  for (const StructInfo* table : all_tables()) {
    for (const FieldInfo& f : table->fields) {
      if (f.type == FieldType::integer) {
        EXPECT_LT(f.least, f.most) << f.key;
      }
      if (f.type == FieldType::id || f.type == FieldType::ids) {
        EXPECT_NE(f.id_kinds, 0U) << f.key;
      }
      if (f.type == FieldType::choice) {
        EXPECT_GE(f.choices.size(), 2U) << f.key;
      }
      if (f.type == FieldType::rows) {
        EXPECT_NE(f.row, nullptr) << f.key;
      }
    }
  }
}

TEST(FieldTable, RulesOfThumbSayWhereTheyComeFrom) {
  for (const FieldInfo& f : info<Rules>().fields)
    EXPECT_NE(f.help.text.find("common practice, no published source"), std::string_view::npos) << f.key;
}

TEST(FieldTable, DefaultsAreValidValues) {
  Lab lab;
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    const void* object = store.insert ? store.append(lab) : store.at(std::as_const(lab), 0);
    for (const FieldInfo& f : store.table->fields) {
      EXPECT_TRUE(f.is_default(object)) << f.key;
      const auto checked = check(f, f.get(object));
      EXPECT_TRUE(checked.has_value())
          << store.table->noun.text << "." << f.key << ": " << english(checked.error());
    }
  }
}

TEST(FieldTable, GetGivesWhatSetTook) {
  test::Random r(1);
  for (int round = 0; round < 50; ++round) {
    Lab lab = test::random_lab(r, 4);
    for (const Kind kind : kinds_in_document()) {
      const Store& store = store_of(kind);
      if (store.count(lab) == 0) continue;
      for (const FieldInfo& f : store.table->fields) {
        const Value v = test::random_value(r, lab, f);
        if (!check(f, v)) continue;
        ASSERT_TRUE(f.set(store.at(lab, 0), v)) << f.key;
        EXPECT_TRUE(f.get(store.at(std::as_const(lab), 0)) == v) << f.key;
      }
    }
  }
}

TEST(Check, SaysWhatIsWrongWithNameAndValue) {
  const auto complaint = [](const FieldInfo* f, const Value& v) {
    const auto r = check(*f, v);
    return r ? std::string() : english(r.error().message);
  };
  const StructInfo& m = info<Machine>();
  EXPECT_EQ(complaint(m.field("memory"), std::int64_t{0}),
            "memory is 0 MiB; it must lie between 1 MiB and 65536 GiB");
  EXPECT_EQ(complaint(m.field("memory"), true), "memory must be a whole number");
  EXPECT_EQ(complaint(m.field("memory"), Value()), "memory must have a value");
  EXPECT_EQ(complaint(m.field("reverse_filter"), std::string("tight")),
            "reverse-path filter is \"tight\"; it must be one of: off, loose, strict");
  EXPECT_EQ(complaint(m.field("carrier"), AnyId(CardId{3})), "carrier cannot be c3: it must name a machine");
  EXPECT_EQ(complaint(info<Promise>().field("from"), AnyId(CardId{3})),
            "from cannot be c3: it must name a segment, a machine, outside or everyone");
  EXPECT_EQ(complaint(m.field("name"), std::string(201, 'x')), "name is longer than 200 octets: shorten it");
  EXPECT_EQ(complaint(m.field("carrier"), Value()), "");
  EXPECT_EQ(complaint(info<Segment>().field("prefix6"), parse_prefix("10.0.0.0/8").value()),
            "IPv6 prefix is 10.0.0.0/8, which is not IPv6");
}

TEST(Show, ValuesReadAsPeopleWriteThem) {
  EXPECT_EQ(show(*info<Machine>().field("memory"), std::int64_t{10240}), "10.0 GiB");
  EXPECT_EQ(show(*info<Machine>().field("pinned"), true), "yes");
  EXPECT_EQ(show(*info<Machine>().field("carrier"), Value()), "not set");
  EXPECT_EQ(show(*info<Machine>().field("routes"), Value::list({})), "none");
}

// ISO 8601 calendar dates; leap years of the Gregorian calendar.
TEST(DateText, ReadsAndWrites) {
  for (const char* good : {"2027-02-14", "2024-02-29", "2000-02-29", "0001-01-01", "9999-12-31"})
    EXPECT_EQ(to_text(parse_date(good).value()), good);
  for (const char* bad :
       {"", "2027-2-14", "2027-02-30", "2023-02-29", "1900-02-29", "2027-13-01", "2027-00-10", "0000-01-01",
        "2027/02/14", "2027-02-14 ", "14-02-2027", "2027-02-1x"})
    EXPECT_FALSE(parse_date(bad).has_value()) << bad;
}

TEST(NameOf, IsNeverEmptyAndDescribesParts) {
  Lab lab;
  lab.machines.emplace_back();
  lab.machines[0].id.number = 1;
  lab.machines[0].name = "deck-a";
  for (std::uint32_t n = 2; n < 4; ++n) {
    lab.cards.emplace_back();
    lab.cards.back().id.number = n;
    lab.cards.back().machine = lab.machines[0].id;
  }
  EXPECT_EQ(name_of(lab, MachineId{1}), "deck-a");
  EXPECT_EQ(name_of(lab, CardId{3}), "deck-a card 2");
  lab.machines[0].name.clear();
  EXPECT_EQ(name_of(lab, MachineId{1}), "machine m1");
  EXPECT_EQ(name_of(lab, MachineId{9}), "m9");
  EXPECT_EQ(name_of(lab, AnyId{Kind::pc, 0}), "this PC");
}

TEST(KindsInDocument, NameEveryKindOnceAndAgreeWithTheirTables) {
  std::set<Kind> seen;
  for (const Kind kind : kinds_in_document()) {
    EXPECT_TRUE(seen.insert(kind).second);
    EXPECT_EQ(info_of(kind).kind, kind);
    EXPECT_EQ(store_of(kind).table, &info_of(kind));
  }
  EXPECT_EQ(static_cast<int>(seen.size()), kKindCount - 3) << "all but none, outside, everyone";
}

} // namespace
} // namespace snug
