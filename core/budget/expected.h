#pragma once
// What one machine is expected to take, beside the worst case (MODEL: Memory).

#include "core/budget/budget.h"

namespace snug {

// MiB from its carrier, overhead included: of a plain machine its share of its memory, of a hypervisor its
// own part and what its running guests are expected to take, never more than the worst case. 0 when it does
// not run there.
std::int64_t expected_of(const Index&, const ExerciseBudgets&, std::uint32_t machine_place);

} // namespace snug
