#pragma once
// Every ordered pair of nodes at once: decided for whole rows of addresses where that is sure (Deliveries),
// by one question for each pair of classes where it is not.

#include "core/reach/deliveries.h"
#include "core/reach/reach.h"

#include <memory>

namespace snug {

class ReachPairs {
 public:
  // `shape`: transport, size and the like of each question; its nodes, target and port do not count, so a
  // machine need not offer anything.
  explicit ReachPairs(Reach&, const ReachQuestion& shape = {});

  // In the time of the target's few addresses, without allocation. Nodes by their place in Reach::network().
  Reached verdict(std::uint32_t from, std::uint32_t to) const {
    if (from == to) return self_[classes_->of(from)];
    return of_classes(classes_->of(from), classes_->of(to));
  }
  // A member of one class and (another) one of the other.
  Reached of_classes(std::uint32_t from, std::uint32_t to) const;
  const ReachClasses& classes() const { return *classes_; }
  // So many pairs of classes had to be asked.
  std::size_t asked() const { return asked_; }

 private:
  void ask_unsure(Reach&, ReachQuestion&);
  std::optional<Reached> decided(std::uint32_t from, std::uint32_t to) const;

  static constexpr std::uint8_t kOpen = 0xff;
  const ReachClasses* classes_;
  std::vector<std::uint32_t> fronts_; // the first member of each class
  std::unique_ptr<ReachWays> ways_;   // where all is decided by one choice of DHCP servers
  std::unique_ptr<Deliveries> known_;
  std::vector<std::uint8_t> off_, six_, six_ways_; // by class: is off; has IPv6 addresses; has routes to such
  std::vector<Reached> self_, among_;              // by class: to itself; to another member
  std::vector<std::uint8_t> asked_verdicts_; // classes x classes, kOpen: decided; none where all is decided
  std::size_t asked_ = 0;
};

} // namespace snug
