#include "core/edit/edit.h"
#include "core/text/model_text.h"

#include <algorithm>
#include <unordered_map>
#include <unordered_set>

namespace snug {

namespace {

void set_differing_fields(const StructInfo& table, AnyId id, const void* from, const void* to,
                          std::vector<Primitive>& steps) {
  for (const FieldInfo& f : table.fields)
    if (!f.equal(from, to)) steps.emplace_back(SetField{id, &f, f.get(from), f.get(to)});
  const Unknown& before =
      table.unknown(const_cast<void*>(from)); // NOLINT(cppcoreguidelines-pro-type-const-cast)
  const Unknown& after =
      table.unknown(const_cast<void*>(to)); // NOLINT(cppcoreguidelines-pro-type-const-cast)
  if (!(before == after)) steps.emplace_back(SetUnknown{id, before, after});
}

std::vector<std::uint32_t> numbers(const Store& store, const Lab& lab) {
  std::vector<std::uint32_t> out(store.count(lab));
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = store.table->id(store.at(lab, i)).number;
  return out;
}

// Ids that keep their relative order in both lists: the longest increasing run of places, so that few
// elements move.
std::unordered_set<std::uint32_t> staying(const std::vector<std::uint32_t>& from,
                                          const std::vector<std::uint32_t>& to) {
  std::unordered_map<std::uint32_t, std::size_t> place;
  for (std::size_t i = 0; i < to.size(); ++i) place.emplace(to[i], i);
  std::vector<std::size_t> tails; // indices into from: ends of the best runs by length
  std::vector<std::size_t> previous(from.size(), from.size());
  const auto target = [&](std::size_t i) { return place.find(from[i])->second; };
  for (std::size_t i = 0; i < from.size(); ++i) {
    if (place.find(from[i]) == place.end()) continue;
    const auto at = std::lower_bound(tails.begin(), tails.end(), target(i),
                                     [&](std::size_t tail, std::size_t t) { return target(tail) < t; });
    if (at != tails.begin()) previous[i] = *(at - 1);
    if (at == tails.end()) {
      tails.push_back(i);
    } else {
      *at = i;
    }
  }
  std::unordered_set<std::uint32_t> stay;
  if (!tails.empty())
    for (std::size_t i = tails.back(); i < from.size(); i = previous[i]) stay.insert(from[i]);
  return stay;
}

struct ListChange {
  std::vector<Primitive> removals;
  std::vector<Primitive> changes;
  std::vector<Primitive> insertions;
};

ListChange list_change(const Store& store, const Lab& from, const Lab& to) {
  ListChange out;
  const auto before = numbers(store, from);
  const auto after = numbers(store, to);
  const auto stay = staying(before, after);
  for (std::size_t i = before.size(); i-- > 0;)
    if (stay.count(before[i]) == 0)
      out.removals.emplace_back(RemoveElement{i, std::make_shared<const AnyElement>(store.take(from, i))});
  std::unordered_map<std::uint32_t, std::size_t> old_place;
  for (std::size_t i = 0; i < before.size(); ++i) old_place.emplace(before[i], i);
  for (std::size_t i = 0; i < after.size(); ++i) {
    if (stay.count(after[i]) == 0) {
      out.insertions.emplace_back(InsertElement{i, std::make_shared<const AnyElement>(store.take(to, i))});
      continue;
    }
    const void* a = store.at(from, old_place.find(after[i])->second);
    set_differing_fields(*store.table, store.table->id(a), a, store.at(to, i), out.changes);
  }
  return out;
}

} // namespace

Edit difference(const Lab& from, const Lab& to) {
  Edit out;
  std::vector<Primitive> changes;
  std::vector<Primitive> insertions;
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    if (!store.insert) {
      set_differing_fields(*store.table, AnyId{kind, 0}, store.at(from, 0), store.at(to, 0), changes);
      continue;
    }
    ListChange c = list_change(store, from, to);
    std::move(c.removals.begin(), c.removals.end(), std::back_inserter(out.steps));
    std::move(c.changes.begin(), c.changes.end(), std::back_inserter(changes));
    std::move(c.insertions.begin(), c.insertions.end(), std::back_inserter(insertions));
  }
  std::move(changes.begin(), changes.end(), std::back_inserter(out.steps));
  std::move(insertions.begin(), insertions.end(), std::back_inserter(out.steps));
  out.label = say(text::label_several, Count{static_cast<std::int64_t>(out.steps.size())});
  return out;
}

} // namespace snug
