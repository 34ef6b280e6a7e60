#pragma once
// One decision on a way as a sentence.

#include "core/analyse/analyse.h"

namespace snug {

// "tickets-1 sends by tickets-1 card 1 to 172.22.40.42", "gangway has no route to 10.0.0.1".
Message step_message(const Analysis&, const ReachStep&);

} // namespace snug
