#pragma once
// The graph of a ReachNetwork as cables and switches give it, without addresses and routes: systems that are
// on and layer-2 networks. Who cannot get anywhere in it can talk to nobody. Walked by Boost.Graph.

#include "core/reach/network.h"

#include <boost/graph/breadth_first_search.hpp>
#include <boost/graph/compressed_sparse_row_graph.hpp>

namespace snug::bench {

class ReachGraph {
 public:
  explicit ReachGraph(const ReachNetwork& n) : nodes_(static_cast<std::uint32_t>(n.nodes().size())) {
    const auto vertices = 2 * std::size_t{nodes_} + n.pieces().size(); // senders, who is passed, networks
    std::vector<std::pair<std::uint32_t, std::uint32_t>> edges;
    for (std::uint32_t i = 0; i < nodes_; ++i) {
      const ReachNode& node = n.nodes()[i];
      if (!node.on) continue;
      bool passes = false;
      for (std::uint32_t p = node.first_port; p < node.end_port; ++p)
        passes |= n.ports()[p].forwards4 || n.ports()[p].forwards6;
      for (std::uint32_t p = node.first_port; p < node.end_port; ++p) {
        if (n.ports()[p].piece == kNowhere) continue;
        const std::uint32_t network = 2 * nodes_ + n.pieces()[n.ports()[p].piece].root;
        edges.emplace_back(i, network);
        edges.emplace_back(network, nodes_ + i);
        if (passes) edges.emplace_back(nodes_ + i, network);
      }
    }
    graph_ = Graph(boost::edges_are_unsorted_multi_pass, edges.begin(), edges.end(), vertices);
  }
  std::uint32_t nodes() const { return nodes_; }
  // 1 for each node that packets of `from` could get to. One breadth-first search.
  const std::vector<std::uint8_t>& from(std::uint32_t node) {
    colours_.assign(boost::num_vertices(graph_), boost::white_color);
    reached_.assign(nodes_, 0);
    Visitor visitor;
    visitor.reached = &reached_;
    visitor.nodes = nodes_;
    boost::breadth_first_visit(
        graph_, node, queue_, visitor,
        boost::make_iterator_property_map(colours_.begin(), boost::get(boost::vertex_index, graph_)));
    return reached_;
  }

 private:
  using Graph = boost::compressed_sparse_row_graph<boost::directedS>;
  struct Visitor : boost::default_bfs_visitor {
    std::vector<std::uint8_t>* reached = nullptr;
    std::uint32_t nodes = 0;
    template <typename Vertex, typename G>
    void discover_vertex(Vertex v, const G&) const {
      if (v >= nodes && v < 2 * std::size_t{nodes}) (*reached)[v - nodes] = 1;
    }
  };
  std::uint32_t nodes_;
  Graph graph_;
  boost::queue<std::size_t> queue_;
  std::vector<boost::default_color_type> colours_;
  std::vector<std::uint8_t> reached_;
};

} // namespace snug::bench
