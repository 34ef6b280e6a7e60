#pragma once
// What changed between two labs, in the trade's words, from the primitives of the difference.

#include "core/edit/edit.h"

#include <vector>

namespace snug {

enum class ChangeKind : std::uint8_t { added, removed, changed };

struct Change {
  ChangeKind kind = ChangeKind::changed;
  AnyId place;
  std::string what;   // "machine tickets-2", "deck-a"
  std::string field;  // label of the field; empty for added and removed
  std::string before; // as a person reads it, names instead of ids
  std::string after;
};

// In the order of the document. Where only the order within a list changed nothing is said; where a
// machine was moved among its neighbours it is said in words, not in numbers. Bookkeeping of
// the program (identity, next id) is left out.
std::vector<Change> changes(const Lab& from, const Lab& to);
std::string changes_text(const std::vector<Change>&);
std::string changes_json(const std::vector<Change>&);

} // namespace snug
