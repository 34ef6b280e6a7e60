#include "core/probe/facts.h"

#include "core/probe/linux_parts.h"

namespace snug {

PcFacts probe(const ProbeRoot& from) {
  if (from.root.empty()) return {};
  const system_facts::SystemTree tree(from.root);
  PcFacts facts;
  facts.memory = system_facts::linux_memory(tree);
  facts.processor = system_facts::linux_processor(tree);
  facts.volumes = system_facts::linux_volumes(tree, from);
  facts.cards = system_facts::linux_cards(tree, from);
  return facts;
}

#ifndef __linux__
ProbeRoot this_pc() { return {}; }
#endif

} // namespace snug
