#include "core/gesture/set.h"

#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

TEST(SetFields, ChangesAllAtOnceAndChecksFirst) {
  Lab lab = sample("skerry-ferries");
  const std::vector<AnyId> two{machine(lab, "beacon").id, machine(lab, "hold").id};
  const FieldInfo& memory = *info_of(Kind::machine).field("memory");
  const auto edit = set_fields(lab, two, memory, Value(std::int64_t{3072}));
  ASSERT_TRUE(edit);
  EXPECT_EQ(english(edit->label), "Change " + std::string(memory.label) + " of 2 things");
  ASSERT_TRUE(apply(lab, *edit));
  EXPECT_EQ(machine(lab, "beacon").memory, 3072);
  EXPECT_EQ(machine(lab, "hold").memory, 3072);
  EXPECT_FALSE(set_fields(lab, two, memory, Value(std::int64_t{0})));
}

TEST(SetFields, CarrierIsRefusedLikeAMove) {
  const Lab lab = sample("skerry-ferries");
  const std::vector<AnyId> one{machine(lab, "tickets-1").id};
  const auto edit = set_fields(lab, one, *info_of(Kind::machine).field("carrier"),
                               Value(AnyId(machine(lab, "wheelhouse").id)));
  ASSERT_FALSE(edit);
  EXPECT_EQ(edit.error().message.id(), "gesture-no-hypervisor");
}

} // namespace
} // namespace snug::test
