#include "core/gesture/rails.h"

#include "core/gesture/fill.h"
#include "core/gesture/move.h"
#include "core/model/store.h"
#include "core/text/gesture_text.h"

#include <algorithm>

namespace snug {

namespace {

// An element that exists, to be changed.
template <typename E>
E& its(Lab& lab, Id<E::kind> id) {
  return list_of<E>(lab)[*place_of(lab, id)];
}

} // namespace

std::vector<SegmentId> rails_in_order(const Lab& lab) {
  std::vector<const Segment*> rails;
  for (const Segment& s : lab.segments) rails.push_back(&s);
  std::stable_sort(rails.begin(), rails.end(),
                   [](const Segment* a, const Segment* b) { return a->order < b->order; });
  std::vector<SegmentId> out;
  for (const Segment* s : rails) out.push_back(s->id);
  return out;
}

Edit move_rail(const Lab& lab, SegmentId rail, SegmentId before) {
  std::vector<SegmentId> order = rails_in_order(lab);
  if (rail == before) return {};
  const std::vector<SegmentId> was = order;
  std::erase(order, rail);
  order.insert(std::find(order.begin(), order.end(), before), rail);
  if (order == was) return {};
  EditBuilder edit(lab);
  std::int64_t place = 0;
  for (const SegmentId s : order) edit.set(s, "order", place++);
  return std::move(edit).take(say(text::gesture_order, name_of(lab, rail)));
}

namespace {

// The place of `id` when it is one earlier or later; nothing: it is at the end already. `before` none: last.
template <typename I>
std::optional<I> shifted(const std::vector<I>& order, I id, bool later) {
  const auto at = std::find(order.begin(), order.end(), id);
  if (at == order.end() || (later ? at + 1 == order.end() : at == order.begin())) return std::nullopt;
  if (!later) return *(at - 1);
  return at + 2 == order.end() ? I{} : *(at + 2);
}

Edit shift_machine(const Lab& lab, MachineId id, bool later) {
  const Machine* me = find<Machine>(lab, id);
  if (!me) return {};
  std::vector<MachineId> band;
  for (const MachineId m : guests_in_order(lab, me->carrier))
    if (find<Machine>(lab, m)->band == me->band) band.push_back(m);
  const auto before = shifted(band, id, later);
  if (!before) return {};
  const std::vector<MachineId> one{id};
  auto edit = move_machines(lab, one, Spot{me->carrier, me->band, *before});
  return edit ? std::move(*edit) : Edit{};
}

} // namespace

Edit shift(const Lab& lab, AnyId id, bool later) {
  if (id.kind == Kind::machine) return shift_machine(lab, MachineId{id.number}, later);
  const SegmentId rail{id.number};
  const auto before = id.kind == Kind::segment ? shifted(rails_in_order(lab), rail, later) : std::nullopt;
  return before ? move_rail(lab, rail, *before) : Edit{};
}

namespace {

const Template& label_of(SegmentKind kind) {
  switch (kind) {
  case SegmentKind::bridged:
    return text::gesture_bridge;
  case SegmentKind::nat:
    return text::gesture_translate;
  default:
    return text::gesture_isolate;
  }
}

} // namespace

Result<Edit> lead_out(const Lab& lab, SegmentId id, SegmentKind kind, LanId lan) {
  if (kind == SegmentKind::bridged && lab.lans.empty())
    return fail(text::gesture_no_lan, find<Segment>(lab, id)->name);
  Lab after = lab;
  auto& s = its<Segment>(after, id);
  const bool was_bridged = s.type == SegmentKind::bridged;
  s.type = kind;
  if (kind == SegmentKind::isolated)
    s.lan = {};
  else if (!lab.lans.empty())
    s.lan = lan ? lan : s.lan ? s.lan : lab.lans.front().id;
  if ((kind == SegmentKind::bridged) != was_bridged) { // the LAN's plan is another one
    s.prefix4.reset();
    s.prefix6.reset();
    s.gateway4.reset();
    s.gateway6.reset();
    if (was_bridged) detail::give_prefixes(after);
  }
  if (after == lab) return Edit{};
  const Lan* to = find<Lan>(after, find<Segment>(after, id)->lan);
  return detail::edit_between(lab, after,
                              say(label_of(kind), name_of(lab, id), to ? to->name : std::string()));
}

} // namespace snug
