#pragma once
// A small lab of Skerry Ferries in which nothing is wrong with memory, processors, disks and the plan. Tests
// damage one thing of it.

#include "core/model/lab.h"

namespace snug::test {

struct Ship {
  Lab lab;
  RoleId directory, management, hypervisor, storage, application;
  VolumeId fast;
  MachineId beacon, helm, hold, deck_a, deck_b, tickets;
  DiskId beacon_disk, helm_disk, hold_disk, bay, deck_a_disk, deck_b_disk, tickets_disk;
  ShareId cargo;               // on bay, iSCSI, for both decks; the disk of tickets lies on it
  ExerciseId all_hands, quiet; // everything; beacon alone

  Ship();
  Machine& machine(MachineId);
  Disk& disk(DiskId);
  Share& share() { return lab.shares.front(); }
  Role& role(RoleId);
  Exercise& exercise(ExerciseId);
  // More of them; they are on in "All hands".
  MachineId add_machine(std::string name, RoleId role, std::int64_t memory, MachineId carrier = {});
  DiskId add_disk(MachineId, std::int64_t size, AnyId store);
  ShareId add_share(DiskId, std::int64_t size, std::int32_t unit);
  VolumeId add_volume(std::string name, VolumeKind, std::int64_t size);
  CardId add_card(MachineId);
  SegmentId add_segment(std::string name, SegmentKind);

 private:
  RoleId add_role(std::string key, std::int64_t least, std::int64_t usual);
  std::uint32_t next() { return lab.facts.next_id++; }
};

} // namespace snug::test
