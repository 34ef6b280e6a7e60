#pragma once
// Whether a repair helped.

#include "core/findings/finding.h"

namespace snug {

// Whether the finding's rule still finds it in another state of its lab. Looks at this one rule only.
bool is_still_found(const Lab& lab, const Finding& finding);

} // namespace snug
