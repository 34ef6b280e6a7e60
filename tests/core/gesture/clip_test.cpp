#include "core/gesture/clip.h"

#include "core/analyse/analyse.h"
#include "core/document/new_lab.h"
#include "core/document/write.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace snug::test {
namespace {

MachineId machine(const Lab& lab, std::string_view name) {
  for (const Machine& m : lab.machines)
    if (m.name == name) return m.id;
  ADD_FAILURE() << name;
  return {};
}

std::string copied(const Lab& lab, std::vector<AnyId> ids) {
  const auto text = copy_machines(lab, ids);
  EXPECT_TRUE(text);
  return text ? *text : std::string();
}

Lab after(const Lab& lab, const Result<Pasted>& pasted) {
  Lab out = lab;
  EXPECT_TRUE(pasted) << (pasted ? "" : english(pasted.error()));
  if (pasted) {
    EXPECT_TRUE(apply(out, pasted->edit));
  }
  return out;
}

std::vector<std::string> addresses(const Lab& lab, MachineId m) {
  std::vector<std::string> out;
  for (const Card& c : lab.cards)
    if (c.machine == m)
      for (const CardAddress& row : c.addresses) out.push_back(row.address ? to_text(*row.address) : "");
  return out;
}

std::size_t twice(const Lab& lab) {
  const Analysis a = analyse(lab);
  return static_cast<std::size_t>(
      std::count_if(a.findings().begin(), a.findings().end(), [](const Finding& f) {
        return f.rule->id == "address-twice" || f.rule->id == "mac-twice" || f.rule->id == "host-name-twice";
      }));
}

TEST(Clip, IntoABlankLabKeepsNamesAddressesAndSegments) {
  const Lab from = sample("skerry-ferries");
  const Lab to = blank_lab(std::string(32, 'b'));
  const auto pasted = paste_machines(to, copied(from, {machine(from, "beacon")}), {});
  const Lab now = after(to, pasted);
  ASSERT_EQ(now.machines.size(), 1U);
  EXPECT_EQ(now.machines.front().name, "beacon");
  EXPECT_EQ(addresses(now, now.machines.front().id), addresses(from, machine(from, "beacon")));
  EXPECT_FALSE(now.segments.empty());
  EXPECT_EQ(pasted->changed.size(), now.segments.size()); // each came along, and that is said
  Lab back = now;
  ASSERT_TRUE(apply(back, inverse(pasted->edit)));
  EXPECT_EQ(back, to);
}

TEST(Clip, BesideTheOriginalGetsANameAndFreeAddresses) {
  const Lab lab = sample("skerry-ferries");
  const MachineId original = machine(lab, "beacon");
  const auto pasted = paste_machines(lab, copied(lab, {original}), {});
  const Lab now = after(lab, pasted);
  ASSERT_EQ(pasted->made.size(), 1U);
  const MachineId made{pasted->made.front().number};
  EXPECT_NE(made, original);
  EXPECT_EQ(find<Machine>(now, made)->name, "beacon-2");
  EXPECT_EQ(twice(now), twice(lab));
  for (const std::string& a : addresses(now, made)) {
    const auto held = addresses(lab, original);
    EXPECT_EQ(std::find(held.begin(), held.end(), a), held.end()) << a;
  }
  std::string said;
  for (const Message& m : pasted->changed) said += english(m) + "\n";
  EXPECT_NE(said.find("it became beacon-2"), std::string::npos) << said;
  EXPECT_NE(said.find("172.22.10.10 on Steering is held by beacon"), std::string::npos) << said;
}

TEST(Clip, GuestsDisksAndSharesComeAlong) {
  const Lab lab = sample("skerry-ferries");
  const MachineId deck = machine(lab, "deck-a");
  const Lab now = after(lab, paste_machines(lab, copied(lab, {deck}), {}));
  EXPECT_EQ(now.machines.size(), lab.machines.size() + 3); // deck-a, tickets-1, tickets-db
  const MachineId guest = machine(now, "tickets-2");
  EXPECT_EQ(find<Machine>(now, guest)->carrier, machine(now, "deck-a-2"));
  for (const Disk& d : now.disks)
    if (d.machine == guest) {
      const Disk* store = find<Disk>(now, DiskId{d.store.kind == Kind::disk ? d.store.number : 0});
      ASSERT_NE(store, nullptr); // the share that held it did not come along
      EXPECT_EQ(store->machine, machine(now, "deck-a-2"));
    }
}

TEST(Clip, IntoAHypervisorRunsThereAndOnInTheExercise) {
  const Lab lab = sample("skerry-ferries");
  const MachineId deck = machine(lab, "deck-b");
  const ExerciseId exercise = lab.exercises.front().id;
  const auto pasted = paste_machines(lab, copied(lab, {machine(lab, "tickets-1")}), deck, exercise);
  const Lab now = after(lab, pasted);
  const MachineId made{pasted->made.front().number};
  EXPECT_EQ(find<Machine>(now, made)->carrier, deck);
  const auto& on = find<Exercise>(now, exercise)->on;
  EXPECT_NE(std::find(on.begin(), on.end(), made), on.end());
}

TEST(Clip, CutAndPastedKeepsWhatItHad) {
  const Lab lab = sample("skerry-ferries");
  const std::vector<AnyId> one{machine(lab, "hold")};
  const std::string text = copied(lab, one);
  Lab without = lab;
  ASSERT_TRUE(apply(without, remove_elements(lab, one)));
  const auto pasted = paste_machines(without, text, {});
  const Lab now = after(without, pasted);
  EXPECT_TRUE(pasted->changed.empty());
  EXPECT_EQ(addresses(now, machine(now, "hold")), addresses(lab, machine(lab, "hold")));
}

TEST(Clip, RefusesForeignAndDamagedText) {
  const Lab lab = sample("skerry-ferries");
  EXPECT_FALSE(copy_machines(lab, std::vector<AnyId>{lab.segments.front().id}));
  const std::string whole = write_lab(lab);
  for (const std::string& text : {std::string("shopping list"), std::string(), whole}) {
    EXPECT_FALSE(is_copied_machines(text));
    EXPECT_FALSE(paste_machines(lab, text, {}));
  }
  const std::string good = copied(lab, {machine(lab, "beacon")});
  for (std::size_t cut = 2; cut < good.size(); cut += 37)
    EXPECT_FALSE(paste_machines(lab, good.substr(0, good.size() - 2 - cut) + "}", {})) << cut;
}

} // namespace
} // namespace snug::test
