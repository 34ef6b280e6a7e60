#pragma once
// Accepting a finding with a reason (DECISIONS 18, 19).

#include "core/edit/build.h"

#include <span>
#include <string_view>

namespace snug {

// Refused without a reason.
Result<Edit> accept_finding(const Lab&, std::string_view rule, std::span<const AnyId> places,
                            std::string_view reason);

} // namespace snug
