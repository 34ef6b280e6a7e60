#include "core/findings/network_tools.h"
#include "core/text/name_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr std::string_view kTime = "time";

// Calls use(need) for what a machine needs of the service time, its role's included.
template <typename Use>
void each_time_need(const Context& c, std::uint32_t machine, Use use) {
  const Machine& m = c.lab.machines[machine];
  bool own = false;
  for (const Need& n : m.needs)
    if (n.service == kTime) use(n), own = true;
  const Role* role = own ? nullptr : c.index.role(m.role);
  if (!role) return;
  for (const Need& n : role->needs)
    if (n.service == kTime) use(n);
}

bool offers_time(const Context& c, std::uint32_t machine) {
  return (c.addresses.facts().machine_marks[machine] & MachineMark::offers_time) != 0;
}

void check_two_sources(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_machine(MachineMark::carrier_time | MachineMark::needs_time, [&](std::uint32_t m) {
    const AnyId id = c.lab.machines[m].id;
    out.push_back(found(Severity::caution, say(text::time_two_sources, c.name(id)),
                        say(text::time_two_sources_why), {id}));
  });
}

std::optional<Fix> fix_two_sources(const Context& c, const Finding& f) {
  return set_one(c, say(text::fix_network_time, c.name(f.places[0])), f.places[0], "carrier_time", false);
}

