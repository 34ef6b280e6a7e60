#include "core/analyse/in_force.h"

#include "core/budget/defaults.h"
#include "core/budget/memory.h"
#include "core/model/store.h"

namespace snug {

namespace {

template <typename T>
void fill(std::optional<T>& field, const std::optional<T>& value) {
  if (!field) field = value;
}

Pc filled(const Analysis& a) {
  Pc pc = a.lab().pc;
  fill(pc.usable, {usable(pc)});
  fill(pc.reserved, {reserved(pc)});
  fill(pc.keep_free, {keep_free(pc)});
  return pc;
}

Machine filled(const Analysis& a, std::uint32_t place, Machine m) {
  if (a.index().is_hypervisor(place)) fill(m.footprint, {footprint(a.index(), place)});
  return m;
}

Segment filled(const Analysis& a, std::uint32_t place, Segment s) {
  const AddressesInUse& all = a.addresses();
  fill(s.prefix4, all.prefix4(place));
  fill(s.prefix6, all.prefix6(place));
  fill(s.gateway4, all.gateway4(place));
  fill(s.gateway6, all.gateway6(place));
  fill(s.pc_address4, all.pc_address4(place));
  fill(s.translator4, all.translator(place));
  return s;
}

Card filled(const Analysis& a, Card card) {
  if (const Segment* s = find<Segment>(a.lab(), card.segment)) fill(card.mtu, {s->mtu});
  return card;
}

} // namespace

std::optional<Value> in_force(const Analysis& a, AnyId id, const FieldInfo& f) {
  const Lab& lab = a.lab();
  if (!exists(lab, id) || !f.is_default(object_at(lab, id))) return std::nullopt;
  const auto of = [&f, empty = f.get(object_at(lab, id))](const auto& object) {
    Value value = f.get(&object);
    return value == empty ? std::nullopt : std::optional(std::move(value));
  };
  const std::uint32_t place = id.kind == Kind::pc ? 0 : a.index().place(id);
  switch (id.kind) {
  case Kind::pc:
    return of(filled(a));
  case Kind::machine:
    return of(filled(a, place, lab.machines[place]));
  case Kind::segment:
    return of(filled(a, place, lab.segments[place]));
  case Kind::card:
    return of(filled(a, lab.cards[place]));
  default:
    return std::nullopt;
  }
}

} // namespace snug
