#pragma once
// A machine's power mark under the hand.

#include "core/edit/build.h"

#include <vector>

namespace snug {

struct Switched {
  Edit edit;
  bool on = false;              // it is on afterwards
  std::vector<MachineId> along; // who is switched with it: its carriers when on, its guests when off
};
// Turns a machine over in an exercise, see set_power(). Refuses without one, naming one to choose.
Result<Switched> switch_over(const Lab&, ExerciseId, MachineId);
// Whether the exercise has it on; everything is on without one.
bool is_on(const Lab&, ExerciseId, MachineId);

// "goes on in Move a guest", then, where somebody is switched along, who and why.
std::vector<Message> says(const Lab&, ExerciseId, MachineId, const Switched&);
// The same afterwards, in a sentence; empty when nobody went along.
Message said(const Lab&, ExerciseId, MachineId, const Switched&);

} // namespace snug
