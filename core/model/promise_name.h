#pragma once
// What a promise says: it has no name of its own.

#include "core/model/lab.h"

namespace snug {

// "Cargo never reaches the outside", "deck-a reaches hold on tcp 3260".
Message promise_name(const Lab&, const Promise&);

} // namespace snug
