#include "core/addressing/host_plan.h"

#include "core/addressing/plan.h"
#include "core/model/store.h"
#include "core/text/plan_text.h"

#include <algorithm>

namespace snug {

namespace {

bool is_slot_row(const CardAddress& a) {
  return a.kind == AddressKind::suggested && (!a.address || a.address->is_v4());
}

class HostPlanner {
 public:
  HostPlanner(const Index& index, const AddressesInUse& in_use)
      : index_(index), in_use_(in_use), rooms_(index.lab().segments.size()) {}

  Result<HostPlan> plan();

 private:
  struct Group { // the slots of one machine
    std::uint32_t machine = 0;
    std::size_t first = 0;
    std::size_t count = 0;
    bool has_wish = false;
  };
  Room& room(const Slot& s) { return *rooms_[s.segment]; }

  void collect();
  void collect_card(std::uint32_t c);
  void add_slot(Slot s);
  void make_room(std::uint32_t segment);
  std::optional<std::int64_t> number_now(const Slot& s);
  std::optional<Address> open_gateway(std::uint32_t segment);
  void seat_gateways();
  std::vector<std::size_t> open_slots(const Group& g);
  bool free_on_all(const std::vector<std::size_t>& open, std::int64_t number);
  std::optional<std::int64_t> wish_of(const Group& g);
  std::optional<std::int64_t> lowest_common(const std::vector<std::size_t>& open);
  void seat(const Group& g, std::int64_t number);
  void seat_slot(std::size_t i, std::int64_t number);
  Result<void> seat_rest(const Group& g);
  tl::unexpected<Problem> refuse(const Group& g, const Slot& s);

