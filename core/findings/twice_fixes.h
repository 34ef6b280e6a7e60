#pragma once
// Repairs of an address that belongs to two: either of them may move.

#include "core/findings/rule.h"

namespace snug {

// The one that moves: a suggested address before a typed one, then the one that nobody in the lab names or
// needs, else the later one.
std::optional<Fix> fix_twice(const Context&, const Finding&);
// The other one; nothing where it is no card's, or both addresses are of one card.
std::optional<Fix> other_fix_twice(const Context&, const Finding&);

} // namespace snug
