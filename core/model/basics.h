#pragma once
// Small values shared by the elements of a lab.

#include "core/base/ids.h"
#include "core/model/choices.h"
#include "core/net/mac.h"
#include "core/net/prefix.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace snug {

// Members of a JSON object that this version does not know, as compact JSON text without braces
// ("\"a\":1,\"b\":[2]"). Kept with its element and written back after the known keys (DECISIONS 7).
class Unknown {
 public:
  Unknown() = default;
  explicit Unknown(std::string members)
      : text_(members.empty() ? nullptr : std::make_shared<const std::string>(std::move(members))) {}
  bool empty() const { return text_ == nullptr; }
  std::string_view members() const { return text_ ? std::string_view(*text_) : std::string_view{}; }
  friend bool operator==(const Unknown& a, const Unknown& b) { return a.members() == b.members(); }

 private:
  std::shared_ptr<const std::string> text_;
};

// A calendar date, proleptic Gregorian, year 1…9999; text is ISO 8601 "2027-02-14".
struct Date {
  std::int16_t year = 0;
  std::int8_t month = 0;
  std::int8_t day = 0;
  friend auto operator<=>(const Date&, const Date&) = default;
};
Result<Date> parse_date(std::string_view);
std::string to_text(const Date&);

// One element of a list in the document: id and what this version did not know of it.
template <Kind K>
struct Element {
  static constexpr Kind kind = K;
  Id<K> id;
  Unknown unknown;
  friend bool operator==(const Element&, const Element&) = default;
};
// A row inside an element's list field; rows have no id.
struct RowBase {
  Unknown unknown;
  friend bool operator==(const RowBase&, const RowBase&) = default;
};

// A service that a machine provides.
struct Offer : RowBase {
  std::string service; // "names", "time", "directory", "storage", "management", or a word of the person's
  Transport transport = Transport::tcp;
  std::int32_t port = 0; // 0: no port (icmp) or not said; 1…65535
  friend bool operator==(const Offer&, const Offer&) = default;
};
// A service that a machine uses.
struct Need : RowBase {
  std::string service;
  MachineId from; // none: any machine that offers it
  Strength strength = Strength::wants;
  friend bool operator==(const Need&, const Need&) = default;
};
// A segment on a trunk, or carried to the guests inside; vlan 0 is untagged.
struct SegmentTag : RowBase {
  SegmentId segment;
  std::int32_t vlan = 0; // 0, 1…4094 (IEEE 802.1Q)
  friend bool operator==(const SegmentTag&, const SegmentTag&) = default;
};
struct RangeRow : RowBase {
  Address first;
  Address last;
  friend bool operator==(const RangeRow&, const RangeRow&) = default;
};

} // namespace snug
