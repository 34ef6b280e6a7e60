#include "core/reach/classes.h"

#include <algorithm>
#include <unordered_map>
#include <unordered_set>

namespace snug {

namespace {

std::uint64_t mixed(std::uint64_t h, std::uint64_t word) {
  h = (h ^ word) * 0x9e37'79b9'7f4a'7c15ULL;
  return h ^ h >> 29U;
}

struct PrefixHash {
  std::size_t operator()(const Prefix& p) const {
    const std::uint64_t kind = static_cast<std::uint64_t>(p.length()) * 2 + (p.is_v4() ? 0 : 1);
    return mixed(mixed(mixed(1, p.network().high()), p.network().low()), kind);
  }
};

// How one network tells addresses apart: which of all prefixes hold them (routes, cards, the choice of a
// source), and whether they are like others at all.
class Places {
 public:
  explicit Places(const ReachNetwork& n) : n_(n) {
    for (const ReachNode& node : n.nodes()) read(node);
    for (const ReachForward& f : n.forwards()) singular_.push_back(f.to);
    nest();
    std::sort(singular_.begin(), singular_.end());
  }

  // The innermost prefix that holds the address.
  std::uint32_t of(const Address& a) const {
    const auto it = std::upper_bound(sorted_.begin(), sorted_.end(), a,
                                     [](const Address& x, const Prefix& p) { return x < p.network(); });
    auto at = static_cast<std::uint32_t>(it - sorted_.begin()) - 1; // kNowhere: none
    while (at != kNowhere && !sorted_[at].contains(a)) at = above_[at];
    return at;
  }
  bool is_singular(const ReachAddress& a) const {
    if (is_multicast(a.address) || is_loopback(a.address) || is_link_local(a.address)) return true;
    return std::binary_search(singular_.begin(), singular_.end(), a.address) || n_.with(a.address).size() > 1;
  }

 private:
  void add(const Prefix& p) {
    if (p == last_ || !known_.insert(p).second) return;
    last_ = p;
    sorted_.push_back(p);
    if (!p.is_v4() || p.length() > 30) return;
    singular_.push_back(p.network());
    singular_.push_back(p.last());
  }
  void read(const ReachNode& node) {
    for (const ReachRoute& r : n_.routes(node)) {
      add(r.to);
      if (r.via && r.via != last_via_) singular_.push_back(*r.via), last_via_ = r.via;
    }
    six_.clear();
    for (std::uint32_t p = node.first_port; p < node.end_port; ++p)
      for (const ReachAddress& a : n_.addresses(n_.ports()[p])) {
        if (a.length < a.address.bits()) add(Prefix::of(a.address, a.length));
        if (!a.address.is_v4() && !is_link_local(a.address)) six_.push_back(a.address);
      }
    // A sender of several addresses takes the one that has more bits in common with the target.
    for (const Address& a : six_)
      for (const Address& b : six_)
        if (a != b) add(Prefix::of(a, common_bits(a, b) + 1));
  }
  void nest() {
    std::sort(sorted_.begin(), sorted_.end());
    above_.resize(sorted_.size());
    for (std::uint32_t i = 0; i < sorted_.size(); ++i) {
      std::uint32_t up = i - 1;
      while (up != kNowhere && !sorted_[up].contains(sorted_[i])) up = above_[up];
      above_[i] = up;
    }
  }

  const ReachNetwork& n_;
  std::unordered_set<Prefix, PrefixHash> known_;
  std::optional<Prefix> last_;
  std::optional<Address> last_via_;
  std::vector<Prefix> sorted_;
  std::vector<std::uint32_t> above_; // the next larger one; kNowhere
  std::vector<Address> singular_, six_;
};

// A node as a row of words; equal rows: one class.
class Rows {
 public:
  explicit Rows(std::span<const ReachNetwork> networks) : networks_(networks) {
    places_.reserve(networks.size());
    for (const ReachNetwork& n : networks) places_.emplace_back(n);
  }
  std::span<const std::uint64_t> of(std::uint32_t node) {
    row_.clear();
    for (std::size_t i = 0; i < networks_.size(); ++i)
      if (!add(networks_[i], places_[i], node)) {
        row_.assign(1, std::uint64_t{1} << 63U | node);
        break;
      }
    return row_;
  }

