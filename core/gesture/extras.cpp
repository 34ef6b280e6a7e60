#include "core/gesture/extras.h"

#include "core/gesture/fill.h"
#include "core/gesture/names.h"
#include "core/text/extras_text.h"
#include "core/text/gesture_text.h"

namespace snug {

namespace {

template <typename E>
Added added(const Lab& lab, const Template& name, E e) {
  Lab after = lab;
  const auto number = static_cast<std::int64_t>(list_of<E>(after).size()) + 1;
  e.name = free_name(lab, E::kind, english(say(name, Count{number})));
  const std::string called = e.name;
  const Id<E::kind> id = detail::append(after, std::move(e)).id;
  return {detail::edit_between(lab, after, say(text::gesture_add, called)), id};
}

} // namespace

Added add_exercise(const Lab& lab, ExerciseId like) {
  Exercise e;
  if (const Exercise* other = like ? find<Exercise>(lab, like) : nullptr)
    e.on = other->on;
  else
    for (const Machine& m : lab.machines) e.on.push_back(m.id);
  return added(lab, text::extras_exercise, std::move(e));
}

Added add_lan(const Lab& lab) { return added(lab, text::extras_lan, Lan{}); }

Added add_volume(const Lab& lab) {
  Volume v;
  v.size = v.free = kNewVolume;
  return added(lab, text::extras_volume, std::move(v));
}

Added add_place(const Lab& lab) { return added(lab, text::extras_place, Place{}); }

} // namespace snug
