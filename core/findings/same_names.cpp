#include "core/findings/same_names.h"

#include "core/addressing/sort_keys.h"

#include <algorithm>
#include <bit>
#include <map>

namespace snug {

std::vector<std::vector<std::uint32_t>>
same_texts(std::span<const std::uint64_t> hashes,
           const std::function<std::string_view(std::uint32_t)>& text) {
  struct Slot {
    std::uint64_t hash = 0;
    std::uint32_t first = 0; // place + 1; 0: empty
  };
  const std::vector<WideKey> keys = maybe_repeated(hashes);
  const std::size_t size = std::bit_ceil(2 * keys.size() + 1);
  std::vector<Slot> slots(size);
  std::map<std::uint32_t, std::vector<std::uint32_t>> groups;
  for (const WideKey& k : keys) {
    const std::uint32_t p = k.place;
    std::size_t at = k.low / 2 & (size - 1);
    while (slots[at].first != 0 && (slots[at].hash != k.low || text(slots[at].first - 1) != text(p)))
      at = (at + 1) & (size - 1);
    if (slots[at].first == 0) {
      slots[at] = {k.low, p + 1};
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
