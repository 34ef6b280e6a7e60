#pragma once
// Virtual processors against cores (MODEL: Processors).

#include "core/budget/memory.h"

namespace snug {

// Power of the PC in hundredths of a core: efficiency cores and second threads count in part.
std::int64_t processor_power(const Pc&, const Rules&);
// Budgets of the PC and of the hypervisors.
std::vector<ProcessorBudget> processor_budgets(const Lab&, const GuestCosts&, std::span<const Inside>);

} // namespace snug
