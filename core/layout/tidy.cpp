#include "core/layout/tidy.h"

#include "core/edit/build.h"
#include "core/layout/place.h"
#include "core/text/layout_text.h"

#include <algorithm>
#include <bit>
#include <limits>
#include <numeric>

namespace snug {

namespace {

using layout::Content;
using layout::kNone;
using layout::Places;
using layout::Row;

constexpr std::size_t kExactUpTo = 12;
constexpr int kMostRounds = 50;

struct Picture {
  explicit Picture(const Analysis& analysis)
      : content(layout::content_of(analysis, options())), places(layout::place(content, options())) {}
  static DrawOptions options() {
    DrawOptions o;
    o.show_ruler = o.show_findings = o.show_legend = o.describe = false;
    return o;
  }
  Content content;
  Places places;
};

// What it costs to have one rail above another: the wires of the lower one that cross it.
class Costs {
 public:
  explicit Costs(const Picture& p) : rails_(p.content.rails.size()), above_(rails_ * rails_, 0) {
    for (const Row& row : p.places.rows) {
      std::vector<std::int64_t> wires(rails_, 0);
      for (const std::uint32_t m : row.machines)
        for (const layout::Plug& plug : p.content.machines[m].plugs)
          if (plug.rail != kNone) ++wires[plug.rail];
      for (const layout::Stretch& upper : row.stretches)
        for (const layout::Stretch& lower : row.stretches)
          if (upper.rail != lower.rail) above_[upper.rail * rails_ + lower.rail] += wires[lower.rail];
    }
  }
  std::size_t rails() const { return rails_; }
  std::int64_t crossings(std::size_t upper, std::size_t lower) const {
    return above_[upper * rails_ + lower];
  }
  // With a part of a crossing for each pair that would swap, less than one in all.
  std::int64_t weighed(std::size_t upper, std::size_t lower) const {
    const auto whole = static_cast<std::int64_t>(rails_ * rails_);
    return crossings(upper, lower) * whole + (upper > lower ? 1 : 0);
  }

