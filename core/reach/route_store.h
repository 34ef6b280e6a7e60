#pragma once
// The routes of each node. Rows that were made stay where they are.

#include "core/net/prefix.h"

#include <algorithm>
#include <cstdint>
#include <memory_resource>
#include <optional>
#include <span>
#include <vector>

namespace snug {

struct ReachRoute {
  Prefix to;
  std::optional<Address> via;
  std::uint32_t port = 0;
  std::int32_t metric = 0;
  std::optional<Address> source; // of connected ones
};

// What DHCP and router advertisements bring; by port.
struct GivenRoutes {
  std::vector<std::pair<std::uint32_t, Address>> gateways;          // port, gateway
  std::vector<std::pair<std::uint32_t, std::uint32_t>> advertisers; // port, router's port
};

class RouteStore {
 public:
  void resize(std::size_t nodes) { rows_.resize(nodes); }
  bool has(std::size_t node) const { return rows_[node].made; }
  std::span<const ReachRoute> of(std::size_t node) const { return {rows_[node].first, rows_[node].count}; }
  void keep(std::size_t node, std::span<const ReachRoute> routes) {
    ReachRoute* const first = std::pmr::polymorphic_allocator<ReachRoute>(&memory_).allocate(routes.size());
    std::uninitialized_copy(routes.begin(), routes.end(), first);
    rows_[node] = {first, routes.size(), true};
  }

 private:
  static_assert(std::is_trivially_destructible_v<ReachRoute>);
  struct Row {
    const ReachRoute* first = nullptr;
    std::size_t count = 0;
    bool made = false;
  };
  std::vector<Row> rows_;
  std::pmr::monotonic_buffer_resource memory_;
};

} // namespace snug
