#include "core/layout/content.h"

#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace snug::layout {
namespace {

const MachineText& machine(const Content& c, std::string_view name) {
  const auto found = std::find_if(c.machines.begin(), c.machines.end(),
                                  [&](const MachineText& m) { return m.name == name; });
  EXPECT_NE(found, c.machines.end()) << name;
  return *found;
}

std::vector<std::string> rails_of(const Content& c, const MachineText& m) {
  std::vector<std::string> out;
  for (const Plug& p : m.plugs) out.push_back(c.rails[p.rail].name + (p.hollow ? " hollow" : ""));
  return out;
}

// The ferry company of samples/skerry-ferries.snuglab.
class Ferries : public ::testing::Test {
 protected:
  Content content(const DrawOptions& options = {}) const { return content_of(analysis_, options); }
  Lab lab_ = test::sample("skerry-ferries");
  Analysis analysis_{lab_};
};

TEST_F(Ferries, RailsHaveLettersInTheirOrder) {
  const Content c = content();
  std::string letters;
  std::string names;
  for (const RailText& r : c.rails) {
    letters += r.letter;
    names += r.name + " ";
  }
  EXPECT_EQ(letters, "ABCDEF");
  EXPECT_EQ(names, "House LAN Steering Cargo Transfer Passengers Crew ");
  EXPECT_EQ(c.rails[0].ink, Ink::slate);
  EXPECT_EQ(c.rails[2].details, (std::vector<std::string>{"172.22.20.0/24 · isolated", "MTU 9000"}));
  EXPECT_EQ(c.rails[4].details.at(1), "DHCP by beacon");
  EXPECT_EQ(c.rails[5].details.at(1), "translator 172.22.50.1");
  EXPECT_EQ(c.rails[1].socket_text, "PC 172.22.10.254");
  EXPECT_FALSE(c.rails[2].socket);
}

TEST_F(Ferries, PinsRunFromTheLowestRailToTheHighest) {
  const Content c = content();
  EXPECT_EQ(rails_of(c, machine(c, "deck-a")),
            (std::vector<std::string>{"Crew hollow", "Passengers hollow", "Transfer", "Cargo", "Steering"}));
  EXPECT_EQ(rails_of(c, machine(c, "wheelhouse")), (std::vector<std::string>{"Steering", "House LAN"}));
}

TEST_F(Ferries, AddressesInFullOrTheLastPart) {
  const auto line = [](const Content& c) { return machine(c, "gangway").plugs.front().lines; };
  EXPECT_EQ(line(content()), (std::vector<std::string>{"172.22.50.3"}));
  DrawOptions options;
  options.full_addresses = options.inner_addresses = false;
  const Content c = content(options);
  EXPECT_EQ(line(c), (std::vector<std::string>{".3"}));
  EXPECT_TRUE(machine(c, "tickets-1").plugs.front().lines.empty());
}

TEST_F(Ferries, HypervisorsSayWhatFits) {
  const Content c = content();
  EXPECT_EQ(machine(c, "deck-a").room_text, "room for 2.8 GiB");
  EXPECT_EQ(machine(c, "deck-a").bar_text, "guests take 5.2 GiB of 8.0 GiB");
  EXPECT_EQ(c.ruler.state, "running 40.5 GiB of 42.0 GiB · headroom 1.5 GiB · tight");
  EXPECT_EQ(machine(c, "deck-a").guests.size(), 2U);
}

TEST_F(Ferries, InnerGuestsAreJoinedThroughTheirHypervisor) {
  const Content c = content();
  for (const Plug& p : machine(c, "tickets-db").plugs) EXPECT_TRUE(p.joined);
  Lab cut = lab_;
  for (Card& card : cut.cards) card.carries.clear();
  const Analysis analysis(cut);
  const Content d = content_of(analysis, {});
  for (const Plug& p : machine(d, "tickets-db").plugs) EXPECT_FALSE(p.joined);
}

TEST_F(Ferries, ExerciseTurnsMachinesOff) {
  const Exercise& exercise = lab_.exercises.front();
  DrawOptions options;
  options.exercise = exercise.id;
  const Content c = content(options);
  EXPECT_EQ(c.exercise, exercise.name);
  for (const MachineText& m : c.machines) {
    const bool on = std::find(exercise.on.begin(), exercise.on.end(), m.id) != exercise.on.end();
    EXPECT_EQ(m.on, on) << m.name;
    EXPECT_EQ(m.takes > 0, on) << m.name;
  }
}

TEST_F(Ferries, AcceptedFindingsHaveNoBadge) {
  const auto marked = [](const Content& c) {
    return std::count_if(c.machines.begin(), c.machines.end(),
                         [](const MachineText& m) { return m.mark.any; }) +
           std::count_if(c.rails.begin(), c.rails.end(), [](const RailText& r) { return r.mark.any; }) +
           c.pc_mark.any;
  };
  EXPECT_GT(marked(content()), 0);
  Lab accepted = lab_;
  for (const Finding& f : analysis_.findings()) {
    Accepted a;
    a.id.number = accepted.facts.next_id++;
    a.rule = std::string(f.rule->id);
    a.places = f.places;
    a.reason = "known";
    accepted.accepted.push_back(a);
  }
  const Analysis analysis(accepted);
  EXPECT_EQ(marked(content_of(analysis, {})), 0);
  DrawOptions options;
  options.show_findings = false;
  EXPECT_EQ(marked(content(options)), 0);
}

TEST(Content, SegmentsFromTheSeventhOnDifferByPattern) {
  Lab lab;
  for (std::uint32_t i = 1; i <= 36; ++i) {
    Segment s;
    s.id.number = i;
    lab.segments.push_back(s);
  }
  lab.facts.next_id = 37;
  const Analysis analysis(lab);
  std::set<std::pair<Ink, Dash>> looks;
  std::set<std::string> letters;
  for (const RailText& r : content_of(analysis, {}).rails) {
    looks.insert({r.ink, r.dash});
    letters.insert(r.letter);
  }
  EXPECT_EQ(looks.size(), 36U);
  EXPECT_EQ(letters.size(), 36U);
  EXPECT_TRUE(letters.count("AJ")) << "the 36th after A … Z, AA";
}

TEST(Content, NamesAreCleaned) {
  Lab lab;
  Machine m;
  m.id.number = 1;
  m.name = "bea\u202econ\n1";
  lab.machines.push_back(m);
  lab.facts.next_id = 2;
  const Analysis analysis(lab);
  EXPECT_EQ(content_of(analysis, {}).machines[0].name, "beacon 1");
}

} // namespace
} // namespace snug::layout
