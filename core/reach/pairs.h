#pragma once
// Every ordered pair of nodes at once: one question for each pair of classes.

#include "core/reach/classes.h"
#include "core/reach/reach.h"

namespace snug {

class ReachPairs {
 public:
  // `shape`: transport, size and the like of each question; its nodes, target and port do not count, so a
  // machine need not offer anything. A long matrix: classes x classes questions.
  explicit ReachPairs(Reach&, const ReachQuestion& shape = {});

  // Constant time, no allocation. Nodes by their place in Reach::network().
  Reached verdict(std::uint32_t from, std::uint32_t to) const {
    if (from == to) return self_[classes_->of(from)];
    return of_classes(classes_->of(from), classes_->of(to));
  }
  // A member of one class and (another) one of the other.
  Reached of_classes(std::uint32_t from, std::uint32_t to) const {
    return verdicts_[std::size_t{from} * classes_->size() + to];
  }
  const ReachClasses& classes() const { return *classes_; }

 private:
  const ReachClasses* classes_;
  std::vector<Reached> self_, verdicts_;
};

} // namespace snug
