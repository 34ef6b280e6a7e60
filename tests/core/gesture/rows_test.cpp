#include "core/gesture/rows.h"

#include "core/analyse/analyse.h"
#include "core/gesture/set.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

// What every list of every element offers fits its field and can be applied.
TEST(NewItem, FitsEveryList) {
  const Lab lab = sample("skerry-ferries");
  std::size_t tried = 0;
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    for (std::size_t i = 0; store.table->id && i < store.count(lab); ++i) {
      const AnyId id = store.table->id(store.at(lab, i));
      for (const FieldInfo& f : store.table->fields) {
        if (f.owner != Owner::person || (!f.row && f.type != FieldType::ids && f.type != FieldType::prefixes))
          continue;
        const auto item = new_item(lab, id, f);
        if (!item) continue;
        const Value before = f.get(store.at(lab, i));
        ValueList list = before.as_list() ? *before.as_list() : ValueList{};
        list.push_back(*item);
        const auto edit = set_fields(lab, std::vector<AnyId>{id}, f, Value::list(std::move(list)));
        ASSERT_TRUE(edit) << to_text(id) << ' ' << f.key << ": " << english(edit.error());
        Lab now = lab;
        EXPECT_TRUE(apply(now, *edit)) << to_text(id) << ' ' << f.key;
        ASSERT_TRUE(apply(now, inverse(*edit)));
        EXPECT_EQ(now, lab);
        ++tried;
      }
    }
  }
  EXPECT_GT(tried, 50U);
}

TEST(NewItem, AddressIsTheNextFreeOne) {
  const Lab lab = sample("skerry-ferries");
  const Card& card = lab.cards.front();
  const auto item = new_item(lab, card.id, *info<Card>().field("addresses"));
  ASSERT_TRUE(item);
  const Value address = item->as_row()->fields[1];
  ASSERT_TRUE(address.as<Address>());
  const Analysis a = analyse(lab);
  EXPECT_TRUE(a.addresses().with(a.index().place(card.segment), *address.as<Address>()).empty());
}

TEST(NewItem, RefusedWhereNothingIsLeft) {
  Lab lab = sample("skerry-ferries");
  for (const Segment& s : lab.segments) {
    SegmentTag tag;
    tag.segment = s.id;
    lab.cards.front().carries.push_back(tag);
  }
  EXPECT_FALSE(new_item(lab, lab.cards.front().id, *info<Card>().field("carries")));
}

TEST(AddParts, DiskAndCardOfAMachine) {
  const Lab lab = sample("skerry-ferries");
  const MachineId guest = lab.machines.back().id;
  for (const Added& added : {add_disk(lab, guest), add_loose_card(lab, guest)}) {
    Lab now = lab;
    ASSERT_TRUE(apply(now, added.edit));
    EXPECT_TRUE(exists(now, added.id));
    ASSERT_TRUE(apply(now, inverse(added.edit)));
    EXPECT_EQ(now, lab);
  }
}

} // namespace
} // namespace snug::test
