#pragma once
// Smaller machines, where memory does not suffice.

#include "core/findings/rule.h"

namespace snug {

// Whether roles of the lab have leaner sizes than those it uses.
bool has_leaner_sizes(const Lab&);
// Makes the machines that are larger than that as small as their roles allow, where what the finding is about
// (the PC or a hypervisor) then has enough: the least of the lab's sizes, else the usual of the lean ones,
// else their least. A hypervisor gets what its own part and its guests take then. Not tried in labs
// of thousands of machines.
std::optional<Fix> shrink(const Context&, const Finding&);

} // namespace snug
