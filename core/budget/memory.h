#pragma once
// What a guest takes and what is left (MODEL: Memory). All quantities are MiB.

#include "core/budget/budget.h"

namespace snug {

// Page tables of this much memory: 8 bytes for each page of 4 KiB, rounded up to a MiB. Last level only.
std::int64_t page_tables(std::int64_t memory_mib);
// What a hypervisor keeps for itself: typed, else its role's for the lab's size set, else the rules'.
std::int64_t footprint(const Index&, std::uint32_t machine_place);
// What a running guest takes beside its memory: fixed, per processor, page tables (a hypervisor's several
// times, for its shadowed inner memory), by the rules of where it runs.
std::int64_t overhead(const Index&, std::uint32_t machine_place);
// Memory and overhead: what a running guest takes from its carrier.
std::int64_t takes(const Index&, std::uint32_t machine_place);
// The largest memory of a one-processor guest that still fits into the headroom after its overhead, without
// what is kept free; 0 when none does (DECISIONS 19).
std::int64_t room_for_guest(const Index&, const MemoryBudget&);
// The PC's budget of the same exercise on a PC with this much memory, all of it usable and the rest as usual.
MemoryBudget on_pc_of(std::int64_t installed_mib, const ExerciseBudgets&);

// What one running guest adds to its carrier; the same in every exercise.
struct GuestCost {
  std::int64_t takes = 0;
  std::int64_t expected = 0; // a hypervisor's without its guests: footprint and overhead
  std::int32_t processors = 0;
  std::uint32_t machine = 0;    // place
  std::uint32_t carrier = 0;    // 0: the PC, n: the n-th of the index's hypervisors, counted from 1
  std::uint32_t hypervisor = 0; // itself, counted so; 0: it is none
};
struct GuestCosts {
  struct Hypervisor {
    MachineId id;
    std::int64_t memory = 0; // without its footprint
    std::int64_t processors = 0;
  };
  std::vector<GuestCost> guests;       // carriers before what they carry
  std::vector<Hypervisor> hypervisors; // in the order of the lab
  std::vector<std::uint32_t> carriers; // places of the hypervisors in `guests`, in that order
  std::vector<std::int64_t> takes;     // of all machines, by place
};
GuestCosts guest_costs(const Index&);

// Sums over the `running` guests directly inside the PC (the first) and each hypervisor.
struct Inside {
  std::int64_t taken = 0, expected = 0, processors = 0;
};
std::vector<Inside> insides(const GuestCosts&, std::span<const std::uint8_t> running);
// Budgets of the PC and of the hypervisors.
std::vector<MemoryBudget> memory_budgets(const Pc&, const GuestCosts&, std::span<const Inside>);

} // namespace snug
