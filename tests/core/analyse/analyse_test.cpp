#include "core/analyse/analyse.h"

#include "tests/bench/bench_lab.h"
#include "tests/bench/figures.h"
#include "tests/support/random_lab.h"
#include "tests/support/rule_case.h"
#include "tests/support/scale.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <set>

namespace snug {
namespace {

using test::Random;
using test::Ship;

TEST(Rules, HaveDistinctIdsInKebabCaseAndATitle) {
  std::set<std::string_view> ids;
  for (const Rule& r : rules()) {
    EXPECT_TRUE(ids.insert(r.id).second) << r.id;
    EXPECT_FALSE(r.id.empty());
    for (const char c : r.id)
      EXPECT_TRUE((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-') << r.id;
    EXPECT_FALSE(r.title.empty()) << r.id;
    EXPECT_FALSE(r.source.empty()) << r.id;
    EXPECT_EQ(find_rule(r.id), &r);
  }
  EXPECT_EQ(find_rule("no-such-rule"), nullptr);
}

TEST(Analysis, ErrorsFirstThenCautionsThenNotes) {
  Ship ship;
  ship.lab.pc.nested_virtualization = Known::unknown; // note
  ship.machine(ship.beacon).memory = 1500;            // caution
  ship.machine(ship.hold).processors = 17;            // error
  const Analysis a = analyse(ship.lab);
  const auto f = a.findings();
  EXPECT_TRUE(std::is_sorted(f.begin(), f.end(),
                             [](const Finding& x, const Finding& y) { return x.severity < y.severity; }));
  EXPECT_EQ(f.front().severity, Severity::error);
  EXPECT_TRUE(a.has_error());
}

// The naive reference of the benchmark, on labs with what it knows about: hypervisors, exercises, doubles.
TEST(Analysis, AgreesWithTheNaiveReference) {
  Random random(41);
  for (int i = 0, n = test::scaled(400); i < n; ++i) {
    Lab lab = bench::guest_lab(1 + random.below(120));
    for (Machine& m : lab.machines) {
      m.memory = static_cast<std::int64_t>(256 + random.below(8192));
      if (random.chance(3)) m.name = lab.machines[random.below(lab.machines.size())].name;
    }
    for (Card& c : lab.cards) {
      c.connected = !random.chance(3);
      if (random.chance(5)) c.carries.clear();
      if (c.carries.empty() && random.chance(3))
        c.segment = lab.segments[random.below(lab.segments.size())].id;
      if (random.chance(3)) c.mac = lab.cards[random.below(lab.cards.size())].mac;
    }
    for (Exercise& e : lab.exercises) std::erase_if(e.on, [&random](MachineId) { return random.chance(20); });
    const bench::Figures expected = bench::naive_figures(lab), found = bench::figures(analyse(lab));
    EXPECT_EQ(found.pc_headroom, expected.pc_headroom) << i;
    EXPECT_EQ(found.pc_expected, expected.pc_expected) << i;
    EXPECT_EQ(found.inner_headroom, expected.inner_headroom) << i;
    EXPECT_EQ(found.inner_expected, expected.inner_expected) << i;
    EXPECT_EQ(found.processors, expected.processors) << i;
    EXPECT_EQ(found.disk_expected, expected.disk_expected) << i;
    EXPECT_EQ(found.disk_worst, expected.disk_worst) << i;
    EXPECT_EQ(found.segment_memory, expected.segment_memory) << i;
    EXPECT_EQ(found.running, expected.running) << i;
    EXPECT_EQ(found.addresses_twice, expected.addresses_twice) << i;
    EXPECT_EQ(found.macs_twice, expected.macs_twice) << i;
    EXPECT_EQ(found.names_twice, expected.names_twice) << i;
  }
}

// DECISIONS 18 and 19: rule and places are the identity, whatever the order of the places.
TEST(Analysis, AnAcceptedFindingDoesNotCount) {
  Ship ship;
  ship.machine(ship.hold).processors = 17;
  EXPECT_TRUE(analyse(ship.lab).has_error());
  Accepted a;
  a.id.number = ship.lab.facts.next_id++;
  a.rule = "processors-carrier";
  a.places = {AnyId{Kind::pc, 0}, ship.hold};
  ship.lab.accepted = {a};
  const Analysis accepted = analyse(ship.lab);
  const auto f = test::of_rule(accepted, "processors-carrier");
  ASSERT_EQ(f.size(), 1U);
  EXPECT_EQ(f[0].accepted, &ship.lab.accepted[0]);
  EXPECT_FALSE(accepted.has_error());
  EXPECT_FALSE(accepted.has_error(ship.all_hands));
  ship.lab.accepted[0].places = {ship.hold};
  EXPECT_TRUE(analyse(ship.lab).has_error());
  ship.lab.accepted[0].places = {AnyId{Kind::pc, 0}, ship.helm};
  EXPECT_TRUE(analyse(ship.lab).has_error());
}

TEST(Analysis, AFindingHoldsWhereItsOccasionsSay) {
  Ship ship;
  ship.exercise(ship.quiet).on = {ship.tickets};
  const Analysis a = analyse(ship.lab);
  const auto f = test::of_rule(a, "carrier-off");
  ASSERT_EQ(f.size(), 1U);
  EXPECT_TRUE(holds_in(ship.lab, f[0], ship.quiet));
  EXPECT_FALSE(holds_in(ship.lab, f[0], ship.all_hands));
  EXPECT_FALSE(holds_in(ship.lab, f[0], ExerciseId{}));
  EXPECT_TRUE(a.has_error(ship.quiet));
  EXPECT_FALSE(a.has_error(ship.all_hands));
  EXPECT_EQ(a.budgets(ship.quiet).exercise, ship.quiet);
}

// Whatever a lab holds: sentences are complete, places exist, identities differ, fixes apply and mend.
void expect_sound(const Lab& lab) {
  const Analysis a = analyse(lab);
  std::set<std::pair<std::string_view, std::set<AnyId>>> identities;
  for (const Finding& f : a.findings()) {
    ASSERT_NE(f.rule, nullptr);
    SCOPED_TRACE(std::string(f.rule->id) + ": " + english(f.message));
    ASSERT_FALSE(f.message.empty());
    ASSERT_FALSE(f.reason.empty());
    ASSERT_FALSE(f.places.empty());
    for (const AnyId id : f.places) ASSERT_TRUE(exists(lab, id)) << to_text(id);
    ASSERT_TRUE(identities.insert({f.rule->id, {f.places.begin(), f.places.end()}}).second) << "twice";
    ASSERT_TRUE(f.when.always || f.when.everything_on || f.when.exercises.any());
    const std::optional<Fix> fix = a.fix(f);
    if (!fix) continue;
    Lab mended = lab;
    const auto done = apply(mended, fix->edit);
    ASSERT_TRUE(done.has_value()) << english(done.error());
    ASSERT_TRUE(*done) << "changes nothing: " << english(fix->label);
    const Analysis after = analyse(mended);
    for (const Finding& g : after.findings())
      ASSERT_FALSE(g.rule == f.rule && g.places == f.places) << "not mended: " << english(fix->label);
  }
}

TEST(Analysis, IsSoundOnAnyLab) {
  for (int seed = 0; seed < test::scaled(500) && !testing::Test::HasFailure(); ++seed) {
    SCOPED_TRACE(seed);
    Random r(static_cast<std::uint64_t>(seed));
    expect_sound(test::random_lab(r, 5));
  }
}

TEST(Analysis, IsSoundOnPlausibleLabs) {
  for (int seed = 0; seed < test::scaled(50) && !testing::Test::HasFailure(); ++seed) {
    SCOPED_TRACE(seed);
    Random r(static_cast<std::uint64_t>(seed));
    expect_sound(test::plausible_lab(r, 20, 4));
  }
}

TEST(Analysis, TwiceIsTheSame) {
  Random r(7);
  const Lab lab = test::plausible_lab(r, 60, 6);
  const Analysis a = analyse(lab), b = analyse(lab);
  ASSERT_EQ(a.findings().size(), b.findings().size());
  for (std::size_t i = 0; i < a.findings().size(); ++i) {
    EXPECT_EQ(a.findings()[i].rule, b.findings()[i].rule);
    EXPECT_EQ(a.findings()[i].message, b.findings()[i].message);
    EXPECT_EQ(a.findings()[i].places, b.findings()[i].places);
  }
}

} // namespace
} // namespace snug
