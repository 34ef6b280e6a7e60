#include "tests/support/packet_sim.h"

#include "tests/support/packet_run.h"

#include <algorithm>

namespace snug::test {

std::size_t PacketSim::Odometer::choose(std::size_t n) {
  if (n < 2) return 0;
  if (at_ == wheels_.size()) wheels_.push_back({0, n});
  return wheels_[at_++].now;
}

bool PacketSim::Odometer::next() {
  while (!wheels_.empty() && wheels_.back().now + 1 == wheels_.back().count) wheels_.pop_back();
  if (wheels_.empty()) return false;
  ++wheels_.back().now;
  return true;
}

PacketSim::PacketSim(const Lab& lab, ExerciseId exercise) {
  Odometer chance;
  do {
    chance.rewind();
    all_worlds_ = worlds_.size() < kMostWorlds;
    if (all_worlds_) worlds_.emplace_back(lab, exercise, [&](std::size_t n) { return chance.choose(n); });
  } while (all_worlds_ && chance.next());
}

std::vector<PacketSim::Subject> PacketSim::subjects() {
  std::vector<Subject> out;
  const sim::World& w = worlds_.front();
  for (const sim::Host& h : w.hosts) {
    Subject& s = out.emplace_back();
    s.id = h.id;
    for (unsigned c = h.first_card; c < h.end_card; ++c)
      for (const sim::Held& held : w.cards[c].addresses) s.addresses.push_back(held.address);
  }
  return out;
}

std::vector<Reached> PacketSim::ask(const ReachQuestion& q) {
  std::vector<Reached> out;
  if (!all_worlds_) return out;
  std::size_t cases = 0;
  for (sim::World& w : worlds_) {
    Odometer chance;
    do {
      if (++cases > kMostCases) return {};
      chance.rewind();
      const Reached r = Run(w, chance, q).play();
      if (std::find(out.begin(), out.end(), r) == out.end()) out.push_back(r);
    } while (chance.next());
  }
  return out;
}

} // namespace snug::test
