#pragma once
// Changes of a lab as values (DECISIONS 4): lists of primitives with exact inverses.

#include "core/model/store.h"

#include <variant>

namespace snug {

// Set one field of one element or singleton.
struct SetField {
  AnyId id;
  const FieldInfo* field = nullptr; // a row of info_of(id.kind)
  Value before;
  Value after;
  friend bool operator==(const SetField&, const SetField&) = default;
};
// Set what this version does not know of an element (only differences between documents hold these).
struct SetUnknown {
  AnyId id;
  Unknown before;
  Unknown after;
  friend bool operator==(const SetUnknown&, const SetUnknown&) = default;
};
struct InsertElement {
  std::size_t place = 0; // in its kind's list, 0 … size
  std::shared_ptr<const AnyElement> element;
  friend bool operator==(const InsertElement& a, const InsertElement& b) {
    return a.place == b.place && *a.element == *b.element;
  }
};
struct RemoveElement {
  std::size_t place = 0;
  std::shared_ptr<const AnyElement> element; // as it is when removed
  friend bool operator==(const RemoveElement& a, const RemoveElement& b) {
    return a.place == b.place && *a.element == *b.element;
  }
};
using Primitive = std::variant<SetField, SetUnknown, InsertElement, RemoveElement>;

struct Edit {
  Message label; // "Move tickets-1 to deck-b": what undo says
  std::vector<Primitive> steps;
  bool empty() const { return steps.empty(); }
};

// The edit that takes back `e` after it was applied.
Edit inverse(const Edit& e);

// Applies all steps or none. Refuses, with the lab unchanged, when a step does not fit the lab (an element
// that is not there, a field that is not `before`), a value is out of range, a reference would dangle, a
// machine would run inside itself, a disk would be its own base, an id would stand twice, or a list would be
// over its cap. Returns whether anything changed.
Result<bool> apply(Lab&, const Edit&);

// Ids of everything that `e` touches, each once, in order; what is selected after undo and redo.
std::vector<AnyId> touched(const Edit& e);

// One edit that does `first` and then `second`. Consecutive changes of one field become one; a field that
// ends where it began and an element that is inserted and removed again disappear.
Edit merged(const Edit& first, const Edit& second);

// What turns `from` into `to`, matching elements by id; empty when they are equal.
// apply(from, difference(from, to)) gives `to`.
Edit difference(const Lab& from, const Lab& to);

} // namespace snug
