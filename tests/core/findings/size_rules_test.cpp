#include "tests/support/sample.h"

#include "core/analyse/analyse.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace snug::test {
namespace {

const Finding* finding(const Analysis& a, std::string_view rule, AnyId place) {
  for (const Finding& f : a.findings())
    if (f.rule->id == rule && f.places.front() == place) return &f;
  return nullptr;
}

constexpr AnyId kPc{Kind::pc, 0}, kLab{Kind::lab, 0};

Lab on_pc_of(std::int64_t installed) {
  Lab lab = sample("skerry-ferries");
  lab.pc.installed = installed;
  return lab;
}

std::int64_t memory_of_all(const Lab& lab) {
  std::int64_t sum = 0;
  for (const Machine& m : lab.machines) sum += m.memory;
  return sum;
}

// The least current sizes suffice: the lab keeps its size set.
TEST(SizeRules, TheLeastSizesAreOfferedWhereTheySuffice) {
  const Lab lab = on_pc_of(40 * 1024);
  const Analysis a(lab);
  const Finding* over = finding(a, "memory-over", kPc);
  ASSERT_NE(over, nullptr);
  EXPECT_EQ(over->reason.id(), "memory-over-why-lean");
  const auto fix = a.fix(*over);
  ASSERT_TRUE(fix);
  EXPECT_EQ(fix->label.id(), "fix-least-sizes") << english(fix->label);
  Lab fixed = lab;
  ASSERT_TRUE(apply(fixed, fix->edit));
  EXPECT_EQ(fixed.facts.sizes, lab.facts.sizes);
  EXPECT_LT(memory_of_all(fixed), memory_of_all(lab));
  const Analysis b(fixed);
  EXPECT_EQ(finding(b, "memory-over", kPc), nullptr);
  for (const Finding& f : b.findings()) {
    EXPECT_NE(f.rule->id, "memory-least") << english(f.message);
    EXPECT_NE(f.rule->id, "memory-over") << english(f.message);
  }
}

// On a small PC only lean sizes do; hypervisors get what their guests then need.
TEST(SizeRules, LeanSizesAreOfferedWhereOnlyTheySuffice) {
  const Lab lab = on_pc_of(24 * 1024);
  const Analysis a(lab);
  const Finding* over = finding(a, "memory-over", kPc);
  ASSERT_NE(over, nullptr);
  const auto fix = a.fix(*over);
  ASSERT_TRUE(fix);
  Lab fixed = lab;
  ASSERT_TRUE(apply(fixed, fix->edit));
  EXPECT_EQ(fixed.facts.sizes, SizeSet::lean) << english(fix->label);
  const Analysis b(fixed);
  for (const Finding& f : b.findings()) EXPECT_NE(f.rule->id, "memory-over") << english(f.message);
}

TEST(SizeRules, NothingIsOfferedWhereNoSizeSuffices) {
  const Lab lab = on_pc_of(6 * 1024);
  const Analysis a(lab);
  const Finding* over = finding(a, "memory-over", kPc);
  ASSERT_NE(over, nullptr);
  EXPECT_FALSE(a.fix(*over));
}

// Another size set changes no machine; what would change is said, and one button does it.
TEST(SizeRules, AnotherSizeSetSaysWhoKeepsTheOldSizes) {
  Lab lab = sample("skerry-ferries");
  for (Machine& m : lab.machines)
    if (const Role* role = find<Role>(lab, m.role)) m.memory = role->current_usual;
  EXPECT_EQ(finding(analyse(lab), "sizes-differ", kLab), nullptr);
  lab.facts.sizes = SizeSet::lean;
  const Analysis a(lab);
  const Finding* f = finding(a, "sizes-differ", kLab);
  ASSERT_NE(f, nullptr);
  EXPECT_EQ(f->severity, Severity::note);
  const auto fix = a.fix(*f);
  ASSERT_TRUE(fix);
  Lab fixed = lab;
  ASSERT_TRUE(apply(fixed, fix->edit));
  EXPECT_EQ(finding(analyse(fixed), "sizes-differ", kLab), nullptr);
  const Machine& beacon = machine(fixed, "beacon");
  EXPECT_EQ(beacon.memory, find<Role>(fixed, beacon.role)->lean_usual);
  EXPECT_EQ(machine(fixed, "deck-a").memory, machine(lab, "deck-a").memory) << "it carries guests";
}

} // namespace
} // namespace snug::test
