#include "core/budget/disk.h"
#include "core/findings/stores.h"
#include "core/findings/tools.h"
#include "core/text/disk_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr std::string_view kPractice = "common practice, no published source";

// Disks lie where they lie in every exercise; only memory files come and go.
template <typename Badness>
Trouble disk_trouble(const Context& c, Badness badness) {
  Trouble t = trouble(c, badness);
  if (!t) return t;
  if (t.when.everything_on && t.when.exercises.count() == c.lab.exercises.size()) {
    t.when = Occasions{};
    return t;
  }
  return trouble_in_exercises(c, badness);
}

void check_over(const Context& c, std::vector<Finding>& out) {
  for (std::size_t s = 0; s < c.budgets[0].disks.size(); ++s) {
    const Trouble t = disk_trouble(c, [s](const ExerciseBudgets& b) {
      const DiskBudget& d = b.disks[s];
      return d.expected > 0 ? d.expected - d.budget : 0;
    });
    if (!t) continue;
    const DiskBudget& b = c.budgets[t.worst].disks[s];
    out.push_back(
        found(t.when.always ? Severity::error : over_severity(c, t),
              say_when(c, t.when.always ? 0 : t.worst, text::disk_over_in, text::disk_over, c.name(b.of),
                       Mib{b.expected - b.budget}, Mib{b.expected}, Mib{std::max<std::int64_t>(b.budget, 0)}),
              say(text::disk_over_why), {b.of}));
    out.back().when = t.when;
  }
}

void check_worst(const Context& c, std::vector<Finding>& out) {
  for (std::size_t s = 0; s < c.budgets[0].disks.size(); ++s) {
    const Trouble t = disk_trouble(c, [s](const ExerciseBudgets& b) {
      const DiskBudget& d = b.disks[s];
      return d.verdict() == Verdict::tight ? d.worst - d.budget : 0;
    });
    if (!t) continue;
    const DiskBudget& b = c.budgets[t.worst].disks[s];
    out.push_back(found(Severity::caution,
                        say_when(c, t.when.always ? 0 : t.worst, text::disk_worst_in, text::disk_worst,
                                 c.name(b.of), Mib{b.worst}, Mib{b.budget}),
                        say(text::disk_worst_why), {b.of}));
    out.back().when = t.when;
  }
}

// Without any volume one note for the PC says it; inner guests' disks are asked for all the same.
void check_no_volume(const Context& c, std::vector<Finding>& out) {
  if (!c.lab.volumes.empty()) return;
  std::int64_t disks = 0;
  for (const DiskColumn& d : c.index.disks())
    if (d.machine != kNowhere && c.index.carrier_of(d.machine) == kNowhere) ++disks;
  const AnyId pc{Kind::pc, 0};
  if (disks > 0)
    out.push_back(found(Severity::note, say(text::no_volume, c.name(pc), Count{disks}),
                        say(text::no_volume_why), {pc}));
}

void check_no_store(const Context& c, std::vector<Finding>& out) {
  if (!c.index.disk_kinds().homeless) return;
  for (std::uint32_t p = 0; p < c.index.disks().size(); ++p) {
    const DiskColumn& d = c.index.disks()[p];
    if (d.store || d.machine == kNowhere) continue;
    if (c.lab.volumes.empty() && c.index.carrier_of(d.machine) == kNowhere) continue;
    const AnyId id = c.lab.disks[p].id;
    out.push_back(
        found(Severity::caution, say(text::disk_no_store, c.name(id)), say(text::disk_no_store_why), {id}));
  }
}

std::optional<Fix> fix_store(const Context& c, const Finding& f) {
  const AnyId store = only_store_for(c.index, c.index.machine_of_disk(c.index.place(f.places[0])));
  if (!store || store == f.places[0]) return std::nullopt;
  return set_one(c, say(text::fix_store, c.name(f.places[0]), c.name(store)), f.places[0], "store", store);
}

