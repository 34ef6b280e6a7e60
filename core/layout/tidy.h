#pragma once
// The order in which a picture is easiest to read.

#include "core/analyse/analyse.h"

#include <compare>

namespace snug {

// What makes a picture hard to follow; the first that differs decides.
struct Tidiness {
  std::int64_t crossings = 0; // of wires with rails
  std::int64_t stretches = 0; // of rails: a wide band has several rows, each with its own
  std::int64_t height = 0;    // pixels
  friend auto operator<=>(const Tidiness&, const Tidiness&) = default;
};
Tidiness tidiness(const Analysis&);

// Orders rails, and machines directly on the PC inside their band, so that fewer wires cross rails. Machines
// that somebody placed (pinned) keep their place. The best order of rails for up to 12 segments, a good one
// for more; among equal ones the nearest to what is there. Empty: nothing better was found.
Edit tidy(const Analysis&);

} // namespace snug
