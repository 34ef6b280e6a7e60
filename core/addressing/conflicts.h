#pragma once
// Which addresses are equal and which lie in a range, over packed numbers: both questions of the rules about
// conflicts, without anything of a lab around them.

#include "core/addressing/sort_keys.h"
#include "core/net/bits128.h"

namespace snug {

// Inclusive, first ≤ last, of one group of addresses.
struct PackedRange {
  std::uint32_t group = 0;
  Bits128 first, last;
};

struct Conflicts {
  struct Run {
    std::uint32_t first = 0, count = 0; // places in the sorted addresses, count ≥ 2
  };
  struct Inside {
    std::uint32_t range = 0, address = 0; // places in the ranges and in the sorted addresses
  };
  std::vector<std::uint32_t> start; // of each group in the sorted addresses, and their end
  std::vector<Run> equal;           // in order
  std::vector<Inside> inside;       // by range, then address
};

// Sorts the addresses by group, then number; equal ones keep their order. Groups are networks whose addresses
// have nothing to do with each other (a segment's IPv4 and IPv6 addresses are two), numbered below `groups`.
Conflicts find_conflicts(std::vector<WideKey>& addresses, std::uint32_t groups,
                         std::span<const PackedRange> ranges);

// The same for who has the addresses of one group after the other.
class ConflictSweep {
 public:
  explicit ConflictSweep(std::vector<PackedRange> ranges);
  // Sorts the addresses of the next group and looks at them.
  void add(std::span<WideKey> addresses);
  Conflicts take() &&;

 private:
  std::vector<PackedRange> ranges_;
  std::vector<std::uint32_t> by_group_; // places in ranges_
  std::size_t next_ = 0;                // in by_group_
  std::uint32_t count_ = 0;             // addresses before this group
  std::vector<WideKey> scratch_;
  Conflicts found_;
};

} // namespace snug
