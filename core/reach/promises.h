#pragma once
// Whether promises are kept and needs are met in one exercise (DECISIONS 15, 16).

#include "core/reach/reach.h"

#include <map>

namespace snug {

// A pair that decides: for a broken promise or an unmet need the one that fails (or leaks), else the last
// one that was asked.
struct Judged {
  bool counts = false; // false: nobody it speaks of is on, or sends that way
  bool kept = true;
  ReachQuestion question;
  ReachAnswer answer;
  bool present = false; // of a promise: somebody at its first end is on, and there is another end
};

// A segment means what is sent from it or forwarded out of it: a machine that is on more segments counts
// only where its packets leave by this one. Outside is everything beyond the frame, the LANs' routers
// included. "Never" is broken by any packet that arrives, also where the answer gets lost.
Judged judge(Reach&, const Index&, const Promise&);
// Of everything on only where it names no exercise.
bool speaks_of(const Promise&, ExerciseId);

// What a machine uses: its own needs, and those of its role for services of which it has none.
std::vector<Need> needs_of(const Index&, std::uint32_t machine_place);
// Machines that offer a service (their roles included), by place: those a need may turn to. Each service is
// looked up once.
class Offerings {
 public:
  explicit Offerings(const Index& index) : index_(&index) {}
  const std::vector<std::uint32_t>& of(const std::string& service);

 private:
  const Index* index_;
  std::map<std::string, std::vector<std::uint32_t>> known_;
};
// Kept: one of the machines it may turn to is reached on a port on which it offers the service. Does not
// count where the machine is off or nobody offers the service. Names may come from a translator
// that relays them.
Judged judge(Reach&, const Index&, Offerings&, MachineId, const Need&);

} // namespace snug