bool can_use(std::span<const MachineColumn> machines, std::span<const DiskColumn> disks,
             const DiskColumn& d) {
  const std::uint32_t carrier = machines[d.machine].carrier;
  if (d.store.kind == Kind::volume) return carrier == kNowhere;
  if (d.store.kind == Kind::disk) return carrier != kNowhere && disks[d.store_place].machine == carrier;
  return true;
}

void check_out_of_reach(const Context& c, std::vector<Finding>& out) {
  const auto machines = c.index.machines();
  const auto disks = c.index.disks();
  for (std::uint32_t p = 0; p < disks.size(); ++p) {
    const DiskColumn& d = disks[p];
    if (!d.store || d.machine == kNowhere || can_use(machines, disks, d)) continue;
    const std::uint32_t carrier = c.index.carrier_of(d.machine);
    const AnyId id = c.lab.disks[p].id;
    out.push_back(
        found(Severity::error,
              say(text::disk_out_of_reach, c.name(id), c.name(d.store), c.name(c.lab.machines[d.machine].id)),
              carrier == kNowhere ? say(text::disk_out_of_reach_pc)
                                  : say(text::disk_out_of_reach_inner, c.name(c.lab.machines[carrier].id)),
              {id, d.store}));
  }
}

// The kinds of machines that ask much of a disk; empty: not one of them.
std::string busy_role(const Context& c, std::uint32_t machine) {
  const MachineColumn& m = c.index.machines()[machine];
  const bool manages = (c.addresses.facts().machine_marks[machine] & MachineMark::offers_management) != 0;
  if (!m.hypervisor && !manages) return {};
  return m.role != kNowhere ? c.name(c.lab.roles[m.role].id) : c.name(c.lab.machines[machine].id);
}

bool is_slow(const Volume& v) { return v.type == VolumeKind::spinning || v.type == VolumeKind::usb; }

void check_slow(const Context& c, std::vector<Finding>& out) {
  if (std::none_of(c.lab.volumes.begin(), c.lab.volumes.end(), is_slow)) return;
  for (std::uint32_t m = 0; m < c.index.machines().size(); ++m) {
    const std::string role = busy_role(c, m);
    if (role.empty()) continue;
    std::vector<std::uint32_t> told;
    for (const std::uint32_t d : c.index.disks_of(m)) {
      const std::uint32_t v = volume_below(c.index, d);
      if (v == kNowhere || !is_slow(c.lab.volumes[v])) continue;
      if (std::find(told.begin(), told.end(), v) != told.end()) continue;
      told.push_back(v);
      const AnyId machine = c.lab.machines[m].id, volume = c.lab.volumes[v].id;
      out.push_back(found(Severity::caution, say(text::slow_store, c.name(machine), c.name(volume), role),
                          say(text::slow_store_why), {machine, volume}));
    }
  }
}

// To the only fast volume, if it has room for the worst case of the disks that lie on the slow one.
std::optional<Fix> fix_slow(const Context& c, const Finding& f) {
  const Volume* fast = nullptr;
  for (const Volume& v : c.lab.volumes) {
    if (v.type != VolumeKind::flash && v.type != VolumeKind::nvme) continue;
    if (fast) return std::nullopt;
    fast = &v;
  }
  if (!fast) return std::nullopt;
  std::vector<DiskId> moving;
  std::int64_t room = 0;
  for (const ExerciseBudgets& e : c.budgets) {
    const DiskBudget& b = e.disks[c.index.place(fast->id)];
    room = &e == &c.budgets[0] ? b.budget - b.worst : std::min(room, b.budget - b.worst);
  }
  const std::uint32_t m = c.index.place(f.places[0]);
  if (c.index.machines()[m].memory_file) room -= c.index.machines()[m].memory;
  for (const std::uint32_t d : c.index.disks_of(m)) {
    if (c.index.disks()[d].store != f.places[1]) continue;
    moving.push_back(c.lab.disks[d].id);
    room -= demand(c.lab.disks[d]).worst;
  }
  if (moving.empty() || room < 0) return std::nullopt;
  return build_fix(c, say(text::fix_store, c.name(f.places[0]), c.name(fast->id)), [&](EditBuilder& b) {
    for (const DiskId d : moving) b.set(d, "store", AnyId(fast->id));
  });
}

