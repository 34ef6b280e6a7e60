#pragma once
// What a memory budget says in words.

#include "core/base/message.h"
#include "core/budget/budget.h"

namespace snug {

// What guests can have, in MiB. What is kept back may be more than there is: at least 0.
std::int64_t room_in(const MemoryBudget&);

// "running 25 GiB of 28 GiB · headroom 3 GiB", "… · over by 2 GiB".
Message running_words(const MemoryBudget&);

} // namespace snug
