#pragma once
// A row of a field table from a member. Included only by the tables.

#include "core/model/field_traits.h"

namespace snug::detail {

template <typename T>
struct Inner {
  using type = T;
};
template <typename T>
struct Inner<std::optional<T>> : Inner<T> {};
template <typename T>
struct Inner<std::vector<T>> : Inner<T> {};

template <typename T, typename = void>
inline constexpr bool kHasKind = false;
template <typename T>
inline constexpr bool kHasKind<T, std::enable_if_t<std::is_same_v<decltype(&T::kind), const Kind*>>> = true;

template <typename M>
struct MemberOf;
template <typename S, typename T>
struct MemberOf<T S::*> {
  using Struct = S;
  using Type = T;
};

// A row of a table. S is the struct of the table (the member may come from a base).
template <auto Member, typename S = typename MemberOf<decltype(Member)>::Struct>
constexpr FieldInfo field(std::string_view key, std::string_view label, std::string_view help = {}) {
  using T = typename MemberOf<decltype(Member)>::Type;
  using I = typename Inner<T>::type;
  FieldInfo f;
  f.key = key;
  f.label = Term{label};
  f.help = Term{help};
  f.type = Traits<T>::type;
  if constexpr (requires { Traits<T>::optional; }) f.optional = Traits<T>::optional;
  if constexpr (std::is_enum_v<I>) f.choices = Choices<I>::words;
  if constexpr (kHasKind<I>) f.id_kinds = kinds({I::kind});
  if constexpr (std::is_base_of_v<RowBase, I>) {
    f.row = &info<I>();
    f.append_row = [](void* o) -> void* { return &(static_cast<S*>(o)->*Member).emplace_back(); };
  }
  f.max_length = f.type == FieldType::text ? 4096 : 100'000;
  f.get = [](const void* o) { return Traits<T>::get(static_cast<const S*>(o)->*Member); };
  f.set = [](void* o, const Value& v) { return Traits<T>::set(static_cast<S*>(o)->*Member, v); };
  f.is_default = [](const void* o) {
    static const S kDefault{};
    return static_cast<const S*>(o)->*Member == kDefault.*Member;
  };
  f.equal = [](const void* a, const void* b) {
    return static_cast<const S*>(a)->*Member == static_cast<const S*>(b)->*Member;
  };
  f.write = [](const void* o, std::string& out) { Traits<T>::write(static_cast<const S*>(o)->*Member, out); };
  return f;
}

} // namespace snug::detail
