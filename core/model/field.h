#pragma once
// One table per struct is the single source for reader, writer, JSON Schema, generic edits, the property
// panel, `changes` and the file-format page (DECISIONS 3). Adding a field to the model is one member and one
// row.

#include "core/model/value.h"

#include <span>

namespace snug {

struct StructInfo;

enum class FieldType : std::uint8_t {
  boolean,
  integer,
  text,
  choice,
  date,
  id,
  ids,
  address,
  prefix,
  prefixes,
  mac,
  rows,
};
enum class Unit : std::uint8_t { none, mib, seconds, percent, hundredths, octets, port, count };
// Who may change it: a person, or only the program (identity and bookkeeping).
enum class Owner : std::uint8_t { person, program };
// What becomes of a reference when the element it names is removed.
enum class OnRemoval : std::uint8_t {
  clear,  // the field is emptied, list items and rows that name it are dropped
  follow, // the element that holds the reference goes as well
};

using KindSet = std::uint32_t;
constexpr KindSet kinds(std::initializer_list<Kind> list) {
  KindSet set = 0;
  for (const Kind k : list) set |= KindSet{1} << static_cast<unsigned>(k);
  return set;
}

struct FieldInfo {
  std::string_view key; // in the document
  Term label;           // for a person, in the trade's words
  Term help;            // one line: meaning; for a rule of thumb its reason
  FieldType type = FieldType::text;
  Unit unit = Unit::none;
  bool optional = false;  // may be "not set": absent or null in the document
  std::int64_t least = 0; // of integers
  std::int64_t most = 0;
  std::optional<Family> family; // of addresses and prefixes; none: either
  std::size_t max_length = 0;   // of texts in octets and of lists in items
  int since = 1;                // format version
  Owner owner = Owner::person;
  bool rare = false; // a panel may fold it away while it has its default
  OnRemoval on_removal = OnRemoval::clear;
  KindSet id_kinds = 0; // of ids
  std::span<const std::string_view> choices = {};
  const StructInfo* row = nullptr; // of rows

  // `object` points to a struct of the table this row stands in.
  Value (*get)(const void* object) = nullptr;
  // Assigns; false when the value's type does not fit or a choice's word is not known. Ranges: see check().
  bool (*set)(void* object, const Value&) = nullptr;
  bool (*is_default)(const void* object) = nullptr;
  bool (*equal)(const void* a, const void* b) = nullptr;
  // Appends the value as compact JSON text.
  void (*write)(const void* object, std::string& out) = nullptr;
  // Of rows: a default row at the end of the list; the pointer is good until the list grows again.
  void* (*append_row)(void* object) = nullptr;

  constexpr FieldInfo range(std::int64_t lo, std::int64_t hi, Unit u) const {
    FieldInfo f = *this;
    f.least = lo;
    f.most = hi;
    f.unit = u;
    return f;
  }
  constexpr FieldInfo by_program() const {
    FieldInfo f = *this;
    f.owner = Owner::program;
    return f;
  }
  constexpr FieldInfo rarely() const {
    FieldInfo f = *this;
    f.rare = true;
    return f;
  }
  constexpr FieldInfo follows() const {
    FieldInfo f = *this;
    f.on_removal = OnRemoval::follow;
    return f;
  }
  constexpr FieldInfo only(Family f4_or_6) const {
    FieldInfo f = *this;
    f.family = f4_or_6;
    return f;
  }
  constexpr FieldInfo of(KindSet allowed) const {
    FieldInfo f = *this;
    f.id_kinds = allowed;
    return f;
  }
  constexpr FieldInfo up_to(std::size_t n) const {
    FieldInfo f = *this;
    f.max_length = n;
    return f;
  }
};

// A struct of the model: a singleton, an element or a row.
struct StructInfo {
  Kind kind = Kind::none;      // none: a row
  std::string_view collection; // key of its list (or object) in the document: "machines", "pc"
  Term noun;                   // for a person: "machine"
  std::span<const FieldInfo> fields;
  std::size_t max_count = 0;   // of elements
  const void* blank = nullptr; // an object with every field at its default
  Unknown& (*unknown)(void* object) = nullptr;
  AnyId (*id)(const void* object) = nullptr; // of elements
  void (*set_id)(void* object, std::uint32_t number) = nullptr;

  // By document key; null when this version has no such field.
  const FieldInfo* field(std::string_view key) const;
};

// Table of a struct of the model (LabFacts, Pc, …, CardAddress).
template <typename S>
const StructInfo& info();
// Table of a kind; `kind` must be a singleton's or an element's.
const StructInfo& info_of(Kind);
// Kinds in the order in which the document holds them: singletons first.
std::span<const Kind> kinds_in_document();

// Nothing when `value` may stand in `field`: type, range, length, choice, kind of id; rows are checked
// field by field. Whether an id exists is not checked here.
Result<void> check(const FieldInfo& field, const Value& value);

// "2.5 GiB", "on", "172.22.10.12", "m3": a value for messages that are not about a lab's names.
std::string show(const FieldInfo& field, const Value& value);

} // namespace snug
