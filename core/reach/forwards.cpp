#include "core/reach/builder.h"
#include "core/reach/reach.h"

#include <algorithm>

namespace snug {

namespace {

std::optional<Address> first4(std::span<const ReachAddress> addresses) {
  const auto is_v4 = [](const ReachAddress& a) { return a.address.is_v4(); };
  const auto it = std::find_if(addresses.begin(), addresses.end(), is_v4);
  return it == addresses.end() ? std::nullopt : std::optional(it->address);
}

} // namespace

// The LAN's router is no part of the plan: it is taken to pass the port on to the PC, and `explain` says so.
void ReachBuilder::pass_on(const ReachForward& f, std::uint32_t outer_port) {
  const auto outer = first4(n_.addresses(b_.ports[outer_port]));
  for (std::uint32_t p = 0; outer && p < b_.ports.size(); ++p) {
    const std::uint32_t node = b_.ports[p].node;
    if (n_.nodes_[node].id.kind == Kind::lan && n_.same_network(p, outer_port))
      b_.forwards.push_back({node, f.transport, f.port, f.port, *outer});
  }
}

void ReachBuilder::add_forwards() {
  for (std::uint32_t s = 0; s < lab_.segments.size(); ++s)
    for (const PortForward& row : lab_.segments[s].forwards) {
      const std::uint32_t node = n_.node_of(lab_.segments[s].id), machine = n_.node_of(row.machine);
      if (node == kNowhere || machine == kNowhere) continue;
      const ReachNode& inner = n_.nodes_[machine];
      for (std::uint32_t p = inner.first_port; p < inner.end_port; ++p) {
        const auto to = b_.ports[p].segment == s ? first4(n_.addresses(b_.ports[p])) : std::nullopt;
        if (!to) continue;
        b_.forwards.push_back({node, row.transport, row.port, row.to_port, *to});
        pass_on(b_.forwards.back(), n_.nodes_[node].end_port - 1);
        break;
      }
    }
}

// Ways into `to`: by the translator of its segment, and by the router before that.
std::vector<Reach::WayIn> Reach::ways_in(AnyId to) const {
  const ReachNetwork& n = network();
  std::vector<WayIn> out;
  const std::uint32_t node = n.node_of(to);
  if (node == kNowhere) return out;
  const auto add = [&](const ReachForward& f, std::int32_t to_port) {
    const ReachNode& by = n.nodes()[f.node];
    for (std::uint32_t p = by.first_port; p < by.end_port; ++p)
      if (const auto outer = n.ports()[p].translates ? first4(n.addresses(n.ports()[p])) : std::nullopt)
        out.push_back({*outer, f.transport, f.port, to_port});
  };
  for (const ReachForward& f : n.forwards()) {
    if (!n.owns(n.nodes()[node], f.to)) continue;
    add(f, f.to_port);
    for (const ReachForward& before : n.forwards())
      if (before.node != f.node && before.transport == f.transport && before.to_port == f.port &&
          n.owns(n.nodes()[f.node], before.to))
        add(before, f.to_port);
  }
  return out;
}

} // namespace snug
