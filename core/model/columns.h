#pragma once
// What sums and rules look at for every machine and disk, close together in memory.

#include "core/model/lab.h"

namespace snug {

inline constexpr std::uint32_t kNowhere = 0xffff'ffff;

struct MachineColumn {
  std::int64_t memory = 0;          // MiB
  std::int64_t footprint = 0;       // as typed, else its role's, else the rules'; MiB
  std::uint32_t carrier = kNowhere; // place; kNowhere: the PC
  std::uint32_t role = kNowhere;    // place
  std::int32_t processors = 0;
  std::int32_t depth = 0; // 0: directly on the PC
  std::uint8_t expected_percent = 100;
  bool hypervisor = false; // carries guests, or its role says that it is a hypervisor
  bool has_guests = false;
  bool exposes_virtualization = false;
  bool is_64_bit = true;
  bool memory_file = false;
};

struct DiskColumn {
  std::int64_t size = 0;                // MiB
  AnyId store;                          // kind none when the lab does not have it
  std::uint32_t store_place = kNowhere; // in its list
  std::uint32_t machine = kNowhere;     // place
  std::int32_t expected_percent = 0;
  Provisioning provisioning = Provisioning::thin;
  bool has_base = false;
};

// What occurs among the disks of a lab, so that a rule need not look for what is not there.
struct DiskKinds {
  bool copies = false;   // copy-on-write disks
  bool bases = false;    // disks with a base
  bool homeless = false; // disks without a store that the lab has
};

// Hashes of each machine's names, for this run of the program, by place. Equal names have equal ones.
struct NameHashes {
  std::vector<std::uint64_t> own;  // of Machine::name; 0: empty
  std::vector<std::uint64_t> host; // of the host name in lower case (RFC 4343), never 0

  void reserve(std::size_t machines);
  void add(const Machine&);
};

} // namespace snug
