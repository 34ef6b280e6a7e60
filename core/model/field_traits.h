#pragma once
// How the C++ types of members turn into values and JSON text. Included only by the tables.

#include "core/model/field.h"
#include "core/model/json_text.h"

#include <charconv>

namespace snug::detail {

inline void append_number(std::string& out, std::int64_t n) {
  std::array<char, 24> buffer{};
  const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), n);
  out.append(buffer.data(), end);
}
inline void append_id(std::string& out, AnyId id) {
  out += '"';
  if (const char letter = letter_of(id.kind)) {
    out += letter;
    append_number(out, id.number);
  } else {
    out += to_text(id);
  }
  out += '"';
}

template <typename T>
struct Traits; // type, optional, get, set, write

template <>
struct Traits<bool> {
  static constexpr FieldType type = FieldType::boolean;
  static Value get(bool v) { return v; }
  static bool set(bool& m, const Value& v) {
    const bool* b = v.as<bool>();
    if (b) m = *b;
    return b != nullptr;
  }
  static void write(bool v, std::string& out) { out += v ? "true" : "false"; }
};

template <std::integral I>
struct Traits<I> {
  static constexpr FieldType type = FieldType::integer;
  static Value get(I v) { return static_cast<std::int64_t>(v); }
  static bool set(I& m, const Value& v) {
    const std::int64_t* n = v.as<std::int64_t>();
    if (!n || !std::in_range<I>(*n)) return false;
    m = static_cast<I>(*n);
    return true;
  }
  static void write(I v, std::string& out) { append_number(out, static_cast<std::int64_t>(v)); }
};

template <>
struct Traits<std::string> {
  static constexpr FieldType type = FieldType::text;
  static Value get(const std::string& v) { return v; }
  static bool set(std::string& m, const Value& v) {
    const std::string* s = v.as<std::string>();
    if (s) m = *s;
    return s != nullptr;
  }
  static void write(const std::string& v, std::string& out) { append_json_string(out, v); }
};

template <typename E>
requires std::is_enum_v<E>
struct Traits<E> {
  static constexpr FieldType type = FieldType::choice;
  static Value get(E v) { return std::string(word(v)); }
  static bool set(E& m, const Value& v) {
    const std::string* s = v.as<std::string>();
    if (!s) return false;
    for (std::size_t i = 0; i < Choices<E>::words.size(); ++i) {
      if (Choices<E>::words[i] != *s) continue;
      m = static_cast<E>(i);
      return true;
    }
    return false;
  }
  static void write(E v, std::string& out) { ((out += '"') += word(v)) += '"'; }
};

template <Kind K>
struct Traits<Id<K>> {
  static constexpr FieldType type = FieldType::id;
  static constexpr bool optional = true;
  static Value get(Id<K> v) { return v ? Value(AnyId(v)) : Value(); }
  static bool set(Id<K>& m, const Value& v) {
    const AnyId* id = v.as<AnyId>();
    if (v.is_set() && (!id || id->kind != K)) return false;
    m = id ? Id<K>{id->number} : Id<K>{};
    return true;
  }
  static void write(Id<K> v, std::string& out) { v ? append_id(out, v) : (void)(out += "null"); }
};

template <>
struct Traits<AnyId> {
  static constexpr FieldType type = FieldType::id;
  static constexpr bool optional = true;
  static Value get(AnyId v) { return v ? Value(v) : Value(); }
  static bool set(AnyId& m, const Value& v) {
    const AnyId* id = v.as<AnyId>();
    if (v.is_set() && !id) return false;
    m = id ? *id : AnyId{};
    return true;
  }
  static void write(AnyId v, std::string& out) { v ? append_id(out, v) : (void)(out += "null"); }
};

// Values that are text in the document.
template <typename T, FieldType F>
struct TextTraits {
  static constexpr FieldType type = F;
  static Value get(const T& v) { return v; }
  static bool set(T& m, const Value& v) {
    const T* x = v.as<T>();
    if (x) m = *x;
    return x != nullptr;
  }
  static void write(const T& v, std::string& out) {
    out += '"';
    out += to_text(v);
    out += '"';
  }
};
template <>
struct Traits<Address> : TextTraits<Address, FieldType::address> {};
template <>
struct Traits<Prefix> : TextTraits<Prefix, FieldType::prefix> {};
template <>
struct Traits<Mac> : TextTraits<Mac, FieldType::mac> {};
template <>
struct Traits<Date> : TextTraits<Date, FieldType::date> {};

template <typename T>
struct Traits<std::optional<T>> {
  static constexpr FieldType type = Traits<T>::type;
  static constexpr bool optional = true;
  static Value get(const std::optional<T>& v) { return v ? Traits<T>::get(*v) : Value(); }
  static bool set(std::optional<T>& m, const Value& v) {
    if (!v.is_set()) {
      m.reset();
      return true;
    }
    T t{};
    if (!Traits<T>::set(t, v)) return false;
    m = std::move(t);
    return true;
  }
  static void write(const std::optional<T>& v, std::string& out) {
    v ? Traits<T>::write(*v, out) : (void)(out += "null");
  }
};

// Rows: structs with a table of their own.
template <typename R>
requires std::is_base_of_v<RowBase, R>
struct Traits<R> {
  static constexpr FieldType type = FieldType::rows;
  static Value get(const R& r) {
    RowValue row;
    for (const FieldInfo& f : info<R>().fields) row.fields.push_back(f.get(&r));
    row.unknown = r.unknown;
    return Value::row(std::move(row));
  }
  static bool set(R& m, const Value& v) {
    const RowValue* row = v.as_row();
    const auto fields = info<R>().fields;
    if (!row || row->fields.size() != fields.size()) return false;
    for (std::size_t i = 0; i < fields.size(); ++i)
      if (!fields[i].set(&m, row->fields[i])) return false;
    m.unknown = row->unknown;
    return true;
  }
  static void write(const R& r, std::string& out) { append_json_object(out, info<R>(), &r); }
};

template <typename T>
struct Traits<std::vector<T>> {
  static constexpr FieldType type = Traits<T>::type == FieldType::prefix ? FieldType::prefixes
                                    : Traits<T>::type == FieldType::id   ? FieldType::ids
                                                                         : FieldType::rows;
  static Value get(const std::vector<T>& v) {
    ValueList list;
    list.reserve(v.size());
    for (const T& t : v) list.push_back(Traits<T>::get(t));
    return Value::list(std::move(list));
  }
  static bool set(std::vector<T>& m, const Value& v) {
    const ValueList* list = v.as_list();
    if (!list) return false;
    std::vector<T> out(list->size());
    for (std::size_t i = 0; i < out.size(); ++i)
      if (!Traits<T>::set(out[i], (*list)[i])) return false;
    m = std::move(out);
    return true;
  }
  static void write(const std::vector<T>& v, std::string& out) {
    out += '[';
    for (std::size_t i = 0; i < v.size(); ++i) {
      if (i > 0) out += ", ";
      Traits<T>::write(v[i], out);
    }
    out += ']';
  }
};

} // namespace snug::detail
