#include "core/reach/need_list.h"

#include "core/reach/promises.h"

#include <algorithm>
#include <deque>
#include <optional>

namespace snug {

namespace {

class Lister {
 public:
  Lister(const Index& index, const AddressesInUse& addresses)
      : index_(index), lab_(index.lab()), addresses_(addresses), offerings_(index) {}
  std::vector<ListedNeed> run();

 private:
  // Servers of one service by the segments of their cards.
  struct Service {
    std::string name;
    std::span<const std::uint32_t> servers;
    std::vector<std::pair<std::uint32_t, std::uint32_t>> on; // segment, machine; sorted
  };
  void add(std::uint32_t machine, const Need&, const Service&);
  void add_of_role(std::uint32_t machine, std::uint32_t role);
  const Service& service(const std::string& name);
  std::uint32_t server(std::uint32_t machine, const Need&, const Service&);
  bool talk(std::uint32_t machine, std::uint32_t server);
  const Neighbours& neighbours();

  const Index& index_;
  const Lab& lab_;
  const AddressesInUse& addresses_;
  Offerings offerings_;
  std::deque<Service> services_;
  std::vector<std::vector<const Service*>> by_role_; // for each of a role's needs
  std::optional<Neighbours> neighbours_;
  std::vector<ListedNeed> out_;
  std::uint32_t last_machine_ = kNowhere, last_server_ = kNowhere;
  bool last_ = false;
};

const Neighbours& Lister::neighbours() {
  if (!neighbours_) neighbours_.emplace(index_, addresses_);
  return *neighbours_;
}

const Lister::Service& Lister::service(const std::string& name) {
  for (const Service& s : services_)
    if (s.name == name) return s;
  Service& s = services_.emplace_back(Service{name, offerings_.of(name), {}});
  for (const std::uint32_t m : s.servers)
    for (const std::uint32_t c : index_.cards_of(m))
      if (index_.segment_of_card(c) != kNowhere) s.on.emplace_back(index_.segment_of_card(c), m);
  std::sort(s.on.begin(), s.on.end());
  return s;
}

// Most machines get all they need from one other.
bool Lister::talk(std::uint32_t machine, std::uint32_t server) {
  if (machine != last_machine_ || server != last_server_) last_ = neighbours().surely_talk(machine, server);
  last_machine_ = machine;
  last_server_ = server;
  return last_;
}

std::uint32_t Lister::server(std::uint32_t machine, const Need& need, const Service& s) {
  const std::uint32_t named = need.from ? index_.place(need.from) : kNowhere;
  for (const std::uint32_t c : index_.cards_of(machine)) {
    const std::uint32_t segment = index_.segment_of_card(c);
    if (segment == kNowhere) continue;
    auto at = std::lower_bound(s.on.begin(), s.on.end(), std::pair(segment, std::uint32_t{0}));
    for (; at != s.on.end() && at->first == segment; ++at)
      if ((!need.from || at->second == named) && talk(machine, at->second)) return at->second;
  }
  return kNowhere;
}

// Who offers a service serves himself.
void Lister::add(std::uint32_t machine, const Need& need, const Service& s) {
  if (!need.from && std::binary_search(s.servers.begin(), s.servers.end(), machine)) return;
  out_.push_back({machine, &need, server(machine, need, s)});
}

// What a machine says itself about a service counts instead.
void Lister::add_of_role(std::uint32_t machine, std::uint32_t role) {
  const std::vector<Need>& needs = lab_.roles[role].needs;
  std::vector<const Service*>& services = by_role_[role];
  for (std::size_t i = services.size(); i < needs.size(); ++i) services.push_back(&service(needs[i].service));
  const std::vector<Need>& own = lab_.machines[machine].needs;
  for (std::size_t i = 0; i < needs.size(); ++i)
    if (std::none_of(own.begin(), own.end(), [&](const Need& o) { return o.service == needs[i].service; }))
      add(machine, needs[i], *services[i]);
}

std::vector<ListedNeed> Lister::run() {
  by_role_.resize(lab_.roles.size());
  index_.facts().each_machine(MachineMark::needs, [&](std::uint32_t m) {
    for (const Need& n : lab_.machines[m].needs) add(m, n, service(n.service));
    if (const std::uint32_t role = index_.machines()[m].role; role != kNowhere) add_of_role(m, role);
  });
  return std::move(out_);
}

} // namespace

std::vector<ListedNeed> list_needs(const Index& index, const AddressesInUse& addresses) {
  return Lister(index, addresses).run();
}

} // namespace snug
