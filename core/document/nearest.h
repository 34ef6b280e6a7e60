#pragma once
// What a misspelt member was probably meant to be.

#include <string_view>

namespace snug::detail {

// The member of a document that differs from `key` by at most two letters put in, left out, changed or
// swapped (one where the key is shorter than five; "y" for "ies" counts as one); empty when none does. Of
// several the nearest, then the first in the order of the document.
std::string_view nearest_member(std::string_view key);

} // namespace snug::detail
