#pragma once
// The answer to a question about reach as one sentence that names what to change.

#include "core/reach/reach.h"

namespace snug {

// "deck-a", "the PC", "the translator of Crew", "house router", "the outside", "every machine".
Message node_called(const Lab&, AnyId node);
std::string reach_name(const Lab&, AnyId node);
// The same for subjects of promises: "Crew", "every machine".
std::string subject_name(const Lab&, AnyId);
Message explain(const Index&, const Reach&, const ReachQuestion&, const ReachAnswer&);

} // namespace snug
