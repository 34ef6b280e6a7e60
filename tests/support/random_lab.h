#pragma once
// Random labs and edits, the same for a seed everywhere. Built from the field tables, so that new fields are
// covered without a change here.

#include "core/edit/build.h"

#include <cstdint>

namespace snug::test {

// splitmix64: the same numbers on every machine, unlike the standard distributions.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}
  std::uint64_t next();
  // 0 … n-1; n > 0.
  std::size_t below(std::size_t n) { return static_cast<std::size_t>(next() % n); }
  std::int64_t between(std::int64_t least, std::int64_t most);
  bool chance(int percent) { return below(100) < static_cast<std::size_t>(percent); }

 private:
  std::uint64_t state_;
};

// Any value that check() accepts for the field; ids name elements of `lab`. Unset when no such element exists
// (rows with a reference that may not be missing are left out).
Value random_value(Random&, const Lab&, const FieldInfo&);
// A lab with up to `most` elements of each kind; every reference holds, carriers and bases are trees.
Lab random_lab(Random&, std::size_t most);
// An edit that apply() accepts: fields set, elements added, removed and moved.
Edit random_edit(Random&, const Lab&);

// A lab made like people make them: addresses within prefixes, guests in hypervisors, cards on segments, some
// mistakes.
Lab plausible_lab(Random&, std::size_t machines, std::size_t segments);

} // namespace snug::test
