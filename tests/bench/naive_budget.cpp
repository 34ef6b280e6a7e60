#include "tests/bench/naive_budget.h"

#include <algorithm>
#include <set>

namespace snug::test {

namespace {

std::int64_t up(std::int64_t n, std::int64_t by) { return n / by + (n % by != 0 ? 1 : 0); }

class Naive {
 public:
  explicit Naive(const Lab& lab) : lab_(lab) {
    for (const Machine& m : lab.machines) {
      machines_[to_text(m.id)] = &m;
      inside_[carrier(m)].push_back(to_text(m.id));
    }
    for (const Role& r : lab.roles) roles_[to_text(r.id)] = &r;
    for (const Disk& d : lab.disks) disks_[to_text(d.id)] = &d;
    for (const Card& c : lab.cards) {
      if (c.segment) on_segment_[to_text(c.segment)].insert(to_text(c.machine));
      for (const SegmentTag& t : c.trunk) on_segment_[to_text(t.segment)].insert(to_text(c.machine));
    }
  }

  NaiveBudgets all(const Exercise* exercise) {
    listed_.clear();
    if (exercise)
      for (const MachineId id : exercise->on) listed_.insert(to_text(id));
    else
      for (const auto& [id, m] : machines_) listed_.insert(id);
    NaiveBudgets out;
    for (const auto& [id, m] : machines_) out.running[id] = runs(id);
    for (const auto& [id, m] : machines_) {
      if (!is_hypervisor(id)) continue;
      out.memory[id] = {m->memory - footprint(*m), taken(id), expected_inside(id)};
      out.processors[id] = processors(id);
    }
    const Pc& pc = lab_.pc;
    const std::int64_t gib = 1024;
    const std::int64_t usual = pc.installed <= 16 * gib  ? 4 * gib
                               : pc.installed < 64 * gib ? 6 * gib
                                                         : 8 * gib;
    out.memory["pc"] = {pc.usable.value_or(pc.installed) - pc.reserved.value_or(usual), taken("pc"),
                        expected_inside("pc")};
    out.processors["pc"] = processors("pc");
    fill_disks(out);
    for (const Segment& s : lab_.segments) out.segment_memory[to_text(s.id)] = segment_memory(to_text(s.id));
    return out;
  }

 private:
  static std::string carrier(const Machine& m) { return m.carrier ? to_text(m.carrier) : "pc"; }
  const std::vector<std::string>& inside(const std::string& id) const {
    static const std::vector<std::string> kNobody;
    const auto it = inside_.find(id);
    return it == inside_.end() ? kNobody : it->second;
  }
  const Role* role(const Machine& m) const {
    const auto it = roles_.find(m.role ? to_text(m.role) : "");
    return it == roles_.end() ? nullptr : it->second;
  }
  bool runs(const std::string& id) const {
    if (id == "pc") return true;
    return listed_.contains(id) && runs(carrier(*machines_.at(id)));
  }
  bool is_hypervisor(const std::string& id) const {
    const Role* r = role(*machines_.at(id));
    return !inside(id).empty() || (r && r->is_hypervisor);
  }
  std::int64_t footprint(const Machine& m) const {
    if (m.footprint) return *m.footprint;
    const Role* r = role(m);
    const std::int64_t own = !r                                  ? 0
                             : lab_.facts.sizes == SizeSet::lean ? r->lean_footprint
                                                                 : r->current_footprint;
    return own > 0 ? own : lab_.rules.default_footprint;
  }
  // 8 bytes for each page of 4 KiB, rounded up to a MiB; a hypervisor's several times.
  std::int64_t overhead(const std::string& id) const {
    const Machine& m = *machines_.at(id);
    const bool outer = carrier(m) == "pc";
    const std::int64_t pages = m.memory * 1024 * 1024 / 4096;
    const std::int64_t tables = up(pages * 8, 1024 * 1024);
    const std::int64_t times = is_hypervisor(id) ? lab_.rules.hypervisor_page_tables : 1;
    return (outer ? lab_.rules.outer_fixed : lab_.rules.inner_fixed) +
           (outer ? lab_.rules.outer_per_processor : lab_.rules.inner_per_processor) * m.processors +
           tables * times;
  }
  std::int64_t takes(const std::string& id) const { return machines_.at(id)->memory + overhead(id); }
  std::int64_t taken(const std::string& id) const {
    std::int64_t sum = 0;
    for (const std::string& g : inside(id))
      if (runs(g)) sum += takes(g);
    return sum;
  }
  std::int64_t expected_use(const std::string& id) const {
    const Machine& m = *machines_.at(id);
    if (is_hypervisor(id)) return std::min(m.memory, footprint(m) + expected_inside(id));
    return up(m.memory * m.expected_percent, 100);
  }
  std::int64_t expected_inside(const std::string& id) const {
    std::int64_t sum = 0;
    for (const std::string& g : inside(id))
      if (runs(g)) sum += expected_use(g) + overhead(g);
    return sum;
  }

