#pragma once
// Sentences about judged promises: what is broken, and why.

#include "core/reach/promises.h"

namespace snug {

// Systems that a packet passes on its way there, both ends included: "tickets-1", "gangway", "the outside".
std::vector<std::string> way_there(const Index&, const Judged&);
// As subject_name, without searching the lab for machines.
std::string subject_name(const Index&, AnyId);
// "deck-a does not reach hold on tcp 3260, as promised"; of a broken one.
Message broken_message(const Index&, const Promise&, const Judged&);
// Why one is not judged: who is off, or plugged in nowhere, or sends another way. `reach` is of the exercise
// in question.
Message not_judged_reason(const Index&, const Reach&, const Promise&);
// What to change, or which way leaks.
Message broken_reason(const Index&, const Reach&, const Promise&, const Judged&);

} // namespace snug
