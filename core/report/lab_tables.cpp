#include "core/budget/memory.h"
#include "core/budget/verdict.h"
#include "core/report/tables.h"
#include "core/report/words.h"

namespace snug {

namespace {

Cell text(std::string s) { return s.empty() ? Cell() : Cell(std::move(s)); }

std::string titled(const Lab& lab, std::string_view what) {
  return lab.facts.title.empty() ? std::string(what) : lab.facts.title + ": " + std::string(what);
}

std::string_view words(SegmentKind k) {
  return k == SegmentKind::bridged ? "bridged" : k == SegmentKind::nat ? "NAT" : "isolated";
}

} // namespace

std::string range_text(const Analysis& a, std::uint32_t segment) {
  std::string out;
  for (const AddressesInUse::Range& r : a.addresses().ranges(segment))
    out += (out.empty() ? "" : ", ") + to_text(r.range.first) + " to " + to_text(r.range.last);
  return out;
}

Table segment_table(const Analysis& a) {
  const Lab& lab = a.lab();
  Table t;
  t.title = titled(lab, "segments");
  t.columns = {{"segment", "Segment"},
               {"kind", "Kind"},
               {"lan", "Physical LAN"},
               {"prefix", "IPv4 prefix"},
               {"prefix6", "IPv6 prefix"},
               {"gateway", "Gateway"},
               {"dhcp", "DHCP gives out"},
               {"vlan", "VLAN"},
               {"mtu", "MTU"},
               {"usable", "Usable"},
               {"used", "Used"},
               {"reserved", "Reserved"},
               {"free", "Free"}};
  for (std::uint32_t i = 0; i < lab.segments.size(); ++i) {
    const Segment& s = lab.segments[i];
    const SegmentBudget& b = a.budgets().front().segments[i];
    const auto& use = a.addresses();
    const auto p4 = use.prefix4(i);
    const auto p6 = use.prefix6(i);
    const auto gateway = use.gateway4(i) ? use.gateway4(i) : use.gateway6(i);
    TableRow r{s.id, {}};
    r.cells = {text(name_of(lab, s.id)),
               text(std::string(words(s.type))),
               text(s.lan ? name_of(lab, s.lan) : ""),
               text(p4 ? to_text(*p4) : ""),
               text(p6 ? to_text(*p6) : ""),
               text(gateway ? to_text(*gateway) : ""),
               text(range_text(a, i)),
               s.vlan > 0 ? Cell(std::int64_t{s.vlan}) : Cell(),
               std::int64_t{s.mtu}};
    for (const std::int64_t n : {b.usable, b.used, b.reserved, b.free()})
      r.cells.push_back(p4 ? Cell(n) : Cell());
    t.rows.push_back(std::move(r));
  }
  return t;
}

Table machine_table(const Analysis& a) {
  const Lab& lab = a.lab();
  Table t;
  t.title = titled(lab, "machines");
  t.columns = {{"machine", "Machine"},           {"role", "Role"},
               {"runs_in", "Runs in"},           {"memory_mib", "Memory (MiB)"},
               {"takes_mib", "Takes (MiB)"},     {"processors", "Processors"},
               {"expected", "Expected use (%)"}, {"disk_mib", "Disks (MiB)"}};
  for (std::uint32_t i = 0; i < lab.machines.size(); ++i) {
    const Machine& m = lab.machines[i];
    std::int64_t disks = 0;
    for (const std::uint32_t d : a.index().disks_of(i)) disks += lab.disks[d].size;
    const Role* role = a.index().role(m.role);
    TableRow r{m.id, {}};
    r.cells = {text(name_of(lab, m.id)),
               text(role ? role->title : ""),
               text(m.carrier ? name_of(lab, m.carrier) : lab.pc.name),
               m.memory,
               takes(a.index(), i),
               std::int64_t{m.processors},
               std::int64_t{m.expected_percent},
               disks};
    t.rows.push_back(std::move(r));
  }
  return t;
}

Table exercise_table(const Analysis& a) {
  const Lab& lab = a.lab();
  Table t;
  t.title = titled(lab, "exercises");
  t.columns = {{"exercise", "Exercise"},
               {"date", "Date"},
               {"machines_on", "Machines on"},
               {"budget_mib", "Budget (MiB)"},
               {"taken_mib", "Taken (MiB)"},
               {"headroom_mib", "Headroom (MiB)"},
               {"expected_mib", "Expected headroom (MiB)"},
               {"verdict", "Verdict"},
               {"where", "Where"}};
  for (const ExerciseBudgets& b : a.budgets()) {
    const Exercise* e = find<Exercise>(lab, b.exercise);
    const MemoryBudget& pc = b.memory.front();
    const ExerciseVerdict verdict = verdict_of(b);
    std::vector<std::string> where;
    for (const AnyId id : verdict.where) where.push_back(name_of(lab, id));
    TableRow r{e ? AnyId(e->id) : AnyId{Kind::lab, 0}, {}};
    r.cells = {text(e ? name_of(lab, e->id) : "Everything on"),
               text(e && e->date ? to_text(*e->date) : ""),
               static_cast<std::int64_t>(e ? e->on.size() : lab.machines.size()),
               pc.budget,
               pc.taken,
               pc.headroom(),
               pc.expected_headroom(),
               text(std::string(word(verdict.verdict))),
               text(english(Argument(where)))};
    t.rows.push_back(std::move(r));
  }
  return t;
}

} // namespace snug
