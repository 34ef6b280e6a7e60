#include "core/addressing/conflicts.h"

#include <algorithm>
#include <numeric>

namespace snug {

namespace {

void note_equal(std::span<const WideKey> keys, std::uint32_t first, std::vector<Conflicts::Run>& equal) {
  for (std::uint32_t i = 1; i < keys.size(); ++i) {
    if (!keys[i].is_same(keys[i - 1])) continue;
    if (equal.empty() || equal.back().first + equal.back().count != first + i)
      equal.push_back({first + i - 1, 1});
    ++equal.back().count;
  }
}

void note_inside(std::span<const WideKey> keys, std::uint32_t first, const PackedRange& range,
                 std::uint32_t place, std::vector<Conflicts::Inside>& inside) {
  const WideKey low{range.first.high, range.first.low, 0, 0};
  const WideKey high{range.last.high, range.last.low, 0, 0};
  auto at = std::lower_bound(keys.begin(), keys.end(), low,
                             [](const WideKey& a, const WideKey& b) { return a.is_before(b); });
  for (; at != keys.end() && !high.is_before(*at); ++at)
    inside.push_back({place, first + static_cast<std::uint32_t>(at - keys.begin())});
}

} // namespace

ConflictSweep::ConflictSweep(std::vector<PackedRange> ranges)
    : ranges_(std::move(ranges)), by_group_(ranges_.size()) {
  std::iota(by_group_.begin(), by_group_.end(), 0U);
  const auto is_before = [this](std::uint32_t a, std::uint32_t b) {
    return ranges_[a].group < ranges_[b].group;
  };
  std::stable_sort(by_group_.begin(), by_group_.end(), is_before);
}

void ConflictSweep::add(std::span<WideKey> addresses) {
  const auto group = static_cast<std::uint32_t>(found_.start.size());
  found_.start.push_back(count_);
  sort_wide_keys(addresses, scratch_);
  note_equal(addresses, count_, found_.equal);
  for (; next_ < by_group_.size() && ranges_[by_group_[next_]].group == group; ++next_)
    note_inside(addresses, count_, ranges_[by_group_[next_]], by_group_[next_], found_.inside);
  count_ += static_cast<std::uint32_t>(addresses.size());
}

Conflicts ConflictSweep::take() && {
  found_.start.push_back(count_);
  const auto by_range = [](const Conflicts::Inside& a, const Conflicts::Inside& b) {
    return a.range < b.range;
  };
  if (!std::is_sorted(found_.inside.begin(), found_.inside.end(), by_range))
    std::stable_sort(found_.inside.begin(), found_.inside.end(), by_range);
  return std::move(found_);
}

Conflicts find_conflicts(std::vector<WideKey>& addresses, std::uint32_t groups,
                         std::span<const PackedRange> ranges) {
  Conflicts found;
  found.start = sort_by_group(addresses, groups);
  const auto of_group = [&](std::uint32_t g) {
    return std::span(addresses).subspan(found.start[g], found.start[g + 1] - found.start[g]);
  };
  for (std::uint32_t g = 0; g < groups; ++g) note_equal(of_group(g), found.start[g], found.equal);
  for (std::uint32_t r = 0; r < ranges.size(); ++r)
    note_inside(of_group(ranges[r].group), found.start[ranges[r].group], ranges[r], r, found.inside);
  return found;
}

} // namespace snug
