#include "core/document/new_lab.h"

#include "core/model/store.h"

#include <random>

namespace snug {

namespace {

constexpr std::uint64_t kLow16 = 0xffff; // of the high half: what a /48 leaves to the lab

// Moves what lies in one /48 to another.
class Move48 {
 public:
  Move48(const Prefix& from, const Prefix& to) : from_(from), to_(to) {}

  Value moved(const Value& v) const {
    if (const Address* a = v.as<Address>()) return moved(*a);
    if (const Prefix* p = v.as<Prefix>())
      return from_.contains(*p) ? Prefix::of(moved(p->network()), p->length()) : *p;
    if (const ValueList* list = v.as_list()) {
      ValueList out;
      out.reserve(list->size());
      for (const Value& item : *list) out.push_back(moved(item));
      return Value::list(std::move(out));
    }
    if (const RowValue* row = v.as_row()) {
      RowValue out = *row;
      for (Value& field : out.fields) field = moved(field);
      return Value::row(std::move(out));
    }
    return v;
  }

 private:
  Address moved(const Address& a) const {
    if (!from_.contains(a)) return a;
    return Address::v6((to_.network().high() & ~kLow16) | (a.high() & kLow16), a.low());
  }
  Prefix from_, to_;
};

bool holds_addresses(const FieldInfo& f) {
  return f.type == FieldType::address || f.type == FieldType::prefix || f.type == FieldType::prefixes ||
         f.type == FieldType::rows;
}

void move_all(Lab& lab, const Move48& move) {
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    for (std::size_t i = 0; i < store.count(lab); ++i)
      for (const FieldInfo& f : store.table->fields)
        if (holds_addresses(f)) f.set(store.at(lab, i), move.moved(f.get(store.at(lab, i))));
  }
}

} // namespace

std::string random_uid() {
  constexpr std::string_view kHex = "0123456789abcdef";
  constexpr int kWords = 4;
  std::random_device source;
  std::string uid;
  for (int word = 0; word < kWords; ++word) {
    const auto bits = static_cast<std::uint32_t>(source());
    for (unsigned shift = 0; shift < 32; shift += 4) uid += kHex[(bits >> shift) & 0xfU];
  }
  return uid;
}

Lab blank_lab(std::string uid) {
  Lab lab;
  lab.facts.uid = std::move(uid);
  return lab;
}

Lab copy_as_template(const Lab& original, std::string uid) {
  Lab lab = original;
  lab.facts.uid = std::move(uid);
  constexpr int kPrivateLength = 48;
  if (lab.facts.local_prefix6 && lab.facts.local_prefix6->length() == kPrivateLength)
    move_all(lab, Move48(*lab.facts.local_prefix6, unique_local_prefix(lab.facts.uid)));
  for (Card& c : lab.cards)
    if (c.mac_source == MacSource::derived) c.mac = derived_mac(lab.facts.uid, 0, c.id.number);
  return lab;
}

} // namespace snug
