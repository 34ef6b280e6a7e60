#include "core/addressing/domains.h"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace snug {

Domains::Domains(const Index& index) : segments_(static_cast<std::uint32_t>(index.lab().segments.size())) {
  collect_pieces(index);
  domain_.resize(segments_ + piece_segment_.size());
  std::iota(domain_.begin(), domain_.end(), 0U);
  join_lans(index);
  join_carried(index);
  number();
  place_cards(index);
}

// A card's node is looked up once for each machine that carries guests, not once for each card.
void Domains::place_cards(const Index& index) {
  const NetworkFacts& facts = index.facts();
  constexpr std::uint32_t kPlugged = CardMark::connected | CardMark::has_segment;
  const std::span<const std::uint32_t> segment_of = facts.card_segment, marks = facts.card_marks;
  card_domain_.assign(facts.card_marks.size(), kNowhere);
  const auto place = [&](std::uint32_t machine, const std::vector<std::uint32_t>& domain_at) {
    for (const std::uint32_t c : index.cards_of(machine))
      if ((marks[c] & kPlugged) == kPlugged) card_domain_[c] = domain_at[segment_of[c]];
  };
  std::vector<std::uint32_t> domain_at(domain_.begin(), domain_.begin() + segments_);
  for (const std::uint32_t m : index.guests_of(kNowhere)) place(m, domain_at);
  for (const std::uint32_t h : index.hypervisors()) {
    const auto pieces = pieces_in(h);
    for (std::size_t i = 0; i < pieces.size(); ++i)
      domain_at[pieces[i]] = domain_[segments_ + piece_start_[h] + i];
    for (const std::uint32_t m : index.guests_of(h)) place(m, domain_at);
  }
  if ((facts.any_card & CardMark::carries) == 0) return;
  // An uplink without a cable joins nothing, but the hypervisor's own end is on the switch inside: that of
  // the first card that carries the segment.
  std::vector<std::uint32_t> ended;
  for (const NetworkFacts::Carried& up : facts.carried)
    ended.push_back(node(facts.card_machine[up.card], up.segment));
  facts.each_card(CardMark::carries | CardMark::has_segment, [&](std::uint32_t c) {
    if ((marks[c] & CardMark::connected) != 0 || facts.card_machine[c] == kNowhere) return;
    for (const SegmentTag& t : index.lab().cards[c].carries) {
      const std::uint32_t s = index.place(t.segment), n = node(facts.card_machine[c], s);
      if (n == kNowhere || std::find(ended.begin(), ended.end(), n) != ended.end()) continue;
      ended.push_back(n);
      if (s == segment_of[c]) card_domain_[c] = domain_[n];
    }
  });
}

void Domains::collect_pieces(const Index& index) {
  const Lab& lab = index.lab();
  const NetworkFacts& facts = index.facts();
  std::vector<std::uint32_t> seen_in(segments_, kNowhere);
  const std::span<const std::uint32_t> segment_of = facts.card_segment, marks = facts.card_marks;
  piece_start_.reserve(lab.machines.size() + 1);
  for (const std::uint32_t h : index.hypervisors()) {
    const std::size_t start = piece_segment_.size();
    piece_start_.resize(h + std::size_t{1}, static_cast<std::uint32_t>(start)); // for those before it, too
    const auto add = [&](std::uint32_t segment) {
      if (segment == kNowhere || seen_in[segment] == h) return;
      seen_in[segment] = h;
      piece_segment_.push_back(segment);
    };
    const auto add_rows = [&](const std::vector<SegmentTag>& rows) {
      for (const SegmentTag& t : rows) add(index.place(t.segment));
    };
    for (const std::uint32_t guest : index.guests_of(h))
      for (const std::uint32_t c : index.cards_of(guest)) {
        add(segment_of[c]);
        if ((marks[c] & (CardMark::trunk | CardMark::carries)) == 0) continue;
        add_rows(lab.cards[c].trunk);
        add_rows(lab.cards[c].carries);
      }
    std::sort(piece_segment_.begin() + static_cast<std::ptrdiff_t>(start), piece_segment_.end());
  }
  piece_start_.resize(lab.machines.size() + 1, static_cast<std::uint32_t>(piece_segment_.size()));
}

std::span<const std::uint32_t> Domains::pieces_in(std::uint32_t machine_place) const {
  const std::uint32_t start = piece_start_[machine_place];
  return std::span(piece_segment_).subspan(start, piece_start_[machine_place + 1] - start);
}

std::uint32_t Domains::node(std::uint32_t carrier_place, std::uint32_t segment_place) const {
  if (segment_place == kNowhere) return kNowhere;
  if (carrier_place == kNowhere) return segment_place;
  const auto pieces = pieces_in(carrier_place);
  const auto it = std::lower_bound(pieces.begin(), pieces.end(), segment_place);
  if (it == pieces.end() || *it != segment_place) return kNowhere;
  return segments_ + piece_start_[carrier_place] + static_cast<std::uint32_t>(it - pieces.begin());
}

std::uint32_t Domains::inside(std::uint32_t carrier_place, std::uint32_t segment_place) const {
  const std::uint32_t n = node(carrier_place, segment_place);
  return n == kNowhere ? kNowhere : domain_[n];
}

std::uint32_t Domains::root(std::uint32_t n) {
  while (domain_[n] != n) {
    domain_[n] = domain_[domain_[n]];
    n = domain_[n];
  }
  return n;
}

void Domains::join(std::uint32_t a, std::uint32_t b) {
  if (a == kNowhere || b == kNowhere) return;
  a = root(a);
  b = root(b);
  domain_[std::max(a, b)] = std::min(a, b);
}

void Domains::join_lans(const Index& index) {
  const std::vector<Segment>& segments = index.lab().segments;
  std::vector<std::tuple<std::uint32_t, std::int32_t, std::uint32_t>> bridged;
  for (std::uint32_t s = 0; s < segments_; ++s)
    if (segments[s].type == SegmentKind::bridged && segments[s].lan)
      bridged.emplace_back(segments[s].lan.number, segments[s].vlan, s);
  std::sort(bridged.begin(), bridged.end());
  for (std::size_t i = 1; i < bridged.size(); ++i) {
    const auto& [lan_before, vlan_before, before] = bridged[i - 1];
    const auto& [lan, vlan, segment] = bridged[i];
    if (lan == lan_before && vlan == vlan_before) join(before, segment);
  }
}

void Domains::join_carried(const Index& index) {
  const NetworkFacts& facts = index.facts();
  for (const NetworkFacts::Carried& c : facts.carried) {
    const std::uint32_t machine = facts.card_machine[c.card];
    join(node(index.carrier_of(machine), c.segment), node(machine, c.segment));
  }
}

void Domains::number() {
  for (std::uint32_t n = 0; n < domain_.size(); ++n) domain_[n] = root(n);
  // A root is the smallest node of its domain, so it is numbered before the others ask for it.
  for (std::uint32_t n = 0; n < domain_.size(); ++n)
    domain_[n] = domain_[n] == n ? count_++ : domain_[domain_[n]];
}

} // namespace snug
