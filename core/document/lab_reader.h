#pragma once
// The event reader that fills a lab straight from JSON text through the field tables (DECISIONS 8).

#include "core/document/fault.h"
#include "core/document/json_walk.h"
#include "core/model/store.h"

#include <array>
#include <memory>
#include <optional>
#include <unordered_set>
#include <vector>

namespace snug::detail {

// An id that the document uses, and where: checked once everything is read.
struct Reference {
  static constexpr std::uint32_t kNone = 0xffff'ffff;
  AnyId id;
  Kind kind = Kind::none;    // of the element that holds it
  std::uint32_t element = 0; // place in its list
  const FieldInfo* field = nullptr;
  std::uint32_t item = kNone;        // in a list or of rows
  const FieldInfo* column = nullptr; // of a row
};
std::string pointer_of(const Reference&);

struct UnknownKey {
  std::string key;
  std::string owner; // pointer to the object that holds it
};

class LabReader {
 public:
  // `text` is walked with `seen`; `lab` is a default lab.
  LabReader(std::string_view text, const char*& seen, Lab& lab) : text_(text), seen_(seen), lab_(lab) {}

  const std::optional<Fault>& fault() const { return fault_; }
  std::size_t syntax_offset() const { return syntax_offset_; } // when there is no fault
  const std::string& syntax_token() const { return syntax_token_; }
  bool number_too_large() const { return number_too_large_; }
  const std::vector<Reference>& references() const { return references_; }
  const std::vector<UnknownKey>& unknown_keys() const { return unknown_keys_; } // the first of them
  std::size_t unknown_count() const { return unknown_count_; }

  bool null() { return scalar(Value(), {}); }
  bool boolean(bool b) { return scalar(Value(b), {}); }
  bool number_integer(nlohmann::json::number_integer_t n) { return scalar(Value(std::int64_t{n}), {}, true); }
  bool number_unsigned(nlohmann::json::number_unsigned_t n);
  bool number_float(nlohmann::json::number_float_t, const std::string& raw);
  bool string(std::string& s) { return scalar(Value(std::move(s)), {}); }
  bool binary(nlohmann::json::binary_t&) { return false; } // not in text
  bool start_object(std::size_t);
  bool start_array(std::size_t);
  bool end_object();
  bool end_array();
  bool key(std::string& k);
  bool parse_error(std::size_t position, const std::string& token, const nlohmann::detail::exception& e);

 private:
  enum class At : std::uint8_t { start, document, singleton, list, element, rows, row, values };
  enum class Await : std::uint8_t { nothing, header, part, id, field, unknown };
  struct Frame {
    At at = At::start;
    Await await = Await::nothing;
    const StructInfo* table = nullptr; // of a singleton, an element, a row, or of what a list holds
    void* object = nullptr;
    const FieldInfo* field = nullptr; // that awaits its value; of rows and values
    std::size_t next = 0;             // where in the table the next key is looked for first
    std::uint64_t seen_keys = 0;      // bit of a field, of an id, of a part
    std::uint32_t index = 0;          // of the next entry of a list
    std::string key;                  // an unknown one that awaits its value
    std::string unknown;              // members so far
    std::unordered_set<std::string> unknown_seen;
  };

  Frame& top() { return frames_[depth_]; }
  Frame& push(At at, const StructInfo* table, void* object);
  bool document_key(Frame& f, const std::string& k);
  bool field_key(Frame& f, const std::string& k);
  bool unknown_key(Frame& f, const std::string& k);
  bool mark(Frame& f, unsigned bit, std::string_view k);
  // `raw`: a number that is no int64.
  bool scalar(Value v, std::string_view raw, bool number = false);
  bool set_id(Frame& f, const Value& v);
  bool set_field(Frame& f, Value v, std::string_view raw);
  bool add_item(Frame& f, Value v, std::string_view raw);
  bool open(bool list);
  bool open_unknown(bool list);
  bool open_part(Frame& f, bool list);
  bool open_field(Frame& f, bool list);
  bool open_entry(Frame& f, bool list);
  bool close();
  bool close_values(Frame& f);
  bool end_unknown(bool number);
  void keep_unknown(Frame& f);
  void refer(const FieldInfo& field, AnyId id);

  bool refuse(Message m, std::string pointer);
  bool refuse(Problem p, std::string pointer) { return refuse(std::move(p.message), std::move(pointer)); }
  bool refuse_twice(std::string_view k, std::string pointer);
  std::string pointer_to(std::size_t depth) const; // of the value that frame `depth` awaits or is in
  std::string pointer() const { return pointer_to(depth_); }
  std::string owner_pointer() const; // of the object on top

  std::string_view text_;
  const char*& seen_;
  Lab& lab_;
  std::array<Frame, 6> frames_{};
  std::size_t depth_ = 0; // of frames_
  Kind kind_ = Kind::none;
  std::uint32_t element_ = 0;
  ValueList items_;
  const char* unknown_from_ = nullptr;
  Trail unknown_trail_; // inside an unknown value
  std::vector<Reference> references_;
  std::vector<UnknownKey> unknown_keys_;
  std::size_t unknown_count_ = 0;
  std::optional<Fault> fault_;
  std::size_t syntax_offset_ = 0;
  std::string syntax_token_;
  bool number_too_large_ = false;
};

} // namespace snug::detail
