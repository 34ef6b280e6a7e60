#include "core/reach/ways.h"

#include <algorithm>

namespace snug {

namespace {

// Start of each group and the end, from the group of each item.
std::vector<std::uint32_t> starts(std::span<const std::uint32_t> group_of, std::size_t groups) {
  std::vector<std::uint32_t> start(groups + 1, 0);
  for (const std::uint32_t g : group_of) ++start[g + 1];
  for (std::size_t g = 1; g < start.size(); ++g) start[g] += start[g - 1];
  return start;
}

// Addresses to which a system sends otherwise than to one neighbour.
bool is_special(const Address& a) {
  return is_multicast(a) || is_loopback(a) || a == Address() || a == Address::v4(0xffff'ffff);
}

} // namespace

std::uint32_t ReachWays::column(const Address& a) const {
  const auto it = std::lower_bound(keys_.begin(), keys_.end(), a.as_u32());
  return it != keys_.end() && *it == a.as_u32() ? static_cast<std::uint32_t>(it - keys_.begin()) : kNowhere;
}

Interval ReachWays::columns_in(const Prefix& p) const {
  if (p.length() == 0) return {0, columns()};
  const std::uint32_t last = p.last().as_u32();
  const auto first = std::lower_bound(keys_.begin(), keys_.end(), p.network().as_u32());
  auto from = first;
  for (std::ptrdiff_t stride = 4; keys_.end() - from > stride && *(from + stride) <= last; stride *= 2)
    from += stride;
  const auto end = std::upper_bound(from, keys_.end(), last);
  return {static_cast<std::uint32_t>(first - keys_.begin()), static_cast<std::uint32_t>(end - keys_.begin())};
}

void ReachWays::number_columns() {
  std::vector<std::uint64_t> all; // address above node
  for (std::uint32_t i = 0; i < nodes(); ++i)
    for (std::uint32_t p = node(i).first_port; p < node(i).end_port; ++p)
      for (const ReachAddress& a : n_.addresses(n_.ports()[p]))
        if (a.address.is_v4()) all.push_back(std::uint64_t{a.address.as_u32()} << 32U | i);
  std::sort(all.begin(), all.end());
  for (const std::uint64_t k : all) {
    keys_.push_back(static_cast<std::uint32_t>(k >> 32U));
    owner_.push_back(static_cast<std::uint32_t>(k));
  }
  first_column_ = starts(owner_, nodes());
  columns_of_.resize(owner_.size());
  std::vector<std::uint32_t> next(first_column_.begin(), first_column_.end() - 1);
  for (std::uint32_t c = 0; c < columns(); ++c) columns_of_[next[owner_[c]]++] = c;
}

void ReachWays::judge_networks() {
  odd_root_.resize(n_.pieces().size());
  for (const ReachPiece& p : n_.pieces()) {
    const bool narrow = p.port_mtu < size_ || (p.up && p.up_mtu < size_);
    if (narrow || p.up_own_mac_only || p.up_separated) odd_root_[p.root] = 1;
  }
}

bool ReachWays::looks_odd(const ReachNode& n) const {
  if (n.filter != ReverseFilter::off) return true;
  for (std::uint32_t p = n.first_port; p < n.end_port; ++p) {
    const ReachPort& port = n_.ports()[p];
    const std::uint32_t root = root_of(port);
    if (port.separated || port.mac_twice || port.translates || port.mtu < size_) return true;
    if (root != kNowhere && odd_root_[root] != 0) return true;
    for (std::uint32_t q = n.first_port; q < p && root != kNowhere; ++q)
      if (root_of(n_.ports()[q]) == root) return true;
  }
  return false;
}

void ReachWays::judge_nodes() {
  odd_.reserve(nodes());
  for (std::uint32_t i = 0; i < nodes(); ++i) odd_.push_back(looks_odd(node(i)) ? 1 : 0);
  for (std::uint32_t c = 0; c < columns(); ++c) {
    const bool again = c > 0 && keys_[c] == keys_[c - 1];
    if (again) odd_[owner_[c - 1]] = 1;
    if (again || is_loopback(Address::v4(keys_[c]))) odd_[owner_[c]] = 1;
  }
  any_odd_ |= std::find(odd_.begin(), odd_.end(), 1) != odd_.end();
}

void ReachWays::judge_columns() {
  odd_column_.reserve(columns());
  for (std::uint32_t c = 0; c < columns(); ++c)
    odd_column_.push_back(odd_[owner_[c]] != 0 || is_special(Address::v4(keys_[c])) ? 1 : 0);
  Address last;
  for (std::uint32_t i = 0; i < nodes(); ++i)
    for (std::uint32_t p = node(i).first_port; p < node(i).end_port; ++p)
      for (const ReachAddress& a : n_.addresses(n_.ports()[p])) {
        if (!a.address.is_v4() || a.length > 30) continue;
        const Address broadcast = Address::v4(a.address.as_u32() | ~0U >> a.length);
        if (broadcast == last) continue;
        last = broadcast;
        if (const std::uint32_t c = column(broadcast); c != kNowhere) odd_column_[c] = 1;
      }
  any_odd_ |= std::find(odd_column_.begin(), odd_column_.end(), 1) != odd_column_.end();
}

// A system answers in all its networks for all its addresses (RFC 1122 3.3.4.2, weak host). Ascending in
// each.
void ReachWays::list_holders() {
  std::vector<std::uint32_t> roots, held;
  for (std::uint32_t c = 0; c < columns(); ++c) {
    const ReachNode& holder = node(owner_[c]);
    if (!holder.on) continue;
    for (std::uint32_t p = holder.first_port; p < holder.end_port; ++p)
      if (const std::uint32_t root = root_of(n_.ports()[p]); root != kNowhere)
        roots.push_back(root), held.push_back(c);
  }
  const std::vector<std::uint32_t> start = starts(roots, n_.pieces().size());
  std::vector<std::uint32_t> next(start.begin(), start.end() - 1), sorted(held.size());
  for (std::size_t i = 0; i < held.size(); ++i) sorted[next[roots[i]]++] = held[i];
  first_holder_.push_back(0);
  for (std::size_t root = 0; root + 1 < start.size(); ++root) {
    for (std::uint32_t i = start[root]; i < start[root + 1]; ++i) {
      const bool follows = holders_.size() > first_holder_.back() && holders_.back().end == sorted[i];
      if (follows)
        ++holders_.back().end;
      else
        holders_.push_back({sorted[i], sorted[i] + 1});
    }
    first_holder_.push_back(static_cast<std::uint32_t>(holders_.size()));
  }
}

// Takes `range` out of what is still open, as intervals of the step that is being made.
void ReachWays::cut(Interval range) {
  left_.clear();
  for (const Interval& i : open_) {
    const Interval both{std::max(i.first, range.first), std::min(i.end, range.end)};
    if (both.first >= both.end) {
      left_.push_back(i);
      continue;
    }
    intervals_.push_back(both);
    if (i.first < both.first) left_.push_back({i.first, both.first});
    if (both.end < i.end) left_.push_back({both.end, i.end});
  }
  open_.swap(left_);
}

// Who answers for the next hop.
void ReachWays::aim(std::uint32_t from, const ReachPort& out, const Address& via, Step& s) const {
  const std::uint32_t c = column(via);
  if (c == kNowhere) return; // nobody, or one that forwards nothing
  s.unsure = c + 1 < columns() && keys_[c + 1] == keys_[c];
  const std::uint32_t holder = owner_[c];
  if (s.unsure || !node(holder).on || holder == from) return;
  for (std::uint32_t q = node(holder).first_port; q < node(holder).end_port; ++q) {
    if (root_of(n_.ports()[q]) != root_of(out)) continue;
    s.to = holder;
    s.passes = n_.ports()[q].forwards4;
    s.unsure = odd_[holder] != 0;
    return;
  }
}

ReachWays::Step ReachWays::resolve(std::uint32_t nth, const ReachRoute& r) const {
  Step s;
  const ReachPort& out = n_.ports()[r.port];
  const std::uint32_t root = root_of(out);
  if (root == kNowhere) return s;
  if (const auto source = r.source ? r.source : n_.source4(r.port, r.via))
    for (const std::uint32_t c : columns_of(nth))
      if (keys_[c] == source->as_u32()) s.source = c;
  if (r.via) {
    aim(nth, out, *r.via, s);
    return s;
  }
  s.root = root;
  const auto here = n_.addresses(out);
  const auto v4 = std::count_if(here.begin(), here.end(), [](const auto& a) { return a.address.is_v4(); });
  s.unsure = !r.source && v4 > 1; // which one is put in depends on the target
  return s;
}

void ReachWays::add_steps(std::uint32_t nth) {
  first_step_.push_back(static_cast<std::uint32_t>(steps_.size()));
  if (!node(nth).on || odd_[nth] != 0) return;
  open_.assign(1, {0, columns()});
  for (const ReachRoute& r : n_.routes(node(nth))) {
    if (!r.to.is_v4()) continue;
    const auto first = static_cast<std::uint32_t>(intervals_.size());
    cut(columns_in(r.to));
    if (first == intervals_.size()) continue;
    Step s = resolve(nth, r);
    s.first = first;
    s.end = static_cast<std::uint32_t>(intervals_.size());
    any_odd_ |= s.unsure;
    if (s.unsure || s.root != kNowhere || s.to != kNowhere) steps_.push_back(s);
  }
}

ReachWays::ReachWays(const ReachNetwork& network, std::span<const std::uint32_t> asked, std::int32_t size)
    : n_(network), asked_(asked), size_(size) {
  number_columns();
  judge_networks();
  judge_nodes();
  judge_columns();
  list_holders();
  first_step_.reserve(nodes() + 1);
  for (std::uint32_t i = 0; i < nodes(); ++i) add_steps(i);
  first_step_.push_back(static_cast<std::uint32_t>(steps_.size()));
}

} // namespace snug
