#include "core/base/size.h"
#include "core/budget/defaults.h"
#include "core/budget/memory.h"
#include "core/findings/size_fixes.h"
#include "core/findings/tools.h"
#include "core/text/memory_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr std::int64_t kStep = 256; // MiB: memory is given in these steps (DECISIONS 19)
constexpr std::string_view kPractice = "common practice, no published source";

std::int64_t rounded_up(std::int64_t mib) { return (mib + kStep - 1) / kStep * kStep; }

// Nothing runs: nothing is over, however small the budget is.
std::int64_t over_by(const MemoryBudget& b) { return b.taken == 0 ? 0 : -b.headroom(); }

// A part of its own that is larger than all its memory is no number to show.
Message over_message(const Context& c, std::size_t occasion, const MemoryBudget& b) {
  const Mib over{-b.headroom()}, taken{b.taken};
  if (b.budget <= 0)
    return say_when(c, occasion, text::memory_over_nothing, text::memory_over_nothing_all, c.name(b.of), over,
                    taken);
  return say_when(c, occasion, text::memory_over, text::memory_over_all, c.name(b.of), over, taken,
                  Mib{b.budget});
}

void check_over(const Context& c, std::vector<Finding>& out) {
  for (std::size_t s = 0; s < c.budgets[0].memory.size(); ++s) {
    const Trouble t = trouble_in_exercises(c, [s](const ExerciseBudgets& b) { return over_by(b.memory[s]); });
    if (!t) continue;
    const MemoryBudget& b = c.budgets[t.worst].memory[s];
    out.push_back(
        found(over_severity(c, t), over_message(c, t.worst, b),
              say(has_leaner_sizes(c.lab) ? text::memory_over_why_lean : text::memory_over_why, c.name(b.of)),
              {b.of}));
    out.back().when = t.when;
  }
}

// Where an exercise is over as well, that is the error; what everything on would take is told beside it.
void check_over_with_all(const Context& c, std::vector<Finding>& out) {
  for (std::size_t s = 0; s < c.budgets[0].memory.size(); ++s) {
    const MemoryBudget& b = c.budgets[0].memory[s];
    const auto over = [s](const ExerciseBudgets& e) { return over_by(e.memory[s]); };
    if (over(c.budgets[0]) <= 0 || !trouble_in_exercises(c, over).when.exercises.any()) continue;
    out.push_back(found(Severity::note, over_message(c, 0, b), say(text::memory_over_beside_why), {b.of}));
    out.back().when.always = false;
    out.back().when.everything_on = true;
  }
}

// Whether `machine` may grow by `more` MiB without making what carries it over or tight in any occasion that
// counts.
bool carrier_has(const Context& c, std::uint32_t machine, std::int64_t more) {
  const std::uint32_t carrier = c.index.carrier_of(machine);
  const AnyId of = carrier == kNowhere ? AnyId{Kind::pc, 0} : AnyId(c.lab.machines[carrier].id);
  for (std::size_t i = c.lab.exercises.empty() ? 0 : 1; i < c.budgets.size(); ++i) {
    if (!c.budgets[i].running[machine]) continue;
    for (const MemoryBudget& b : c.budgets[i].memory)
      if (b.of == of && b.headroom() - more < b.keep_free) return false;
  }
  return true;
}

// None where a lab could not hold so much.
std::optional<Fix> give_memory(const Context& c, AnyId machine, std::int64_t mib) {
  if (mib > kMaxMib) return std::nullopt;
  return set_one(c, say(text::fix_memory, c.name(machine), Mib{mib}), machine, "memory", mib);
}