  const Index& index_;
  const AddressesInUse& in_use_;
  HostPlan plan_;
  std::vector<Group> groups_;
  std::vector<bool> seated_;
  std::vector<std::optional<Room>> rooms_;
};

Result<HostPlan> HostPlanner::plan() {
  collect();
  seat_gateways();
  for (Group& g : groups_) {
    const auto number = wish_of(g);
    g.has_wish = number.has_value();
    if (number) seat(g, *number);
  }
  for (const Group& g : groups_)
    if (auto ok = seat_rest(g); !ok) return fail(ok.error());
  return std::move(plan_);
}

void HostPlanner::collect() {
  const Lab& lab = index_.lab();
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m) {
    const std::size_t first = plan_.slots.size();
    for (const std::uint32_t c : index_.cards_of(m)) collect_card(c);
    if (plan_.slots.size() > first) groups_.push_back({m, first, plan_.slots.size() - first, false});
  }
  seated_.assign(plan_.slots.size(), false);
  for (const Slot& s : plan_.slots)
    if (!rooms_[s.segment]) make_room(s.segment);
}

void HostPlanner::collect_card(std::uint32_t c) {
  const Card& card = index_.lab().cards[c];
  if (only_carries(card)) return;
  if (card.addresses.empty()) add_slot({c, Slot::kNewRow, in_use_.facts().card_segment[c], {}});
  for (std::size_t row = 0; row < card.addresses.size(); ++row) {
    const CardAddress& a = card.addresses[row];
    if (!is_slot_row(a)) continue;
    const std::uint32_t s =
        a.address ? in_use_.segment_for(index_, c, *a.address) : in_use_.facts().card_segment[c];
    add_slot({c, static_cast<std::uint32_t>(row), s, {}});
  }
}

void HostPlanner::add_slot(Slot s) {
  if (s.segment != kNowhere && can_suggest(index_, in_use_, s.segment)) plan_.slots.push_back(s);
}

// Addresses of slots are free again, other suggested ones are not.
void HostPlanner::make_room(std::uint32_t segment) {
  Room& made = rooms_[segment].emplace(index_, in_use_, segment, Room::Suggested::free);
  for (const HeldAddress& h : in_use_.on(segment)) {
    if (h.holder != Holder::card || h.kind != AddressKind::suggested || !h.address.is_v4()) continue;
    const bool laid_out =
        !only_carries(index_.lab().cards[h.card]) && in_use_.facts().card_machine[h.card] != kNowhere;
    if (const auto host = made.host_of(h.address); host && !laid_out) made.take(*host);
  }
}

std::optional<std::int64_t> HostPlanner::number_now(const Slot& s) {
  if (s.row == Slot::kNewRow) return std::nullopt;
  const auto& address = index_.lab().cards[s.card].addresses[s.row].address;
  return address ? room(s).host_of(*address) : std::nullopt;
}

// The place a forwarding card may take: the segment's gateway, if nobody is there whom the plan cannot
// move.
std::optional<Address> HostPlanner::open_gateway(std::uint32_t segment) {
  const Segment& s = index_.lab().segments[segment];
  std::optional<Address> gateway = s.gateway4;
  if (!gateway && s.type == SegmentKind::isolated) {
    const std::int64_t host = index_.lab().numbering.gateway;
    const Room& r = *rooms_[segment];
    const bool fits = host > 0 && host < r.size() && !r.prefix().is_reserved(r.address(host));
    if (fits) gateway = r.address(host);
  }
  if (!gateway || !rooms_[segment]->host_of(*gateway)) return std::nullopt;
  for (const HeldAddress& h : in_use_.on(segment)) {
    const bool movable = h.holder == Holder::card && h.kind == AddressKind::suggested;
    const bool typed_router = h.holder == Holder::card && index_.lab().cards[h.card].forwards4;
    if (!movable && (h.address == *gateway || (typed_router && !s.gateway4))) return std::nullopt;
  }
  return gateway;
}

void HostPlanner::seat_gateways() {
  std::vector<bool> seen(rooms_.size(), false);
  for (std::size_t i = 0; i < plan_.slots.size(); ++i) {
    Slot& s = plan_.slots[i];
    if (!index_.lab().cards[s.card].forwards4 || seen[s.segment]) continue;
    seen[s.segment] = true;
    const auto gateway = open_gateway(s.segment);
    if (!gateway) continue;
    s.host = room(s).host_of(*gateway);
    seated_[i] = true;
    if (!index_.lab().segments[s.segment].gateway4) plan_.gateways.emplace_back(s.segment, *gateway);
  }
}

// Open slots of a group, one for each segment.
std::vector<std::size_t> HostPlanner::open_slots(const Group& g) {
  std::vector<std::size_t> open;
  for (std::size_t i = g.first; i < g.first + g.count; ++i) {
    const auto same_segment = [&](std::size_t o) { return plan_.slots[o].segment == plan_.slots[i].segment; };
    if (!seated_[i] && std::none_of(open.begin(), open.end(), same_segment)) open.push_back(i);
  }
  return open;
}

bool HostPlanner::free_on_all(const std::vector<std::size_t>& open, std::int64_t number) {
  return std::all_of(open.begin(), open.end(),
                     [&](std::size_t i) { return room(plan_.slots[i]).is_free(number); });
}

// A number that the machine has already and that is free on all its segments: typed ones first.
std::optional<std::int64_t> HostPlanner::wish_of(const Group& g) {
  const std::vector<std::size_t> open = open_slots(g);
  if (open.empty()) return std::nullopt;
  for (const std::uint32_t c : index_.cards_of(g.machine))
    for (const CardAddress& a : index_.lab().cards[c].addresses) {
      if (a.kind != AddressKind::typed || !a.address || !a.address->is_v4()) continue;
      const std::uint32_t s = in_use_.segment_for(index_, c, *a.address);
      const auto prefix = s == kNowhere ? std::nullopt : in_use_.prefix4(s);
      if (!prefix || !prefix->contains(*a.address)) continue;
      const std::int64_t number = static_cast<std::int64_t>(a.address->as_u32()) - prefix->network().as_u32();
      if (free_on_all(open, number)) return number;
    }
  for (const std::size_t i : open)
    if (const auto number = number_now(plan_.slots[i]); number && free_on_all(open, *number)) return number;
  return std::nullopt;
}

std::optional<std::int64_t> HostPlanner::lowest_common(const std::vector<std::size_t>& open) {
  for (const HostSpan& span : order_of_use(index_.lab().numbering))
    for (std::int64_t number = span.first; number <= span.last;) {
      std::int64_t next = number;
      for (const std::size_t i : open)
        next = room(plan_.slots[i]).lowest_free(next, span.last).value_or(span.last + 1);
      if (next == number) return number;
      number = next;
    }
  return std::nullopt;
}

void HostPlanner::seat(const Group& g, std::int64_t number) {
  for (const std::size_t i : open_slots(g)) seat_slot(i, number);
}

void HostPlanner::seat_slot(std::size_t i, std::int64_t number) {
  plan_.slots[i].host = number;
  room(plan_.slots[i]).take(number);
  seated_[i] = true;
}

Result<void> HostPlanner::seat_rest(const Group& g) {
  if (!g.has_wish) {
    const std::vector<std::size_t> open = open_slots(g);
    const auto number = open.empty() ? std::nullopt : lowest_common(open);
    if (number) seat(g, *number);
  }
  for (std::size_t i = g.first; i < g.first + g.count; ++i) {
    if (seated_[i]) continue;
    const Room& r = room(plan_.slots[i]);
    auto number = number_now(plan_.slots[i]);
    if (!number || !r.is_free(*number)) number = r.lowest_free(index_.lab().numbering);
    if (!number) return refuse(g, plan_.slots[i]);
    seat_slot(i, *number);
  }
  return {};
}

tl::unexpected<Problem> HostPlanner::refuse(const Group& g, const Slot& s) {
  const Lab& lab = index_.lab();
  return fail(text::plan_segment_full, name_of(lab, lab.segments[s.segment].id), to_text(room(s).prefix()),
              name_of(lab, lab.machines[g.machine].id));
}

} // namespace

Result<HostPlan> plan_hosts(const Index& index, const AddressesInUse& in_use) {
  return HostPlanner(index, in_use).plan();
}

} // namespace snug
