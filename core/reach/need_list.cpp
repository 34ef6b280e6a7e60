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
    std::vector<std::uint8_t> serves; // by machine
    std::vector<std::uint32_t> start; // in `on`, by segment, and the end
    std::vector<std::uint32_t> on;    // servers of each segment, ascending
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
  Service& s = services_.emplace_back(Service{name, offerings_.of(name), {}, {}, {}});
  const auto each = [&](const auto use) {
    for (const std::uint32_t m : s.servers)
      for (const std::uint32_t c : index_.cards_of(m))
        if (index_.segment_of_card(c) != kNowhere) use(index_.segment_of_card(c), m);
  };
  s.serves.resize(lab_.machines.size());
  for (const std::uint32_t m : s.servers) s.serves[m] = 1;
  s.start.assign(lab_.segments.size() + 1, 0);
  each([&](std::uint32_t segment, std::uint32_t) { ++s.start[segment + 1]; });
  for (std::size_t i = 1; i < s.start.size(); ++i) s.start[i] += s.start[i - 1];
  s.on.resize(s.start.back());
  std::vector<std::uint32_t> next(s.start.begin(), s.start.end() - 1);
  each([&](std::uint32_t segment, std::uint32_t m) { s.on[next[segment]++] = m; });
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
    for (std::uint32_t i = s.start[segment]; i < s.start[segment + 1]; ++i)
      if ((!need.from || s.on[i] == named) && talk(machine, s.on[i])) return s.on[i];
  }
  return kNowhere;
}

// Who offers a service serves himself.
void Lister::add(std::uint32_t machine, const Need& need, const Service& s) {
  if (!need.from && s.serves[machine] != 0) return;
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
