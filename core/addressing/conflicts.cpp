#include "core/addressing/conflicts.h"

#include <algorithm>

namespace snug {

namespace {

// Gives the start of each group and the end. `before` are the keys as they were.
std::vector<std::uint32_t> sort_by_group(std::vector<WideKey>& keys, std::span<const WideKey> before,
                                         std::uint32_t groups) {
  // One place ahead: moving keys moves each start to where it belongs.
  std::vector<std::uint32_t> start(groups + 2, 0);
  for (const WideKey& k : before) ++start[k.group + 2];
  for (std::size_t g = 2; g < start.size(); ++g) start[g] += start[g - 1];
  for (const WideKey& k : before) keys[start[k.group + 1]++] = k;
  start.pop_back();
  return start;
}

void note_equal(std::span<const WideKey> keys, std::uint32_t first, std::uint32_t end,
                std::vector<Conflicts::Run>& equal) {
  for (std::uint32_t i = first + 1; i < end; ++i) {
    if (!keys[i].is_same(keys[i - 1])) continue;
    if (equal.empty() || equal.back().first + equal.back().count != i) equal.push_back({i - 1, 1});
    ++equal.back().count;
  }
}

} // namespace

Conflicts find_conflicts(std::vector<WideKey>& addresses, std::uint32_t groups,
                         std::span<const PackedRange> ranges) {
  Conflicts out;
  std::vector<WideKey> scratch = addresses;
  out.start = sort_by_group(addresses, scratch, groups);
  for (std::uint32_t g = 0; g < groups; ++g) {
    const std::uint32_t first = out.start[g], end = out.start[g + 1];
    sort_wide_keys(std::span(addresses).subspan(first, end - first), scratch);
    note_equal(addresses, first, end, out.equal);
  }
  for (std::uint32_t r = 0; r < ranges.size(); ++r) {
    const WideKey low{ranges[r].first.high, ranges[r].first.low, 0, 0};
    const WideKey high{ranges[r].last.high, ranges[r].last.low, 0, 0};
    const auto end = addresses.begin() + out.start[ranges[r].group + 1];
    auto at = std::lower_bound(addresses.begin() + out.start[ranges[r].group], end, low,
                               [](const WideKey& a, const WideKey& b) { return a.is_before(b); });
    for (; at != end && !high.is_before(*at); ++at)
      out.inside.push_back({r, static_cast<std::uint32_t>(at - addresses.begin())});
  }
  return out;
}

} // namespace snug