// A hypervisor that is over gets what it lacks, where its carrier has it.
std::optional<Fix> grow(const Context& c, const Finding& f) {
  if (f.places[0].kind != Kind::machine) return std::nullopt;
  const std::uint32_t m = c.index.place(f.places[0]);
  std::int64_t lacks = 0;
  for (const ExerciseBudgets& e : c.budgets)
    for (const MemoryBudget& b : e.memory)
      if (b.of == f.places[0]) lacks = std::max(lacks, over_by(b));
  const std::int64_t before = c.lab.machines[m].memory;
  const std::int64_t after = rounded_up(before + lacks);
  const std::int64_t tables = (page_tables(after) - page_tables(before)) * c.lab.rules.hypervisor_page_tables;
  if (!carrier_has(c, m, after - before + tables)) return std::nullopt;
  return give_memory(c, f.places[0], after);
}

std::optional<Fix> fix_over(const Context& c, const Finding& f) {
  auto larger = grow(c, f);
  return larger ? std::move(larger) : shrink(c, f);
}

std::optional<Fix> other_fix_over(const Context& c, const Finding& f) {
  return grow(c, f) ? shrink(c, f) : std::nullopt;
}

void check_tight(const Context& c, std::vector<Finding>& out) {
  const Trouble t = trouble(c, [](const ExerciseBudgets& b) {
    const MemoryBudget& pc = b.memory.front();
    return pc.taken > 0 && pc.verdict() == Verdict::tight ? pc.keep_free - pc.headroom() : 0;
  });
  if (!t) return;
  const MemoryBudget& b = c.budgets[t.worst].memory.front();
  out.push_back(found(Severity::caution,
                      say_when(c, t.worst, text::memory_tight, text::memory_tight_all, c.name(b.of),
                               Mib{b.headroom()}, Mib{b.keep_free}),
                      say(text::memory_tight_why), {b.of}));
  out.back().when = t.when;
}

void check_expected_fits(const Context& c, std::vector<Finding>& out) {
  for (std::size_t s = 0; s < c.budgets[0].memory.size(); ++s) {
    const Trouble t = trouble_in_exercises(c, [s](const ExerciseBudgets& b) {
      return b.memory[s].expected_headroom() >= 0 ? over_by(b.memory[s]) : 0;
    });
    if (!t) continue;
    const MemoryBudget& b = c.budgets[t.worst].memory[s];
    out.push_back(found(Severity::note,
                        say_when(c, t.worst, text::memory_expected_fits, text::memory_expected_fits_all,
                                 c.name(b.of), Mib{b.expected}, Mib{b.budget}),
                        say(text::memory_expected_fits_why), {b.of}));
    out.back().when = t.when;
  }
}

// The marks of a role in the lab's size set.
struct Marks {
  std::int64_t refused_below = 0;
  std::int64_t least = 0;
  std::int64_t usual = 0;
};
Marks marks(const Lab& lab, std::uint32_t role) {
  if (role == kNowhere) return {};
  const Role& r = lab.roles[role];
  if (lab.facts.sizes == SizeSet::lean) return {r.lean_refused_below, r.lean_least, r.lean_usual};
  return {r.current_refused_below, r.current_least, r.current_usual};
}

template <typename Use>
void each_below_marks(const Context& c, Use use) {
  std::vector<Marks> of(c.lab.roles.size());
  bool any = false;
  for (std::uint32_t r = 0; r < of.size(); ++r) {
    of[r] = marks(c.lab, r);
    any |= c.index.least_memory(r) < std::max(of[r].refused_below, of[r].least);
  }
  if (!any) return;
  for (std::uint32_t m = 0; m < c.index.machines().size(); ++m) {
    const MachineColumn& column = c.index.machines()[m];
    if (column.role == kNowhere) continue;
    const Marks& mark = of[column.role];
    if (column.memory < std::max(mark.refused_below, mark.least)) use(c.lab.machines[m], mark);
  }
}

void check_refused(const Context& c, std::vector<Finding>& out) {
  each_below_marks(c, [&](const Machine& m, const Marks& mark) {
    if (m.memory >= mark.refused_below) return;
    out.push_back(
        found(Severity::error,
              say(text::memory_refused, c.name(m.id), Mib{m.memory}, c.name(m.role), Mib{mark.refused_below}),
              say(text::memory_refused_why, Mib{std::max(mark.least, mark.refused_below)}), {m.id}));
  });
}

