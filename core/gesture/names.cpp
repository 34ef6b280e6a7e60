#include "core/gesture/names.h"

#include "core/net/host_name.h"
#include "core/text/gesture_text.h"

namespace snug {

std::string names_of(const Lab& lab, std::span<const MachineId> ids) {
  if (ids.size() == 1) return name_of(lab, ids.front());
  return english(say(text::gesture_machines, Count{static_cast<std::int64_t>(ids.size())}));
}

std::string free_name(const Lab& lab, Kind kind, const std::string& wanted) {
  const Store& store = store_of(kind);
  const FieldInfo* field = store.table->field("name");
  const auto taken = [&](const std::string& name) {
    for (std::size_t i = 0; i < store.count(lab); ++i) {
      const Value held = field->get(store.at(lab, i));
      const std::string* other = held.as<std::string>();
      if (other && same_name(*other, name)) return true;
    }
    return false;
  };
  if (!taken(wanted)) return wanted;
  std::size_t end = wanted.size();
  while (end > 0 && wanted[end - 1] >= '0' && wanted[end - 1] <= '9') --end;
  std::string stem = wanted.substr(0, end);
  if (end == wanted.size()) stem += kind == Kind::machine ? "-" : " ";
  for (int n = 2;; ++n)
    if (std::string name = stem + std::to_string(n); !taken(name)) return name;
}

} // namespace snug
