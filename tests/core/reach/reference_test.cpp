// Every single answer against systems that exchange frames (tests/support/packet_sim.h).

#include "tests/support/network_lab.h"
#include "tests/support/packet_sim.h"
#include "tests/support/scale.h"

#include <algorithm>
#include <cstdlib>
#include <gtest/gtest.h>
#include <iostream>

namespace snug::test {
namespace {

struct Counts {
  std::size_t pairs = 0, too_many = 0;
  std::size_t of[4] = {0, 0, 0, 0}; // by verdict
};

std::string told(const ReachAnswer& a) {
  std::string out(word(a.verdict));
  for (const ReachStep& s : a.steps)
    out += "\n    " + to_text(s.node) + " " + to_text(s.card) + " " + std::string(word(s.what)) + " " +
           to_text(s.address) + (s.back ? " back" : "");
  return out;
}

bool agree(Reached said, const std::vector<Reached>& played) {
  const bool reaches = std::find(played.begin(), played.end(), Reached::reaches) != played.end();
  if (reaches && played.size() > 1) return said == Reached::unreliable;
  return std::find(played.begin(), played.end(), said) != played.end();
}

ReachQuestion shape_of(int lab) {
  constexpr std::int32_t kSizes[4] = {1400, 1500, 1504, 8028};
  ReachQuestion q;
  switch (lab % 8) {
  case 1:
    q.full_size = true;
    break;
  case 2:
    q.transport = Transport::tcp;
    q.full_size = true;
    break;
  case 3:
    q.size = kSizes[lab / 8 % 4];
    break;
  case 4:
    q.size = kSizes[lab / 8 % 4];
    q.keep_whole = true;
    break;
  case 5:
    q.transport = Transport::udp;
    break;
  default:
    break;
  }
  return q;
}

void compare(const Lab& lab, ExerciseId exercise, ReachQuestion q, Counts& n) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  Reach reach(index, addresses, exercise);
  PacketSim sim(lab, exercise);
  const auto subjects = sim.subjects();
  for (const PacketSim::Subject& from : subjects)
    for (const PacketSim::Subject& to : subjects)
      for (const Address& target : to.addresses) {
        q.from = from.id;
        q.to = to.id;
        q.target = target;
        const std::vector<Reached> played = sim.ask(q);
        n.too_many += played.empty() ? 1 : 0;
        if (played.empty()) continue;
        const Reached said = reach.verdict(q);
        ++n.pairs;
        ++n.of[static_cast<std::size_t>(said)];
        if (agree(said, played)) continue;
        std::string all;
        for (const Reached r : played) all += std::string(word(r)) + "; ";
        ADD_FAILURE() << to_text(from.id) << " to " << to_text(target) << " of " << to_text(to.id)
                      << ": frame by frame: " << all << "the engine: " << told(reach.ask(q));
        return;
      }
}

TEST(ReachReference, EveryAnswerIsWhatFramesDoInRandomLabs) {
  const char* one = std::getenv("SNUGLAB_REFERENCE_LAB");
  const int first = one ? std::atoi(one) : 0, end = one ? first + 1 : scaled(100'000);
  Counts n;
  int failed = 0;
  for (int i = first; i < end && failed < 5; ++i) {
    SCOPED_TRACE(i);
    Random r(static_cast<std::uint64_t>(i));
    constexpr NetworkSize kSizes[4] = {{8, 2}, {6, 1}, {7, 3}, {10, 4}};
    const Lab lab = network_lab(r, kSizes[r.below(4)]);
    const bool before = testing::Test::HasFailure();
    compare(lab, i % 2 == 0 ? ExerciseId{} : lab.exercises.front().id, shape_of(i), n);
    failed += !before && testing::Test::HasFailure() ? 1 : 0;
  }
  std::cout << n.pairs << " answers: " << n.of[0] << " reach, " << n.of[1] << " one way, " << n.of[2]
            << " unreliable, " << n.of[3] << " not; " << n.too_many << " with too many cases\n";
  EXPECT_LT(n.too_many * 50, n.pairs);
  for (const std::size_t of : n.of) EXPECT_GT(one ? 1U : of, 0U);
}

} // namespace
} // namespace snug::test
