#include "tests/bench/naive_lab.h"

#include <algorithm>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

namespace snug::bench {

namespace {

struct Guest {
  std::string id;
  std::string name;
  std::string carrier;
  std::int64_t memory = 0;
  std::int64_t processors = 0;
  std::int64_t footprint = 0;
  bool hypervisor = false;
  std::vector<std::string> inside;
};

using Guests = std::map<std::string, std::shared_ptr<Guest>>;

std::int64_t tables(std::int64_t memory) { return (memory * 256 * 8 + 1'048'575) / 1'048'576; }

std::int64_t takes(const Lab& lab, const Guest& g) {
  const bool inner = !g.carrier.empty();
  const std::int64_t fixed = inner ? lab.rules.inner_fixed : lab.rules.outer_fixed;
  const std::int64_t each = inner ? lab.rules.inner_per_processor : lab.rules.outer_per_processor;
  return g.memory + fixed + each * g.processors +
         tables(g.memory) * (g.hypervisor ? lab.rules.hypervisor_page_tables : 1);
}

Guests read_guests(const Lab& lab) {
  Guests all;
  std::map<std::string, const Role*> roles;
  for (const Role& r : lab.roles) roles[to_text(r.id)] = &r;
  for (const Machine& m : lab.machines) {
    auto g = std::make_shared<Guest>();
    g->id = to_text(m.id);
    g->name = m.name;
    g->carrier = m.carrier ? to_text(m.carrier) : "";
    g->memory = m.memory;
    g->processors = m.processors;
    const auto role = roles.find(m.role ? to_text(m.role) : "");
    g->hypervisor = role != roles.end() && role->second->is_hypervisor;
    const std::int64_t of_role = role == roles.end()                ? 0
                                 : lab.facts.sizes == SizeSet::lean ? role->second->lean_footprint
                                                                    : role->second->current_footprint;
    g->footprint = m.footprint ? *m.footprint : of_role > 0 ? of_role : lab.rules.default_footprint;
    all[g->id] = g;
  }
  for (auto& [id, g] : all) {
    if (g->carrier.empty()) continue;
    all[g->carrier]->inside.push_back(id);
    all[g->carrier]->hypervisor = true;
  }
  return all;
}

bool runs(const Guests& all, const std::set<std::string>& on, const std::string& id) {
  for (std::string at = id; !at.empty(); at = all.at(at)->carrier)
    if (on.count(at) == 0) return false;
  return true;
}

void add_headroom(const Lab& lab, const Guests& all, const std::set<std::string>& on, Figures& out) {
  const std::int64_t installed = lab.pc.installed;
  const std::int64_t reserve = lab.pc.reserved      ? *lab.pc.reserved
                               : installed <= 16384 ? 4096
                               : installed < 65536  ? 6144
                                                    : 8192;
  std::int64_t pc = (lab.pc.usable ? *lab.pc.usable : installed) - reserve;
  for (const auto& [id, g] : all) {
    if (g->carrier.empty() && runs(all, on, id)) pc -= takes(lab, *g);
    if (!g->hypervisor) continue;
    std::int64_t room = g->memory - g->footprint;
    for (const std::string& inner : g->inside)
      if (runs(all, on, inner)) room -= takes(lab, *all.at(inner));
    out.inner_headroom += room;
  }
  out.pc_headroom += pc;
}

// Layer-2 networks: "PC/s3" or "m7/s3", joined where a connected card carries a segment.
struct Networks {
  std::map<std::string, std::string> up;
  std::string root(const std::string& n) {
    const auto it = up.find(n);
    if (it == up.end() || it->second == n) return n;
    return it->second = root(it->second);
  }
};

void count_doubles(const Lab& lab, const Guests& all, Figures& out) {
  Networks nets;
  const auto where = [&all](const std::string& machine, const std::string& segment) {
    const std::string& carrier = all.at(machine)->carrier;
    return (carrier.empty() ? "PC" : carrier) + "/" + segment;
  };
  for (const Card& c : lab.cards)
    for (const SegmentTag& t : c.carries)
      if (c.connected)
        nets.up[nets.root(to_text(c.machine) + "/" + to_text(t.segment))] =
            nets.root(where(to_text(c.machine), to_text(t.segment)));
  std::map<std::string, std::int64_t> held;
  std::map<std::string, std::int64_t> macs;
  for (const Card& c : lab.cards) {
    if (!c.segment || !c.connected) continue;
    const std::string net = nets.root(where(to_text(c.machine), to_text(c.segment)));
    for (const CardAddress& a : c.addresses)
      if (a.address) ++held[net + " " + to_text(*a.address)];
    if (c.mac) ++macs[net + " " + to_text(*c.mac)];
  }
  for (const auto& [key, n] : held) out.addresses_twice += n - 1;
  for (const auto& [key, n] : macs) out.macs_twice += n - 1;
  std::map<std::string, std::int64_t> names;
  for (const auto& [id, g] : all) ++names[g->name];
  for (const auto& [key, n] : names) out.names_twice += n - 1;
}

} // namespace

Figures naive_figures(const Lab& lab) {
  Figures out;
  const Guests all = read_guests(lab);
  std::set<std::string> everything;
  for (const auto& [id, g] : all) everything.insert(id);
  add_headroom(lab, all, everything, out);
  for (const Exercise& e : lab.exercises) {
    std::set<std::string> on;
    for (const MachineId m : e.on) on.insert(to_text(m));
    add_headroom(lab, all, on, out);
  }
  count_doubles(lab, all, out);
  for (const Disk& d : lab.disks)
    if (d.store.kind == Kind::volume)
      out.disk_expected +=
          d.provisioning == Provisioning::full ? d.size : (d.size * d.expected_percent + 99) / 100;
  return out;
}

} // namespace snug::bench
