#include "core/findings/rule.h"

#include <algorithm>

namespace snug {

std::span<const Rule> rules() {
  static const std::vector<Rule> all = [] {
    std::vector<Rule> list;
    for (const auto topic :
         {memory_rules(), size_rules(), processor_rules(), virtualization_rules(), disk_rules(), copy_rules(),
          share_rules(), initiator_rules(), network_rules(), address_rules(), name_rules(), time_rules(),
          reach_rules(), store_reach_rules(), limit_rules(), plan_rules()})
      list.insert(list.end(), topic.begin(), topic.end());
    return list;
  }();
  return all;
}

const Rule* find_rule(std::string_view id) {
  const auto all = rules();
  const auto it = std::find_if(all.begin(), all.end(), [&](const Rule& r) { return r.id == id; });
  return it == all.end() ? nullptr : &*it;
}

} // namespace snug
