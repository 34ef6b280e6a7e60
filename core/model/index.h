#pragma once
// Answers about a lab that need more than one list, computed once per analysis. Holds pointers into the lab:
// valid as long as the lab is neither changed nor destroyed.

#include "core/model/columns.h"
#include "core/model/facts.h"
#include "core/model/groups.h"

namespace snug {

class Index {
 public:
  // A carrier that is not in the lab counts as the PC, and so does one that would close a circle (documents
  // and edits refuse both).
  explicit Index(const Lab& lab);

  const Lab& lab() const { return *lab_; }
  // Place in its list; kNowhere when there is none.
  std::uint32_t place(AnyId id) const { return id.number ? place_of_number(id.number, id.kind) : kNowhere; }
  template <Kind K>
  std::uint32_t place(Id<K> id) const {
    return id ? place_of_number(id.number, K) : kNowhere;
  }
  const Machine* machine(MachineId id) const { return at(lab_->machines, id); }
  const Card* card(CardId id) const { return at(lab_->cards, id); }
  const Segment* segment(SegmentId id) const { return at(lab_->segments, id); }
  const Lan* lan(LanId id) const { return at(lab_->lans, id); }
  const Role* role(RoleId id) const { return at(lab_->roles, id); }
  const Disk* disk(DiskId id) const { return at(lab_->disks, id); }
  const Share* share(ShareId id) const { return at(lab_->shares, id); }
  const Volume* volume(VolumeId id) const { return at(lab_->volumes, id); }

  // One for each of lab.machines.
  std::span<const MachineColumn> machines() const { return machines_; }
  std::span<const DiskColumn> disks() const { return disk_columns_; }
  const DiskKinds& disk_kinds() const { return disk_kinds_; }
  // The least memory of the machines with this role, in MiB; the largest number when there are none.
  std::int64_t least_memory(std::uint32_t role_place) const { return least_memory_[role_place]; }
  const NetworkFacts& facts() const { return facts_; }
  const NameHashes& name_hashes() const { return name_hashes_; }
  // Places of a machine's cards / disks in lab.cards / lab.disks, in order.
  std::span<const std::uint32_t> cards_of(std::uint32_t machine_place) const {
    return cards_.of(machine_place);
  }
  std::span<const std::uint32_t> disks_of(std::uint32_t machine_place) const {
    return disks_.of(machine_place);
  }
  // Places of the guests directly inside a machine; kNowhere: directly on the PC.
  std::span<const std::uint32_t> guests_of(std::uint32_t machine_place) const {
    return guests_.of(machine_place == kNowhere ? machines_.size() : machine_place);
  }
  // Place of the carrier; kNowhere: the PC.
  std::uint32_t carrier_of(std::uint32_t machine_place) const { return carrier_[machine_place]; }
  // Places of all machines, carriers before what they carry.
  std::span<const std::uint32_t> carriers_first() const { return order_; }
  int depth_of(std::uint32_t machine_place) const { return machines_[machine_place].depth; }
  bool is_hypervisor(std::uint32_t machine_place) const { return machines_[machine_place].hypervisor; }
  // Places of the hypervisors, in the order of the lab, and carriers before what they carry.
  std::span<const std::uint32_t> hypervisors() const { return hypervisors_; }
  std::span<const std::uint32_t> hypervisors_carriers_first() const { return nested_; }
  // Place of the machine that a card / disk belongs to, of the segment that a card is plugged into.
  std::uint32_t machine_of_card(std::uint32_t card_place) const { return facts_.card_machine[card_place]; }
  std::uint32_t machine_of_disk(std::uint32_t disk_place) const { return disk_columns_[disk_place].machine; }
  std::uint32_t segment_of_card(std::uint32_t card_place) const { return facts_.card_segment[card_place]; }

 private:
  // Number to place. Numbers come from one counter (DECISIONS 7), so a flat table holds nearly all: the kind
  // above kPlaceBits of place. What a hand-written file numbers twice or far away stands in `others_`, sorted
  // by number and kind.
  using Slot = std::uint32_t;
  static constexpr unsigned kPlaceBits = 27;
  static constexpr Slot kPlaceMask = (Slot{1} << kPlaceBits) - 1;
  static constexpr Slot kFree = 0; // kind none
  struct Other {
    std::uint32_t number;
    Kind kind;
    std::uint32_t place;
  };
  template <typename E>
  const E* at(const std::vector<E>& list, Id<E::kind> id) const {
    const std::uint32_t p = place(id);
    return p == kNowhere ? nullptr : &list[p];
  }
  std::uint32_t place_of_number(std::uint32_t number, Kind kind) const {
    const Slot slot = number < slots_.size() ? slots_[number] : kFree;
    return slot >> kPlaceBits == static_cast<Slot>(kind) ? slot & kPlaceMask : other_place(number, kind);
  }
  std::uint32_t other_place(std::uint32_t number, Kind kind) const;
  void number(std::uint32_t number, Kind kind, std::uint32_t place) {
    if (number < slots_.size() && slots_[number] == kFree && place <= kPlaceMask)
      slots_[number] = static_cast<Slot>(kind) << kPlaceBits | place;
    else
      note_other({number, kind, place});
  }
  [[gnu::cold]] void note_other(Other);
  template <typename E>
  void number_list(const std::vector<E>& list);
  void number_parts();
  void settle_others();
  struct RoleUse;
  std::vector<RoleUse> role_uses() const;
  void read_machine(const Machine&, const std::vector<RoleUse>&);
  void read_machines();
  void read_cards();
  void read_disks();
  void sort_carriers_first();
  void collect_hypervisors();
  void follow(std::size_t from, std::vector<std::uint8_t>& reached);

  const Lab* lab_;
  std::vector<Slot> slots_;
  std::vector<Other> others_;
  std::size_t settled_ = 0; // so many of them are sorted
  std::vector<MachineColumn> machines_;
  std::vector<DiskColumn> disk_columns_;
  DiskKinds disk_kinds_;
  std::vector<std::int64_t> least_memory_; // by role
  NetworkFacts facts_;
  NameHashes name_hashes_;
  Groups cards_, disks_, guests_;
  std::vector<std::uint32_t> carrier_, order_, hypervisors_, nested_;
};

} // namespace snug
