#include "core/gesture/move.h"

#include "core/gesture/names.h"
#include "core/gesture/stores.h"
#include "core/model/index.h"
#include "core/text/gesture_text.h"

#include <algorithm>
#include <tuple>

namespace snug {

namespace {

bool is_inside(const Index& index, std::uint32_t machine, std::uint32_t carrier) {
  for (std::uint32_t at = machine; at != kNowhere; at = index.carrier_of(at))
    if (at == carrier) return true;
  return false;
}

Result<void> may_move(const Index& index, std::span<const MachineId> ids, MachineId carrier) {
  const std::uint32_t to = index.place(carrier);
  if (to == kNowhere) return {};
  const Lab& lab = index.lab();
  for (const MachineId id : ids)
    if (is_inside(index, to, index.place(id))) return fail(text::gesture_inside_itself, name_of(lab, id));
  if (!index.is_hypervisor(to)) return fail(text::gesture_no_hypervisor, name_of(lab, carrier));
  return {};
}

// The guests that will stand in a band, in their new order.
std::vector<MachineId> new_order(const Index& index, std::span<const MachineId> ids, const Spot& spot) {
  const Lab& lab = index.lab();
  std::vector<MachineId> out;
  bool put = false;
  const auto put_here = [&] {
    if (!put) out.insert(out.end(), ids.begin(), ids.end());
    put = true;
  };
  for (const MachineId id : guests_in_order(lab, spot.carrier)) {
    const Machine* m = &lab.machines[index.place(id)];
    if (m->band != spot.band) continue;
    if (id == spot.before) put_here();
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) out.push_back(id);
  }
  put_here();
  return out;
}

// Fields of machines and disks, each set once: no copy of the lab is needed to know what stood there.
class FieldSteps {
 public:
  explicit FieldSteps(const Index& index) : index_(index) {}
  void set(MachineId id, std::string_view key, Value value) {
    set(id, key, std::move(value), &index_.lab().machines[index_.place(id)]);
  }
  void set(DiskId id, std::string_view key, Value value) { set(id, key, std::move(value), index_.disk(id)); }
  Edit take(Message label) && {
    edit_.label = std::move(label);
    return std::move(edit_);
  }

 private:
  void set(AnyId id, std::string_view key, Value value, const void* element) {
    const FieldInfo* field = info_of(id.kind).field(key);
    Value before = field->get(element);
    if (before == value) return;
    edit_.steps.emplace_back(SetField{id, field, std::move(before), std::move(value)});
  }
  const Index& index_;
  Edit edit_;
};

} // namespace

std::vector<MachineId> guests_in_order(const Lab& lab, MachineId carrier) {
  std::vector<const Machine*> guests;
  for (const Machine& m : lab.machines)
    if (m.carrier == carrier) guests.push_back(&m);
  std::stable_sort(guests.begin(), guests.end(), [](const Machine* a, const Machine* b) {
    return std::tie(a->band, a->order) < std::tie(b->band, b->order);
  });
  std::vector<MachineId> out;
  out.reserve(guests.size());
  for (const Machine* m : guests) out.push_back(m->id);
  return out;
}

std::vector<MachineId> outermost(const Lab& lab, std::span<const AnyId> ids) {
  const auto chosen = [ids](MachineId m) { return std::find(ids.begin(), ids.end(), AnyId(m)) != ids.end(); };
  std::vector<MachineId> out;
  const auto visit = [&](const auto& self, MachineId carrier) -> void {
    for (const MachineId m : guests_in_order(lab, carrier)) {
      if (chosen(m))
        out.push_back(m);
      else
        self(self, m);
    }
  };
  visit(visit, MachineId{});
  return out;
}

Result<Edit> move_machines(const Lab& lab, std::span<const MachineId> ids, const Spot& spot) {
  return move_machines(Index(lab), ids, spot);
}

Result<Edit> move_machines(const Index& index, std::span<const MachineId> ids, const Spot& spot) {
  if (ids.empty()) return fail(text::gesture_nothing);
  if (const auto may = may_move(index, ids, spot.carrier); !may) return fail(may.error());
  const Lab& lab = index.lab();
  FieldSteps edit(index);
  bool elsewhere = false;
  for (const MachineId id : ids) {
    elsewhere = elsewhere || lab.machines[index.place(id)].carrier != spot.carrier;
    edit.set(id, "carrier", spot.carrier ? Value(AnyId(spot.carrier)) : Value());
    edit.set(id, "band", std::int64_t{spot.band});
  }
  std::int64_t order = 0;
  for (const MachineId id : new_order(index, ids, spot)) edit.set(id, "order", order++);
  const std::string what = names_of(lab, ids);
  if (elsewhere) {
    const DisksAlong along = disks_along(index, ids, spot.carrier);
    if (along.store)
      for (const DiskId d : along.disks) edit.set(d, "store", along.store);
  }
  if (!elsewhere) return std::move(edit).take(say(text::gesture_order, what));
  return std::move(edit).take(
      say(text::gesture_move, what, spot.carrier ? name_of(lab, spot.carrier) : lab.pc.name));
}

Result<Edit> set_power(const Lab& lab, ExerciseId exercise, std::span<const MachineId> ids, bool on) {
  const Exercise* e = find<Exercise>(lab, exercise);
  if (!e) return fail(text::gesture_no_exercise);
  const Index index(lab);
  const auto concerns = [&](std::uint32_t m) {
    return std::any_of(ids.begin(), ids.end(), [&](MachineId id) {
      const std::uint32_t place = index.place(id);
      return on ? is_inside(index, place, m) : is_inside(index, m, place);
    });
  };
  std::vector<AnyId> now(e->on.begin(), e->on.end());
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m) {
    if (!concerns(m)) continue;
    const AnyId id = lab.machines[m].id;
    const auto at = std::find(now.begin(), now.end(), id);
    if (on && at == now.end()) now.push_back(id);
    if (!on && at != now.end()) now.erase(at);
  }
  EditBuilder edit(lab);
  edit.set(exercise, "on", Value::list(ValueList(now.begin(), now.end())));
  return std::move(edit).take(say(on ? text::gesture_on : text::gesture_off, names_of(lab, ids), e->name));
}

Edit hold_in_place(const Lab& lab, std::span<const MachineId> ids, bool held) {
  EditBuilder edit(lab);
  for (const MachineId id : ids) edit.set(id, "pinned", held);
  return std::move(edit).take(say(held ? text::gesture_hold : text::gesture_let_go, names_of(lab, ids)));
}

Edit set_memory(const Lab& lab, MachineId id, std::int64_t mib) {
  const std::int64_t steps = std::max<std::int64_t>(1, (mib + kMemoryStep / 2) / kMemoryStep);
  return set_field(lab, id, "memory",
                   std::min(steps * kMemoryStep, info_of(Kind::machine).field("memory")->most));
}

} // namespace snug
