#pragma once
// Budgets of segments (MODEL: Memory, last point).

#include "core/budget/memory.h"

namespace snug {

// Addresses of every segment, the same in every exercise; memory is 0.
std::vector<SegmentBudget> address_budgets(const Index&, const AddressesInUse&);

// budgets_of() in two parts that share nothing: all that needs no addresses, then those of the segments.
std::vector<ExerciseBudgets> budgets_without_addresses(const Index&);
void add_addresses(std::vector<ExerciseBudgets>&, const Index&, const AddressesInUse&);

// Which machines have a card on which segment, each pair once.
struct Seat {
  std::int64_t takes = 0;    // of the machine from its carrier
  std::uint32_t machine = 0; // places
  std::uint32_t segment = 0;
};
std::vector<Seat> seats(const Index&, const GuestCosts&);
// Adds what the `running` machines of a segment take from their carriers.
void add_memory(std::span<const Seat>, std::span<const std::uint8_t> running, std::vector<SegmentBudget>&);

} // namespace snug