void check_least(const Context& c, std::vector<Finding>& out) {
  each_below_marks(c, [&](const Machine& m, const Marks& mark) {
    if (m.memory < mark.refused_below) return;
    out.push_back(found(Severity::caution,
                        say(text::memory_least, c.name(m.id), Mib{m.memory}, c.name(m.role), Mib{mark.least}),
                        say(text::memory_least_why, Mib{std::max(mark.usual, mark.least)}), {m.id}));
  });
}

std::optional<Fix> fix_marks(const Context& c, const Finding& f) {
  const Marks mark = marks(c.lab, c.index.machines()[c.index.place(f.places[0])].role);
  const std::int64_t least = std::max(mark.least, mark.refused_below);
  return give_memory(c, f.places[0], least);
}

void check_footprint(const Context& c, std::vector<Finding>& out) {
  for (std::size_t s = 1; s < c.budgets[0].memory.size(); ++s) {
    const MemoryBudget& b = c.budgets[0].memory[s];
    if (b.budget > 0) continue;
    const std::int64_t memory = c.index.machines()[c.index.place(b.of)].memory;
    out.push_back(found(Severity::error,
                        say(text::memory_footprint, c.name(b.of), Mib{memory}, Mib{memory - b.budget}),
                        say(text::memory_footprint_why), {b.of}));
  }
}

// Room for its own part and for what it carries, at least for one small guest.
std::optional<Fix> fix_footprint(const Context& c, const Finding& f) {
  const std::uint32_t m = c.index.place(f.places[0]);
  std::int64_t inside = 1024;
  for (const ExerciseBudgets& e : c.budgets)
    for (const MemoryBudget& b : e.memory)
      if (b.of == f.places[0]) inside = std::max(inside, b.taken);
  const std::int64_t usual = marks(c.lab, c.index.machines()[m].role).usual;
  const std::int64_t after = std::max(usual, rounded_up(footprint(c.index, m) + inside));
  return give_memory(c, f.places[0], after);
}

std::int64_t memory_on_pc(const Context& c, const ExerciseBudgets& b) {
  std::int64_t sum = 0;
  for (const std::uint32_t m : c.index.guests_of(kNowhere))
    if (b.running[m]) sum += c.index.machines()[m].memory;
  return sum;
}

void check_limit(const Context& c, std::vector<Finding>& out) {
  if (!c.lab.pc.max_guest_memory) return;
  const std::int64_t most = *c.lab.pc.max_guest_memory;
  const Trouble t =
      trouble_in_exercises(c, [&](const ExerciseBudgets& b) { return memory_on_pc(c, b) - most; });
  if (!t) return;
  const AnyId pc{Kind::pc, 0};
  out.push_back(found(over_severity(c, t),
                      say_when(c, t.worst, text::memory_limit, text::memory_limit_all, c.name(pc),
                               Mib{most + t.badness}, Mib{most}),
                      say(text::memory_limit_why), {pc}));
  out.back().when = t.when;
}

void check_usable(const Context& c, std::vector<Finding>& out) {
  const Pc& pc = c.lab.pc;
  if (usable(pc) <= pc.installed) return;
  const AnyId id{Kind::pc, 0};
  out.push_back(found(Severity::error,
                      say(text::memory_usable, c.name(id), Mib{usable(pc)}, Mib{pc.installed}),
                      say(text::memory_usable_why), {id}));
}

std::optional<Fix> fix_usable(const Context& c, const Finding& f) {
  return set_one(c, say(text::fix_usable), f.places[0], "usable", Value());
}

void check_reserve(const Context& c, std::vector<Finding>& out) {
  const Pc& pc = c.lab.pc;
  if (!pc.reserved || reserved(pc) < usable(pc)) return;
  const AnyId id{Kind::pc, 0};
  out.push_back(found(Severity::error,
                      say(text::memory_reserve, c.name(id), Mib{reserved(pc)}, Mib{usable(pc)}),
                      say(text::memory_reserve_why, Mib{usual_reserve(pc.installed)}), {id}));
}

