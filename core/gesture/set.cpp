#include "core/gesture/set.h"

#include "core/gesture/move.h"
#include "core/gesture/promise.h"
#include "core/text/model_text.h"

namespace snug {

Result<Edit> set_fields(const Lab& lab, std::span<const AnyId> ids, const FieldInfo& field,
                        const Value& value) {
  if (const auto ok = check(field, value); !ok) return fail(ok.error());
  if (!ids.empty() && ids.front().kind == Kind::machine && field.key == "carrier") {
    std::vector<MachineId> machines;
    for (const AnyId id : ids) machines.push_back({id.number});
    const AnyId* to = value.as<AnyId>();
    return move_machines(lab, machines, {{to ? to->number : 0}, 0, {}});
  }
  if (!ids.empty() && ids.front().kind == Kind::promise) return change_promises(lab, ids, field, value);
  EditBuilder edit(lab);
  for (const AnyId id : ids) edit.set(id, field.key, value);
  if (ids.size() == 1)
    return std::move(edit).take(say(text::label_change, field.label, name_of(lab, ids.front())));
  return std::move(edit).take(say(text::label_change, field.label,
                                  say(text::label_things, Count{static_cast<std::int64_t>(ids.size())})));
}

} // namespace snug
