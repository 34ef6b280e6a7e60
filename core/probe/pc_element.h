#pragma once
// From what the probe found to the PC of a lab.

#include "core/model/lab.h"
#include "core/probe/facts.h"

namespace snug {

// Sets what is known; leaves the rest as it is. Adds a volume for every volume found, and a physical LAN for
// every physical card with a subnet. Replaces volumes and LANs only where the lab has none.
void put_facts(Lab& lab, const PcFacts& facts);

} // namespace snug
