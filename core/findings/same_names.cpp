#include "core/findings/same_names.h"

#include <algorithm>
#include <bit>
#include <map>

namespace snug {

std::vector<std::vector<std::uint32_t>>
same_texts(std::size_t count, const std::function<std::string_view(std::uint32_t)>& text) {
  struct Slot {
    std::size_t hash = 0;
    std::uint32_t first = 0; // place + 1; 0: empty
  };
  const std::size_t size = std::bit_ceil(2 * count + 1);
  std::vector<Slot> slots(size);
  std::map<std::uint32_t, std::vector<std::uint32_t>> groups;
  for (std::uint32_t p = 0; p < count; ++p) {
    const std::string_view own = text(p);
    if (own.empty()) continue;
    const std::size_t hash = std::hash<std::string_view>{}(own);
    std::size_t at = hash & (size - 1);
    while (slots[at].first != 0 && (slots[at].hash != hash || text(slots[at].first - 1) != own))
      at = (at + 1) & (size - 1);
    if (slots[at].first == 0) {
      slots[at] = {hash, p + 1};
      continue;
    }
    auto& group = groups[slots[at].first - 1];
    if (group.empty()) group.push_back(slots[at].first - 1);
    group.push_back(p);
  }
  std::vector<std::vector<std::uint32_t>> out;
  out.reserve(groups.size());
  for (auto& [first, group] : groups) out.push_back(std::move(group));
  return out;
}

} // namespace snug
