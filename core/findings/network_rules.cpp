#include "core/findings/network_rules.h"

#include "core/findings/rule.h"

namespace snug {

std::vector<Rule> joined(std::initializer_list<std::span<const Rule>> parts) {
  std::vector<Rule> all;
  for (const auto part : parts) all.insert(all.end(), part.begin(), part.end());
  return all;
}

std::span<const Rule> network_rules() {
  static const std::vector<Rule> all =
      joined({segment_rules(), bridge_rules(), carry_rules(), frame_rules()});
  return all;
}

} // namespace snug
