#include "tests/support/rule_case.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::RuleCase;
using test::Ship;

std::vector<AnyId> fast(const Ship& s) { return {s.fast}; }
std::vector<AnyId> cargo(const Ship& s) { return {s.cargo}; }
std::vector<AnyId> last_disk(const Ship& s) { return {s.lab.disks.back().id}; }
std::vector<AnyId> copy_and_base(const Ship& s) { return {s.lab.disks.back().id, s.beacon_disk}; }

DiskId add_copy(Ship& s, std::int64_t size, DiskId base) {
  const DiskId id = s.add_disk(s.beacon, size, s.fast);
  s.disk(id).provisioning = Provisioning::copy_on_write;
  s.disk(id).base = base;
  return id;
}

// On the volume lie 3 disks of 40960, one of 61440, 16384 and 204800: at worst 405504, half of it expected.
// 100000 are kept free.
TEST(DiskRules, EachFiresAloneAndItsFixMendsIt) {
  const RuleCase cases[] = {
      {"disk-over", Severity::error, false, [](Ship& s) { s.lab.volumes[0].free = 302751; }, fast},
      {"disk-over", Severity::error, false,
       [](Ship& s) {
         s.disk(s.tickets_disk).size = 102401;
         s.disk(s.tickets_disk).provisioning = Provisioning::full;
       },
       cargo},
      {"disk-worst", Severity::caution, false, [](Ship& s) { s.lab.volumes[0].free = 505503; }, fast},
      {"disk-no-store", Severity::caution, true, [](Ship& s) { s.disk(s.beacon_disk).store = {}; },
       [](const Ship& s) { return std::vector<AnyId>{s.beacon_disk}; }},
      {"disk-no-store", Severity::caution, true, [](Ship& s) { s.disk(s.tickets_disk).store = {}; },
       [](const Ship& s) { return std::vector<AnyId>{s.tickets_disk}; }},
      {"no-volume", Severity::note, false,
       [](Ship& s) {
         s.lab.volumes.clear();
         for (Disk& d : s.lab.disks)
           if (d.store == AnyId(s.fast)) d.store = {};
       },
       [](const Ship&) {
         return std::vector<AnyId>{{Kind::pc, 0}};
       }},
      {"disk-out-of-reach", Severity::error, true, [](Ship& s) { s.disk(s.tickets_disk).store = s.fast; },
       [](const Ship& s) {
         return std::vector<AnyId>{s.tickets_disk, s.fast};
       }},
      {"disk-out-of-reach", Severity::error, true,
       [](Ship& s) { s.disk(s.tickets_disk).store = s.deck_b_disk; },
       [](const Ship& s) {
         return std::vector<AnyId>{s.tickets_disk, s.deck_b_disk};
       }},
      {"disk-out-of-reach", Severity::error, true,
       [](Ship& s) { s.disk(s.beacon_disk).store = s.deck_b_disk; },
       [](const Ship& s) {
         return std::vector<AnyId>{s.beacon_disk, s.deck_b_disk};
       }},
      {"hypervisor-on-spinning", Severity::caution, true,
       [](Ship& s) { s.disk(s.deck_b_disk).store = s.add_volume("old disk", VolumeKind::spinning, 500'000); },
       [](const Ship& s) {
         return std::vector<AnyId>{s.deck_b, s.lab.volumes.back().id};
       }},
      {"hypervisor-on-spinning", Severity::caution, true,
       [](Ship& s) { s.disk(s.helm_disk).store = s.add_volume("stick", VolumeKind::usb, 500'000); },
       [](const Ship& s) {
         return std::vector<AnyId>{s.helm, s.lab.volumes.back().id};
       }},
      {"fill-below-content", Severity::caution, true, [](Ship& s) { s.disk(s.bay).expected_percent = 4; },
       [](const Ship& s) { return std::vector<AnyId>{s.bay}; }},
      {"volume-free", Severity::error, true, [](Ship& s) { s.lab.volumes[0].free = 1'000'001; }, fast},
  };
  for (const RuleCase& c : cases) test::expect_case(c);
}

TEST(DiskRules, AtTheLimitIsNotOver) {
  Ship ship;
  ship.lab.volumes[0].free = 302752;
  EXPECT_TRUE(test::of_rule(analyse(ship.lab), "disk-over").empty());
  ship.lab.volumes[0].free = 505504;
  EXPECT_TRUE(test::of_rule(analyse(ship.lab), "disk-worst").empty());
}

TEST(DiskRules, TheSlowVolumeIsFoundBelowSharesToo) {
  Ship ship;
  ship.lab.volumes[0].type = VolumeKind::spinning;
  const MachineId inner = ship.add_machine("deck-c", ship.hypervisor, 4096, ship.deck_b);
  ship.add_disk(inner, 8192, ship.cargo);
  const auto found = test::of_rule(analyse(ship.lab), "hypervisor-on-spinning");
  ASSERT_EQ(found.size(), 4U); // helm, deck-a, deck-b and, through cargo and bay, deck-c
  EXPECT_EQ(found.back().places, (std::vector<AnyId>{inner, ship.fast}));
}

TEST(DiskRules, OverOnlyByAMemoryFileHoldsInTheExercisesWhereItRuns) {
  Ship ship;
  ship.lab.volumes[0].free = 100'000 + 202'752 + 4'000;
  ship.machine(ship.beacon).memory_file = true; // 4096 more
  const auto found = test::of_rule(analyse(ship.lab), "disk-over");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_TRUE(found[0].when.always); // beacon is on in every exercise
  ship.exercise(ship.quiet).on = {ship.hold};
  const auto fewer = test::of_rule(analyse(ship.lab), "disk-over");
  ASSERT_EQ(fewer.size(), 1U);
  EXPECT_FALSE(fewer[0].when.always);
  EXPECT_TRUE(fewer[0].when.exercises.test(0));
  EXPECT_FALSE(fewer[0].when.exercises.test(1));
}

TEST(CopyRules, EachFiresAloneAndItsFixMendsIt) {
  const RuleCase cases[] = {
      {"copy-no-base", Severity::error, true, [](Ship& s) { add_copy(s, 40960, {}); }, last_disk},
      {"copy-base-elsewhere", Severity::error, true,
       [](Ship& s) {
         s.disk(add_copy(s, 40960, s.beacon_disk)).store = s.add_volume("other", VolumeKind::nvme, 500'000);
       },
       copy_and_base},
      {"copy-smaller", Severity::error, true, [](Ship& s) { add_copy(s, 40959, s.beacon_disk); },
       copy_and_base},
      {"base-unused", Severity::note, true, [](Ship& s) { s.disk(s.helm_disk).base = s.beacon_disk; },
       [](const Ship& s) { return std::vector<AnyId>{s.helm_disk}; }},
      {"store-loop", Severity::error, false, [](Ship& s) { s.disk(s.bay).store = s.cargo; },
       [](const Ship& s) { return std::vector<AnyId>{s.bay}; }},
      {"store-loop", Severity::error, false,
       [](Ship& s) {
         s.disk(s.deck_a_disk).store = s.deck_b_disk;
         s.disk(s.deck_b_disk).store = s.deck_a_disk;
       },
       [](const Ship& s) {
         return std::vector<AnyId>{s.deck_a_disk, s.deck_b_disk};
       }},
  };
  for (const RuleCase& c : cases) test::expect_case(c);
}

TEST(CopyRules, ASoundCopyHasNoFinding) {
  Ship ship;
  add_copy(ship, 40960, ship.beacon_disk);
  const Analysis a = analyse(ship.lab);
  for (const Finding& f : a.findings()) EXPECT_FALSE(f.rule->id.starts_with("copy-")) << f.rule->id;
}

TEST(ShareRules, EachFiresAloneAndItsFixMendsIt) {
  const RuleCase cases[] = {
      {"share-over", Severity::error, true, [](Ship& s) { s.share().size = 204801; },
       [](const Ship& s) {
         return std::vector<AnyId>{s.cargo, s.bay};
       }},
      {"share-over", Severity::error, true, [](Ship& s) { s.add_share(s.bay, 102401, 2); },
       [](const Ship& s) {
         return std::vector<AnyId>{s.cargo, s.lab.shares.back().id, s.bay};
       }},
      {"share-no-disk", Severity::caution, true, [](Ship& s) { s.share().disk = {}; }, cargo},
      {"share-disk-elsewhere", Severity::error, true,
       [](Ship& s) {
         s.share().size = 40960;
         s.share().disk = s.beacon_disk;
       },
       [](const Ship& s) {
         return std::vector<AnyId>{s.cargo, s.beacon_disk};
       }},
      {"share-card-elsewhere", Severity::error, true, [](Ship& s) { s.share().card = s.add_card(s.beacon); },
       [](const Ship& s) {
         return std::vector<AnyId>{s.cargo, s.lab.cards.back().id};
       }},
      {"share-client", Severity::error, true, [](Ship& s) { s.share().clients = {s.deck_b}; },
       [](const Ship& s) {
         return std::vector<AnyId>{s.tickets, s.cargo};
       }},
      {"share-client", Severity::error, true, [](Ship& s) { s.disk(s.beacon_disk).store = s.cargo; },
       [](const Ship& s) {
         return std::vector<AnyId>{s.beacon, s.cargo};
       }},
      {"share-target", Severity::note, false, [](Ship& s) { s.share().target.clear(); }, cargo},
      {"unit-twice", Severity::error, true, [](Ship& s) { s.add_share(s.bay, 1024, 1); },
       [](const Ship& s) {
         return std::vector<AnyId>{s.cargo, s.lab.shares.back().id};
       }},
      {"store-off", Severity::error, true,
       [](Ship& s) {
         s.exercise(s.quiet).on = {s.beacon, s.deck_a, s.tickets};
       },
       [](const Ship& s) {
         return std::vector<AnyId>{s.tickets, s.cargo};
       }},
  };
  for (const RuleCase& c : cases) test::expect_case(c);
}

TEST(ShareRules, AGuestMayUseAShareItself) {
  Ship ship;
  ship.share().clients = {ship.tickets, ship.deck_b};
  EXPECT_TRUE(test::of_rule(analyse(ship.lab), "share-client").empty());
}

TEST(ShareRules, ANewUnitNumberIsTheLowestFree) {
  Ship ship;
  ship.add_share(ship.bay, 1024, 1);
  ship.add_share(ship.bay, 1024, 0);
  const Analysis a = analyse(ship.lab);
  const auto twice = test::of_rule(a, "unit-twice");
  ASSERT_EQ(twice.size(), 1U);
  const auto fix = a.fix(twice[0]);
  ASSERT_TRUE(fix && apply(ship.lab, fix->edit));
  EXPECT_EQ(ship.lab.shares[1].unit, 2);
}

TEST(InitiatorRules, EachFiresAloneAndItsFixMendsIt) {
  const RuleCase cases[] = {
      {"initiator-missing", Severity::caution, false,
       [](Ship& s) { s.machine(s.deck_b).initiator_name.clear(); },
       [](const Ship& s) { return std::vector<AnyId>{s.deck_b}; }},
      // RFC 3722: letter case does not tell names apart
      {"initiator-twice", Severity::error, true,
       [](Ship& s) { s.machine(s.deck_b).initiator_name = "IQN.2027-01.test.skerry:DECK-A"; },
       [](const Ship& s) {
         return std::vector<AnyId>{s.deck_a, s.deck_b};
       }},
      {"initiator-form", Severity::caution, false,
       [](Ship& s) { s.machine(s.deck_a).initiator_name = "deck-a"; },
       [](const Ship& s) { return std::vector<AnyId>{s.deck_a}; }},
  };
  for (const RuleCase& c : cases) test::expect_case(c);
}

// Good ones from RFC 3720 3.2.6.3 and RFC 3980 (examples from memory); bad ones break one point each.
TEST(InitiatorRules, FormsOfTheStandards) {
  const auto ill_formed = [](const std::string& name) {
    Ship ship;
    ship.machine(ship.deck_a).initiator_name = name;
    return !test::of_rule(analyse(ship.lab), "initiator-form").empty();
  };
  for (const char* good :
       {"iqn.2001-04.com.example:storage:diskarrays-sn-a8675309", "iqn.2001-04.com.example",
        "eui.02004567A425678D", "naa.52004567BA64678D", "naa.62004567BA64678D0123456789ABCDEF"})
    EXPECT_FALSE(ill_formed(good)) << good;
  for (const char* bad :
       {"iqn.2001-13.com.example:a", "iqn.2001-00.com.example", "iqn.2001.com.example", "iqn.2001-04",
        "iqn.2001-04.", "iqn.2001-04.:a", "iqn.2001-04.com.example:a b", "iqn.2001-04.com_example",
        "eui.02004567A425678", "eui.02004567A425678G", "naa.5200"})
    EXPECT_TRUE(ill_formed(bad)) << bad;
}

} // namespace
} // namespace snug
