#pragma once
// Elements of a lab by kind, without knowing their C++ type: what edits, documents and differences work on.

#include "core/model/field.h"
#include "core/model/lab.h"

#include <functional>

namespace snug {

// How the elements of one kind are reached. Singletons have exactly one element, at place 0.
struct Store {
  const StructInfo* table = nullptr;
  std::size_t (*count)(const Lab&) = nullptr;
  void* (*at_)(Lab&, std::size_t place) = nullptr; // see at()
  // For element kinds only; null for singletons.
  void (*insert)(Lab&, std::size_t place, const AnyElement&) = nullptr; // the variant holds this kind
  void (*erase)(Lab&, std::size_t place) = nullptr;
  AnyElement (*take)(const Lab&, std::size_t place) = nullptr; // a copy
  void* (*append)(Lab&) = nullptr;                             // a default element at the end
  void (*reserve)(Lab&, std::size_t) = nullptr;

  void* at(Lab& lab, std::size_t place) const { return at_(lab, place); } // place < count
  const void* at(const Lab& lab, std::size_t place) const { return at_(const_cast<Lab&>(lab), place); }
};

const Store& store_of(Kind);
Kind kind_of(const AnyElement&);
AnyId id_of(const AnyElement&);
const void* object_of(const AnyElement&);
void* object_of(AnyElement&);

// Place of an element in its list; nothing when it is not there. Singletons: 0.
std::optional<std::size_t> place_of(const Lab&, AnyId);
// The object with this id, or null.
const void* object_at(const Lab&, AnyId);
void* object_at(Lab&, AnyId);
bool exists(const Lab&, AnyId); // "outside" and "everyone" always do

// Name of an element for sentences: its name, else a description ("card 2 of deck-a", "disk 1 of hold"), else
// its id. Never empty.
std::string name_of(const Lab&, AnyId);

// Calls use(id) for every id that `value` of `field` holds, rows included.
void each_id(const FieldInfo& field, const Value& value,
             const std::function<void(const FieldInfo&, AnyId)>& use);

} // namespace snug
