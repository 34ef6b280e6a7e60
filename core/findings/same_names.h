#pragma once
// Which texts of a list are equal.

#include <cstdint>
#include <functional>
#include <string_view>
#include <vector>

namespace snug {

// Groups of places, 0 … count-1, whose `text(place)` are equal and not empty: groups of two and more, each in
// order, by their first place. Linear.
std::vector<std::vector<std::uint32_t>>
same_texts(std::size_t count, const std::function<std::string_view(std::uint32_t)>& text);

} // namespace snug
