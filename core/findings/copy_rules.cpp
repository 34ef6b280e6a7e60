#include "core/findings/stores.h"
#include "core/findings/tools.h"
#include "core/text/disk_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr std::string_view kPractice = "common practice, no published source";

// Calls use(disk, base) for every copy-on-write disk; base is null when the lab has none.
template <typename Use>
void each_copy(const Context& c, Use use) {
  if (!c.index.disk_kinds().copies) return;
  for (std::uint32_t p = 0; p < c.index.disks().size(); ++p)
    if (c.index.disks()[p].provisioning == Provisioning::copy_on_write)
      use(c.lab.disks[p], c.index.disk(c.lab.disks[p].base));
}

void check_no_base(const Context& c, std::vector<Finding>& out) {
  each_copy(c, [&](const Disk& d, const Disk* base) {
    if (!base)
      out.push_back(
          found(Severity::error, say(text::cow_no_base, c.name(d.id)), say(text::cow_no_base_why), {d.id}));
  });
}
std::optional<Fix> fix_no_base(const Context& c, const Finding& f) {
  return set_one(c, say(text::fix_thin, c.name(f.places[0])), f.places[0], "provisioning", "thin");
}

void check_elsewhere(const Context& c, std::vector<Finding>& out) {
  each_copy(c, [&](const Disk& d, const Disk* base) {
    if (!base || !d.store || !base->store || d.store == base->store) return;
    out.push_back(found(
        Severity::error,
        say(text::cow_base_elsewhere, c.name(d.id), c.name(d.store), c.name(base->id), c.name(base->store)),
        say(text::cow_base_elsewhere_why), {d.id, base->id}));
  });
}
// To its base, where its machine can use that store too.
std::optional<Fix> fix_elsewhere(const Context& c, const Finding& f) {
  const DiskColumn& d = c.index.disks()[c.index.place(f.places[0])];
  const DiskColumn& base = c.index.disks()[c.index.place(f.places[1])];
  if (d.machine == kNowhere || base.machine == kNowhere) return std::nullopt;
  if (base.store.kind == Kind::share || c.index.carrier_of(d.machine) != c.index.carrier_of(base.machine))
    return std::nullopt;
  return set_one(c, say(text::fix_store, c.name(f.places[0]), c.name(base.store)), f.places[0], "store",
                 base.store);
}

void check_smaller(const Context& c, std::vector<Finding>& out) {
  each_copy(c, [&](const Disk& d, const Disk* base) {
    if (!base || d.size >= base->size) return;
    out.push_back(found(Severity::error,
                        say(text::cow_smaller, c.name(d.id), Mib{d.size}, c.name(base->id), Mib{base->size}),
                        say(text::cow_smaller_why), {d.id, base->id}));
  });
}
std::optional<Fix> fix_smaller(const Context& c, const Finding& f) {
  const std::int64_t size = c.lab.disks[c.index.place(f.places[1])].size;
  return set_one(c, say(text::fix_size, c.name(f.places[0]), Mib{size}), f.places[0], "size", size);
}

void check_unused(const Context& c, std::vector<Finding>& out) {
  if (!c.index.disk_kinds().bases) return;
  for (std::uint32_t p = 0; p < c.index.disks().size(); ++p) {
    const DiskColumn& d = c.index.disks()[p];
    if (!d.has_base || d.provisioning == Provisioning::copy_on_write) continue;
    const Disk& disk = c.lab.disks[p];
    out.push_back(found(Severity::note, say(text::base_unused, c.name(disk.id), c.name(disk.base)),
                        say(text::base_unused_why), {disk.id}));
  }
}
std::optional<Fix> fix_unused(const Context& c, const Finding& f) {
  return set_one(c, say(text::fix_base, c.name(f.places[0])), f.places[0], "base", Value());
}

// Whether what lies on a disk may lie on itself: a walk from the disks that are stores or hold shares comes
// back to where it was.
bool has_loop(const Context& c) {
  const std::vector<DiskBudget>& stores = c.budgets[0].disks;
  std::vector<std::uint32_t> walk(c.index.disks().size(), kNowhere);
  for (auto s = static_cast<std::uint32_t>(c.lab.volumes.size()); s < stores.size(); ++s) {
    std::uint32_t d = c.index.place(stores[s].of);
    if (stores[s].of.kind == Kind::share) d = c.index.place(c.lab.shares[d].disk);
    while (d != kNowhere && walk[d] == kNowhere) {
      walk[d] = s;
      d = disk_below(c.index, d);
    }
    if (d != kNowhere && walk[d] == s) return true;
  }
  return false;
}

// Every disk lies on at most one other, so a walk from each disk meets itself or ends.
void check_loop(const Context& c, std::vector<Finding>& out) {
  if (!has_loop(c)) return;
  std::vector<std::uint32_t> walk(c.index.disks().size(), kNowhere);
  for (std::uint32_t first = 0; first < walk.size(); ++first) {
    std::uint32_t d = first;
    while (d != kNowhere && walk[d] == kNowhere) {
      walk[d] = first;
      d = disk_below(c.index, d);
    }
    if (d == kNowhere || walk[d] != first) continue;
    std::vector<AnyId> places;
    std::vector<std::string> names;
    const std::uint32_t start = d;
    do {
      places.push_back(c.lab.disks[d].id);
      names.push_back(c.name(places.back()));
      d = disk_below(c.index, d);
    } while (d != start);
    const Template& what = places.size() == 1 ? text::store_loop_self : text::store_loop;
    out.push_back(found(Severity::error, say(what, names), say(text::store_loop_why), places));
  }
}

} // namespace

std::span<const Rule> copy_rules() {
  static const std::array list{
      Rule{"store-loop", Topic::disk, Severity::error, "Disks lie on each other in a circle",
           "a disk is there before what lies on it", check_loop},
      Rule{"copy-no-base", Topic::disk, Severity::error, "A copy-on-write disk has no base", kPractice,
           check_no_base, fix_no_base},
      Rule{"copy-base-elsewhere", Topic::disk, Severity::error,
           "A copy-on-write disk and its base lie on different stores", kPractice, check_elsewhere,
           fix_elsewhere},
      Rule{"copy-smaller", Topic::disk, Severity::error, "A copy-on-write disk is smaller than its base",
           kPractice, check_smaller, fix_smaller},
      Rule{"base-unused", Topic::disk, Severity::note, "A disk has a base and is not copy-on-write",
           kPractice, check_unused, fix_unused},
  };
  return list;
}

} // namespace snug
