#pragma once
// Exercises, promises and accepted findings.

#include "core/model/basics.h"

namespace snug {

struct Exercise : Element<Kind::exercise> {
  std::string name;
  std::optional<Date> date;
  std::string task;
  std::vector<MachineId> on;
  friend bool operator==(const Exercise&, const Exercise&) = default;
};

// A statement the lab must keep (DECISIONS 16).
struct Promise : Element<Kind::promise> {
  AnyId from; // machine, segment, outside, everyone
  AnyId to;
  PromiseKind must = PromiseKind::reach;
  Transport transport = Transport::icmp;
  std::int32_t port = 0;             // 0 with icmp
  std::vector<ExerciseId> exercises; // empty: all
  std::string notes;
  friend bool operator==(const Promise&, const Promise&) = default;
};

// A finding the person has accepted, with the reason. Identity of a finding: rule and places (DECISIONS 19).
struct Accepted : Element<Kind::accepted> {
  std::string rule;
  std::vector<AnyId> places;
  std::string reason;
  std::optional<Date> date;
  friend bool operator==(const Accepted&, const Accepted&) = default;
};

} // namespace snug
