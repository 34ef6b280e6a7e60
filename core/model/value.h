#pragma once
// The value of any field, and how C++ members turn into values and back.

#include "core/model/basics.h"

#include <type_traits>
#include <variant>

namespace snug {

// monostate: not set (an empty optional, an id that is none). Choices are held by their word. Lists of rows
// are lists of Row values.
class Value;
using ValueList = std::vector<Value>;
// The fields of a row in the order of its table, and what the document had beside them.
struct RowValue;

class Value {
 public:
  using Data = std::variant<std::monostate, bool, std::int64_t, std::string, AnyId, Address, Prefix, Mac,
                            Date, std::shared_ptr<const ValueList>, std::shared_ptr<const RowValue>>;
  Value() = default;
  template <typename T>
  requires(!std::is_same_v<std::decay_t<T>, Value> && std::is_constructible_v<Data, T>) Value(T&& v)
      : data_(std::forward<T>(v)) {
  } // NOLINT(google-explicit-constructor,bugprone-forwarding-reference-overload)
  static Value list(ValueList items) {
    return Value(Data(std::make_shared<const ValueList>(std::move(items))));
  }
  static Value row(RowValue row);

  bool is_set() const { return !std::holds_alternative<std::monostate>(data_); }
  template <typename T>
  const T* as() const {
    return std::get_if<T>(&data_);
  }
  const ValueList* as_list() const {
    const auto* p = std::get_if<std::shared_ptr<const ValueList>>(&data_);
    return p ? p->get() : nullptr;
  }
  const RowValue* as_row() const {
    const auto* p = std::get_if<std::shared_ptr<const RowValue>>(&data_);
    return p ? p->get() : nullptr;
  }
  friend bool operator==(const Value& a, const Value& b);

 private:
  explicit Value(Data d) : data_(std::move(d)) {}
  Data data_;
};

struct RowValue {
  ValueList fields;
  Unknown unknown;
  friend bool operator==(const RowValue&, const RowValue&) = default;
};

inline Value Value::row(RowValue row) {
  return Value(Data(std::make_shared<const RowValue>(std::move(row))));
}

} // namespace snug
