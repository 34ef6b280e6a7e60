#include "core/findings/tools.h"

#include "core/text/memory_text.h"

#include <algorithm>

namespace snug {

void note_of_all(const Context& c, std::vector<AnyId> places, AllOrMore words, Message reason,
                 std::vector<Finding>& out) {
  if (places.empty()) return;
  constexpr std::size_t kNamed = 5;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < places.size() && i < kNamed; ++i) names.push_back(c.name(places[i]));
  const Template& said = names.size() == places.size() ? words.all : words.more;
  Message message = say(said, Count{static_cast<std::int64_t>(places.size())}, std::move(names));
  out.push_back(found(Severity::note, std::move(message), std::move(reason), std::move(places)));
}

Fix set_one(const Context& c, const Message& label, AnyId id, std::string_view key, Value value) {
  return build_fix(c, label, [&](EditBuilder& b) { b.set(id, key, std::move(value)); });
}

Fix switch_on(const Context& c, const Occasions& when, MachineId machine) {
  return build_fix(c, say(text::fix_switch_on, c.name(machine)), [&](EditBuilder& b) {
    for (std::size_t e = 0; e < c.lab.exercises.size(); ++e) {
      if (!when.exercises[e]) continue;
      std::vector<MachineId> on = c.lab.exercises[e].on;
      for (std::uint32_t m = c.index.place(machine); m != kNowhere; m = c.index.carrier_of(m))
        if (const MachineId id = c.lab.machines[m].id; std::find(on.begin(), on.end(), id) == on.end())
          on.push_back(id);
      b.set(c.lab.exercises[e].id, "on", ids_value(on));
    }
  });
}

} // namespace snug
