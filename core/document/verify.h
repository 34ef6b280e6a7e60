#pragma once
// What can only be judged once a whole document is read: ids and what they name.

#include "core/document/lab_reader.h"

namespace snug::detail {

// Nothing when every id is unique within its kind and below kMaxIdNumber, every reference names an element,
// no machine runs inside itself and no disk is its own base.
std::optional<Fault> verify(const Lab& lab, const std::vector<Reference>& references);
// The largest id number in use; 0: none.
std::uint32_t largest_id(const Lab& lab);

} // namespace snug::detail
