#include "core/gesture/rows.h"

#include "core/analyse/analyse.h"
#include "core/gesture/set.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <algorithm>

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

// What the machine's first disk has left beside its other shares.
TEST(AddParts, ShareOfAMachine) {
  Lab lab = sample("skerry-ferries");
  const MachineId hold = machine(lab, "hold").id;
  for (int round = 0; round < 2; ++round) {
    const Added added = add_share(lab, hold);
    EXPECT_EQ(english(added.edit.label), "Add a share to hold");
    const Lab before = lab;
    std::int64_t used = 0;
    const DiskId disk = std::find_if(lab.disks.begin(), lab.disks.end(), [&](const Disk& d) {
                          return d.machine == hold;
                        })->id;
    for (const Share& s : lab.shares)
      if (s.disk == disk) used += s.size;
    ASSERT_TRUE(apply(lab, added.edit));
    const Share* share = find<Share>(lab, ShareId{added.id.number});
    ASSERT_NE(share, nullptr);
    EXPECT_EQ(share->machine, hold);
    EXPECT_EQ(share->disk, disk);
    EXPECT_EQ(share->size, std::max<std::int64_t>(0, find<Disk>(lab, disk)->size - used));
    EXPECT_FALSE(share->name.empty());
    Lab back = lab;
    ASSERT_TRUE(apply(back, inverse(added.edit)));
    EXPECT_EQ(back, before);
  }
  const MachineId none = machine(lab, "gangway").id;
  std::erase_if(lab.disks, [none](const Disk& d) { return d.machine == none; });
  const Added bare = add_share(lab, none);
  ASSERT_TRUE(apply(lab, bare.edit));
  EXPECT_FALSE(find<Share>(lab, ShareId{bare.id.number})->disk) << "it has no disk";
}

} // namespace
} // namespace snug::test
