#pragma once
// Reading what core/edit/edit_json.h writes.

#include "core/base/result.h"
#include "core/edit/edit.h"

#include <string_view>

namespace snug {

inline constexpr std::size_t kMostEditSteps = 1'000'000;

// Strict: members that are missing, unknown or there twice, wrong types, values out of range, unknown fields
// and ids of another kind are refused; the path of the problem is within the edit ("/edits/3/after"). What
// elements hold that is not known is kept, as in documents. Whether the edit fits a lab is for apply(). The
// label is the sentence as it was written: its template says "{0}".
Result<Edit> read_edit(std::string_view json);

} // namespace snug