 private:
  // False: like no other.
  bool add(const ReachNetwork& n, const Places& places, std::uint32_t place) {
    const ReachNode& node = n.nodes()[place];
    if (node.id.kind != Kind::machine || node.forwards6) return false;
    row_.push_back(static_cast<std::uint64_t>(node.filter) << 1U | (node.on ? 1U : 0U));
    for (std::uint32_t p = node.first_port; p < node.end_port; ++p)
      if (!add(n, places, n.ports()[p])) return false;
    row_.push_back(~std::uint64_t{0});
    for (const ReachRoute& r : n.routes(node)) add(r, node.first_port);
    return true;
  }
  bool add(const ReachNetwork& n, const Places& places, const ReachPort& p) {
    if (p.forwards4 || p.forwards6 || p.translates || p.advertises || p.inside || p.mac_twice) return false;
    const std::uint64_t marks =
        (p.separated ? 1U : 0U) | (p.wants_lease ? 2U : 0U) | (p.wants_advertised ? 4U : 0U);
    row_.push_back(std::uint64_t{p.segment} << 32U | p.piece);
    row_.push_back(static_cast<std::uint64_t>(p.mtu) << 8U | marks);
    for (const ReachAddress& a : n.addresses(p)) {
      if (places.is_singular(a)) return false;
      row_.push_back(std::uint64_t{places.of(a.address)} << 9U | static_cast<std::uint64_t>(a.length) << 1U |
                     (a.address.is_v4() ? 0U : 1U));
    }
    row_.push_back(~std::uint64_t{0});
    return true;
  }
  void add(const ReachRoute& r, std::uint32_t first_port) {
    row_.push_back(r.to.network().high());
    row_.push_back(r.to.network().low());
    row_.push_back(static_cast<std::uint64_t>(r.metric) << 32U |
                   static_cast<std::uint64_t>(r.port - first_port) << 16U |
                   static_cast<std::uint64_t>(r.to.length()) << 3U | (r.to.is_v4() ? 0U : 4U) |
                   (r.source ? 2U : 0U) | (r.via ? 1U : 0U));
    if (!r.via) return;
    row_.push_back(r.via->high());
    row_.push_back(r.via->low());
  }

  std::span<const ReachNetwork> networks_;
  std::vector<Places> places_;
  std::vector<std::uint64_t> row_;
};

// Gives equal rows one number.
class Numbers {
 public:
  std::uint32_t of(std::span<const std::uint64_t> row) {
    std::uint64_t h = row.size();
    for (const std::uint64_t w : row) h = mixed(h, w);
    const auto [first, end] = by_hash_.equal_range(h);
    for (auto it = first; it != end; ++it) {
      const Known& k = known_[it->second];
      if (std::equal(row.begin(), row.end(), words_.begin() + k.first, words_.begin() + k.end))
        return it->second;
    }
    const auto begin = static_cast<std::ptrdiff_t>(words_.size());
    words_.insert(words_.end(), row.begin(), row.end());
    known_.push_back({begin, static_cast<std::ptrdiff_t>(words_.size())});
    const auto number = static_cast<std::uint32_t>(known_.size() - 1);
    by_hash_.emplace(h, number);
    return number;
  }
  std::size_t size() const { return known_.size(); }

 private:
  struct Known {
    std::ptrdiff_t first, end;
  };
  std::vector<std::uint64_t> words_;
  std::vector<Known> known_;
  std::unordered_multimap<std::uint64_t, std::uint32_t> by_hash_;
};

} // namespace

ReachClasses::ReachClasses(std::span<const ReachNetwork> networks) {
  const std::size_t nodes = networks.front().nodes().size();
  Rows rows(networks);
  Numbers numbers;
  class_of_.reserve(nodes);
  for (std::uint32_t n = 0; n < nodes; ++n) class_of_.push_back(numbers.of(rows.of(n)));
  start_.assign(numbers.size() + 1, 0);
  for (const std::uint32_t c : class_of_) ++start_[c + 1];
  for (std::size_t c = 1; c < start_.size(); ++c) start_[c] += start_[c - 1];
  members_.resize(nodes);
  std::vector<std::uint32_t> next(start_.begin(), start_.end() - 1);
  for (std::uint32_t n = 0; n < nodes; ++n) members_[next[class_of_[n]]++] = n;
}

} // namespace snug
