#include "tests/support/rule_world.h"

#include "core/model/names.h"
#include "core/net/host_name.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

namespace snug::test {

namespace {

using Ids = std::vector<AnyId>;
using enum Severity;

constexpr AnyId kLab{Kind::lab, 0};

RuleCase domain_case(std::string_view rule, Severity severity, std::string domain) {
  return {rule, severity, true, [domain = std::move(domain)](World& w) {
            w.lab.facts.domain = domain;
            return Ids{kLab};
          }};
}

RoleId add_role(World& w, bool reverse) {
  Role r;
  r.id.number = w.lab.facts.next_id++;
  r.needs_reverse_name = reverse;
  Need n;
  n.service = "names";
  r.needs = {n};
  w.lab.roles.push_back(r);
  return r.id;
}

const std::vector<RuleCase> kCases{
    {"host-name-twice", error, true, // RFC 4343
     [](World& w) {
       w.machine(w.desk).name = "PILOT";
       return Ids{w.pilot, w.desk};
     }},
    {"host-name-twice", error, true,
     [](World& w) {
       w.machine(w.desk).host_name = "Rack";
       return Ids{w.rack, w.desk};
     }},
    {"host-name-form", error, true, // RFC 1123 2.1
     [](World& w) {
       w.machine(w.desk).host_name = "desk_1";
       return Ids{w.desk};
     }},
    domain_case("domain-form", error, "lab..arpa"),
    domain_case("domain-missing", note, ""),
    domain_case("domain-local", caution, "ferry.local"), // RFC 6762
    domain_case("domain-localhost", error, "localhost"), // RFC 6761 6.3
    domain_case("domain-case", caution, "Ferry.home.arpa"),
    {"published-twice", caution, true,
     [](World& w) {
       w.add_card(w.pilot, w.hold, "172.22.20.10");
       return Ids{w.pilot};
     }},
    {"reverse-names", caution, true,
     [](World& w) {
       w.machine(w.rack).role = add_role(w, true);
       w.card(w.rack_deck).published = false;
       return Ids{w.rack};
     }},
    {"no-name-server", caution, false,
     [](World& w) {
       w.machine(w.rack).role = add_role(w, true);
       w.machine(w.pilot).offers.erase(w.machine(w.pilot).offers.begin());
       return Ids{kLab};
     }},
    {"pc-names", caution, false,
     [](World& w) {
       w.lab.pc.resolves_lab_names = Known::no;
       return Ids{AnyId{Kind::pc, 0}};
     }},
    {"pc-names", note, false,
     [](World& w) {
       w.lab.pc.resolves_lab_names = Known::unknown;
       return Ids{AnyId{Kind::pc, 0}};
     }},
};

} // namespace

TEST(NameRules, EachFiresAndItsFixHelps) {
  for (const RuleCase& c : kCases) check_case(c);
}

// Who must have names and finds nobody is in error, as with every other service.
TEST(NameRules, NobodyOffersWhatMustBe) {
  World w;
  w.machine(w.pilot).offers.erase(w.machine(w.pilot).offers.begin());
  Need need;
  need.service = "names";
  w.segment(w.crew).translator_names = false;
  for (const Strength strength : {Strength::wants, Strength::must}) {
    need.strength = strength;
    w.machine(w.desk).needs = {need};
    const Analysis a = analyse(w.lab);
    const auto it = std::find_if(a.findings().begin(), a.findings().end(),
                                 [](const Finding& f) { return f.rule->id == "no-name-server"; });
    ASSERT_NE(it, a.findings().end());
    EXPECT_EQ(it->severity, strength == Strength::must ? error : caution);
  }
}

TEST(NameRules, TranslatorRelaysNames) {
  World w;
  w.machine(w.desk).role = add_role(w, false);
  w.machine(w.pilot).offers.erase(w.machine(w.pilot).offers.begin());
  EXPECT_TRUE(places_of(w.lab, "no-name-server").empty());
  w.segment(w.crew).translator_names = false;
  EXPECT_EQ(places_of(w.lab, "no-name-server").size(), 1U);
}

// Equal names (RFC 4343) have equal hashes, others practically never.
TEST(NameRules, HashAgreesWithHostNames) {
  Random random(7);
  const std::string letters = "aAbB-_ .\xc3\xa9"
                              "9";
  for (int i = 0, n = scaled(100'000); i < n; ++i) {
    Machine a, b;
    for (std::size_t k = random.below(5) + (random.chance(3) ? 62 : 0); k > 0; --k)
      a.name += letters[random.below(letters.size())];
    b.name = a.name;
    if (random.chance(50) && !b.name.empty())
      b.name[random.below(b.name.size())] = letters[random.below(letters.size())];
    if (random.chance(30)) b.host_name = host_label_from(b.name);
    EXPECT_EQ(same_name(host_name_of(a), host_name_of(b)), host_name_hash(a) == host_name_hash(b))
        << a.name << " | " << b.name;
  }
}

} // namespace snug::test
