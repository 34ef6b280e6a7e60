#include "core/gesture/power.h"

#include "core/gesture/move.h"
#include "core/text/power_text.h"

#include <algorithm>
#include <array>

namespace snug {

bool is_on(const Lab& lab, ExerciseId exercise, MachineId machine) {
  const Exercise* e = find<Exercise>(lab, exercise);
  return !e || std::find(e->on.begin(), e->on.end(), machine) != e->on.end();
}

Result<Switched> switch_over(const Lab& lab, ExerciseId exercise, MachineId machine) {
  if (!find<Exercise>(lab, exercise)) {
    if (lab.exercises.empty()) return fail(text::power_none);
    return fail(text::power_choose, name_of(lab, lab.exercises.front().id));
  }
  Switched out;
  out.on = !is_on(lab, exercise, machine);
  const std::array one{machine};
  auto edit = set_power(lab, exercise, one, out.on);
  if (!edit) return fail(edit.error());
  Lab after = lab;
  if (const auto done = apply(after, *edit); !done) return fail(done.error());
  for (const Machine& m : lab.machines)
    if (m.id != machine && is_on(lab, exercise, m.id) != is_on(after, exercise, m.id))
      out.along.push_back(m.id);
  out.edit = std::move(*edit);
  return out;
}

namespace {

std::vector<std::string> names(const Lab& lab, const std::vector<MachineId>& ids) {
  constexpr std::size_t kMost = 4;
  std::vector<std::string> out;
  for (const MachineId id : ids) {
    if (out.size() == kMost) {
      out.emplace_back("…");
      break;
    }
    out.push_back(name_of(lab, id));
  }
  return out;
}

} // namespace

std::vector<Message> says(const Lab& lab, ExerciseId exercise, MachineId machine, const Switched& s) {
  std::vector<Message> out{say(s.on ? text::power_on : text::power_off, name_of(lab, exercise))};
  if (!s.along.empty())
    out.push_back(
        say(s.on ? text::power_carriers : text::power_guests, name_of(lab, machine), names(lab, s.along)));
  return out;
}

Message said(const Lab& lab, ExerciseId exercise, MachineId machine, const Switched& s) {
  if (s.along.empty()) return {};
  return say(s.on ? text::power_on_told : text::power_off_told, name_of(lab, machine), names(lab, s.along),
             name_of(lab, exercise));
}

} // namespace snug
