#pragma once
// Answers about a lab that need more than one list, computed once per analysis. Holds pointers into the lab:
// valid as long as the lab is neither changed nor destroyed.

#include "core/model/lab.h"

namespace snug {

inline constexpr std::uint32_t kNowhere = 0xffff'ffff;

class Index {
 public:
  explicit Index(const Lab& lab);

  const Lab& lab() const { return *lab_; }
  // Place in its list; kNowhere when there is none.
  std::uint32_t place(AnyId id) const;
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

  // Places of a machine's cards / disks in lab.cards / lab.disks, in order.
  std::span<const std::uint32_t> cards_of(std::uint32_t machine_place) const;
  std::span<const std::uint32_t> disks_of(std::uint32_t machine_place) const;
  // Places of the guests directly inside a machine; kNowhere: directly on the PC.
  std::span<const std::uint32_t> guests_of(std::uint32_t machine_place) const;
  // Place of the carrier; kNowhere: the PC.
  std::uint32_t carrier_of(std::uint32_t machine_place) const { return carrier_[machine_place]; }
  // Places of all machines, carriers before what they carry.
  std::span<const std::uint32_t> carriers_first() const { return order_; }
  int depth_of(std::uint32_t machine_place) const { return depth_[machine_place]; } // 0: directly on the PC
  // Carries guests, or its role says that it is a hypervisor.
  bool is_hypervisor(std::uint32_t machine_place) const { return hypervisor_[machine_place] != 0; }

 private:
  struct Groups {
    std::vector<std::uint32_t> start;
    std::vector<std::uint32_t> items;
    std::span<const std::uint32_t> of(std::size_t group) const {
      return std::span(items).subspan(start[group], start[group + 1] - start[group]);
    }
  };
  template <typename E>
  const E* at(const std::vector<E>& list, Id<E::kind> id) const {
    const std::uint32_t p = place(id);
    return p == kNowhere ? nullptr : &list[p];
  }
  std::uint32_t place_of_number(std::uint32_t number, Kind kind) const;

  const Lab* lab_;
  struct Entry {
    std::uint32_t number;
    Kind kind;
    std::uint32_t place;
  };
  std::vector<std::uint32_t> dense_; // number to place, per lab counter; used when numbers are dense
  std::vector<Kind> dense_kind_;
  std::vector<Entry> sparse_; // sorted by number and kind, otherwise
  Groups cards_, disks_, guests_;
  std::vector<std::uint32_t> carrier_, order_;
  std::vector<int> depth_;
  std::vector<std::uint8_t> hypervisor_;
};

} // namespace snug