 private:
  std::size_t rails_;
  std::vector<std::int64_t> above_;
};

using Order = std::vector<std::size_t>; // rails from the top, by their place now

Order as_it_is(std::size_t n) {
  Order out(n);
  std::iota(out.begin(), out.end(), std::size_t{0});
  return out;
}

// Over all sets of rails that could stand on top (Held and Karp's way).
Order best_order(const Costs& c) {
  const std::size_t n = c.rails(), sets = std::size_t{1} << n;
  std::vector<std::int64_t> least(sets, std::numeric_limits<std::int64_t>::max());
  std::vector<std::uint8_t> last(sets, 0);
  least[0] = 0;
  for (std::size_t set = 0; set < sets; ++set)
    for (std::size_t next = 0; next < n; ++next) {
      if ((set >> next & 1U) != 0) continue;
      std::int64_t cost = least[set];
      for (std::size_t upper = 0; upper < n; ++upper)
        if ((set >> upper & 1U) != 0) cost += c.weighed(upper, next);
      const std::size_t with = set | std::size_t{1} << next;
      if (cost >= least[with]) continue;
      least[with] = cost;
      last[with] = static_cast<std::uint8_t>(next);
    }
  Order out;
  for (std::size_t set = sets - 1; set != 0; set &= ~(std::size_t{1} << last[set])) out.push_back(last[set]);
  std::reverse(out.begin(), out.end());
  return out;
}

// What moving the rail at `from` to `to` saves.
std::int64_t saving(const Costs& c, const Order& order, std::size_t from, std::size_t to) {
  std::int64_t saved = 0;
  const std::size_t rail = order[from];
  for (std::size_t i = std::min(from, to); i <= std::max(from, to); ++i) {
    if (i == from) continue;
    const std::int64_t change = c.weighed(order[i], rail) - c.weighed(rail, order[i]);
    saved += to < from ? change : -change;
  }
  return saved;
}

void move_in(Order& order, std::size_t from, std::size_t to) {
  const auto at = [&](std::size_t i) { return order.begin() + static_cast<std::ptrdiff_t>(i); };
  if (to < from)
    std::rotate(at(to), at(from), at(from + 1));
  else
    std::rotate(at(from), at(from + 1), at(to + 1));
}

// Moves single rails as long as that saves something.
Order good_order(const Costs& c) {
  Order order = as_it_is(c.rails());
  bool better = true;
  for (int round = 0; better && round < kMostRounds; ++round) {
    better = false;
    for (std::size_t from = 0; from < order.size(); ++from) {
      std::size_t best = from;
      for (std::size_t to = 0; to < order.size(); ++to)
        if (to != from && saving(c, order, from, to) > (best == from ? 0 : saving(c, order, from, best)))
          best = to;
      if (best == from) continue;
      move_in(order, from, best);
      better = true;
    }
  }
  return order;
}

void order_rails(const Picture& p, EditBuilder& edit) {
  const Costs costs(p);
  const Order order = costs.rails() <= kExactUpTo ? best_order(costs) : good_order(costs);
  if (order == as_it_is(order.size())) return;
  for (std::size_t i = 0; i < order.size(); ++i)
    edit.set(p.content.rails[order[i]].id, "order", static_cast<std::int64_t>(i));
}

// Where the rails of a machine are on average, in thousandths of a rail.
std::int64_t middle_of(const layout::MachineText& m) {
  std::int64_t sum = 0, count = 0;
  for (const layout::Plug& plug : m.plugs)
    if (plug.rail != kNone) {
      sum += plug.rail;
      ++count;
    }
  return count == 0 ? 0 : sum * 1000 / count;
}

// Machines of one band with like rails beside each other; who is pinned keeps its place.
void order_band(const Index& index, const Content& content, std::span<const std::uint32_t> band,
                EditBuilder& edit) {
  const auto is_free = [&](std::uint32_t m) { return !index.machine(content.machines[m].id)->pinned; };
  std::vector<std::uint32_t> loose;
  std::copy_if(band.begin(), band.end(), std::back_inserter(loose), is_free);
  std::stable_sort(loose.begin(), loose.end(), [&](std::uint32_t a, std::uint32_t b) {
    const layout::MachineText &x = content.machines[a], &y = content.machines[b];
    return std::pair(x.hypervisor, middle_of(x)) < std::pair(y.hypervisor, middle_of(y));
  });
  std::size_t next = 0;
  for (std::size_t i = 0; i < band.size(); ++i)
    edit.set(content.machines[is_free(band[i]) ? loose[next++] : band[i]].id, "order",
             static_cast<std::int64_t>(i));
}

void order_machines(const Index& index, const Content& content, EditBuilder& edit) {
  const std::span<const std::uint32_t> top = content.top;
  for (std::size_t first = 0, end = 0; first < top.size(); first = end) {
    while (end < top.size() && content.machines[top[end]].band == content.machines[top[first]].band) ++end;
    order_band(index, content, top.subspan(first, end - first), edit);
  }
}

struct Candidate {
  Edit edit;
  Tidiness result;
};

// Rails, after the machines or alone.
Candidate make(const Analysis& analysis, bool machines_too) {
  EditBuilder edit(analysis.lab());
  if (machines_too) {
    order_machines(analysis.index(), Picture(analysis).content, edit);
    const Analysis moved(edit.lab());
    order_rails(Picture(moved), edit);
  } else {
    order_rails(Picture(analysis), edit);
  }
  const Analysis after(edit.lab());
  const Tidiness result = tidiness(after);
  return {std::move(edit).take(say(text::tidy_edit)), result};
}

} // namespace

Tidiness tidiness(const Analysis& analysis) {
  const Picture p(analysis);
  Tidiness out;
  for (const Row& row : p.places.rows) {
    std::vector<std::int64_t> above(p.content.rails.size(), 0); // rails of the row above each
    for (std::size_t i = 0; i < row.stretches.size(); ++i)
      above[row.stretches[i].rail] = static_cast<std::int64_t>(i);
    for (const std::uint32_t m : row.machines)
      for (const layout::Plug& plug : p.content.machines[m].plugs)
        if (plug.rail != kNone) out.crossings += above[plug.rail];
    out.stretches += static_cast<std::int64_t>(row.stretches.size());
  }
  out.height = p.places.height;
  return out;
}

Edit tidy(const Analysis& analysis) {
  Candidate best{{}, tidiness(analysis)};
  for (const bool machines_too : {false, true})
    if (Candidate c = make(analysis, machines_too); c.result < best.result) best = std::move(c);
  return std::move(best.edit);
}

} // namespace snug
