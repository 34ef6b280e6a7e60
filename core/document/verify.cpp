#include "core/document/verify.h"

#include "core/text/document_text.h"

#include <algorithm>

namespace snug::detail {

namespace {

constexpr std::uint32_t kNowhereInList = 0xffff'ffff;

// The elements of one kind by number.
class Places {
 public:
  Places() = default;
  Places(const Lab& lab, Kind kind) {
    const Store& store = store_of(kind);
    const std::size_t n = store.count(lab);
    entries_.reserve(n);
    for (std::size_t i = 0; i < n; ++i)
      entries_.push_back({store.table->id(store.at(lab, i)).number, static_cast<std::uint32_t>(i)});
    std::sort(entries_.begin(), entries_.end());
    if (entries_.empty() || entries_.back().number > 8 * n + 4096) return;
    dense_.assign(std::size_t{entries_.back().number} + 1, kNowhereInList);
    for (const Entry& e : entries_) dense_[e.number] = e.place;
  }
  std::uint32_t place(std::uint32_t number) const {
    if (!dense_.empty()) return number < dense_.size() ? dense_[number] : kNowhereInList;
    const auto at = std::lower_bound(entries_.begin(), entries_.end(), Entry{number, 0});
    return at != entries_.end() && at->number == number ? at->place : kNowhereInList;
  }
  // The first two places of a number that stands twice; the second kNowhereInList: none does.
  std::pair<std::uint32_t, std::uint32_t> twice() const {
    std::pair<std::uint32_t, std::uint32_t> found{kNowhereInList, kNowhereInList};
    for (std::size_t i = 1; i < entries_.size(); ++i)
      if (entries_[i].number == entries_[i - 1].number && entries_[i].place < found.second)
        found = {entries_[i - 1].place, entries_[i].place};
    return found;
  }
  std::uint32_t largest() const { return entries_.empty() ? 0 : entries_.back().number; }

 private:
  struct Entry {
    std::uint32_t number, place;
    friend auto operator<=>(const Entry&, const Entry&) = default;
  };
  std::vector<Entry> entries_;
  std::vector<std::uint32_t> dense_;
};

std::string pointer_to(const StructInfo& table, std::size_t place, std::string_view key) {
  std::string out;
  append_pointer(out, table.collection);
  append_pointer(out, place);
  append_pointer(out, key);
  return out;
}

std::optional<Fault> check_ids(const Lab& lab, const StructInfo& table, const Places& places) {
  const auto [first, second] = places.twice();
  const auto id_at = [&](std::uint32_t place) {
    return to_text(table.id(store_of(table.kind).at(lab, place)));
  };
  if (second != kNowhereInList)
    return Fault{say(text::id_twice, id_at(second)),
                 {pointer_to(table, second, "id")},
                 Spot{pointer_to(table, first, "id")}};
  if (places.largest() < kMaxIdNumber) return std::nullopt;
  const std::uint32_t place = places.place(kMaxIdNumber);
  return Fault{say(text::id_last, id_at(place), Count{kMaxIdNumber}), {pointer_to(table, place, "id")}, {}};
}

// The places of a circle that parent() leads into, or nothing. parent(place) is kNowhereInList at the top.
template <typename Parent>
std::vector<std::uint32_t> circle(std::size_t count, Parent parent) {
  std::vector<std::uint32_t> round(count, 0); // 0: not seen; else the number of the walk that came by
  for (std::uint32_t start = 0; start < count; ++start) {
    std::uint32_t at = start;
    while (at != kNowhereInList && round[at] == 0) {
      round[at] = start + 1;
      at = parent(at);
    }
    if (at == kNowhereInList || round[at] != start + 1) continue;
    std::vector<std::uint32_t> members;
    for (std::uint32_t m = at; members.empty() || m != at; m = parent(m)) members.push_back(m);
    return members;
  }
  return {};
}

template <typename E>
std::optional<Fault> circle_fault(const Lab& lab, const std::vector<std::uint32_t>& members,
                                  std::string_view key, const Template& self, const Template& several) {
  if (members.empty()) return std::nullopt;
  const auto& list = list_of<E>(lab);
  std::vector<std::string> names;
  names.reserve(members.size());
  for (const std::uint32_t m : members) names.push_back(name_of(lab, list[m].id));
  Message message = names.size() == 1 ? say(self, names.front()) : say(several, names);
  return Fault{std::move(message), {pointer_to(info<E>(), members.front(), key)}, {}};
}

} // namespace

std::uint32_t largest_id(const Lab& lab) {
  std::uint32_t largest = 0;
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    if (!store.insert) continue;
    for (std::size_t i = 0; i < store.count(lab); ++i)
      largest = std::max(largest, store.table->id(store.at(lab, i)).number);
  }
  return largest;
}

std::optional<Fault> verify(const Lab& lab, const std::vector<Reference>& references) {
  std::array<Places, kKindCount> places;
  for (const Kind kind : kinds_in_document()) {
    if (!info_of(kind).id) continue;
    Places& of_kind = places[static_cast<std::size_t>(kind)] = Places(lab, kind);
    if (auto fault = check_ids(lab, info_of(kind), of_kind)) return fault;
  }
  for (const Reference& r : references) {
    if (letter_of(r.id.kind) == 0) continue; // singletons, outside and everyone are always there
    if (places[static_cast<std::size_t>(r.id.kind)].place(r.id.number) != kNowhereInList) continue;
    const FieldInfo& named = r.column ? *r.column : *r.field;
    return Fault{say(text::reference_dangling, named.label, to_text(r.id), info_of(r.id.kind).noun),
                 {pointer_of(r)},
                 {}};
  }
  const Places& machines = places[static_cast<std::size_t>(Kind::machine)];
  const auto carrier = [&](std::uint32_t m) {
    const MachineId up = lab.machines[m].carrier;
    return up ? machines.place(up.number) : kNowhereInList;
  };
  if (auto fault = circle_fault<Machine>(lab, circle(lab.machines.size(), carrier), "carrier",
                                         text::carrier_self, text::carrier_cycle))
    return fault;
  const Places& disks = places[static_cast<std::size_t>(Kind::disk)];
  const auto base = [&](std::uint32_t d) {
    const DiskId up = lab.disks[d].base;
    return up ? disks.place(up.number) : kNowhereInList;
  };
  return circle_fault<Disk>(lab, circle(lab.disks.size(), base), "base", text::base_self, text::base_cycle);
}

} // namespace snug::detail
