#pragma once
// The promises of a lab and how they are kept, as a screen or a document shows them.

#include "core/analyse/analyse.h"

namespace snug {

enum class Kept : std::uint8_t { broken, kept, not_judged };

struct PromiseLine {
  PromiseId id;
  Message says;                         // "Cargo never reaches the outside"
  Kept now = Kept::not_judged;          // in the exercise shown
  Message why;                          // of `now`: which way leaks, what to change, why nothing arrives
  std::optional<ReachQuestion> decides; // the pair that decides it there; none: not judged
  std::vector<Kept> occasions;          // everything on, then the exercises in the lab's order
  const Finding* finding = nullptr;     // points into the analysis
};

// Those that are broken in the exercise shown first, else in the lab's order.
std::vector<PromiseLine> promise_lines(const Analysis&, ExerciseId shown);
// "broken in Hands on the wheel; kept in everything on and Names and logins"; one state alone: "kept in every
// exercise".
Message occasions_text(const Lab&, const PromiseLine&);

} // namespace snug
