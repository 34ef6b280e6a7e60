#pragma once
// Answers about reach for people and programs. An empty exercise is everything on.

#include "core/analyse/analyse.h"
#include "core/reach/what_if.h"
#include "core/report/table.h"

namespace snug {

// "tickets-1 reaches tickets-db at 172.22.40.42, …", then one line for each hop, there and back.
std::string reach_text(const Analysis&, ExerciseId, const ReachQuestion&, const ReachAnswer&);
// {"lab", "exercise", "from", "to", "service", "full_size", "verdict", "address", "message",
//  "hops": [{"node", "card", "decision", "address", "back"}]}; nodes and cards are {"id", "name"}.
std::string reach_json(const Analysis&, ExerciseId, const ReachQuestion&, const ReachAnswer&);
// Every ordered pair of systems that are on, and the outside as a target: from, to, verdict.
Table reach_table(const Analysis&, ExerciseId, const ReachQuestion& shape);
// What fails, one row each: kind, who, what, from whom.
Table what_if_table(const Analysis&, ExerciseId, std::span<const AnyId> off, const WhatIf&);
// Whether a promise is broken in the exercise, by a finding that is not accepted.
bool breaks_promise(const Analysis&, ExerciseId);

} // namespace snug
