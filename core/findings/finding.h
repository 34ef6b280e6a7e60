#pragma once
// A finding is data (STYLE 3): rule and places are its identity.

#include "core/edit/edit.h"

#include <bitset>

namespace snug {

enum class Severity : std::uint8_t { error, caution, note };

// Topics group the rules in the panel and in the documentation.
enum class Topic : std::uint8_t { memory, processors, disk, networks, addresses, names, time, reach, plan };

// Which exercises a finding holds in: bit i is lab.exercises[i]; `everything_on` is the implied one. Findings
// that do not depend on what is on have all bits clear and `always` set.
struct Occasions {
  bool always = true;
  bool everything_on = false;
  std::bitset<256> exercises;
  friend bool operator==(const Occasions&, const Occasions&) = default;
};

struct Rule;

struct Finding {
  const Rule* rule = nullptr;
  Severity severity = Severity::note; // the rule's, or as it says
  Message message;                    // what is wrong, with names and values
  Message reason;                     // why it matters, what to do
  std::vector<AnyId> places;          // what it concerns, the most important first; part of the identity
  Occasions when;
  const Accepted* accepted = nullptr; // points into the analysed lab
};

struct Fix {
  Message label; // on the button: "Use .32 on deck-b"
  Edit edit;
};

} // namespace snug
