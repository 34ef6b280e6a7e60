#include "core/reach/pairs.h"

namespace snug {

ReachPairs::ReachPairs(Reach& reach, const ReachQuestion& shape) : classes_(&reach.classes()) {
  const std::uint32_t n = classes_->size();
  const std::span<const ReachNode> nodes = reach.network().nodes();
  ReachQuestion q = shape;
  q.target.reset();
  q.by = {};
  q.port = 0;
  const auto ask = [&](std::uint32_t from, std::uint32_t to) {
    q.from = nodes[from].id;
    q.to = nodes[to].id;
    return reach.verdict(q);
  };
  self_.reserve(n);
  verdicts_.reserve(std::size_t{n} * n);
  for (std::uint32_t a = 0; a < n; ++a) {
    const auto from = classes_->members(a);
    self_.push_back(ask(from.front(), from.front()));
    for (std::uint32_t b = 0; b < n; ++b)
      verdicts_.push_back(ask(from.front(), a == b ? from.back() : classes_->members(b).front()));
  }
}

} // namespace snug
