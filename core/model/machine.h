#pragma once
// Machines, their cards, disks and shares, and the roles they are made from.

#include "core/model/basics.h"

namespace snug {

// What a machine is for. A template in the catalogue, a copy in a lab that uses it (DECISIONS 11). Memory in
// MiB. All figures are common practice, no published source, unless `source` says otherwise.
struct Role : Element<Kind::role> {
  std::string key;   // "directory-server", stable across languages
  std::string title; // "Directory server"
  bool is_hypervisor = false;
  std::int64_t lean_refused_below = 0; // what an installer refuses; 0: not known
  std::int64_t lean_least = 512;
  std::int64_t lean_usual = 1024;
  std::int64_t current_refused_below = 0;
  std::int64_t current_least = 512;
  std::int64_t current_usual = 1024;
  std::int64_t lean_footprint = 0; // a hypervisor's own part
  std::int64_t current_footprint = 0;
  std::int32_t processors = 1;
  std::int64_t disk = 8192;
  std::int32_t install_seconds = 0;
  std::int32_t ready_seconds = 0;
  Known answers_ping = Known::unknown;
  bool needs_reverse_name = false; // its installer wants a forward and a reverse record
  std::vector<Offer> offers;
  std::vector<Need> needs;
  std::string source;
  friend bool operator==(const Role&, const Role&) = default;
};

struct Route : RowBase {
  Prefix to; // 0.0.0.0/0, ::/0: default
  std::optional<Address> via;
  CardId card;
  std::int32_t metric = 0;
  bool on_link = false;
  friend bool operator==(const Route&, const Route&) = default;
};

// What every analysis reads stands first.
struct Machine : Element<Kind::machine> {
  RoleId role;
  MachineId carrier;          // none: the PC
  std::int64_t memory = 1024; // MiB
  std::int32_t processors = 1;
  std::int32_t expected_percent = 100; // of its memory; a hypervisor's is derived
  bool expose_virtualization = false;
  bool is_64_bit = true;
  bool memory_file = false;  // keeps a file of its memory's size on the store of its first disk while running
  bool carrier_time = false; // takes the time from its carrier
  bool pinned = false;
  ReverseFilter reverse_filter = ReverseFilter::off;
  std::string name;
  std::string host_name; // empty: made from the name (see model/names.h)
  std::vector<Route> routes;
  std::vector<Offer> offers;                 // beside its role's
  std::vector<Need> needs;                   // beside its role's
  std::optional<std::int64_t> footprint;     // a hypervisor's own part; empty: its role's
  std::optional<std::int32_t> ready_seconds; // empty: its role's
  std::int32_t band = 0;
  std::int32_t order = 0;
  std::string initiator_name; // iSCSI (RFC 3720 3.2.6)
  std::string notes;
  friend bool operator==(const Machine&, const Machine&) = default;
};

struct CardAddress : RowBase {
  AddressKind kind = AddressKind::typed;
  std::optional<Address> address;     // of typed and suggested ones
  std::optional<std::int32_t> length; // empty: the segment's
  friend bool operator==(const CardAddress&, const CardAddress&) = default;
};

// What every analysis reads stands first: one pass over all cards is part of each.
struct Card : Element<Kind::card> {
  MachineId machine;
  SegmentId segment; // none: not plugged, or a trunk only
  std::vector<CardAddress> addresses;
  bool connected = true;
  bool own_mac_only = false;
  bool separated = false; // a separated port: talks to no other separated port
  bool forwards4 = false;
  bool forwards6 = false;
  bool translates = false; // masquerades what leaves by this card (RFC 3022)
  bool advertises = false; // IPv6 router advertisements (RFC 4861)
  bool published = true;   // its addresses stand in the lab's names
  bool for_management = false;
  bool for_storage = false;
  bool for_migration = false;
  DhcpDuty dhcp = DhcpDuty::none;
  MacSource mac_source = MacSource::program;
  std::vector<SegmentTag> trunk;   // more segments, by VLAN id
  std::vector<SegmentTag> carries; // segments joined to the pieces inside a hypervisor (DECISIONS 12)
  std::vector<RangeRow> ranges;    // what its DHCP server gives out here
  std::optional<Mac> mac;
  std::optional<std::int32_t> mtu; // octets; empty: the segment's
  std::string name;
  std::string uplink_group; // cards of one machine with the same word are one uplink
  std::optional<Address> relay_to;
  friend bool operator==(const Card&, const Card&) = default;
};

struct Disk : Element<Kind::disk> {
  MachineId machine;
  std::string name;
  std::int64_t size = 8192; // MiB
  Provisioning provisioning = Provisioning::thin;
  std::int32_t expected_percent = 50; // of a thin disk's size; of a copy-on-write disk's difference
  AnyId store;                        // volume, share, or the disk of a hypervisor
  DiskId base;                        // of a copy-on-write disk
  friend bool operator==(const Disk&, const Disk&) = default;
};

// Storage that a machine offers to others; its room lies on a disk of that machine.
struct Share : Element<Kind::share> {
  MachineId machine;
  std::string name;
  ShareProtocol protocol = ShareProtocol::iscsi;
  DiskId disk;
  std::int64_t size = 0;          // MiB
  std::string target;             // share path or target name
  std::int32_t unit = 0;          // unit number
  std::vector<MachineId> clients; // allowed
  CardId card;                    // that carries it
  friend bool operator==(const Share&, const Share&) = default;
};

} // namespace snug
