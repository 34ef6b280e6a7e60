#pragma once
// Repairs of ways that end for want of one setting.

#include "core/findings/tools.h"
#include "core/reach/promises.h"

namespace snug {

// Of a promise to reach, and of a need: a default route by the gateway for the one who has none, there or on
// the way back; forwarding for the one who is sent to as a router.
std::optional<Fix> fix_promise(const Context&, const Finding&);
std::optional<Fix> fix_need(const Context&, const Finding&);
// The same for any question that was not answered as it should.
std::optional<Fix> mend_way(const Context&, const Judged&);

} // namespace snug
