#include "core/report/neighbours_moved.h"

#include "core/model/names.h"
#include "core/model/store.h"
#include "core/text/changes_text.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <unordered_map>

namespace snug {

namespace {

// Guests of each carrier (none: the PC) as the picture shows them.
std::map<MachineId, std::vector<const Machine*>> by_carrier(const Lab& lab) {
  std::map<MachineId, std::vector<const Machine*>> out;
  for (const Machine& m : lab.machines) out[m.carrier].push_back(&m);
  for (auto& [carrier, guests] : out)
    std::stable_sort(guests.begin(), guests.end(), [](const Machine* a, const Machine* b) {
      return std::tie(a->band, a->order) < std::tie(b->band, b->order);
    });
  return out;
}

// Which of these numbers stay when as few as possible are taken out and the rest grows.
std::vector<bool> longest_growing(const std::vector<std::size_t>& numbers) {
  constexpr std::size_t kNobody = static_cast<std::size_t>(-1);
  std::vector<std::size_t> ends, before(numbers.size(), kNobody); // ends: of the best row of each length
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    const auto at = std::lower_bound(ends.begin(), ends.end(), numbers[i],
                                     [&](std::size_t e, std::size_t n) { return numbers[e] < n; });
    if (at != ends.begin()) before[i] = *std::prev(at);
    if (at == ends.end())
      ends.push_back(i);
    else
      *at = i;
  }
  std::vector<bool> stays(numbers.size(), false);
  for (std::size_t i = ends.empty() ? kNobody : ends.back(); i != kNobody; i = before[i]) stays[i] = true;
  return stays;
}

} // namespace

std::vector<MachineId> moved_among_neighbours(const Lab& from, const Lab& to) {
  std::unordered_map<AnyId, std::pair<std::size_t, const Machine*>> was; // place among its neighbours
  for (const auto& [carrier, guests] : by_carrier(from))
    for (std::size_t i = 0; i < guests.size(); ++i) was[guests[i]->id] = {i, guests[i]};
  std::vector<MachineId> out;
  for (const auto& [carrier, guests] : by_carrier(to)) {
    std::vector<const Machine*> both;
    std::vector<std::size_t> places;
    for (const Machine* m : guests)
      if (const auto at = was.find(m->id); at != was.end() && at->second.second->carrier == carrier) {
        both.push_back(m);
        places.push_back(at->second.first);
      }
    const std::vector<bool> stays = longest_growing(places);
    for (std::size_t i = 0; i < both.size(); ++i)
      if (!stays[i] || was[both[i]->id].second->band != both[i]->band) out.push_back(both[i]->id);
  }
  return out;
}

std::string place_words(const Lab& lab, MachineId id) {
  const Machine* m = find<Machine>(lab, id);
  const Machine* before = nullptr;
  const auto all = by_carrier(lab);
  for (const Machine* g : all.at(m->carrier)) {
    if (g == m) break;
    before = g;
  }
  if (!before) return english(say(text::changes_first));
  if (before->band != m->band) return english(say(text::changes_new_row, std::to_string(m->band + 1)));
  return english(say(text::changes_after, name_of(lab, before->id)));
}

} // namespace snug
