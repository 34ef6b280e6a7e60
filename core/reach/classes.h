#pragma once
// Nodes that differ in nothing but the value of their own addresses and MACs: what one of them reaches, and
// who reaches it, holds for all. So a question about every pair is one about every pair of classes.

#include "core/reach/network.h"

namespace snug {

class ReachClasses {
 public:
  // The choices of DHCP servers together: nodes of one class are alike in each of them.
  explicit ReachClasses(std::span<const ReachNetwork> networks);

  std::uint32_t size() const { return static_cast<std::uint32_t>(start_.size() - 1); }
  std::uint32_t of(std::uint32_t node) const { return class_of_[node]; }
  // Nodes, in order.
  std::span<const std::uint32_t> members(std::uint32_t c) const {
    return std::span(members_).subspan(start_[c], start_[c + 1] - start_[c]);
  }

 private:
  std::vector<std::uint32_t> class_of_, members_, start_;
};

} // namespace snug
