#pragma once
// The physical computer, what it is attached to, and where it is taken.

#include "core/model/basics.h"

namespace snug {

// Quantities of memory are MiB. Empty optionals are "as usual": see budget/defaults.
struct Pc {
  static constexpr Kind kind = Kind::pc;
  Unknown unknown;
  std::string name = "this PC";
  std::int64_t installed = 16384;
  std::optional<std::int64_t> usable;    // less than installed where graphics takes a part
  std::optional<std::int64_t> reserved;  // for the PC's own system and programs
  std::optional<std::int64_t> keep_free; // below this, headroom is tight
  std::int32_t cores = 4;
  std::int32_t threads = 8;
  std::int32_t efficiency_cores = 0; // part of `cores`
  Known is_64_bit = Known::unknown;
  Known firmware_virtualization = Known::unknown; // the switch in the firmware
  Known virtualization_occupied = Known::unknown; // the PC's own system runs a hypervisor already
  Known second_level_translation = Known::unknown;
  Known nested_virtualization = Known::unknown;
  Known resolves_lab_names = Known::unknown;
  bool forwards = false; // the PC forwards between its sockets
  PlaceId place;         // where it stands now
  // Limits of the virtualization program, as far as the person entered them; empty: none known.
  std::optional<std::int32_t> max_cards_per_guest;
  std::optional<std::int32_t> max_segments;
  std::optional<std::int32_t> max_nat_segments;
  std::optional<std::int64_t> max_guest_memory; // for all guests together
  Known typed_macs_allowed = Known::unknown;
  std::string notes;
  friend bool operator==(const Pc&, const Pc&) = default;
};

// A volume of the PC.
struct Volume : Element<Kind::volume> {
  std::string name;
  VolumeKind type = VolumeKind::unknown;
  std::int64_t size = 0; // MiB
  std::int64_t free = 0; // MiB, before the lab is built
  std::int32_t keep_free_percent = 10;
  friend bool operator==(const Volume&, const Volume&) = default;
};

// A physical LAN that the PC has a card on.
struct Lan : Element<Kind::lan> {
  std::string name;
  Medium medium = Medium::unknown;
  std::optional<Prefix> prefix4;
  std::optional<Prefix> prefix6;
  std::string router; // name of the box that is its gateway
  std::optional<Address> gateway4;
  std::optional<Address> gateway6;
  Known has_dhcp = Known::unknown;
  std::vector<RangeRow> pool; // what its DHCP gives out, where known
  std::string notes;
  friend bool operator==(const Lan&, const Lan&) = default;
};

// A network world the PC is taken to.
struct Place : Element<Kind::place> {
  std::string name;
  Medium medium = Medium::unknown;
  std::vector<Prefix> prefixes;
  std::string notes;
  friend bool operator==(const Place&, const Place&) = default;
};

} // namespace snug
