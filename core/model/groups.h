#pragma once
// Items 0 … n-1 by group, each group's in order: two flat lists.

#include <cstdint>
#include <span>
#include <vector>

namespace snug {

class Groups {
 public:
  Groups() = default;
  // Item i is of group group_of[i]; the items of groups from `groups` on are one more group, `groups`.
  Groups(std::span<const std::uint32_t> group_of, std::uint32_t groups);
  std::span<const std::uint32_t> of(std::size_t group) const { // at most `groups`
    return std::span(items_).subspan(start_[group], start_[group + 1] - start_[group]);
  }

 private:
  void take_in_order(std::span<const std::uint32_t> group_of);
  void sort_by_group(std::span<const std::uint32_t> group_of, std::uint32_t groups);

  std::vector<std::uint32_t> start_;
  std::vector<std::uint32_t> items_;
};

} // namespace snug
