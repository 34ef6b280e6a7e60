#include "core/model/tables.h"

namespace snug {

using namespace detail;

template <>
const StructInfo& info<Role>() {
  static const std::array fields{
      field<&Role::key>("key", "key", "stable across languages").up_to(64),
      field<&Role::title>("title", "title").up_to(200),
      field<&Role::is_hypervisor>("is_hypervisor", "carries guests"),
      mib(field<&Role::lean_refused_below>("lean_refused_below", "lean: an installer refuses below")),
      mib(field<&Role::lean_least>("lean_least", "lean: least memory")),
      mib(field<&Role::lean_usual>("lean_usual", "lean: usual memory")),
      mib(field<&Role::current_refused_below>("current_refused_below",
                                              "current: an installer refuses below")),
      mib(field<&Role::current_least>("current_least", "current: least memory")),
      mib(field<&Role::current_usual>("current_usual", "current: usual memory")),
      mib(field<&Role::lean_footprint>("lean_footprint", "lean: a hypervisor's own part")),
      mib(field<&Role::current_footprint>("current_footprint", "current: a hypervisor's own part")),
      count(field<&Role::processors>("processors", "processors"), 1, 1024),
      mib(field<&Role::disk>("disk", "disk")),
      seconds(field<&Role::install_seconds>("install_seconds", "time to install")),
      seconds(field<&Role::ready_seconds>("ready_seconds", "time to ready")),
      field<&Role::answers_ping>("answers_ping", "answers ping"),
      field<&Role::needs_reverse_name>("needs_reverse_name", "wants forward and reverse names",
                                       "before it is installed"),
      field<&Role::offers>("offers", "offers"),
      field<&Role::needs>("needs", "needs"),
      field<&Role::source>("source", "source").up_to(200),
  };
  static const StructInfo s = table<Role>("roles", "role", fields, 1000);
  return s;
}

template <>
const StructInfo& info<Machine>() {
  static const std::array fields{
      field<&Machine::name>("name", "name").up_to(200),
      field<&Machine::host_name>("host_name", "host name", "absent: made from the name").up_to(253),
      field<&Machine::role>("role", "role"),
      field<&Machine::carrier>("carrier", "carrier", "the hypervisor it runs in; absent: the PC").follows(),
      count(field<&Machine::band>("band", "band"), 0, 1000),
      count(field<&Machine::order>("order", "order"), -1'000'000, 1'000'000),
      field<&Machine::pinned>("pinned", "kept in place", "stays where it is when the picture is tidied")
          .rarely(),
      mib(field<&Machine::memory>("memory", "memory"), 1),
      count(field<&Machine::processors>("processors", "processors"), 1, 1024),
      percent(field<&Machine::expected_percent>("expected_percent", "expected use",
                                                "of its memory; derived for a hypervisor")),
      mib(field<&Machine::footprint>("footprint", "own part", "of a hypervisor; absent: its role's"))
          .rarely(),
      field<&Machine::expose_virtualization>("expose_virtualization", "hardware virtualization passed on",
                                             "a hypervisor needs it"),
      field<&Machine::is_64_bit>("is_64_bit", "64-bit").rarely(),
      field<&Machine::memory_file>("memory_file", "memory file",
                                   "as large as its memory, beside its first disk, while it runs")
          .rarely(),
      seconds(field<&Machine::ready_seconds>("ready_seconds", "time to ready", "absent: its role's"))
          .rarely(),
      field<&Machine::reverse_filter>("reverse_filter", "reverse-path filter", "RFC 3704").rarely(),
      field<&Machine::carrier_time>("carrier_time", "takes the time from its carrier").rarely(),
      field<&Machine::routes>("routes", "routes"),
      field<&Machine::offers>("offers", "offers", "beside its role's"),
      field<&Machine::needs>("needs", "needs", "beside its role's"),
      field<&Machine::initiator_name>("initiator_name", "initiator name", "iSCSI, RFC 3720")
          .up_to(223)
          .rarely(),
      field<&Machine::notes>("notes", "notes").up_to(20'000),
  };
  static const StructInfo s = table<Machine>("machines", "machine", fields, 20'000);
  return s;
}

template <>
const StructInfo& info<Card>() {
  static const std::array fields{
      field<&Card::machine>("machine", "machine").follows(),
      field<&Card::name>("name", "name").up_to(64).rarely(),
      field<&Card::segment>("segment", "segment", "absent: a trunk, or not plugged"),
      field<&Card::trunk>("trunk", "trunk", "more segments, by VLAN id").up_to(4094),
      field<&Card::carries>("carries", "carries", "segments joined to the guests inside").up_to(4094),
      field<&Card::addresses>("addresses", "addresses").up_to(64),
      field<&Card::mac>("mac", "MAC").rarely(),
      field<&Card::mac_source>("mac_source", "MAC from", "program: chosen when built, read back later")
          .rarely(),
      field<&Card::mtu>("mtu", "MTU", "absent: the segment's").range(68, 65535, Unit::octets).rarely(),
      field<&Card::connected>("connected", "connected"),
      field<&Card::own_mac_only>("own_mac_only", "own MAC only").rarely(),
      field<&Card::separated>("separated", "separated port", "talks to no other separated port").rarely(),
      field<&Card::uplink_group>("uplink_group", "uplink group", "cards with the same word are one uplink")
          .up_to(64)
          .rarely(),
      field<&Card::forwards4>("forwards4", "forwards IPv4"),
      field<&Card::forwards6>("forwards6", "forwards IPv6").rarely(),
      field<&Card::translates>("translates", "translates what leaves here", "RFC 3022").rarely(),
      field<&Card::dhcp>("dhcp", "DHCP duty"),
      field<&Card::relay_to>("relay_to", "relays to").rarely(),
      field<&Card::ranges>("ranges", "DHCP ranges", "what its server gives out here"),
      field<&Card::advertises>("advertises", "IPv6 router advertisements", "RFC 4861").rarely(),
      field<&Card::published>("published", "in the name server", "the machine's name leads to this card")
          .rarely(),
      field<&Card::for_management>("for_management", "for management"),
      field<&Card::for_storage>("for_storage", "for storage"),
      field<&Card::for_migration>("for_migration", "for migration"),
  };
  static const StructInfo s = table<Card>("cards", "card", fields, 100'000);
  return s;
}

template <>
const StructInfo& info<Disk>() {
  static const std::array fields{
      field<&Disk::machine>("machine", "machine").follows(),
      field<&Disk::name>("name", "name").up_to(64).rarely(),
      mib(field<&Disk::size>("size", "size")),
      field<&Disk::provisioning>(
          "provisioning", "provisioning",
          "thin grows as it fills; full takes all at once; copy-on-write holds the difference to its base"),
      percent(field<&Disk::expected_percent>("expected_percent", "expected fill", "of the size")).rarely(),
      field<&Disk::store>("store", "store", "a volume, a share, or a hypervisor's disk")
          .of(kinds({Kind::volume, Kind::share, Kind::disk})),
      field<&Disk::base>("base", "base disk").rarely(),
  };
  static const StructInfo s = table<Disk>("disks", "disk", fields, 100'000);
  return s;
}

template <>
const StructInfo& info<Share>() {
  static const std::array fields{
      field<&Share::machine>("machine", "machine").follows(),
      field<&Share::name>("name", "name").up_to(200),
      field<&Share::protocol>("protocol", "protocol"),
      field<&Share::disk>("disk", "disk", "that holds it"),
      mib(field<&Share::size>("size", "size")),
      field<&Share::target>("target", "target", "share path or target name").up_to(255).rarely(),
      count(field<&Share::unit>("unit", "unit number"), 0, 16383).rarely(),
      field<&Share::clients>("clients", "allowed clients"),
      field<&Share::card>("card", "card", "that carries it"),
  };
  static const StructInfo s = table<Share>("shares", "share", fields, 10'000);
  return s;
}

} // namespace snug
