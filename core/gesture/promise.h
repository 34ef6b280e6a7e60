#pragma once
// Promises, as edits.

#include "core/gesture/add.h"
#include "core/reach/reach.h"

namespace snug {

// A promise that the answer to a question stays so: reached, it must be; not reached, never. What is reached
// one way only or by chance must be reached. In `current`, where one is chosen. Refused for what no promise
// can speak of (the PC, routers of LANs, translators, packets of full size) and where it is promised already.
Result<Added> promise_that(const Lab&, const ReachQuestion&, Reached verdict, ExerciseId current);
// One to be changed: between the ends of the question where a promise can speak of them, else that every
// machine reaches the outside. Refused where that very question is promised.
Result<Added> add_promise(const Lab&, const ReachQuestion&, ExerciseId current);
Edit remove_promise(const Lab&, PromiseId);
// One field of promises. By icmp there is no port; a port makes icmp tcp. Refused where both ends would be
// one.
Result<Edit> change_promises(const Lab&, std::span<const AnyId>, const FieldInfo& field, const Value&);

} // namespace snug
