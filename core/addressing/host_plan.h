#pragma once
// Which addresses machines get: the part of planning that works on host numbers.

#include "core/addressing/room.h"

namespace snug {

// A place for one suggested address.
struct Slot {
  static constexpr std::uint32_t kNewRow = 0xffff'ffff;
  std::uint32_t card = kNowhere;
  std::uint32_t row = kNewRow; // of the card's addresses
  std::uint32_t segment = kNowhere;
  std::optional<std::int64_t> host; // the number it has now, then the one it gets
};

struct HostPlan {
  std::vector<Slot> slots; // by machine, in the lab's order, then by card and row
  // Gateways that segments get because a card that forwards takes that place.
  std::vector<std::pair<std::uint32_t, Address>> gateways;
};

// Refuses when a segment has no address left.
Result<HostPlan> plan_hosts(const Index&, const AddressesInUse&);

// The IPv6 address in a /64 or larger whose last digits read like the decimal host number.
std::optional<Address> same_digits6(const Prefix&, std::int64_t host);

// Sets IPv6 rows of cards that are laid out by the plan: suggested rows, and new ones on cards that have
// none. `lab` is the plan so far; its IPv4 addresses are in place.
void plan_hosts6(Lab& lab);

} // namespace snug
