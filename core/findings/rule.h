#pragma once
// The catalogue of rules: one row each; documentation and `--explain` are made from it.

#include "core/findings/context.h"

namespace snug {

struct Rule {
  std::string_view id; // stable, kebab-case: "memory-over"
  Topic topic;
  Severity severity;       // the usual one
  std::string_view title;  // one line for the list of rules
  std::string_view source; // a standard, or "common practice, no published source"
  // Appends the rule's findings. Must set message, reason, places, severity; `rule` is set by the caller.
  // `out` holds the findings of the rules before it in the catalogue.
  void (*check)(const Context&, std::vector<Finding>& out);
  // The repair of one of its findings; null where none is deterministic.
  std::optional<Fix> (*fix)(const Context&, const Finding&) = nullptr;
  // Another repair where there is a choice, as of two places that can be changed; `fix` is the better guess.
  std::optional<Fix> (*other_fix)(const Context&, const Finding&) = nullptr;
};

// Every rule, topics together, in the order of the panel.
std::span<const Rule> rules();
const Rule* find_rule(std::string_view id);

// The rules of each topic; one file each.
std::span<const Rule> memory_rules();
std::span<const Rule> size_rules(); // of memory, by the roles
std::span<const Rule> processor_rules();
std::span<const Rule> virtualization_rules();
std::span<const Rule> disk_rules();
std::span<const Rule> copy_rules();
std::span<const Rule> share_rules();
std::span<const Rule> initiator_rules();
std::span<const Rule> network_rules();
std::span<const Rule> address_rules();
std::span<const Rule> name_rules();
std::span<const Rule> time_rules();
std::span<const Rule> reach_rules();
std::span<const Rule> store_reach_rules(); // of reach, by who opens disks on shares
std::span<const Rule> limit_rules();
std::span<const Rule> plan_rules(); // the last: it looks at what the others found

} // namespace snug
