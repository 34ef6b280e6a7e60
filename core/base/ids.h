#pragma once
// Typed ids. In files an id is its kind's letter and a number: m12, s3, c7 (DECISIONS 7). Numbers come
// from one counter per lab, are never reused and never change.

#include "core/base/result.h"

#include <compare>
#include <cstdint>
#include <functional>
#include <string>
#include <string_view>

namespace snug {

// Kinds of elements. `lab`, `pc`, `numbering`, `rules` are singletons: their id number is 0.
// `outside` and `everyone` are only subjects of promises.
enum class Kind : std::uint8_t {
  none,
  lab,
  pc,
  numbering,
  rules,
  volume,
  lan,
  place,
  role,
  segment,
  machine,
  card,
  disk,
  share,
  exercise,
  promise,
  accepted,
  outside,
  everyone,
};
inline constexpr int kKindCount = static_cast<int>(Kind::everyone) + 1;
inline constexpr std::uint32_t kMaxIdNumber = 999'999'999;

struct AnyId {
  Kind kind = Kind::none;
  std::uint32_t number = 0;
  explicit operator bool() const { return kind != Kind::none; }
  friend auto operator<=>(const AnyId&, const AnyId&) = default;
};

template <Kind K>
struct Id {
  static constexpr Kind kind = K;
  std::uint32_t number = 0; // 0: none
  explicit operator bool() const { return number != 0; }
  operator AnyId() const { return number ? AnyId{K, number} : AnyId{}; }
  friend auto operator<=>(const Id&, const Id&) = default;
};

using VolumeId = Id<Kind::volume>;
using LanId = Id<Kind::lan>;
using PlaceId = Id<Kind::place>;
using RoleId = Id<Kind::role>;
using SegmentId = Id<Kind::segment>;
using MachineId = Id<Kind::machine>;
using CardId = Id<Kind::card>;
using DiskId = Id<Kind::disk>;
using ShareId = Id<Kind::share>;
using ExerciseId = Id<Kind::exercise>;
using PromiseId = Id<Kind::promise>;
using AcceptedId = Id<Kind::accepted>;

// The letter of a kind: v l p o s m c d h e q a; 0 for kinds without.
char letter_of(Kind);
// Singletons and subjects are written as words: "lab", "pc", "numbering", "rules", "outside", "everyone".
std::string to_text(AnyId);
// Accepts exactly what to_text writes: no leading zeros, no sign, number 1 … kMaxIdNumber.
Result<AnyId> parse_id(std::string_view);

} // namespace snug

template <snug::Kind K>
struct std::hash<snug::Id<K>> {
  std::size_t operator()(snug::Id<K> id) const noexcept { return id.number; }
};
template <>
struct std::hash<snug::AnyId> {
  std::size_t operator()(snug::AnyId id) const noexcept {
    return (static_cast<std::size_t>(id.kind) << 32U) ^ id.number;
  }
};
