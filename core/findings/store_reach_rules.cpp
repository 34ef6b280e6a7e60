#include "core/findings/reach_fixes.h"
#include "core/findings/stores.h"
#include "core/reach/explain.h"
#include "core/reach/neighbours.h"
#include "core/text/disk_text.h"

#include <algorithm>
#include <array>
#include <map>

namespace snug {

namespace {

// Who opens disks on which share, and whose disks.
struct Opening {
  std::uint32_t opener = kNowhere, share = kNowhere, server = kNowhere; // places
  std::vector<std::uint32_t> users;
};

// Without what a machine opens of its own.
std::vector<Opening> openings(const Context& c) {
  std::vector<Opening> out;
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::size_t> known;
  for (const auto& [machine, share] : share_users(c.index)) {
    const std::uint32_t who = opener(c.index, machine), server = c.index.place(c.lab.shares[share].machine);
    if (server == kNowhere || server == who) continue;
    if (c.index.cards_of(who).empty() && c.index.cards_of(server).empty()) continue; // no network planned yet
    const auto [it, is_new] = known.try_emplace({who, share}, out.size());
    if (is_new) out.push_back({who, share, server, {}});
    out[it->second].users.push_back(machine);
  }
  return out;
}

// Whether somebody whose disk is opened runs, and so does the other end.
bool is_wanted(const Opening& o, const std::vector<std::uint8_t>& running) {
  return running[o.server] != 0 &&
         std::any_of(o.users.begin(), o.users.end(), [&](std::uint32_t m) { return running[m] != 0; });
}

// Looks the way up, and asks nobody where the plan alone decides it (see Neighbours).
class Ways {
 public:
  explicit Ways(const Context& c) : c_(c) {}
  // Kept where the share is reached with packets as long as cards take: blocks of disks fill them.
  Judged ask(std::size_t occasion, const Opening& o) {
    if (surely(o)) return {};
    Reach& reach = c_.reach->at(occasion);
    const Share& share = c_.lab.shares[o.share];
    Judged j;
    j.counts = true;
    j.question.from = c_.lab.machines[o.opener].id;
    j.question.to = share.machine;
    j.question.transport = Transport::tcp;
    j.question.full_size = true;
    const Card* card = c_.index.card(share.card);
    if (card && card->machine == share.machine)
      ask_card(reach, share.card, j);
    else
      j.answer = reach.ask(j.question);
    j.kept = j.answer.verdict == Reached::reaches;
    return j;
  }

 private:
  // The addresses of the card that carries the share; one without any is not plugged, or has no address yet.
  static void ask_card(Reach& reach, CardId card, Judged& j) {
    const ReachNetwork& n = reach.network();
    const ReachNode& node = n.nodes()[n.node_of(j.question.to)];
    j.answer.end = ReachStep{j.question.to, card, Decision::no_source, {}, false};
    j.answer.steps = {*j.answer.end};
    for (const Address& target : reach.targets(j.question.from, j.question.to)) {
      bool is_its = false;
      for (std::uint32_t p = node.first_port; p < node.end_port; ++p)
        for (const ReachAddress& a : n.addresses(n.ports()[p]))
          is_its |= n.ports()[p].id == AnyId(card) && a.address == target;
      if (!is_its) continue;
      j.question.target = target;
      j.answer = reach.ask(j.question);
      if (j.answer.verdict == Reached::reaches) return;
    }
  }

  bool surely(const Opening& o) {
    if (!meet_on_its_card(o)) return false;
    if (!neighbours_) neighbours_.emplace(c_.index, c_.addresses);
    return neighbours_->surely_talk(o.opener, o.server);
  }

  // Neighbours look at any pair of cards: both machines share one segment, and there the share is carried.
  bool meet_on_its_card(const Opening& o) const {
    const CardId wanted = c_.lab.shares[o.share].card;
    std::uint32_t pairs = 0, meant = 0;
    for (const std::uint32_t a : c_.index.cards_of(o.opener))
      for (const std::uint32_t b : c_.index.cards_of(o.server)) {
        const std::uint32_t segment = c_.index.segment_of_card(a);
        if (segment == kNowhere || segment != c_.index.segment_of_card(b)) continue;
        ++pairs;
        meant += !wanted || c_.lab.cards[b].id == wanted ? 1U : 0U;
      }
    return pairs == meant;
  }

  const Context& c_;
  std::optional<Neighbours> neighbours_;
};

void mark(Occasions& when, std::size_t occasion) {
  if (occasion == 0)
    when.everything_on = true;
  else
    when.exercises.set(occasion - 1);
}

Finding unreached(const Context& c, const Opening& o, bool chance, Message reason) {
  const Share& share = c.lab.shares[o.share];
  const AnyId who = c.lab.machines[o.opener].id;
  std::vector<std::string> users;
  for (const std::uint32_t m : o.users) users.push_back(c.name(c.lab.machines[m].id));
  const bool own = o.users.size() == 1 && o.users.front() == o.opener;
  const Template& what = own ? (chance ? text::store_chance_own : text::store_unreachable_own)
                             : (chance ? text::store_chance : text::store_unreachable);
  Finding f = found(chance ? Severity::caution : Severity::error,
                    say(what, c.name(who), share_name(c, share), c.name(share.machine), users),
                    std::move(reason), {who, share.id});
  f.when.always = false;
  return f;
}

// One finding for each that opens a share; what is never reached is told before what chance decides.
void check_reachable(const Context& c, std::vector<Finding>& out) {
  const std::vector<Opening> all = openings(c);
  Ways ways(c);
  for (const Opening& o : all) {
    if (!c.is_wanted(c.lab.machines[o.opener].id)) continue;
    std::optional<Finding> finding;
    Occasions when;
    when.always = false;
    for (std::size_t i = 0; i < c.budgets.size(); ++i) {
      if (!is_wanted(o, c.budgets[i].running)) continue;
      const Judged j = ways.ask(i, o);
      if (!j.counts || j.kept) continue;
      mark(when, i);
      const bool chance = j.answer.verdict == Reached::unreliable;
      if (!finding || (finding->severity == Severity::caution && !chance))
        finding = unreached(c, o, chance, explain(c.index, c.reach->at(i), j.question, j.answer));
    }
    if (!finding) continue;
    finding->when = when;
    out.push_back(std::move(*finding));
  }
}

std::optional<Fix> fix_reachable(const Context& c, const Finding& f) {
  Ways ways(c);
  for (const Opening& o : openings(c)) {
    if (c.lab.machines[o.opener].id != f.places[0] || c.lab.shares[o.share].id != f.places[1]) continue;
    for (std::size_t i = 0; i < c.budgets.size(); ++i)
      if (i == 0 ? f.when.everything_on : f.when.exercises[i - 1])
        if (auto fix = mend_way(c, ways.ask(i, o))) return fix;
  }
  return std::nullopt;
}

constexpr std::array kRules{
    Rule{"store-unreachable", Topic::reach, Severity::error,
         "A hypervisor does not reach the share that holds its guests' disks", "RFC 1122 3.3, RFC 1812 5.2",
         check_reachable, fix_reachable},
};

} // namespace

std::span<const Rule> store_reach_rules() { return kRules; }

} // namespace snug
