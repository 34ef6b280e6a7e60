#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

namespace snug::test {

namespace {

using Ids = std::vector<AnyId>;
using enum Severity;

void take_time(World& w, MachineId m, MachineId from) {
  Need n;
  n.service = "time";
  n.from = from;
  w.machine(m).needs.push_back(n);
}

void offer_time(World& w, MachineId m) {
  Offer o;
  o.service = "time";
  w.machine(m).offers.push_back(o);
}

const std::vector<RuleCase> kCases{
    {"time-two-sources", caution, true,
     [](World& w) {
       take_time(w, w.desk, w.pilot);
       w.machine(w.desk).carrier_time = true;
       return Ids{w.desk};
     }},
    {"time-loop", error, false,
     [](World& w) {
       for (const MachineId m : {w.router, w.rack, w.desk}) offer_time(w, m);
       take_time(w, w.router, w.desk);
       take_time(w, w.rack, w.router);
       take_time(w, w.desk, w.rack);
       take_time(w, w.guest, w.rack); // hangs on the loop, is no part of it
       return Ids{w.router, w.rack, w.desk};
     }},
    {"time-loop", error, false,
     [](World& w) {
       take_time(w, w.pilot, w.pilot);
       return Ids{w.pilot};
     }},
    {"time-not-offered", caution, true,
     [](World& w) {
       take_time(w, w.desk, w.pilot);
       take_time(w, w.guest, w.desk);
       return Ids{w.guest, w.desk};
     }},
    {"time-no-source", caution, false,
     [](World& w) {
       w.machine(w.pilot).offers.clear();
       return Ids{AnyId{Kind::lab, 0}};
     }},
    {"time-roots", caution, false,
     [](World& w) {
       offer_time(w, w.router);
       return Ids{w.pilot, w.router};
     }},
};

} // namespace

TEST(TimeRules, EachFiresAndItsFixHelps) {
  for (const RuleCase& c : kCases) check_case(c);
}

TEST(TimeRules, TreeIsFine) {
  World w;
  offer_time(w, w.router);
  take_time(w, w.router, w.pilot);
  take_time(w, w.desk, w.router);
  for (const char* rule : {"time-loop", "time-roots", "time-not-offered", "time-two-sources"})
    EXPECT_TRUE(places_of(w.lab, rule).empty()) << rule;
}

} // namespace snug::test
