#pragma once
// Bands, the rows that machines stand in by choice, under the hand.

#include "core/edit/build.h"

#include <optional>
#include <span>

namespace snug {

struct Band {
  MachineId carrier; // none: the PC
  std::int32_t number = 0;
  friend bool operator==(const Band&, const Band&) = default;
};
// Of a carrier, from the top.
std::vector<std::int32_t> bands_of(const Lab&, MachineId carrier);
// In their order.
std::vector<MachineId> machines_of(const Lab&, Band);
// The band of which these are all the machines; nothing: they are no whole band, or there is no other.
std::optional<Band> whole_band(const Lab&, std::span<const AnyId>);

// Puts a band before another of its carrier (none: last). Bands are numbered from 0 afterwards. Empty when it
// stands there.
Edit move_band(const Lab&, Band, std::optional<std::int32_t> before);
Edit shift_band(const Lab&, Band, bool later); // by one; empty at the end
// Machines of one carrier into a band of their own, below the one that the first stands in. Empty when they
// are one.
Edit own_band(const Lab&, std::span<const MachineId>);

} // namespace snug
