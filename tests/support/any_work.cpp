#include "tests/support/any_work.h"

#include "core/addressing/plan.h"
#include "core/analyse/analyse.h"
#include "core/gesture/accept.h"
#include "core/gesture/addresses.h"
#include "core/gesture/clip.h"
#include "core/gesture/extras.h"
#include "core/gesture/plug.h"
#include "core/gesture/promise.h"
#include "core/gesture/rails.h"
#include "core/gesture/rows.h"
#include "core/gesture/set.h"
#include "core/layout/tidy.h"
#include "core/roles/catalogue.h"

#include <array>

namespace snug::test {

namespace {

// None: there is no such element.
template <typename E>
Id<E::kind> some(Random& r, const std::vector<E>& list) {
  return list.empty() ? Id<E::kind>{} : list[r.below(list.size())].id;
}
std::vector<MachineId> some_machines(Random& r, const Lab& lab) {
  std::vector<MachineId> out;
  for (std::size_t n = 1 + r.below(3); n > 0 && !lab.machines.empty(); --n) {
    const MachineId id = some(r, lab.machines);
    if (std::find(out.begin(), out.end(), id) == out.end()) out.push_back(id);
  }
  return out;
}
std::vector<AnyId> as_any(const std::vector<MachineId>& ids) { return {ids.begin(), ids.end()}; }

// Of any kind; `elements_only` leaves out what there is one of.
AnyId anything(Random& r, const Lab& lab, bool elements_only) {
  const auto all = kinds_in_document();
  const Kind kind = all[r.below(all.size())];
  const Store& store = store_of(kind);
  if (!store.table->id) return elements_only ? AnyId{} : AnyId{kind, 0};
  const std::size_t count = store.count(lab);
  return count == 0 ? AnyId{} : store.table->id(store.at(lab, r.below(count)));
}

Result<Edit> edit_of(Result<Added> added) {
  if (!added) return fail(added.error());
  return std::move(added->edit);
}
Result<Edit> nothing() { return Edit{}; }

Spot some_spot(Random& r, const Lab& lab) {
  const MachineId carrier = r.chance(50) ? some(r, lab.machines) : MachineId{};
  return {carrier, static_cast<std::int32_t>(r.below(3)), r.chance(30) ? some(r, lab.machines) : MachineId{}};
}

Result<Edit> set_one_field(Random& r, const Lab& lab) {
  const AnyId id = anything(r, lab, false);
  if (!id && id.kind == Kind::none) return nothing();
  const std::span<const FieldInfo> fields = store_of(id.kind).table->fields;
  const FieldInfo& f = fields[r.below(fields.size())];
  if (f.owner == Owner::program) return nothing();
  Value value = random_value(r, lab, f);
  if (!value.is_set() && !f.optional) return nothing();
  return set_fields(lab, std::vector<AnyId>{id}, f, value);
}

Result<Edit> set_field_of_several(Random& r, const Lab& lab) {
  const std::vector<AnyId> ids = as_any(some_machines(r, lab));
  const std::span<const FieldInfo> fields = info<Machine>().fields;
  const FieldInfo& f = fields[r.below(fields.size())];
  if (ids.empty() || f.owner == Owner::program) return nothing();
  return set_fields(lab, ids, f, random_value(r, lab, f));
}

Result<Edit> add_row(Random& r, const Lab& lab) {
  const AnyId id = anything(r, lab, false);
  if (id.kind == Kind::none) return nothing();
  for (const FieldInfo& f : store_of(id.kind).table->fields) {
    if (f.owner == Owner::program || (f.type != FieldType::rows && f.type != FieldType::ids) || r.chance(50))
      continue;
    auto item = new_item(lab, id, f);
    if (!item) return fail(item.error());
    const Value before = f.get(object_at(lab, id));
    ValueList list = before.as_list() ? *before.as_list() : ValueList{};
    list.push_back(std::move(*item));
    return set_fields(lab, std::vector<AnyId>{id}, f, Value::list(std::move(list)));
  }
  return nothing();
}

Result<Edit> remove_some(Random& r, const Lab& lab) {
  std::vector<AnyId> ids;
  for (std::size_t n = 1 + r.below(2); n > 0; --n)
    if (const AnyId id = anything(r, lab, true); id && std::find(ids.begin(), ids.end(), id) == ids.end())
      ids.push_back(id);
  return ids.empty() ? Edit{} : remove_elements(lab, ids);
}

Result<Edit> add_a_machine(Random& r, const Lab& lab) {
  const std::vector<Role>& roles = catalogue();
  auto added =
      add_machines(lab, roles[r.below(roles.size())], 1 + static_cast<int>(r.below(3)), some_spot(r, lab),
                   some(r, lab.exercises), r.chance(50) ? some(r, lab.segments) : SegmentId{});
  if (!added) return fail(added.error());
  return std::move(added->edit);
}

Result<Edit> add_a_segment(Random& r, const Lab& lab) {
  constexpr std::array kKinds{SegmentKind::isolated, SegmentKind::bridged, SegmentKind::nat};
  return std::move(add_segment(lab, kKinds[r.below(3)]).edit);
}

Result<Edit> add_to_the_plan(Random& r, const Lab& lab) {
  switch (r.below(4)) {
  case 0:
    return std::move(add_exercise(lab, some(r, lab.exercises)).edit);
  case 1:
    return std::move(add_lan(lab).edit);
  case 2:
    return std::move(add_volume(lab).edit);
  default:
    return std::move(add_place(lab).edit);
  }
}

Result<Edit> add_part_of_a_machine(Random& r, const Lab& lab) {
  const MachineId m = some(r, lab.machines);
  if (!m) return nothing();
  const std::size_t which = r.below(3);
  return std::move((which == 0   ? add_disk(lab, m)
                    : which == 1 ? add_loose_card(lab, m)
                                 : add_share(lab, m))
                       .edit);
}

Result<Edit> move_some(Random& r, const Lab& lab) {
  const auto ids = some_machines(r, lab);
  return ids.empty() ? nothing() : move_machines(lab, ids, some_spot(r, lab));
}
Result<Edit> switch_some(Random& r, const Lab& lab) {
  return set_power(lab, some(r, lab.exercises), some_machines(r, lab), r.chance(50));
}
Result<Edit> hold_some(Random& r, const Lab& lab) {
  const auto ids = some_machines(r, lab);
  return ids.empty() ? Edit{} : hold_in_place(lab, ids, r.chance(50));
}
Result<Edit> size_one(Random& r, const Lab& lab) {
  const MachineId m = some(r, lab.machines);
  return m ? set_memory(lab, m, r.between(1, 40'000)) : Edit{};
}
Result<Edit> connect_some(Random& r, const Lab& lab) {
  const auto ids = some_machines(r, lab);
  const SegmentId s = some(r, lab.segments);
  return ids.empty() || !s ? nothing() : edit_of(add_cards(lab, ids, s));
}

Result<Edit> plug_one(Random& r, const Lab& lab) {
  const CardId c = some(r, lab.cards);
  const SegmentId s = some(r, lab.segments);
  if (!c || !s) return nothing();
  const Card& card = *find<Card>(lab, c);
  if (!card.carries.empty() && r.chance(50))
    return carry_instead(lab, c, card.carries[r.below(card.carries.size())].segment, s);
  return plug_card(lab, c, s);
}

Result<Edit> move_a_socket(Random& r, const Lab& lab) {
  const SegmentId from = some(r, lab.segments), to = some(r, lab.segments);
  if (!from) return nothing();
  if (r.chance(50)) return set_socket(lab, from, r.chance(50));
  return find<Segment>(lab, from)->pc_socket ? move_socket(lab, from, r.chance(30) ? SegmentId{} : to)
                                             : move_socket(lab, {}, from);
}

Result<Edit> rename_one(Random& r, const Lab& lab) {
  const AnyId id = r.chance(50) ? AnyId(some(r, lab.machines)) : AnyId(some(r, lab.segments));
  return id ? rename(lab, id, "name-" + std::to_string(r.below(20))) : nothing();
}

Result<Edit> type_an_address(Random& r, const Lab& lab) {
  constexpr std::array<std::string_view, 7> kTyped{".7", ".200",      "dhcp",      "auto",
                                                   "",   "10.0.1.77", "fd00::9/64"};
  const CardId c = some(r, lab.cards);
  if (!c) return nothing();
  return set_address(lab, c, r.below(find<Card>(lab, c)->addresses.size() + 1),
                     kTyped[r.below(kTyped.size())]);
}

std::vector<AddressCell> some_cells(Random& r, const Lab& lab) {
  std::vector<AddressCell> out;
  for (const Card& c : lab.cards)
    for (std::size_t row = 0; row < c.addresses.size(); ++row)
      if (r.chance(30)) out.push_back({c.id, row});
  return out;
}
Result<Edit> number_some_on(Random& r, const Lab& lab) {
  const auto cells = some_cells(r, lab);
  return cells.empty() ? nothing() : number_on(lab, cells);
}
Result<Edit> suggest_some_again(Random& r, const Lab& lab) {
  const auto cells = some_cells(r, lab);
  return cells.empty() ? Edit{} : suggest_again(lab, cells);
}
Result<Edit> paste_addresses(Random& r, const Lab& lab) {
  const auto cells = some_cells(r, lab);
  std::vector<std::string> typed;
  for (std::size_t i = 0; i < cells.size(); ++i) typed.push_back("." + std::to_string(2 + r.below(240)));
  return cells.empty() ? nothing() : set_addresses(lab, cells, typed);
}

Result<Edit> order_rails(Random& r, const Lab& lab) {
  const SegmentId s = some(r, lab.segments);
  if (!s) return nothing();
  const AnyId shifted = r.chance(50) ? AnyId(s) : AnyId(some(r, lab.machines));
  if (r.chance(50) && shifted) return shift(lab, shifted, r.chance(50));
  return move_rail(lab, s, r.chance(30) ? SegmentId{} : some(r, lab.segments));
}
Result<Edit> lead_one_out(Random& r, const Lab& lab) {
  constexpr std::array kKinds{SegmentKind::isolated, SegmentKind::bridged, SegmentKind::nat};
  const SegmentId s = some(r, lab.segments);
  return s ? lead_out(lab, s, kKinds[r.below(3)], some(r, lab.lans)) : nothing();
}

ReachQuestion some_question(Random& r, const Lab& lab) {
  ReachQuestion q;
  q.from = some(r, lab.machines);
  q.to = r.chance(70) ? AnyId(some(r, lab.machines)) : AnyId{Kind::outside, 0};
  q.transport = r.chance(50) ? Transport::tcp : Transport::icmp;
  q.port = q.transport == Transport::tcp ? 443 : 0;
  return q;
}
Result<Edit> promise_one(Random& r, const Lab& lab) {
  if (lab.machines.empty()) return nothing();
  const ReachQuestion q = some_question(r, lab);
  if (r.chance(50)) return edit_of(add_promise(lab, q, some(r, lab.exercises)));
  return edit_of(promise_that(lab, q, r.chance(50) ? Reached::reaches : Reached::does_not_reach,
                              some(r, lab.exercises)));
}
Result<Edit> change_a_promise(Random& r, const Lab& lab) {
  const PromiseId p = some(r, lab.promises);
  if (!p) return nothing();
  if (r.chance(30)) return remove_promise(lab, p);
  const std::span<const FieldInfo> fields = info<Promise>().fields;
  const FieldInfo& f = fields[r.below(fields.size())];
  Value value = random_value(r, lab, f);
  if (f.owner == Owner::program || (!value.is_set() && !f.optional)) return nothing();
  return change_promises(lab, std::vector<AnyId>{p}, f, value);
}

Result<Edit> copy_and_paste(Random& r, const Lab& lab) {
  const auto text = copy_machines(lab, as_any(some_machines(r, lab)));
  if (!text) return fail(text.error());
  auto pasted = paste_machines(lab, *text, {}, some(r, lab.exercises));
  if (!pasted) return fail(pasted.error());
  return std::move(pasted->edit);
}

Result<Edit> double_some(Random& r, const Lab& lab) { return edit_of(duplicate(lab, some_machines(r, lab))); }

Result<Edit> suggest_all(Random& r, const Lab& lab) {
  PlanOptions options;
  options.by_need = r.chance(30);
  options.ipv6 = r.chance(30);
  return suggest_addresses(lab, options);
}

Result<Edit> tidy_up(Random&, const Lab& lab) { return tidy(analyse(lab)); }

Result<Edit> repair(Random& r, const Lab& lab) {
  const Analysis a = analyse(lab);
  for (std::size_t tries = 4; tries > 0 && !a.findings().empty(); --tries) {
    std::vector<Fix> fixes = a.fixes(a.findings()[r.below(a.findings().size())]);
    if (!fixes.empty()) return std::move(fixes[r.below(fixes.size())].edit);
  }
  return nothing();
}

Result<Edit> accept_one(Random& r, const Lab& lab) {
  const Analysis a = analyse(lab);
  if (a.findings().empty()) return nothing();
  const Finding& f = a.findings()[r.below(a.findings().size())];
  return f.accepted ? nothing() : accept_finding(lab, f.rule->id, f.places, "meant so");
}

} // namespace

std::span<const AnyWork> all_work() {
  static constexpr std::array kAll{AnyWork{"set a field", set_one_field, true},
                                   AnyWork{"set a field of several", set_field_of_several, true},
                                   AnyWork{"add a row", add_row, true},
                                   AnyWork{"remove", remove_some},
                                   AnyWork{"add machines", add_a_machine},
                                   AnyWork{"add a segment", add_a_segment},
                                   AnyWork{"add to the plan", add_to_the_plan},
                                   AnyWork{"add a disk, card or share", add_part_of_a_machine},
                                   AnyWork{"move", move_some},
                                   AnyWork{"switch", switch_some},
                                   AnyWork{"keep in place", hold_some},
                                   AnyWork{"memory", size_one},
                                   AnyWork{"connect", connect_some},
                                   AnyWork{"plug", plug_one},
                                   AnyWork{"socket", move_a_socket},
                                   AnyWork{"rename", rename_one},
                                   AnyWork{"type an address", type_an_address},
                                   AnyWork{"number on", number_some_on},
                                   AnyWork{"suggest again", suggest_some_again},
                                   AnyWork{"paste addresses", paste_addresses},
                                   AnyWork{"order", order_rails},
                                   AnyWork{"lead out", lead_one_out},
                                   AnyWork{"promise", promise_one},
                                   AnyWork{"change a promise", change_a_promise},
                                   AnyWork{"copy and paste", copy_and_paste},
                                   AnyWork{"duplicate", double_some},
                                   AnyWork{"suggest addresses", suggest_all},
                                   AnyWork{"tidy", tidy_up},
                                   AnyWork{"repair", repair},
                                   AnyWork{"accept", accept_one}};
  return kAll;
}

} // namespace snug::test
