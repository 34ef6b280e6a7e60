#pragma once
// Names of machines on the network.

#include "core/model/lab.h"

#include <cstdint>
#include <string>

namespace snug {

// The host name: as typed, else made from the name (lower case, hyphens).
std::string host_name_of(const Machine&);
// A hash of it in lower case, for this run of the program; equal names have equal hashes (RFC 4343).
std::uint64_t host_name_hash(const Machine&);
// Host name and the lab's domain, without a final dot; a host name that holds a dot already is whole.
std::string full_name_of(const Lab&, const Machine&);

} // namespace snug
