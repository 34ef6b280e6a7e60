#pragma once
// Where several DHCP servers could answer, chance decides for each card: which cases are looked at.

#include <algorithm>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace snug {

// All cases while they are few. Else some: everybody with the first server, everybody with the last, and so
// that every two cards meet in all four ways.
class LeaseChoices {
 public:
  static constexpr std::size_t kMost = 16;
  // The server that the next card takes: 0 … count-1.
  std::size_t choose(std::size_t count) {
    if (count < 2) return 0;
    const std::size_t at = at_++;
    if (sampling_) return is_last(at) ? count - 1 : 0;
    if (at == wheels_.size()) wheels_.push_back({0, count});
    return wheels_[at].now;
  }
  // Moves on to the next case; false: that was all.
  bool next() {
    askers_ = std::max(askers_, at_);
    at_ = 0;
    ++round_;
    if (sampling_) return round_ < std::min<std::size_t>(kMost, 2 + 2 * std::bit_width(askers_));
    while (!wheels_.empty() && wheels_.back().now + 1 == wheels_.back().count) wheels_.pop_back();
    if (wheels_.empty()) return false;
    ++wheels_.back().now;
    return true;
  }
  // All anew, as a sample; false: it is one already, or there are not too many cases yet.
  bool sample() {
    if (sampling_ || round_ < kMost) return false;
    sampling_ = true;
    round_ = 0;
    return true;
  }

 private:
  bool is_last(std::size_t asker) const {
    if (round_ < 2) return round_ == 1;
    const bool bit = (asker >> (round_ - 2) / 2 & 1U) != 0;
    return round_ % 2 == 0 ? bit : !bit;
  }
  struct Wheel {
    std::size_t now, count;
  };
  std::vector<Wheel> wheels_;
  std::size_t at_ = 0, round_ = 0, askers_ = 0;
  bool sampling_ = false;
};

} // namespace snug
