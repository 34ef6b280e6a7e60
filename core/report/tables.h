#pragma once
// The tables of a lab: what `snuglab-cli table`, the window and the hand-outs show.

#include "core/analyse/analyse.h"
#include "core/report/table.h"

namespace snug {

// Every address somebody holds or will get: cards in the order of machines, then PC sockets, translators and
// routers of physical LANs. A card that carries guests' traffic only has a row without an address. Columns:
// machine, host name (with the lab's domain where it is published), role, runs in, card, segment, VLAN,
// address, prefix length, mask, how it is set, gateway, name server (or why none), MAC, MTU, findings (words
// of the worst finding about that card).
Table address_table(const Analysis&);
// What is wrong with an address in a row of that table, or with there being none: the gravest finding that is
// not accepted, no note. `place` is the row's, `address` what its cell says.
struct AddressFault {
  Severity severity = Severity::error;
  Message sentence;
};
std::optional<AddressFault> address_fault(const Analysis&, AnyId place, std::string_view address);
// Prefixes, gateways, DHCP ranges and free addresses of every segment.
Table segment_table(const Analysis&);
// From where to where DHCP gives out on a segment (its place): "a to b, c to d"; empty where it does not.
std::string range_text(const Analysis&, std::uint32_t segment);
// Memory, processors and disks of every machine, with what it takes from its carrier.
Table machine_table(const Analysis&);
// For every exercise the memory of the PC, the verdict on everything (PC, hypervisors, stores) and where it
// comes from; everything on first.
Table exercise_table(const Analysis&);

} // namespace snug
