#pragma once
// Facts of this PC. What the system does not tell is empty, never a guess (DECISIONS 32).

#include "core/net/prefix.h"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace snug {

struct MemoryFacts {
  std::optional<std::int64_t> installed_mib; // sum of the memory modules that the firmware lists
  std::optional<std::int64_t> usable_mib;    // what the system has after firmware and graphics took theirs
};

struct ProcessorFacts {
  std::optional<int> threads;          // switched on
  std::optional<int> cores;            // of them
  std::optional<int> efficiency_cores; // of them, where the system tells two kinds apart
  std::optional<bool> is_64_bit;
  // The system sees hardware virtualization. False: the processor lacks it, or the firmware hides it.
  std::optional<bool> virtualization;
  // The firmware's switch. True where the system could not see virtualization otherwise or already uses it;
  // no system tells "off" from "not there", so this is never false.
  std::optional<bool> firmware_switch;
  // A hypervisor runs below this system: the PC is a guest itself, or its own system occupies the
  // virtualization.
  std::optional<bool> under_hypervisor;
  std::optional<bool> second_level_translation; // only where virtualization is seen
  std::optional<bool> nested_virtualization;    // the setting that lets guests be hypervisors
};

enum class DriveKind : std::uint8_t { spinning, usb, flash, nvme };

// A mounted volume on a block device that can be written.
struct VolumeFacts {
  std::string mount_point; // raw bytes as the system gives them
  std::string device;      // name of the block device
  std::string file_system;
  std::optional<std::int64_t> size_mib;
  std::optional<std::int64_t> free_mib; // for ordinary users
  std::optional<DriveKind> kind;        // of all drives below it, where they agree
  friend bool operator==(const VolumeFacts&, const VolumeFacts&) = default;
};

enum class LinkMedium : std::uint8_t { wired, wireless };

// A network interface other than the loopback, virtual ones included: a lab must not collide with them
// either.
struct CardFacts {
  std::string name;
  std::optional<bool> physical;
  std::optional<bool> up;
  std::optional<LinkMedium> medium;
  std::optional<int> mtu;
  std::vector<AddressWithLength> addresses;
  std::vector<Prefix> subnets;   // of these addresses, without link-local ones; ordered, each once
  std::vector<Address> gateways; // next hops of default routes over this card
  friend bool operator==(const CardFacts&, const CardFacts&) = default;
};

struct PcFacts {
  MemoryFacts memory;
  ProcessorFacts processor;
  std::optional<std::vector<VolumeFacts>> volumes; // ordered by mount point
  std::optional<std::vector<CardFacts>> cards;     // ordered by name
};

struct VolumeSpace {
  std::uint64_t size_bytes = 0;
  std::uint64_t free_bytes = 0;
};
struct InterfaceAddress {
  std::string card;
  AddressWithLength address;
};

// Where the facts come from: the folder that holds the system's own trees, and two questions to the system.
// An empty root or question: unknown.
struct ProbeRoot {
  std::filesystem::path root;
  std::function<std::optional<VolumeSpace>(const std::string& mount_point)> space;
  std::function<std::optional<std::vector<InterfaceAddress>>()> addresses;
};
// This computer; all empty on systems that this program cannot ask yet.
ProbeRoot this_pc();

// Reads only. Files that are absent, damaged or huge make their facts unknown.
PcFacts probe(const ProbeRoot&);

} // namespace snug
