#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/reach/promises.h"
#include "core/text/name_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr AnyId kPcId{Kind::pc, 0};

bool stands_in_names(const Context& c, std::uint32_t card) {
  constexpr std::uint32_t kAny = CardMark::has_address | CardMark::asks_dhcp | CardMark::slaac;
  const std::uint32_t marks = c.addresses.facts().card_marks[card];
  return (marks & CardMark::published) != 0 && (marks & kAny) != 0;
}

// Cards of a machine that stand in names, one for each segment.
std::vector<std::uint32_t> published_cards(const Context& c, std::uint32_t machine) {
  std::vector<std::uint32_t> cards;
  for (const std::uint32_t card : c.index.cards_of(machine)) {
    const auto same = [&](std::uint32_t o) {
      return c.addresses.facts().card_segment[o] == c.addresses.facts().card_segment[card];
    };
    if (stands_in_names(c, card) && std::none_of(cards.begin(), cards.end(), same)) cards.push_back(card);
  }
  return cards;
}

bool is_server(std::uint32_t marks) {
  return (marks & (MachineMark::offers_directory | MachineMark::offers_management)) != 0;
}

void check_twice(const Context& c, std::vector<Finding>& out) {
  const NetworkFacts& facts = c.addresses.facts();
  if (!is_server(facts.any_machine)) return;
  for (std::uint32_t m = 0; m < facts.machine_marks.size(); ++m) {
    if (!is_server(facts.machine_marks[m])) continue;
    const std::size_t n = published_cards(c, m).size();
    if (n < 2) continue;
    const AnyId id = c.lab.machines[m].id;
    out.push_back(found(Severity::caution, say(text::published_twice, c.name(id), std::to_string(n)),
                        say(text::published_twice_why), {id}));
  }
}

// The card for management stays, else the first.
std::optional<Fix> fix_twice(const Context& c, const Finding& f) {
  const std::uint32_t m = c.index.place(f.places[0]);
  const std::vector<std::uint32_t> cards = published_cards(c, m);
  const auto management = std::find_if(cards.begin(), cards.end(),
                                       [&](std::uint32_t card) { return c.lab.cards[card].for_management; });
  const std::uint32_t kept = management == cards.end() ? cards.front() : *management;
  const std::uint32_t segment = c.addresses.facts().card_segment[kept];
  if (segment == kNowhere) return std::nullopt;
  const Message label = say(text::fix_publish_one, c.name(f.places[0]), segment_name(c, segment));
  Fix fix{label, {label, {}}};
  for (const std::uint32_t card : c.index.cards_of(m)) {
    if (!stands_in_names(c, card) || c.addresses.facts().card_segment[card] == segment) continue;
    Card after = c.lab.cards[card];
    after.published = false;
    const Fix one = change_to(label, c.lab.cards[card], after);
    fix.edit.steps.insert(fix.edit.steps.end(), one.edit.steps.begin(), one.edit.steps.end());
  }
  return fix;
}

void check_reverse(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_machine(MachineMark::needs_reverse, [&](std::uint32_t m) {
    const auto cards = c.index.cards_of(m);
    constexpr std::uint32_t kFixed = CardMark::published | CardMark::has_address;
    const auto fixed = [&](std::uint32_t card) {
      return (c.addresses.facts().card_marks[card] & kFixed) == kFixed;
    };
    if (std::any_of(cards.begin(), cards.end(), fixed)) return;
    const AnyId id = c.lab.machines[m].id;
    out.push_back(
        found(Severity::caution, say(text::unpublished, c.name(id)), say(text::unpublished_why), {id}));
  });
}

// Publishes the machine's card for management, else its first with a fixed address.
std::optional<Fix> fix_reverse(const Context& c, const Finding& f) {
  const Card* best = nullptr;
  for (const std::uint32_t card : c.index.cards_of(c.index.place(f.places[0]))) {
    const Card& k = c.lab.cards[card];
    const bool fixed = (c.addresses.facts().card_marks[card] & CardMark::has_address) != 0;
    if (fixed && (!best || (k.for_management && !best->for_management))) best = &k;
  }
  const std::uint32_t segment = best ? c.index.place(best->segment) : kNowhere;
  if (segment == kNowhere) return std::nullopt;
  Card after = *best;
  after.published = true;
  return change_to(say(text::fix_publish_one, c.name(f.places[0]), segment_name(c, segment)), *best, after);
}

bool relays_names(const Segment& s) { return s.type == SegmentKind::nat && s.translator_names; }

void check_no_server(const Context& c, std::vector<Finding>& out) {
  constexpr std::uint32_t kNeeds = MachineMark::needs_names | MachineMark::needs_reverse;
  const NetworkFacts& facts = c.addresses.facts();
  if ((facts.any_machine & kNeeds) == 0 || (facts.any_machine & MachineMark::offers_names) != 0) return;
  const bool only_needs = (facts.any_machine & MachineMark::needs_reverse) == 0;
  if (only_needs && std::any_of(c.lab.segments.begin(), c.lab.segments.end(), relays_names)) return;
  const std::uint32_t wanted = only_needs ? MachineMark::needs_names : MachineMark::needs_reverse;
  const auto it = std::find_if(facts.machine_marks.begin(), facts.machine_marks.end(),
                               [wanted](std::uint32_t marks) { return (marks & wanted) != 0; });
  const AnyId id = c.lab.machines[static_cast<std::size_t>(it - facts.machine_marks.begin())].id;
  bool must = false;
  facts.each_machine(MachineMark::needs_names, [&](std::uint32_t m) {
    for (const Need& n : needs_of(c.index, m)) must |= n.service == "names" && n.strength == Strength::must;
  });
  out.push_back(found(must ? Severity::error : Severity::caution, say(text::no_name_server, c.name(id)),
                      say(text::no_name_server_why), {AnyId{Kind::lab, 0}}));
}

void check_pc(const Context& c, std::vector<Finding>& out) {
  const Known known = c.lab.pc.resolves_lab_names;
  const NetworkFacts& facts = c.addresses.facts();
  if (known == Known::yes || (facts.any_machine & MachineMark::offers_names) == 0) return;
  const auto it = std::find_if(facts.machine_marks.begin(), facts.machine_marks.end(),
                               [](std::uint32_t marks) { return (marks & MachineMark::offers_names) != 0; });
  const AnyId server = c.lab.machines[static_cast<std::size_t>(it - facts.machine_marks.begin())].id;
  out.push_back(found(known == Known::no ? Severity::caution : Severity::note,
                      say(known == Known::no ? text::pc_names_no : text::pc_names_unknown),
                      say(text::pc_names_why, c.name(server), c.lab.facts.domain), {kPcId}));
}

constexpr std::array kRules{
    Rule{"published-twice", Topic::names, Severity::caution,
         "A directory or management server is published on two segments", kPracticeSource, check_twice,
         fix_twice},
    Rule{"reverse-names", Topic::names, Severity::caution,
         "A machine that needs forward and reverse names is not published", kPracticeSource, check_reverse,
         fix_reverse},
    Rule{"no-name-server", Topic::names, Severity::caution, "Nobody offers names", kPracticeSource,
         check_no_server},
    Rule{"pc-names", Topic::names, Severity::caution, "Whether the PC resolves the lab's names",
         kPracticeSource, check_pc},
};

} // namespace

std::span<const Rule> published_rules() { return kRules; }

} // namespace snug
