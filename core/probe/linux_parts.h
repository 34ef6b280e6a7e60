#pragma once
// The parts of the probe that know the trees of a Linux kernel. For core/probe only.

#include "core/probe/facts.h"
#include "core/probe/system_tree.h"

namespace snug::system_facts {

MemoryFacts linux_memory(const SystemTree&);
ProcessorFacts linux_processor(const SystemTree&);
std::optional<std::vector<VolumeFacts>> linux_volumes(const SystemTree&, const ProbeRoot&);
std::optional<DriveKind> linux_drive_kind(const SystemTree&, const std::string& block_device);
std::optional<std::vector<CardFacts>> linux_cards(const SystemTree&, const ProbeRoot&);
// Next hops of the default routes over `card`, IPv4 before IPv6, from the tables as the kernel prints them.
std::vector<Address> linux_gateways(const SystemTree&, const std::string& card);

} // namespace snug::system_facts
