#pragma once
// Where packets get to from many nodes at once: a row of bits for each node, a bit for each address. What a
// router delivers, those deliver who send to it, until nothing changes.

#include "core/reach/ways.h"

namespace snug {

class Deliveries {
 public:
  explicit Deliveries(const ReachWays&); // refers to it

  // Nodes and columns as the ways number them. A packet that a node sends gets to an address of another one.
  bool arrives(std::uint32_t nth, std::uint32_t column) const { return out_.test(nth, column); }
  // Not decided, neither this nor whether there is an answer.
  bool unsure(std::uint32_t nth, std::uint32_t column) const {
    return !unsure_.empty() && unsure_.test(nth, column);
  }
  bool all_sure() const { return unsure_.empty(); }

  // Finds whether what is sent back arrives too: before it is asked for.
  void find_answers();
  bool answered(std::uint32_t nth, std::uint32_t column) const { return answered_.test(nth, column); }

 private:
  BitRows rows() const { return {ways_.nodes(), ways_.columns()}; }
  void add_neighbours(BitRows& rows, std::uint32_t nth) const;
  void mark_unsure(bool all);
  bool gain(BitRows& rows, const BitRows& from, std::uint32_t nth, const ReachWays::Step&) const;
  bool gain(BitRows& rows, const BitRows& from, std::uint32_t nth) const;
  bool has_long_ways() const;
  void spread_unsure();
  void spread();
  BitRows turned(const BitRows&) const;

  const ReachWays& ways_;
  BitRows out_, unsure_, answered_;
};

} // namespace snug
