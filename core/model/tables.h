#pragma once
// Helpers for writing field tables; included only by core/model/*_table.cpp.

#include "core/base/size.h"
#include "core/model/lab.h"
#include "core/model/make_field.h"

namespace snug::detail {

inline constexpr std::int64_t kMostCount = 1'000'000;
inline constexpr std::int64_t kMostSeconds = 31LL * 24 * 3600;

template <typename S>
StructInfo table(std::string_view collection, std::string_view noun, std::span<const FieldInfo> fields,
                 std::size_t max_count = 1) {
  StructInfo s;
  if constexpr (kHasKind<S>) s.kind = S::kind;
  s.collection = collection;
  s.noun = Term{noun};
  s.fields = fields;
  s.max_count = max_count;
  static const S blank{};
  s.blank = &blank;
  s.unknown = [](void* o) -> Unknown& { return static_cast<S*>(o)->unknown; };
  if constexpr (requires(S e) { e.id.number; }) {
    s.id = [](const void* o) { return AnyId{S::kind, static_cast<const S*>(o)->id.number}; };
    s.set_id = [](void* o, std::uint32_t n) { static_cast<S*>(o)->id.number = n; };
  }
  return s;
}

constexpr FieldInfo mib(const FieldInfo& f, std::int64_t least = 0) {
  return f.range(least, kMaxMib, Unit::mib);
}
constexpr FieldInfo percent(const FieldInfo& f) { return f.range(0, 100, Unit::percent); }
constexpr FieldInfo seconds(const FieldInfo& f) { return f.range(0, kMostSeconds, Unit::seconds); }
constexpr FieldInfo port(const FieldInfo& f) { return f.range(0, 65535, Unit::port); }
constexpr FieldInfo count(const FieldInfo& f, std::int64_t least, std::int64_t most) {
  return f.range(least, most, Unit::count);
}

} // namespace snug::detail