void check_not_offered(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  c.addresses.facts().each_machine(MachineMark::needs_time, [&](std::uint32_t m) {
    each_time_need(c, m, [&](const Need& n) {
      const std::uint32_t from = c.index.place(n.from);
      if (from == kNowhere || offers_time(c, from)) return;
      const AnyId id = c.lab.machines[m].id;
      out.push_back(found(Severity::caution, say(text::time_not_offered, c.name(id), c.name(n.from)),
                          say(text::time_not_offered_why), {id, n.from}));
    });
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_not_offered(const Context& c, const Finding& f) {
  const Machine& m = c.lab.machines[c.index.place(f.places[1])];
  Machine after = m;
  Offer& offer = after.offers.emplace_back();
  offer.service = std::string(kTime);
  offer.transport = Transport::udp;
  offer.port = 123; // RFC 5905
  return change_to(say(text::fix_offer_time, c.name(m.id)), m, after);
}

// Machines that want the time of others, or to which others look for it.
void check_no_source(const Context& c, std::vector<Finding>& out) {
  constexpr std::uint32_t kWants = MachineMark::needs_time | MachineMark::hypervisor |
                                   MachineMark::offers_directory | MachineMark::offers_management;
  const std::uint32_t any = c.addresses.facts().any_machine;
  if ((any & kWants) == 0 || (any & MachineMark::offers_time) != 0) return;
  out.push_back(found(Severity::caution, say(text::time_no_source), say(text::time_no_source_why),
                      {AnyId{Kind::lab, 0}}));
}

constexpr std::uint32_t kUnseen = 0xffff'ffff;

// Who takes the time from whom, as places of machines; loops found by Tarjan's algorithm without recursion.
class TimeGraph {
 public:
  explicit TimeGraph(const Context& c) : from_(c.lab.machines.size()) {
    std::uint32_t only = kNowhere, count = 0;
    c.addresses.facts().each_machine(MachineMark::offers_time, [&](std::uint32_t m) { only = m, ++count; });
    c.addresses.facts().each_machine(MachineMark::needs_time, [&](std::uint32_t m) {
      each_time_need(c, m, [&](const Need& n) {
        const std::uint32_t named = c.index.place(n.from);
        if (named != kNowhere) from_[m].push_back(named);
        if (!n.from && count == 1 && only != m) from_[m].push_back(only);
      });
    });
  }

  bool takes_any(std::uint32_t machine) const { return !from_[machine].empty(); }

  std::vector<std::vector<std::uint32_t>> loops();

 private:
  struct Step {
    std::uint32_t machine = 0;
    std::size_t next = 0;
  };
  void enter(std::uint32_t m);
  void walk(std::uint32_t start);
  void close(std::uint32_t m);

  std::vector<std::vector<std::uint32_t>> from_, loops_;
  std::vector<std::uint32_t> number_, low_, stack_;
  std::vector<bool> on_stack_;
  std::vector<Step> path_;
  std::uint32_t counter_ = 0;
};

// The loops, each with its members in the order of the lab.
std::vector<std::vector<std::uint32_t>> TimeGraph::loops() {
  number_.assign(from_.size(), kUnseen);
  low_.assign(from_.size(), 0);
  on_stack_.assign(from_.size(), false);
  for (std::uint32_t m = 0; m < from_.size(); ++m)
    if (number_[m] == kUnseen && !from_[m].empty()) walk(m);
  std::sort(loops_.begin(), loops_.end());
  return std::move(loops_);
}

void TimeGraph::enter(std::uint32_t m) {
  number_[m] = low_[m] = counter_++;
  stack_.push_back(m);
  on_stack_[m] = true;
  path_.push_back({m, 0});
}

void TimeGraph::walk(std::uint32_t start) {
  enter(start);
  while (!path_.empty()) {
    const std::uint32_t m = path_.back().machine;
    if (path_.back().next < from_[m].size()) {
      const std::uint32_t to = from_[m][path_.back().next++];
      if (number_[to] == kUnseen)
        enter(to);
      else if (on_stack_[to])
        low_[m] = std::min(low_[m], number_[to]);
      continue;
    }
    path_.pop_back();
    if (!path_.empty()) low_[path_.back().machine] = std::min(low_[path_.back().machine], low_[m]);
    if (low_[m] == number_[m]) close(m);
  }
}

void TimeGraph::close(std::uint32_t m) {
  std::vector<std::uint32_t> members;
  do {
    members.push_back(stack_.back());
    on_stack_[stack_.back()] = false;
    stack_.pop_back();
  } while (members.back() != m);
  const bool self = std::find(from_[m].begin(), from_[m].end(), m) != from_[m].end();
  if (members.size() < 2 && !self) return;
  std::sort(members.begin(), members.end());
  loops_.push_back(std::move(members));
}

void check_loop(const Context& c, std::vector<Finding>& out) {
  if ((c.addresses.facts().any_machine & MachineMark::needs_time) == 0) return;
  for (const auto& members : TimeGraph(c).loops()) {
    std::vector<AnyId> places;
    std::vector<std::string> names;
    for (const std::uint32_t m : members) {
      places.emplace_back(c.lab.machines[m].id);
      names.push_back(c.name(places.back()));
    }
    const Template& sentence = names.size() == 1 ? text::time_loop_self : text::time_loop;
    out.push_back(found(Severity::error, say(sentence, names), say(text::time_loop_why), std::move(places)));
  }
}

void check_roots(const Context& c, std::vector<Finding>& out) {
  if ((c.addresses.facts().any_machine & MachineMark::offers_time) == 0) return;
  std::vector<AnyId> places;
  std::vector<std::string> names;
  const TimeGraph graph(c);
  c.addresses.facts().each_machine(MachineMark::offers_time, [&](std::uint32_t m) {
    if (graph.takes_any(m) || (c.addresses.facts().machine_marks[m] & MachineMark::needs_time) != 0) return;
    places.emplace_back(c.lab.machines[m].id);
    names.push_back(c.name(places.back()));
  });
  if (places.size() < 2) return;
  const auto n = static_cast<std::int64_t>(places.size());
  out.push_back(found(Severity::caution, say(text::time_roots, std::to_string(n), names),
                      say(text::time_roots_why), std::move(places)));
}

constexpr std::array kRules{
    Rule{"time-two-sources", Topic::time, Severity::caution,
         "A machine takes the time from its carrier and from the network", kPracticeSource, check_two_sources,
         fix_two_sources},
    Rule{"time-loop", Topic::time, Severity::error, "Machines take the time from each other",
         "RFC 5905 (synchronization is a tree)", check_loop},
    Rule{"time-not-offered", Topic::time, Severity::caution,
         "The time is taken from a machine that does not offer it", kPracticeSource, check_not_offered,
         fix_not_offered},
    Rule{"time-no-source", Topic::time, Severity::caution, "Nobody offers the time", "RFC 4120 1.6",
         check_no_source},
    Rule{"time-roots", Topic::time, Severity::caution, "More than one root of time", kPracticeSource,
         check_roots},
};

} // namespace

std::span<const Rule> time_rules() { return kRules; }

} // namespace snug
