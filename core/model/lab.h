#pragma once
// The whole plan as a plain value. Copying it is a snapshot.

#include "core/model/machine.h"
#include "core/model/pc.h"
#include "core/model/segment.h"
#include "core/model/teaching.h"

#include <span>
#include <variant>

namespace snug {

struct LabFacts {
  static constexpr Kind kind = Kind::lab;
  Unknown unknown;
  std::string uid; // 32 hexadecimal digits, random once (DECISIONS 9)
  std::uint32_t next_id = 1;
  std::string title;
  std::string author;
  std::optional<Date> date;    // of the title block
  std::string language = "en"; // BCP 47 tag of the documents
  std::string domain = "home.arpa";
  SizeSet sizes = SizeSet::current;    // which size set of the roles new machines get
  std::optional<Prefix> local_prefix6; // RFC 4193 /48
  std::string notes;
  friend bool operator==(const LabFacts&, const LabFacts&) = default;
};

// Where addresses stand in a segment of /24 or larger; host numbers within the prefix (0: none).
struct Numbering {
  static constexpr Kind kind = Kind::numbering;
  Unknown unknown;
  std::optional<Prefix> block; // from which segments' prefixes are taken
  std::int32_t segment_length = 24;
  std::int32_t gateway = 1;
  std::int32_t translator = 1;
  std::int32_t pc_socket = 254;
  std::int32_t fixed_first = 10;
  std::int32_t fixed_last = 99;
  std::int32_t dhcp_first = 100;
  std::int32_t dhcp_last = 199;
  friend bool operator==(const Numbering&, const Numbering&) = default;
};

// Rules of thumb as settings. Common practice, no published source; the field table says the reason of each.
struct Rules {
  static constexpr Kind kind = Kind::rules;
  Unknown unknown;
  std::int64_t outer_fixed = 200; // MiB per guest on the PC
  std::int64_t outer_per_processor = 16;
  std::int64_t inner_fixed = 64; // MiB per guest inside a nested hypervisor
  std::int64_t inner_per_processor = 8;
  std::int32_t hypervisor_page_tables = 2;  // times
  std::int32_t pc_processor_ratio = 300;    // hundredths
  std::int32_t inner_processor_ratio = 400; // hundredths
  std::int32_t second_thread_percent = 25;
  std::int32_t efficiency_core_percent = 50;
  std::int32_t nesting_depth = 2;
  std::int64_t default_footprint = 2048; // of a hypervisor whose role does not say
  friend bool operator==(const Rules&, const Rules&) = default;
};

struct Lab {
  LabFacts facts;
  Pc pc;
  Numbering numbering;
  Rules rules;
  std::vector<Volume> volumes;
  std::vector<Lan> lans;
  std::vector<Place> places;
  std::vector<Role> roles;
  std::vector<Segment> segments;
  std::vector<Machine> machines;
  std::vector<Card> cards;
  std::vector<Disk> disks;
  std::vector<Share> shares;
  std::vector<Exercise> exercises;
  std::vector<Promise> promises;
  std::vector<Accepted> accepted;
  Unknown unknown; // members of the document itself
  friend bool operator==(const Lab&, const Lab&) = default;
};

// Any one element as a value; what an insertion or a removal holds.
using AnyElement =
    std::variant<Volume, Lan, Place, Role, Segment, Machine, Card, Disk, Share, Exercise, Promise, Accepted>;

// The list of a lab that holds elements of type E.
template <typename E>
std::vector<E>& list_of(Lab&);
template <typename E>
const std::vector<E>& list_of(const Lab& lab) {
  return list_of<E>(const_cast<Lab&>(lab));
}

// The element with this id, or null. Linear: for edits and single questions; analyses use Index.
template <typename E>
const E* find(const Lab& lab, Id<E::kind> id) {
  if (!id) return nullptr;
  for (const E& e : list_of<E>(lab))
    if (e.id == id) return &e;
  return nullptr;
}

} // namespace snug
