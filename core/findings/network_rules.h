#pragma once
// The parts of the topics networks, addresses, names and time; each file has one.

#include "core/findings/rule.h"

namespace snug {

// Topic::networks
std::span<const Rule> segment_rules();
std::span<const Rule> bridge_rules();
std::span<const Rule> carry_rules();
std::span<const Rule> frame_rules(); // MTU and VLAN
// Topic::addresses
std::span<const Rule> address_conflict_rules();
std::span<const Rule> prefix_rules();
std::span<const Rule> gateway_rules();
std::span<const Rule> route_rules();
std::span<const Rule> dhcp_rules();
std::span<const Rule> dhcp_range_rules();
std::span<const Rule> mac_rules();
std::span<const Rule> card_address_rules();

// Topic::names
std::span<const Rule> published_rules();

// All of several parts, in their order.
std::vector<Rule> joined(std::initializer_list<std::span<const Rule>> parts);

} // namespace snug
