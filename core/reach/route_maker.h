#pragma once
// The routes of one node of a network, whose addresses are known.

#include "core/reach/network.h"

namespace snug {

class RouteMaker {
 public:
  RouteMaker(const ReachNetwork& network, const Index& index, const GivenRoutes& given, std::uint32_t node)
      : n_(network), index_(index), given_(given), place_(node), node_(network.nodes()[node]) {}
  std::span<const ReachRoute> make(); // valid as long as this is

 private:
  void add_connected();
  void add_static(bool on_link);
  void add_route(const Route&);
  void add_given();
  void add_unless_taken(const ReachRoute&);
  std::optional<std::uint32_t> port_towards(const Route&) const;
  bool is_broadcast_of(const Address&) const;
  bool has(std::uint32_t port, const Address&) const;
  const ReachRoute* match(const Address&, CardId card) const;
  void sort();

  const ReachNetwork& n_;
  const Index& index_;
  const GivenRoutes& given_;
  std::uint32_t place_;
  const ReachNode& node_;
  std::vector<ReachRoute> made_;
};

} // namespace snug
