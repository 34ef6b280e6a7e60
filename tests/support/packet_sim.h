#pragma once
// A slow reference for core/reach: systems exchange frames over switches, one event after the other, until
// nothing moves any more. Written from MODEL, DECISIONS and the RFCs; uses nothing of core/reach but the
// questions and verdicts. Where chance decides (who of several answers first, which DHCP server), every case
// is played.

#include "core/reach/reach.h"
#include "tests/support/packet_world.h"

#include <deque>

namespace snug::test {

class PacketSim {
 public:
  PacketSim(const Lab&, ExerciseId);
  // More cases than it plays; nothing can be said then.
  static constexpr std::size_t kMostCases = 64, kMostWorlds = 16;
  // The verdicts of all cases, without doubles; never `unreliable`. `target` of the question must be set.
  // Empty: too many cases, or no such node.
  std::vector<Reached> ask(const ReachQuestion&);
  struct Subject {
    AnyId id;
    std::vector<Address> addresses;
  };
  // Everybody who can send, as the first choice of DHCP servers has it.
  std::vector<Subject> subjects();

 private:
  class Run;
  // Counts through all choices.
  class Odometer {
   public:
    std::size_t choose(std::size_t n);
    bool next();
    void rewind() { at_ = 0; }

   private:
    struct Wheel {
      std::size_t now, count;
    };
    std::vector<Wheel> wheels_;
    std::size_t at_ = 0;
  };
  std::vector<sim::World> worlds_; // one for each choice of DHCP servers
  bool all_worlds_ = true;
};

} // namespace snug::test
