#pragma once
// Machines by clipboard: from one lab to another, or within one.

#include "core/gesture/add.h"

#include <span>
#include <string>

namespace snug {

// Media type of the text below.
inline constexpr std::string_view kClipType = "application/x-snuglab-machines+json";

// Machines with the guests inside them, their cards, disks and shares, and the roles, segments and LANs that
// these name, as JSON text. Refuses when no machine is among `ids`.
Result<std::string> copy_machines(const Lab&, std::span<const AnyId> ids);
bool is_copied_machines(std::string_view text);
// What copy_machines() wrote, as a lab. Refuses other text, with line and column where it is damaged.
Result<Lab> read_copied(std::string_view text);
// Whether this machine of this lab is among what was copied.
bool copies_machine(std::string_view text, const Lab&, MachineId);

struct Pasted {
  Edit edit;
  std::vector<AnyId> made;      // the outermost machines, to be selected
  std::vector<Message> changed; // what could not stay as it was, a sentence each
};
// Puts them into a lab with ids of their own. Names that are there get a number; a segment of the same name
// is used, others come along; typed addresses stay where nobody holds them, else the next free one is
// suggested; MACs follow the new identity; what named machines, disks or stores that did not come along is
// left out. Outermost machines stand at the end of `carrier`'s first band (none: the PC) and are on in
// `current`. Refuses text that copy_machines did not make, with line and column where it is damaged.
Result<Pasted> paste_machines(const Lab&, std::string_view text, MachineId carrier, ExerciseId current = {});

namespace detail {
// What copy_machines() writes and paste_machines() reads, as a lab. At least one machine is among `ids`.
Lab copied_lab(const Lab&, std::span<const AnyId> ids);
Result<Pasted> paste_lab(const Lab&, const Lab& copied, MachineId carrier, ExerciseId current);
} // namespace detail

} // namespace snug
