#include "core/model/tables.h"

namespace snug {

using namespace detail;

template <>
const StructInfo& info<Pc>() {
  static const std::array fields{
      field<&Pc::name>("name", "name").up_to(200),
      mib(field<&Pc::installed>("installed", "memory installed"), 1),
      mib(field<&Pc::usable>("usable", "memory usable", "less than installed where graphics takes a part"),
          1),
      mib(field<&Pc::reserved>("reserved", "memory of the PC's own system",
                               "absent: 4 GiB up to 16, 6 up to 32 and 48, 8 from 64; common practice")),
      mib(field<&Pc::keep_free>("keep_free", "memory kept free",
                                "absent: 1 GiB up to 16, else 2; common practice")),
      count(field<&Pc::cores>("cores", "cores"), 1, 4096),
      count(field<&Pc::threads>("threads", "threads"), 1, 8192),
      count(field<&Pc::efficiency_cores>("efficiency_cores", "efficiency cores", "part of the cores"), 0,
            4096)
          .rarely(),
      field<&Pc::is_64_bit>("is_64_bit", "64-bit").rarely(),
      field<&Pc::firmware_virtualization>("firmware_virtualization", "hardware virtualization",
                                          "the switch in the firmware"),
      field<&Pc::virtualization_occupied>("virtualization_occupied", "virtualization already in use",
                                          "a security feature of the PC's own system may run a hypervisor")
          .rarely(),
      field<&Pc::second_level_translation>("second_level_translation", "second-level address translation")
          .rarely(),
      field<&Pc::nested_virtualization>("nested_virtualization", "nested virtualization",
                                        "guests may be hypervisors"),
      field<&Pc::resolves_lab_names>("resolves_lab_names", "the PC resolves the lab's names").rarely(),
      field<&Pc::forwards>("forwards", "forwards between its sockets").rarely(),
      field<&Pc::place>("place", "place", "where it stands now").rarely(),
      count(field<&Pc::max_cards_per_guest>("max_cards_per_guest", "most cards of a guest",
                                            "a limit of the virtualization program"),
            0, 1024)
          .rarely(),
      count(field<&Pc::max_segments>("max_segments", "most segments", "a limit of the virtualization program")
                .rarely(),
            0, 4096),
      count(field<&Pc::max_nat_segments>("max_nat_segments", "most NAT segments",
                                         "a limit of the virtualization program"),
            0, 4096)
          .rarely(),
      mib(field<&Pc::max_guest_memory>("max_guest_memory", "most memory of all guests",
                                       "a limit of the virtualization program"))
          .rarely(),
      field<&Pc::typed_macs_allowed>("typed_macs_allowed", "typed MAC addresses allowed").rarely(),
      field<&Pc::notes>("notes", "notes").up_to(20'000),
  };
  static const StructInfo s = table<Pc>("pc", "PC", fields);
  return s;
}

template <>
const StructInfo& info<Volume>() {
  static const std::array fields{
      field<&Volume::name>("name", "name").up_to(200),
      field<&Volume::type>("type", "type",
                           "spinning and usb start one machine at a time, flash two, nvme four"),
      mib(field<&Volume::size>("size", "size")),
      mib(field<&Volume::free>("free", "free", "before the lab is built")),
      percent(field<&Volume::keep_free_percent>(
          "keep_free_percent", "kept free", "10 to 15 % of a volume; common practice, no published source")),
  };
  static const StructInfo s = table<Volume>("volumes", "volume", fields, 1000);
  return s;
}

template <>
const StructInfo& info<Lan>() {
  static const std::array fields{
      field<&Lan::name>("name", "name").up_to(200),
      field<&Lan::medium>("medium", "medium", "a wireless station sends only its own MAC"),
      field<&Lan::prefix4>("prefix4", "IPv4 prefix").only(Family::v4),
      field<&Lan::prefix6>("prefix6", "IPv6 prefix").only(Family::v6).rarely(),
      field<&Lan::router>("router", "router").up_to(200),
      field<&Lan::gateway4>("gateway4", "IPv4 gateway").only(Family::v4),
      field<&Lan::gateway6>("gateway6", "IPv6 gateway").only(Family::v6).rarely(),
      field<&Lan::has_dhcp>("has_dhcp", "has a DHCP server"),
      field<&Lan::pool>("pool", "DHCP pool", "what it gives out, where known"),
      field<&Lan::notes>("notes", "notes").up_to(20'000),
  };
  static const StructInfo s = table<Lan>("lans", "physical LAN", fields, 1000);
  return s;
}

template <>
const StructInfo& info<Place>() {
  static const std::array fields{
      field<&Place::name>("name", "name").up_to(200),
      field<&Place::medium>("medium", "medium"),
      field<&Place::prefixes>("prefixes", "prefixes", "that the lab must not collide with"),
      field<&Place::notes>("notes", "notes").up_to(20'000),
  };
  static const StructInfo s = table<Place>("places", "place", fields, 1000);
  return s;
}

} // namespace snug