// What lies on disk `p` as expected, if it is a store or holds shares.
std::vector<std::int64_t> content_of_disks(const Context& c) {
  std::vector<std::int64_t> content(c.index.disks().size(), 0);
  for (const DiskBudget& b : c.budgets[0].disks) {
    if (b.of.kind == Kind::disk) content[c.index.place(b.of)] += b.expected;
    if (b.of.kind != Kind::share) continue;
    const std::uint32_t d = c.index.place(c.lab.shares[c.index.place(b.of)].disk);
    if (d != kNowhere) content[d] += b.expected;
  }
  return content;
}

void check_fill(const Context& c, std::vector<Finding>& out) {
  if (c.budgets[0].disks.size() == c.lab.volumes.size()) return;
  const std::vector<std::int64_t> content = content_of_disks(c);
  for (std::size_t p = 0; p < content.size(); ++p) {
    if (content[p] == 0) continue;
    const Disk& d = c.lab.disks[p];
    const std::int64_t fill = demand(d).expected;
    if (fill >= std::min(content[p], d.size)) continue;
    out.push_back(found(Severity::caution, say(text::fill_below, c.name(d.id), Mib{fill}, Mib{content[p]}),
                        say(text::fill_below_why), {d.id}));
  }
}

std::optional<Fix> fix_fill(const Context& c, const Finding& f) {
  const std::uint32_t p = c.index.place(f.places[0]);
  const std::int64_t size = c.lab.disks[p].size;
  const std::int64_t content = std::min(content_of_disks(c)[p], size);
  const std::int64_t percent = (content * 100 + size - 1) / size;
  return set_one(c, say(text::fix_fill, c.name(f.places[0]), Percent{percent}), f.places[0],
                 "expected_percent", percent);
}

void check_free(const Context& c, std::vector<Finding>& out) {
  for (const Volume& v : c.lab.volumes)
    if (v.free > v.size)
      out.push_back(found(Severity::error, say(text::volume_free, c.name(v.id), Mib{v.free}, Mib{v.size}),
                          say(text::volume_free_why), {v.id}));
}

std::optional<Fix> fix_free(const Context& c, const Finding& f) {
  const std::int64_t size = c.lab.volumes[c.index.place(f.places[0])].size;
  return set_one(c, say(text::fix_free, Mib{size}), f.places[0], "free", size);
}

} // namespace

std::span<const Rule> disk_rules() {
  static const std::array list{
      Rule{"disk-over", Topic::disk, Severity::error, "What lies on a store is expected to overfill it",
           kPractice, check_over},
      Rule{"disk-out-of-reach", Topic::disk, Severity::error, "A disk lies where its machine cannot use it",
           "a guest's disk is opened by what carries it", check_out_of_reach, fix_store},
      Rule{"volume-free", Topic::disk, Severity::error, "A volume has more free than its size", "arithmetic",
           check_free, fix_free},
      Rule{"disk-no-store", Topic::disk, Severity::caution, "A disk lies on no store", kPractice,
           check_no_store, fix_store},
      Rule{"disk-worst", Topic::disk, Severity::caution, "What lies on a store could overfill it", kPractice,
           check_worst},
      Rule{"hypervisor-on-spinning", Topic::disk, Severity::caution,
           "A hypervisor or management server on a slow volume", kPractice, check_slow, fix_slow},
      Rule{"fill-below-content", Topic::disk, Severity::caution,
           "A disk is expected to be emptier than what lies on it", "arithmetic", check_fill, fix_fill},
      Rule{"no-volume", Topic::disk, Severity::note, "No volume of the PC is entered", kPractice,
           check_no_volume},
  };
  return list;
}

} // namespace snug
