#pragma once
// Segments: layer-2 networks.

#include "core/model/basics.h"

namespace snug {

struct PortForward : RowBase {
  Transport transport = Transport::tcp;
  std::int32_t port = 0; // outside, 1…65535
  MachineId machine;
  std::int32_t to_port = 0;
  friend bool operator==(const PortForward&, const PortForward&) = default;
};

struct Segment : Element<Kind::segment> {
  std::string name;
  SegmentKind type = SegmentKind::isolated;
  LanId lan;                     // bridged: the LAN it is one network with; NAT: the LAN it leaves through
  std::int32_t number = 0;       // in the numbering scheme; 0: its place in the list
  std::int32_t order = 0;        // of the rails
  std::optional<Prefix> prefix4; // bridged: empty takes its LAN's
  std::optional<Prefix> prefix6;
  std::optional<Address> gateway4;
  std::optional<Address> gateway6;
  std::int32_t mtu = 1500; // octets
  std::int32_t vlan = 0;   // 0: none
  Known passes_other_macs = Known::unknown;
  bool pc_socket = false;
  std::optional<Address> pc_address4;
  std::optional<Address> pc_address6;
  // NAT only (DECISIONS 14):
  std::optional<Address> translator4; // empty: the first usable address
  bool translator_dhcp = true;
  bool translator_names = true;
  std::vector<RangeRow> ranges; // what the translator's DHCP gives out
  std::vector<PortForward> forwards;
  std::vector<RangeRow> kept; // never suggested
  std::string notes;
  friend bool operator==(const Segment&, const Segment&) = default;
};

} // namespace snug
