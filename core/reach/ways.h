#pragma once
// Which way the IPv4 packets of many nodes take to each of their addresses: per node the steps of its routes,
// each with the addresses that take it. What needs chance, filters, translation or sizes to decide is marked
// unsure.

#include "core/reach/bit_rows.h"
#include "core/reach/network.h"

namespace snug {

class ReachWays {
 public:
  // `asked`: nodes, ascending. All must be among them that forward IPv4 or share an address or MAC with
  // others; who is not among them counts as one that takes nothing. `size`: octets of the packets; where a
  // card or switch takes less, it is unsure. Refers to the network and to `asked`.
  ReachWays(const ReachNetwork&, std::span<const std::uint32_t> asked, std::int32_t size);

  // Nodes are meant by their place in `asked`; columns are their IPv4 addresses, ascending.
  std::uint32_t nodes() const { return static_cast<std::uint32_t>(asked_.size()); }
  std::uint32_t columns() const { return static_cast<std::uint32_t>(owner_.size()); }
  std::uint32_t owner(std::uint32_t column) const { return owner_[column]; }
  std::span<const std::uint32_t> columns_of(std::uint32_t nth) const {
    return part(columns_of_, first_column_, nth);
  }
  // Columns that are answered for in a layer-2 network: of systems that are on and have a card in it.
  // Ascending.
  std::span<const Interval> held_in(std::uint32_t root) const { return part(holders_, first_holder_, root); }

  struct Step {
    std::uint32_t first = 0, end = 0; // intervals of columns
    std::uint32_t root = kNowhere;    // without a next hop: the network whose holders answer
    std::uint32_t to = kNowhere;      // with one: the node that gets the packet
    std::uint32_t source = kNowhere;  // column of the address put into what is sent; kNowhere: there is none
    bool passes = false;              // `to` forwards what comes in there
    bool unsure = false;
  };
  // None of a node that is off. Their intervals do not overlap.
  std::span<const Step> steps(std::uint32_t nth) const { return part(steps_, first_step_, nth); }
  std::span<const Interval> intervals(const Step& s) const {
    return std::span(intervals_).subspan(s.first, s.end - s.first);
  }
  // Anything at all is unsure.
  bool any_odd() const { return any_odd_; }
  // What a node sends, or what is sent to a column, cannot be decided.
  bool is_odd(std::uint32_t nth) const { return odd_[nth] != 0; }
  bool is_odd_column(std::uint32_t c) const { return odd_column_[c] != 0; }

 private:
  template <typename T>
  static std::span<const T> part(const std::vector<T>& all, const std::vector<std::uint32_t>& first,
                                 std::uint32_t n) {
    return std::span(all).subspan(first[n], first[n + 1] - first[n]);
  }
  const ReachNode& node(std::uint32_t nth) const { return n_.nodes()[asked_[nth]]; }
  std::uint32_t root_of(const ReachPort& p) const {
    return p.piece == kNowhere ? kNowhere : n_.pieces()[p.piece].root;
  }
  std::uint32_t column(const Address&) const;
  Interval columns_in(const Prefix&) const;
  void number_columns();
  void judge_networks();
  bool looks_odd(const ReachNode&) const;
  void judge_nodes();
  void judge_columns();
  void list_holders();
  void add_steps(std::uint32_t nth);
  void cut(Interval range);
  Step resolve(std::uint32_t nth, const ReachRoute&) const;
  void aim(std::uint32_t from, const ReachPort& out, const Address& via, Step&) const;

  const ReachNetwork& n_;
  std::span<const std::uint32_t> asked_;
  std::int32_t size_;
  std::vector<std::uint32_t> keys_, owner_; // by column: Address::as_u32(), node
  std::vector<std::uint32_t> first_column_, columns_of_;
  std::vector<std::uint8_t> odd_root_, odd_, odd_column_; // by piece, node, column
  std::vector<std::uint32_t> first_holder_;               // by root
  std::vector<Interval> holders_;
  std::vector<Interval> intervals_, open_, left_;
  std::vector<Step> steps_;
  std::vector<std::uint32_t> first_step_;
  bool any_odd_ = false;
};

} // namespace snug
