#include "core/model/tables.h"

namespace snug {

using namespace detail;

template <>
const StructInfo& info<Offer>() {
  static const std::array fields{
      field<&Offer::service>("service", "service",
                             "names, time, directory, storage, management, or a word of yours")
          .up_to(64),
      field<&Offer::transport>("transport", "transport"),
      port(field<&Offer::port>("port", "port", "0: none")),
  };
  static const StructInfo s = table<Offer>("offers", "offer", fields);
  return s;
}

template <>
const StructInfo& info<Need>() {
  static const std::array fields{
      field<&Need::service>("service", "service").up_to(64),
      field<&Need::from>("from", "from", "the machine that must provide it; absent: any that offers it"),
      field<&Need::strength>("strength", "strength",
                             "must: does not start without; wants: starts, works once it is there"),
  };
  static const StructInfo s = table<Need>("needs", "need", fields);
  return s;
}

template <>
const StructInfo& info<SegmentTag>() {
  static const std::array fields{
      field<&SegmentTag::segment>("segment", "segment").follows(),
      count(field<&SegmentTag::vlan>("vlan", "VLAN id", "0: untagged; 1 to 4094 (IEEE 802.1Q)"), 0, 4094),
  };
  static const StructInfo s = table<SegmentTag>("segments", "segment", fields);
  return s;
}

template <>
const StructInfo& info<RangeRow>() {
  static const std::array fields{
      field<&RangeRow::first>("first", "first"),
      field<&RangeRow::last>("last", "last"),
  };
  static const StructInfo s = table<RangeRow>("ranges", "range", fields);
  return s;
}

template <>
const StructInfo& info<Route>() {
  static const std::array fields{
      field<&Route::to>("to", "to", "0.0.0.0/0 or ::/0: the default route"),
      field<&Route::via>("via", "next hop"),
      field<&Route::card>("card", "card"),
      count(field<&Route::metric>("metric", "metric", "the lowest wins among equal prefixes"), 0,
            2'000'000'000),
      field<&Route::on_link>("on_link", "next hop on link",
                             "the next hop need not lie in a prefix of the card"),
  };
  static const StructInfo s = table<Route>("routes", "route", fields);
  return s;
}

template <>
const StructInfo& info<CardAddress>() {
  static const std::array fields{
      field<&CardAddress::kind>("kind", "kind", "typed addresses never move; suggested ones follow the plan"),
      field<&CardAddress::address>("address", "address"),
      count(field<&CardAddress::length>("length", "prefix length", "absent: the segment's"), 0, 128),
  };
  static const StructInfo s = table<CardAddress>("addresses", "address", fields);
  return s;
}

template <>
const StructInfo& info<PortForward>() {
  static const std::array fields{
      field<&PortForward::transport>("transport", "transport"),
      port(field<&PortForward::port>("port", "port outside")),
      field<&PortForward::machine>("machine", "machine").follows(),
      port(field<&PortForward::to_port>("to_port", "port of the machine")),
  };
  static const StructInfo s = table<PortForward>("forwards", "port forward", fields);
  return s;
}

} // namespace snug
