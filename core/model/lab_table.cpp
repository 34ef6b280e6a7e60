#include "core/model/tables.h"

namespace snug {

using namespace detail;

template <>
const StructInfo& info<LabFacts>() {
  static const std::array fields{
      field<&LabFacts::uid>("uid", "identity", "random once; addresses and MACs derive from it")
          .up_to(64)
          .by_program(),
      count(field<&LabFacts::next_id>("next_id", "next id number", "never reused"), 1, kMaxIdNumber)
          .by_program(),
      field<&LabFacts::title>("title", "title").up_to(200),
      field<&LabFacts::author>("author", "author").up_to(200),
      field<&LabFacts::date>("date", "date", "of the title block"),
      field<&LabFacts::language>("language", "language", "of the documents, a BCP 47 tag").up_to(35).rarely(),
      field<&LabFacts::domain>("domain", "domain",
                               "home.arpa (RFC 8375) and test (RFC 6761) are private for ever")
          .up_to(253),
      field<&LabFacts::sizes>("sizes", "size set",
                              "lean: older or smallest systems; which sizes new machines get"),
      field<&LabFacts::local_prefix6>("local_prefix6", "private IPv6 prefix",
                                      "RFC 4193, made from the identity")
          .only(Family::v6)
          .rarely(),
      field<&LabFacts::notes>("notes", "notes").up_to(20'000),
  };
  static const StructInfo s = table<LabFacts>("lab", "lab", fields);
  return s;
}

template <>
const StructInfo& info<Numbering>() {
  static const std::array fields{
      field<&Numbering::block>("block", "block", "segments' prefixes are taken from it").only(Family::v4),
      count(field<&Numbering::segment_length>("segment_length", "prefix length of a segment"), 8, 30),
      count(field<&Numbering::gateway>("gateway", "gateway at", "host number; 0: none"), 0, 65534),
      count(field<&Numbering::translator>("translator", "translator at", "host number on NAT segments"), 0,
            65534),
      count(field<&Numbering::pc_socket>("pc_socket", "PC socket at", "host number"), 0, 65534),
      count(field<&Numbering::fixed_first>("fixed_first", "fixed from"), 1, 65534),
      count(field<&Numbering::fixed_last>("fixed_last", "fixed to"), 1, 65534),
      count(field<&Numbering::dhcp_first>("dhcp_first", "DHCP from"), 1, 65534),
      count(field<&Numbering::dhcp_last>("dhcp_last", "DHCP to"), 1, 65534),
  };
  static const StructInfo s = table<Numbering>("numbering", "numbering scheme", fields);
  return s;
}

template <>
const StructInfo& info<Rules>() {
  static const std::array fields{
      mib(field<&Rules::outer_fixed>(
          "outer_fixed", "overhead of a guest on the PC",
          "the program that runs a guest keeps its own memory; common practice, no published source")),
      mib(field<&Rules::outer_per_processor>(
          "outer_per_processor", "overhead per processor on the PC",
          "buffers for each virtual processor; common practice, no published source")),
      mib(field<&Rules::inner_fixed>(
          "inner_fixed", "overhead of an inner guest",
          "hypervisors without a desktop need less; common practice, no published source")),
      mib(field<&Rules::inner_per_processor>("inner_per_processor",
                                             "overhead per processor of an inner guest",
                                             "as on the PC, smaller; common practice, no published source")),
      count(field<&Rules::hypervisor_page_tables>(
                "hypervisor_page_tables", "page tables of a hypervisor guest, times",
                "its inner memory is shadowed by a second set; common practice, no published source"),
            1, 8),
      field<&Rules::pc_processor_ratio>(
          "pc_processor_ratio", "virtual processors per core on the PC",
          "above it guests wait for each other; common practice, no published source")
          .range(10, 10'000, Unit::hundredths),
      field<&Rules::inner_processor_ratio>(
          "inner_processor_ratio", "virtual processors per processor of a hypervisor",
          "small idle guests share well; common practice, no published source")
          .range(10, 10'000, Unit::hundredths),
      percent(field<&Rules::second_thread_percent>("second_thread_percent",
                                                   "what a core's second thread adds",
                                                   "about a quarter; common practice, no published source")),
      percent(field<&Rules::efficiency_core_percent>(
          "efficiency_core_percent", "what an efficiency core gives",
          "about half of a full core; common practice, no published source")),
      count(field<&Rules::nesting_depth>(
                "nesting_depth", "hypervisors inside each other",
                "more than two deep is slow and rarely supported; common practice, no published source"),
            1, 8),
      mib(field<&Rules::default_footprint>(
          "default_footprint", "a hypervisor's own part",
          "where its role does not say; common practice, no published source")),
  };
  static const StructInfo s = table<Rules>("rules", "rules of thumb", fields);
  return s;
}

} // namespace snug
