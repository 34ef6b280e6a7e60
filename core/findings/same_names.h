#pragma once
// Which texts of a list are equal.

#include <cstdint>
#include <functional>
#include <span>
#include <string_view>
#include <vector>

namespace snug {

// Groups of places whose texts are equal: groups of two and more, each in order, by their first place. Equal
// texts have equal `hashes`, by place; 0: left out. Linear; `text` is asked only where hashes meet.
std::vector<std::vector<std::uint32_t>>
same_texts(std::span<const std::uint64_t> hashes, const std::function<std::string_view(std::uint32_t)>& text);

} // namespace snug
