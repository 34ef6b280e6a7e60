#include "core/findings/network_tools.h"
#include "core/findings/reach_fixes.h"
#include "core/reach/explain.h"
#include "core/reach/promise_words.h"
#include "core/text/promise_text.h"

#include <algorithm>
#include <array>
#include <set>
#include <tuple>

namespace snug {

namespace {

void mark(Occasions& when, std::size_t occasion) {
  when.always = false;
  if (occasion == 0)
    when.everything_on = true;
  else
    when.exercises.set(occasion - 1);
}

// The systems that a question passes, or its answer, without both ends.
std::vector<std::string> between(const Context& c, const ReachAnswer& a, bool back) {
  std::vector<std::string> out;
  for (const ReachStep& s : a.steps)
    if (s.back == back && s.what == Decision::forwards) out.push_back(subject_name(c.index, s.node));
  return out;
}

Message explained(const Context& c, std::size_t occasion, const Judged& j) {
  return explain(c.index, c.reach->at(occasion), j.question, j.answer);
}

// Calls use(promise, occasion, judged) for those of one kind that are broken.
template <typename Use>
void each_broken(const Context& c, PromiseKind kind, Use use) {
  for (const Promise& p : c.lab.promises)
    for (std::size_t i = 0; p.must == kind && c.is_wanted(p.id) && i < c.reach->occasions(); ++i) {
      if (!speaks_of(p, i == 0 ? ExerciseId{} : c.lab.exercises[i - 1].id)) continue;
      const Judged j = judge(c.reach->at(i), c.index, p);
      if (j.counts && !j.kept) use(p, i, j);
    }
}

// One finding a promise; its places are the promise and its two subjects where they are elements.
void check_kind(const Context& c, PromiseKind kind, std::vector<Finding>& out) {
  const std::size_t first = out.size();
  each_broken(c, kind, [&](const Promise& p, std::size_t i, const Judged& j) {
    const bool known = out.size() > first && out.back().places.front() == AnyId(p.id);
    if (!known) {
      Finding& f = out.emplace_back(found(Severity::error, broken_message(c.index, p, j),
                                          broken_reason(c.index, c.reach->at(i), p, j), {p.id}));
      for (const AnyId id : {p.from, p.to})
        if (id.number != 0) f.places.push_back(id);
    }
    mark(out.back().when, i);
  });
}

void check_promises(const Context& c, std::vector<Finding>& out) { check_kind(c, PromiseKind::reach, out); }
void check_isolation(const Context& c, std::vector<Finding>& out) { check_kind(c, PromiseKind::never, out); }

// What one machine does not get from one other.
struct Unmet {
  AnyId who, from;
  Severity severity = Severity::caution;
  bool chance = false;
  std::vector<std::string> services;
  Message reason;
  Occasions when;
};

void note_unmet(const Context& c, std::vector<Unmet>& unmet, const Need& n, std::size_t occasion,
                const Judged& j) {
  const bool chance = j.answer.verdict == Reached::unreliable;
  auto it = std::find_if(unmet.begin(), unmet.end(),
                         [&](const Unmet& u) { return u.who == j.question.from && u.from == j.question.to; });
  if (it != unmet.end() && chance && !it->chance) return; // what is never reached is told first
  if (it == unmet.end() || (it->chance && !chance)) {
    if (it == unmet.end()) it = unmet.emplace(unmet.end());
    *it = {};
    it->who = j.question.from;
    it->from = j.question.to;
    it->chance = chance;
    it->reason = explained(c, occasion, j);
  }
  if (n.strength == Strength::must) it->severity = Severity::error;
  if (std::find(it->services.begin(), it->services.end(), n.service) == it->services.end())
    it->services.push_back(n.service);
  mark(it->when, occasion);
}

// Machines of one class get the same from the same: what one of them gets need not be asked again.
class Met {
 public:
  explicit Met(const Context& c) : c_(c), offerings_(c.index) {
    constexpr std::ptrdiff_t kFew = 32; // asking each is less work than finding who is alike
    const auto needs = c.reach->needs();
    crowd_ = !c.only && std::count_if(needs.begin(), needs.end(),
                                      [](const ListedNeed& n) { return n.server == kNowhere; }) > kFew;
  }
  Judged ask(std::size_t occasion, std::uint32_t machine, const Need& n) {
    Reach& reach = c_.reach->at(occasion);
    const MachineId who = c_.lab.machines[machine].id;
    const std::uint32_t alike = crowd_ ? reach.classes().of(reach.network().node_of(who)) : machine;
    const Key key(occasion, alike, n.from, n.service);
    if (met_.count(key) != 0) return {};
    Judged j = judge(reach, c_.index, offerings_, who, n);
    if (j.counts && j.kept) met_.insert(key);
    return j;
  }

