#include "tests/support/rule_case.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::RuleCase;
using test::Ship;

constexpr AnyId kPc{Kind::pc, 0};
std::vector<AnyId> pc(const Ship&) { return {kPc}; }
std::vector<AnyId> deck_a(const Ship& s) { return {s.deck_a}; }

void add_desks(Ship& s) {
  for (int i = 0; i < 4; ++i) s.add_machine("desk-" + std::to_string(i), s.application, 1024, s.deck_a);
}

TEST(ProcessorRules, EachFiresAloneAndItsFixMendsIt) {
  const RuleCase cases[] = {
      {"processors-carrier", Severity::error, true, [](Ship& s) { s.machine(s.helm).processors = 17; },
       [](const Ship& s) {
         return std::vector<AnyId>{s.helm, kPc};
       }},
      {"processors-carrier", Severity::error, true, [](Ship& s) { s.machine(s.tickets).processors = 3; },
       [](const Ship& s) {
         return std::vector<AnyId>{s.tickets, s.deck_a};
       }},
      {"hypervisor-one-processor", Severity::error, true,
       [](Ship& s) {
         s.machine(s.deck_a).processors = 1;
         s.machine(s.tickets).processors = 1;
       },
       deck_a},
      {"efficiency-cores", Severity::error, true, [](Ship& s) { s.lab.pc.efficiency_cores = 9; }, pc},
      {"threads-cores", Severity::error, true, [](Ship& s) { s.lab.pc.threads = 7; }, pc},
      // 10 virtual processors on 2 cores and 2 second threads: 10 / 2.5 = 4.0
      {"processors-ratio", Severity::caution, false,
       [](Ship& s) {
         s.lab.pc.cores = 2;
         s.lab.pc.threads = 4;
       },
       pc},
      {"processors-ratio", Severity::caution, false, add_desks, deck_a},
  };
  for (const RuleCase& c : cases) test::expect_case(c);
}

TEST(ProcessorRules, TheProductOfBothLevelsIsSaid) {
  Ship ship;
  ship.lab.pc.cores = ship.lab.pc.threads = 5; // 10 on 5: 2.0
  add_desks(ship);
  const auto f = test::of_rule(analyse(ship.lab), "processors-ratio");
  ASSERT_EQ(f.size(), 1U);
  EXPECT_EQ(english(f[0].message), "deck-a: 10 virtual processors run on its 2 with everything on: 5.0 to 1, "
                                   "above 4.0; with what is below, 10.0 to 1");
}

TEST(ProcessorRules, AHypervisorGetsTwoProcessorsOrHasNoFix) {
  Ship ship;
  ship.machine(ship.deck_b).processors = 1;
  ship.lab.pc.threads = ship.lab.pc.cores = 1;
  const Analysis a = analyse(ship.lab);
  const auto f = test::of_rule(a, "hypervisor-one-processor");
  ASSERT_EQ(f.size(), 1U);
  EXPECT_FALSE(a.fix(f[0]).has_value());
}

TEST(VirtualizationRules, EachFiresAloneAndItsFixMendsIt) {
  const auto set = [](Known Pc::*fact, Known value) {
    return [fact, value](Ship& s) { s.lab.pc.*fact = value; };
  };
  const RuleCase cases[] = {
      {"virtualization-off", Severity::error, false, set(&Pc::firmware_virtualization, Known::no), pc},
      {"virtualization-unknown", Severity::note, false, set(&Pc::firmware_virtualization, Known::unknown),
       pc},
      {"virtualization-occupied", Severity::error, false, set(&Pc::virtualization_occupied, Known::yes), pc},
      {"occupied-unknown", Severity::note, false, set(&Pc::virtualization_occupied, Known::unknown), pc},
      {"nested-off", Severity::error, false, set(&Pc::nested_virtualization, Known::no), pc},
      {"nested-unknown", Severity::note, false, set(&Pc::nested_virtualization, Known::unknown), pc},
      {"second-level-off", Severity::error, false, set(&Pc::second_level_translation, Known::no), pc},
      {"second-level-unknown", Severity::note, false, set(&Pc::second_level_translation, Known::unknown), pc},
      {"pc-32-bit", Severity::error, false, set(&Pc::is_64_bit, Known::no), pc},
      {"pc-bits-unknown", Severity::note, false, set(&Pc::is_64_bit, Known::unknown), pc},
      {"virtualization-not-exposed", Severity::error, true,
       [](Ship& s) { s.machine(s.deck_a).expose_virtualization = false; }, deck_a},
      {"virtualization-not-exposed", Severity::caution, true,
       [](Ship& s) { s.machine(s.deck_b).expose_virtualization = false; },
       [](const Ship& s) { return std::vector<AnyId>{s.deck_b}; }},
      {"carrier-role", Severity::error, false, [](Ship& s) { s.machine(s.tickets).carrier = s.beacon; },
       [](const Ship& s) { return std::vector<AnyId>{s.beacon}; }},
      {"nesting-deep", Severity::caution, false,
       [](Ship& s) {
         const MachineId second = s.add_machine("deck-c", s.hypervisor, 4096, s.deck_b);
         s.add_machine("deck-d", s.hypervisor, 2048, second);
       },
       [](const Ship& s) { return std::vector<AnyId>{s.lab.machines.back().id}; }},
  };
  for (const RuleCase& c : cases) test::expect_case(c);
}

TEST(VirtualizationRules, TwoHypervisorsInsideEachOtherAreNotDeep) {
  Ship ship;
  ship.add_machine("deck-c", ship.hypervisor, 4096, ship.deck_b);
  EXPECT_TRUE(test::of_rule(analyse(ship.lab), "nesting-deep").empty());
}

// Facts about nesting matter only where a guest is a hypervisor; without guests nothing does.
TEST(VirtualizationRules, UnknownFactsAreAskedForOnlyWhereTheyMatter) {
  Lab lab;
  const Analysis empty = analyse(lab);
  for (const Finding& f : empty.findings()) EXPECT_NE(f.rule->topic, Topic::processors);
  Machine m;
  m.id.number = 1;
  m.name = "beacon";
  lab.machines.push_back(m);
  std::vector<std::string_view> ids;
  const Analysis one = analyse(lab);
  for (const Finding& f : one.findings())
    if (f.rule->topic == Topic::processors) ids.push_back(f.rule->id);
  EXPECT_EQ(ids, (std::vector<std::string_view>{"virtualization-unknown", "pc-bits-unknown"}));
  lab.pc.virtualization_occupied = Known::yes;
  const auto occupied = test::of_rule(analyse(lab), "virtualization-occupied");
  ASSERT_EQ(occupied.size(), 1U);
  EXPECT_EQ(occupied[0].severity, Severity::caution); // an error only beside nested hypervisors
  lab.machines[0].is_64_bit = false;
  EXPECT_TRUE(test::of_rule(analyse(lab), "pc-bits-unknown").empty());
}

} // namespace
} // namespace snug