std::optional<Fix> fix_reserve(const Context& c, const Finding& f) {
  const std::int64_t usual = usual_reserve(c.lab.pc.installed);
  if (usual >= usable(c.lab.pc)) return std::nullopt;
  return set_one(c, say(text::fix_reserve, Mib{usual}), f.places[0], "reserved", Value());
}

void check_carrier_off(const Context& c, std::vector<Finding>& out) {
  struct Off {
    std::uint32_t machine, exercise;
  };
  std::vector<Off> off;
  std::vector<std::uint8_t> listed;
  for (std::uint32_t e = 0; e < c.lab.exercises.size(); ++e) {
    const auto& on = c.lab.exercises[e].on;
    if (c.budgets[e + 1].running_count == on.size()) continue;
    listed.assign(c.index.machines().size(), 0);
    for (const MachineId id : on)
      if (const std::uint32_t m = c.index.place(id); m != kNowhere) listed[m] = 1;
    for (std::uint32_t m = 0; m < listed.size(); ++m)
      if (listed[m] && c.index.carrier_of(m) != kNowhere && !listed[c.index.carrier_of(m)])
        off.push_back({m, e});
  }
  std::stable_sort(off.begin(), off.end(), [](const Off& a, const Off& b) { return a.machine < b.machine; });
  for (std::size_t i = 0; i < off.size(); ++i) {
    if (i == 0 || off[i].machine != off[i - 1].machine) {
      const AnyId guest = c.lab.machines[off[i].machine].id;
      const AnyId carrier = c.lab.machines[c.index.carrier_of(off[i].machine)].id;
      out.push_back(found(
          Severity::error,
          say(text::carrier_off, c.name(guest), c.name(carrier), c.name(c.lab.exercises[off[i].exercise].id)),
          say(text::carrier_off_why), {guest, carrier}));
      out.back().when.always = false;
    }
    out.back().when.exercises.set(off[i].exercise);
  }
}

std::optional<Fix> fix_carrier_off(const Context& c, const Finding& f) {
  return switch_on(c, f.when, MachineId{f.places[1].number});
}

} // namespace

std::span<const Rule> memory_rules() {
  static const std::array list{
      Rule{"memory-over", Topic::memory, Severity::error, "What runs takes more memory than there is",
           kPractice, check_over, fix_over, other_fix_over},
      Rule{"memory-over-with-all", Topic::memory, Severity::note,
           "Everything on at once would take more memory than there is", kPractice, check_over_with_all},
      Rule{"memory-refused", Topic::memory, Severity::error,
           "A machine has less memory than its installer accepts", kPractice, check_refused, fix_marks},
      Rule{"memory-footprint", Topic::memory, Severity::error, "A hypervisor has no memory left for guests",
           kPractice, check_footprint, fix_footprint},
      Rule{"memory-limit", Topic::memory, Severity::error,
           "The guests have more memory than the program allows", "a limit that the person entered",
           check_limit, shrink},
      Rule{"memory-usable", Topic::memory, Severity::error, "More memory is usable than installed",
           "arithmetic", check_usable, fix_usable},
      Rule{"memory-reserve", Topic::memory, Severity::error, "The PC keeps all its memory for itself",
           kPractice, check_reserve, fix_reserve},
      Rule{"carrier-off", Topic::memory, Severity::error,
           "A machine is on in an exercise while what carries it is off",
           "a guest runs inside its hypervisor", check_carrier_off, fix_carrier_off},
      Rule{"memory-tight", Topic::memory, Severity::caution, "The PC has little memory left", kPractice,
           check_tight},
      Rule{"memory-least", Topic::memory, Severity::caution, "A machine has less memory than its role wants",
           kPractice, check_least, fix_marks},
      Rule{"memory-expected-fits", Topic::memory, Severity::note,
           "Runs as long as the guests do not use all they were given", kPractice, check_expected_fits},
  };
  return list;
}

} // namespace snug
