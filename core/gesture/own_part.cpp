#include "core/gesture/own_part.h"

#include "core/gesture/fill.h"
#include "core/gesture/names.h"
#include "core/gesture/plug.h"
#include "core/text/clip_text.h"
#include "core/text/gesture_text.h"
#include "core/text/own_parts_text.h"

#include <algorithm>
#include <cassert>

namespace snug {

namespace {

bool has_card_on(const Lab& lab, MachineId machine, SegmentId segment) {
  return std::any_of(lab.cards.begin(), lab.cards.end(),
                     [&](const Card& c) { return c.machine == machine && c.segment == segment; });
}

Result<void> plug(Lab& lab, std::span<const MachineId> machines, SegmentId segment) {
  for (const MachineId m : machines) {
    if (has_card_on(lab, m, segment)) continue;
    auto card = add_card(lab, m, segment);
    if (!card) return fail(card.error());
    if (auto ok = detail::take_in(lab, std::move(card->edit)); !ok) return ok;
  }
  return {};
}

} // namespace

Result<Lab> make_part(const Lab& lab, std::span<const AnyId> ids, std::string_view name) {
  if (outermost(lab, ids).empty()) return fail(text::own_part_no_machine);
  Lab part = detail::copied_lab(lab, ids);
  part.facts.title = std::string(name);
  return part;
}

Result<Pasted> place_part(const Lab& lab, const Lab& part, int count, const Spot& spot, ExerciseId current,
                          SegmentId plugged) {
  assert(count >= 1 && count <= kMostAtOnce);
  if (part.machines.empty()) return fail(text::clip_empty);
  Lab after = lab;
  Pasted out;
  std::vector<MachineId> made;
  for (int i = 0; i < count; ++i) {
    auto one = detail::paste_lab(after, part, spot.carrier, current);
    if (!one) return one;
    if (const auto ok = detail::take_in(after, std::move(one->edit)); !ok) return fail(ok.error());
    for (const AnyId id : one->made) made.push_back({id.number});
    out.made.insert(out.made.end(), one->made.begin(), one->made.end());
    out.changed.insert(out.changed.end(), one->changed.begin(), one->changed.end());
  }
  if (const auto ok = detail::take_in(after, move_machines(after, made, spot)); !ok) return fail(ok.error());
  if (plugged)
    if (const auto ok = plug(after, made, plugged); !ok) return fail(ok.error());
  out.edit = detail::edit_between(lab, after, say(text::gesture_add, names_of(after, made)));
  return out;
}

} // namespace snug
