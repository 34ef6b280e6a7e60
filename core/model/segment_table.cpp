#include "core/model/tables.h"

namespace snug {

using namespace detail;

template <>
const StructInfo& info<Segment>() {
  static const std::array fields{
      field<&Segment::name>("name", "name").up_to(200),
      field<&Segment::type>("type", "type",
                            "isolated: only inside the PC; bridged: one network with a physical LAN; nat: "
                            "translated on the way out (RFC 3022)"),
      field<&Segment::lan>("lan", "physical LAN"),
      count(field<&Segment::number>("number", "network number",
                                    "in the numbering scheme; 0: its place in the list"),
            0, 255)
          .rarely(),
      count(field<&Segment::order>("order", "order", "of the rails"), -1'000'000, 1'000'000),
      field<&Segment::prefix4>("prefix4", "IPv4 prefix").only(Family::v4),
      field<&Segment::prefix6>("prefix6", "IPv6 prefix").only(Family::v6).rarely(),
      field<&Segment::gateway4>("gateway4", "IPv4 gateway",
                                "who forwards from here; a machine uses it by a route of its own or by DHCP")
          .only(Family::v4),
      field<&Segment::gateway6>("gateway6", "IPv6 gateway",
                                "a machine uses it by a route of its own or by router advertisements")
          .only(Family::v6)
          .rarely(),
      field<&Segment::mtu>("mtu", "MTU").range(68, 65535, Unit::octets).rarely(),
      count(field<&Segment::vlan>("vlan", "VLAN id", "0: none; 1 to 4094 (IEEE 802.1Q)"), 0, 4094).rarely(),
      field<&Segment::passes_other_macs>("passes_other_macs", "passes other MACs",
                                         "inner guests need it: their frames carry their own MAC"),
      field<&Segment::pc_socket>("pc_socket", "PC socket", "the PC has an address here"),
      field<&Segment::pc_address4>("pc_address4", "PC's IPv4 address").only(Family::v4),
      field<&Segment::pc_address6>("pc_address6", "PC's IPv6 address").only(Family::v6).rarely(),
      field<&Segment::translator4>("translator4", "translator's address", "absent: the first usable address")
          .only(Family::v4),
      field<&Segment::translator_dhcp>("translator_dhcp", "the translator answers DHCP"),
      field<&Segment::translator_names>("translator_names", "the translator relays names").rarely(),
      field<&Segment::ranges>("ranges", "the translator's DHCP ranges"),
      field<&Segment::forwards>("forwards", "port forwards"),
      field<&Segment::kept>("kept", "kept addresses", "never suggested"),
      field<&Segment::notes>("notes", "notes").up_to(20'000),
  };
  static const StructInfo s = table<Segment>("segments", "segment", fields, 1000);
  return s;
}

template <>
const StructInfo& info<Exercise>() {
  static const std::array fields{
      field<&Exercise::name>("name", "name").up_to(200),
      field<&Exercise::date>("date", "date"),
      field<&Exercise::task>("task", "task", "what the learner does").up_to(20'000),
      field<&Exercise::on>("on", "on", "the machines that are on"),
  };
  static const StructInfo s = table<Exercise>("exercises", "exercise", fields, 256);
  return s;
}

template <>
const StructInfo& info<Promise>() {
  constexpr KindSet subject = kinds({Kind::machine, Kind::segment, Kind::outside, Kind::everyone});
  static const std::array fields{
      field<&Promise::from>("from", "from", "a machine, a segment, outside or everyone")
          .of(subject)
          .follows(),
      field<&Promise::to>("to", "to").of(subject).follows(),
      field<&Promise::must>("must", "must", "reach or never"),
      field<&Promise::transport>("transport", "transport"),
      port(field<&Promise::port>("port", "port", "0: none")),
      field<&Promise::exercises>("exercises", "exercises", "in which it must hold; none: in all"),
      field<&Promise::notes>("notes", "notes").up_to(20'000),
  };
  static const StructInfo s = table<Promise>("promises", "promise", fields, 10'000);
  return s;
}

template <>
const StructInfo& info<Accepted>() {
  constexpr KindSet anything = ~kinds({Kind::none, Kind::outside, Kind::everyone});
  static const std::array fields{
      field<&Accepted::rule>("rule", "rule").up_to(100),
      field<&Accepted::places>("places", "places").of(anything).follows(),
      field<&Accepted::reason>("reason", "reason").up_to(4096),
      field<&Accepted::date>("date", "date"),
  };
  static const StructInfo s = table<Accepted>("accepted", "accepted finding", fields, 10'000);
  return s;
}

} // namespace snug
