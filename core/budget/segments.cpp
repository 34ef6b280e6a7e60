#include "core/budget/segments.h"

#include <algorithm>

namespace snug {

namespace {

// Ranges of IPv4 numbers, both ends included, sorted and without overlaps.
struct Span4 {
  std::uint32_t first = 0;
  std::uint32_t last = 0;
};

void add_clipped(std::vector<Span4>& spans, const Address& first, const Address& last, const Prefix& prefix) {
  if (!first.is_v4() || !last.is_v4()) return;
  const Address lo = std::max(first, prefix.first_host());
  const Address hi = std::min(last, prefix.last_host());
  if (lo <= hi) spans.push_back({lo.as_u32(), hi.as_u32()});
}

void merge(std::vector<Span4>& spans) {
  std::sort(spans.begin(), spans.end(), [](const Span4& a, const Span4& b) { return a.first < b.first; });
  std::size_t kept = 0;
  for (const Span4& s : spans) {
    if (kept > 0 && s.first <= spans[kept - 1].last)
      spans[kept - 1].last = std::max(spans[kept - 1].last, s.last);
    else
      spans[kept++] = s;
  }
  spans.resize(kept);
}

// Held addresses are sorted, so one pass over them and the spans finds those inside.
void count_addresses(AddressesInUse::List held, const Prefix& prefix, std::span<const Span4> kept,
                     SegmentBudget& b) {
  for (const Span4& s : kept) b.reserved += std::int64_t{s.last} - s.first + 1;
  std::optional<Address> previous;
  std::size_t at = 0;
  for (const HeldAddress& h : held) {
    if ((h.marks & (HeldMark::outside | HeldMark::reserved)) != 0) continue;
    if (h.marks == HeldMark::link_local && (!prefix.contains(h.address) || prefix.is_reserved(h.address)))
      continue;
    if (previous == h.address) continue;
    previous = h.address;
    ++b.used;
    while (at < kept.size() && kept[at].last < h.address.as_u32()) ++at;
    if (at < kept.size() && kept[at].first <= h.address.as_u32()) --b.reserved;
  }
}

// How many different addresses there are, by what is known of equal ones.
class Different {
 public:
  explicit Different(const AddressesInUse& addresses)
      : next_(addresses.equal().begin()), end_(addresses.equal().end()) {}
  // Each call for addresses behind those of the one before.
  std::int64_t count(AddressesInUse::List held) {
    const std::uint32_t first = held.first_place();
    auto n = static_cast<std::int64_t>(held.size());
    for (; next_ != end_ && next_->first < first + held.size(); ++next_)
      if (next_->first >= first) n -= next_->count - 1;
    return n;
  }

 private:
  std::span<const Conflicts::Run>::iterator next_, end_;
};

void count_wanted(const Index& index, std::vector<SegmentBudget>& out) {
  const NetworkFacts& facts = index.facts();
  if ((facts.any_card & CardMark::incomplete) == 0) return;
  for (std::size_t c = 0; c < facts.card_marks.size(); ++c)
    if ((facts.card_marks[c] & CardMark::incomplete) != 0 && facts.card_segment[c] != kNowhere)
      ++out[facts.card_segment[c]].wanted;
}

} // namespace

std::vector<SegmentBudget> address_budgets(const Index& index, const AddressesInUse& addresses) {
  const auto& segments = index.lab().segments;
  std::vector<SegmentBudget> out(segments.size());
  std::vector<Span4> kept;
  Different different(addresses);
  for (std::uint32_t s = 0; s < segments.size(); ++s) {
    out[s].of = segments[s].id;
    const std::optional<Prefix> prefix = addresses.prefix4(s);
    if (!prefix) continue;
    out[s].usable = prefix->host_count();
    kept.clear();
    for (const auto& r : addresses.ranges(s)) add_clipped(kept, r.range.first, r.range.last, *prefix);
    for (const RangeRow& r : segments[s].kept) add_clipped(kept, r.first, r.last, *prefix);
    merge(kept);
    if (kept.empty() && !addresses.has_marks(s, prefix->family()))
      out[s].used = different.count(addresses.on(s, prefix->family()));
    else
      count_addresses(addresses.on(s, prefix->family()), *prefix, kept, out[s]);
  }
  count_wanted(index, out);
  return out;
}

std::vector<Seat> seats(const Index& index, const GuestCosts& costs) {
  const Lab& lab = index.lab();
  const NetworkFacts& facts = index.facts();
  const bool trunks = (facts.any_card & CardMark::trunk) != 0;
  const std::span<const std::uint32_t> segment_of = facts.card_segment;
  std::vector<std::uint32_t> seated(lab.segments.size(), kNowhere); // the last machine on each segment
  std::vector<Seat> out;
  out.reserve(lab.cards.size());
  for (std::uint32_t m = 0; m < costs.takes.size(); ++m) {
    const auto add = [&, takes = costs.takes[m]](std::uint32_t segment) {
      if (segment == kNowhere || seated[segment] == m) return;
      seated[segment] = m;
      out.push_back({takes, m, segment});
    };
    for (const std::uint32_t c : index.cards_of(m)) {
      add(segment_of[c]);
      if (!trunks || (facts.card_marks[c] & CardMark::trunk) == 0) continue;
      for (const SegmentTag& t : lab.cards[c].trunk) add(index.place(t.segment));
    }
  }
  return out;
}

void add_memory(std::span<const Seat> seats, std::span<const std::uint8_t> running,
                std::vector<SegmentBudget>& segments) {
  for (const Seat& s : seats)
    if (running[s.machine]) segments[s.segment].memory += s.takes;
}

} // namespace snug
