#pragma once
// What cards and machines say about networks, laid close together: one word of marks each, so that a rule
// looks only at those it may concern, and all addresses in one row.

#include "core/model/lab.h"

#include <span>

namespace snug {

// `mark`, or nothing. A shift: every mark is one bit.
inline std::uint32_t mark_if(bool condition, std::uint32_t mark) {
  return static_cast<std::uint32_t>(condition) * mark;
}

struct CardMark {
  static constexpr std::uint32_t connected = 1U << 0U;
  static constexpr std::uint32_t has_segment = 1U << 1U;
  static constexpr std::uint32_t trunk = 1U << 2U;        // has trunk rows
  static constexpr std::uint32_t carries = 1U << 3U;      // has carries rows
  static constexpr std::uint32_t only_carries = 1U << 4U; // see only_carries()
  static constexpr std::uint32_t server = 1U << 5U;       // answers DHCP
  static constexpr std::uint32_t relay = 1U << 6U;
  static constexpr std::uint32_t advertises = 1U << 7U;
  static constexpr std::uint32_t has_address = 1U << 8U; // a typed or suggested one
  static constexpr std::uint32_t asks_dhcp = 1U << 9U;
  static constexpr std::uint32_t slaac = 1U << 10U;
  static constexpr std::uint32_t incomplete = 1U << 11U; // a typed or suggested row without address
  static constexpr std::uint32_t has_mac = 1U << 12U;
  static constexpr std::uint32_t own_mtu = 1U << 13U;
  static constexpr std::uint32_t has_ranges = 1U << 14U;
  static constexpr std::uint32_t published = 1U << 15U;
  static constexpr std::uint32_t no_rows = 1U << 16U; // no address rows at all
  static constexpr std::uint32_t forwards4 = 1U << 17U;
  static constexpr std::uint32_t forwards6 = 1U << 18U;
  static constexpr std::uint32_t unplugged = 1U << 19U;  // neither segment nor trunk nor carries rows
  static constexpr std::uint32_t mixed_tags = 1U << 20U; // a VLAN id, or rows of another segment than its own
  static constexpr std::uint32_t odd_mac = 1U << 21U;    // one that no card can have
  static constexpr std::uint32_t own_mac_only = 1U << 22U;
  static constexpr std::uint32_t for_storage = 1U << 23U;
  static constexpr std::uint32_t for_migration = 1U << 24U;
  static constexpr std::uint32_t separated = 1U << 25U;
  static constexpr std::uint32_t translates = 1U << 26U;
};

struct MachineMark {
  static constexpr std::uint32_t routes = 1U << 0U;
  static constexpr std::uint32_t carrier_time = 1U << 1U;
  static constexpr std::uint32_t needs_time = 1U << 2U;
  static constexpr std::uint32_t offers_time = 1U << 3U;
  static constexpr std::uint32_t offers_names = 1U << 4U;
  static constexpr std::uint32_t offers_directory = 1U << 5U;
  static constexpr std::uint32_t offers_management = 1U << 6U;
  static constexpr std::uint32_t needs_names = 1U << 7U;
  static constexpr std::uint32_t needs_reverse = 1U << 8U; // its role wants forward and reverse names
  static constexpr std::uint32_t hypervisor = 1U << 9U;
  static constexpr std::uint32_t several_routes = 1U << 10U;
  static constexpr std::uint32_t unnamed = 1U << 11U;
  static constexpr std::uint32_t own_host_name = 1U << 12U; // a typed one
  static constexpr std::uint32_t notes = 1U << 13U;
  static constexpr std::uint32_t initiator = 1U << 14U; // has an initiator name
  static constexpr std::uint32_t no_role = 1U << 15U;   // none, or one that the lab does not have
  static constexpr std::uint32_t memory_file = 1U << 16U;
  static constexpr std::uint32_t needs = 1U << 17U;   // anything at all
  static constexpr std::uint32_t filters = 1U << 18U; // a reverse path filter
};

// A card that carries its guests' traffic and is for nothing else (hollow pin): neither for management,
// storage nor migration.
bool only_carries(const Card&);
// On the segment itself, on a trunk of it, or carrying it.
bool is_on(const Card&, SegmentId);

// A typed or suggested address of a card, in the order of cards and their rows.
struct AddressRow {
  static constexpr std::uint8_t kNoLength = 255;
  std::uint64_t high = 0, low = 0; // Address::high() and low()
  std::uint32_t card = 0;          // place
  std::uint16_t row = 0;           // of the card's addresses
  std::uint8_t length = kNoLength; // as typed, at most the family's
  bool is_v6 : 1 = false;
  bool suggested : 1 = false;
  Address address() const { return Address::of(is_v6 ? Family::v6 : Family::v4, {high, low}); }
};

// Filled by Index, which reads each card and each machine once.
struct NetworkFacts {
  std::vector<std::uint32_t> card_marks;   // by place in lab.cards
  std::vector<std::uint32_t> card_segment; // place of Card::segment, else kNowhere
  std::vector<std::uint32_t> card_machine; // place of Card::machine, else kNowhere
  std::vector<std::uint64_t> card_mac;     // bits of MACs that a card can have; 0: none
  std::vector<AddressRow> addresses;
  std::vector<std::uint32_t> machine_marks; // its role's offers and needs included
  std::uint32_t any_card = 0;               // all marks that occur
  std::uint32_t any_machine = 0;
  // Rows of connected cards that carry a segment of the lab for a machine of the lab, in order.
  struct Carried {
    std::uint32_t card, segment; // places
  };
  std::vector<Carried> carried;
  std::vector<std::uint8_t> segment_used; // by place: whether a card is on it, on a trunk of it or carries it

  // Calls use(place) for every card that has all of `marks`, in order.
  template <typename Use>
  void each_card(std::uint32_t marks, Use use) const {
    if ((any_card & marks) != marks) return;
    for (std::uint32_t c = 0; c < card_marks.size(); ++c)
      if ((card_marks[c] & marks) == marks) use(c);
  }
  template <typename Use>
  void each_machine(std::uint32_t marks, Use use) const {
    if ((any_machine & marks) != marks) return;
    for (std::uint32_t m = 0; m < machine_marks.size(); ++m)
      if ((machine_marks[m] & marks) == marks) use(m);
  }
};

} // namespace snug