 private:
  using Key = std::tuple<std::size_t, std::uint32_t, MachineId, std::string>;
  const Context& c_;
  Offerings offerings_;
  bool crowd_ = false;
  std::set<Key> met_;
};

// Whether one machine ever runs without another: the occasions of each as bits.
class Alone {
 public:
  explicit Alone(const Context& c)
      : counted_(!c.only && !c.reach->needs().empty() && c.reach->occasions() <= 64),
        on_(counted_ ? c.lab.machines.size() : 0) {
    for (std::size_t i = 0; counted_ && i < c.reach->occasions(); ++i) {
      const std::vector<std::uint8_t>& running = c.budgets[i].running;
      for (std::size_t m = 0; m < on_.size(); ++m) on_[m] |= std::uint64_t{running[m] != 0} << i;
    }
  }
  bool is_never(std::uint32_t machine, std::uint32_t other) const {
    return counted_ && (on_[machine] & ~on_[other]) == 0;
  }

 private:
  bool counted_;                  // else nothing is known
  std::vector<std::uint64_t> on_; // by machine
};

void check_needs(const Context& c, std::vector<Finding>& out) {
  std::vector<Unmet> unmet;
  Met met(c);
  const Alone alone(c);
  for (const ListedNeed& n : c.reach->needs()) {
    if (c.only && !c.is_wanted(c.lab.machines[n.machine].id)) continue;
    if (n.server != kNowhere && alone.is_never(n.machine, n.server)) continue;
    for (std::size_t i = 0; i < c.reach->occasions(); ++i) {
      const std::vector<std::uint8_t>& running = c.budgets[i].running;
      if (running[n.machine] == 0 || (n.server != kNowhere && running[n.server] != 0)) continue;
      const Judged j = met.ask(i, n.machine, *n.need);
      if (j.counts && !j.kept) note_unmet(c, unmet, *n.need, i, j);
    }
  }
  for (Unmet& u : unmet) {
    Finding f = found(
        u.severity,
        say(u.chance ? text::need_chance : text::need_unreachable, c.name(u.who), u.services, c.name(u.from)),
        std::move(u.reason), {u.who, u.from});
    f.when = u.when;
    out.push_back(std::move(f));
  }
}

// Names and time have rules of their own about nobody who offers them.
void check_offered(const Context& c, std::vector<Finding>& out) {
  const std::size_t first = out.size();
  Offerings offerings(c.index);
  for (const ListedNeed& listed : c.reach->needs()) {
    const Need& n = *listed.need;
    if (listed.server != kNowhere || n.service == "names" || n.service == "time") continue;
    const AnyId who = c.lab.machines[listed.machine].id;
    const Severity severity = n.strength == Strength::must ? Severity::error : Severity::caution;
    const std::vector<std::uint32_t>& offers = offerings.of(n.service);
    if (n.from && std::find(offers.begin(), offers.end(), c.index.place(n.from)) == offers.end())
      out.push_back(found(severity, say(text::need_not_offered, c.name(who), n.service, c.name(n.from)),
                          say(text::need_not_offered_why, n.service, c.name(n.from)), {who, n.from}));
    else if (!n.from && offers.empty())
      out.push_back(found(severity, say(text::need_nobody, c.name(who), n.service),
                          say(text::need_nobody_why, n.service), {who}));
  }
  drop_repeated(out, first);
}

// Of the pairs that people care about: promised ones and needs.
void check_ways(const Context& c, std::vector<Finding>& out) {
  const auto first = static_cast<std::ptrdiff_t>(out.size());
  const auto look = [&](std::size_t occasion, const Judged& j) {
    if (!j.counts || !j.kept || j.answer.verdict != Reached::reaches) return;
    const std::vector<std::string> there = between(c, j.answer, false);
    std::vector<std::string> back = between(c, j.answer, true);
    std::reverse(back.begin(), back.end());
    if (there == back) return;
    const auto text_of = [](const std::vector<std::string>& way) {
      return way.empty() ? std::vector{english(say(text::path_direct))} : way;
    };
    const std::vector<AnyId> places{j.question.from, j.question.to};
    auto same =
        std::find_if(out.begin() + first, out.end(), [&](const Finding& f) { return f.places == places; });
    if (same == out.end()) {
      out.push_back(found(Severity::caution,
                          say(text::path_asymmetric, subject_name(c.index, j.question.from),
                              subject_name(c.index, j.question.to)),
                          say(text::path_asymmetric_why, text_of(there), text_of(back)), places));
      same = out.end() - 1;
    }
    mark(same->when, occasion);
  };
  const auto routed = [&c](std::size_t i) { return !c.reach->at(i).network().forwarders().empty(); };
  Met met(c);
  for (std::size_t i = 0; i < c.reach->occasions(); ++i) {
    for (const Promise& p : c.lab.promises)
      if (p.must == PromiseKind::reach && speaks_of(p, i == 0 ? ExerciseId{} : c.lab.exercises[i - 1].id) &&
          routed(i))
        look(i, judge(c.reach->at(i), c.index, p));
    for (const ListedNeed& n : c.reach->needs()) // a neighbour's way is its own
      if (n.server == kNowhere && c.budgets[i].running[n.machine] != 0 && routed(i))
        look(i, met.ask(i, n.machine, *n.need));
  }
}

void check_pc(const Context& c, std::vector<Finding>& out) {
  if (!c.lab.pc.forwards) return;
  std::vector<AnyId> places{AnyId{Kind::pc, 0}};
  std::vector<std::string> names;
  bool isolated = false;
  for (const Segment& s : c.lab.segments) {
    if (!s.pc_socket) continue;
    isolated |= s.type == SegmentKind::isolated;
    places.emplace_back(s.id);
    names.push_back(c.name(s.id));
  }
  if (names.size() < 2 || !isolated) return;
  out.push_back(found(Severity::caution, say(text::pc_forwards, c.name(AnyId{Kind::pc, 0}), names),
                      say(text::pc_forwards_why), std::move(places)));
}

std::optional<Fix> fix_pc(const Context& c, const Finding& f) {
  return set_one(c, say(text::fix_pc_forwards, c.name(f.places[0])), f.places[0], "forwards", false);
}

// Cards that carry shares or are meant for storage or migration.
void check_storage(const Context& c, std::vector<Finding>& out) {
  constexpr std::uint32_t kTraffic = CardMark::for_storage | CardMark::for_migration;
  const std::size_t first = out.size();
  const auto look = [&](const Card& card, SegmentId segment, const Template& t) {
    const Segment* s = c.index.segment(segment);
    if (!s || s->type == SegmentKind::isolated) return;
    out.push_back(found(Severity::caution, say(t, c.name(card.machine), c.name(s->id)),
                        say(text::storage_outside_why), {card.id, s->id}));
  };
  const auto look_all = [&](const Card& card, const Template& t) {
    look(card, card.segment, t);
    for (const SegmentTag& tag : card.trunk) look(card, tag.segment, t);
  };
  for (const Share& share : c.lab.shares)
    if (const Card* card = c.index.card(share.card)) look_all(*card, text::storage_outside);
  if ((c.addresses.facts().any_card & kTraffic) != 0)
    for (std::uint32_t place = 0; place < c.lab.cards.size(); ++place)
      if ((c.addresses.facts().card_marks[place] & kTraffic) != 0)
        look_all(c.lab.cards[place],
                 c.lab.cards[place].for_storage ? text::storage_outside : text::migration_outside);
  drop_repeated(out, first);
}

constexpr std::string_view kKernelSource = "RFC 1122 3.3, RFC 1812 5.2";

constexpr std::array kRules{
    Rule{"promise-broken", Topic::reach, Severity::error, "A promised connection does not work",
         kKernelSource, check_promises, fix_promise},
    Rule{"isolation-broken", Topic::reach, Severity::error, "Something reaches what it was promised never to",
         kKernelSource, check_isolation},
    Rule{"need-unreachable", Topic::reach, Severity::caution,
         "A machine does not reach a service that it needs", kKernelSource, check_needs, fix_need},
    Rule{"need-not-offered", Topic::reach, Severity::caution, "A service that a machine needs is not offered",
         kPracticeSource, check_offered},
    Rule{"path-asymmetric", Topic::reach, Severity::caution, "Answers take another way than questions",
         "RFC 3704 2.3", check_ways},
    Rule{"pc-forwards", Topic::reach, Severity::caution, "The PC joins segments that are meant to be apart",
         kPracticeSource, check_pc, fix_pc},
    Rule{"storage-outside", Topic::reach, Severity::caution,
         "Storage or migration shares a segment with the outside", kPracticeSource, check_storage},
};

} // namespace

std::span<const Rule> reach_rules() { return kRules; }

} // namespace snug