  NaiveProcessors processors(const std::string& id) const {
    NaiveProcessors p;
    for (const std::string& g : inside(id))
      if (runs(g)) p.running += machines_.at(g)->processors;
    if (id == "pc") {
      const Pc& pc = lab_.pc;
      const std::int64_t efficient = std::min(pc.efficiency_cores, pc.cores);
      p.power = (pc.cores - efficient) * 100 + efficient * lab_.rules.efficiency_core_percent;
      if (pc.threads > pc.cores) p.power += (pc.threads - pc.cores) * lab_.rules.second_thread_percent;
    } else {
      p.power = machines_.at(id)->processors * 100;
    }
    const std::int64_t most = 1'000'000'000; // ratios stop there
    p.ratio = p.running == 0 ? 0 : p.power == 0 ? most : std::min(most, up(p.running * 10'000, p.power));
    p.product = p.ratio;
    if (id != "pc")
      p.product = std::min(most, up(p.ratio * processors(carrier(*machines_.at(id))).product, 100));
    return p;
  }

  void fill_disks(NaiveBudgets& out) const {
    for (const Volume& v : lab_.volumes)
      out.disks[to_text(v.id)] = {v.free - up(v.size * v.keep_free_percent, 100), 0, 0};
    for (const Share& s : lab_.shares) out.disks[to_text(s.id)] = {s.size, 0, 0};
    for (const Disk& d : lab_.disks)
      if (d.store.kind == Kind::disk) out.disks[to_text(d.store)] = {disks_.at(to_text(d.store))->size, 0, 0};
    std::set<std::string> seen; // machines whose first disk was met
    for (const Disk& d : lab_.disks) {
      const bool first = seen.insert(to_text(d.machine)).second;
      if (!d.store) continue;
      NaiveDisk& store = out.disks.at(to_text(d.store));
      store.worst += d.size;
      store.expected += d.provisioning == Provisioning::full ? d.size : up(d.size * d.expected_percent, 100);
      const Machine& m = *machines_.at(to_text(d.machine));
      if (!first || !m.memory_file || !runs(to_text(m.id))) continue;
      store.expected += m.memory;
      store.worst += m.memory;
    }
  }

  std::int64_t segment_memory(const std::string& segment) {
    std::int64_t sum = 0;
    for (const std::string& id : on_segment_[segment])
      if (machines_.contains(id) && runs(id)) sum += takes(id);
    return sum;
  }

  const Lab& lab_;
  std::map<std::string, const Machine*> machines_;
  std::map<std::string, const Role*> roles_;
  std::map<std::string, const Disk*> disks_;
  std::map<std::string, std::vector<std::string>> inside_;
  std::map<std::string, std::set<std::string>> on_segment_; // machines
  std::set<std::string> listed_;
};

} // namespace

std::vector<NaiveBudgets> naive_budgets(const Lab& lab) {
  Naive naive(lab);
  std::vector<NaiveBudgets> out{naive.all(nullptr)};
  for (const Exercise& e : lab.exercises) out.push_back(naive.all(&e));
  return out;
}

} // namespace snug::test
