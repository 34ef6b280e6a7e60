#pragma once
// Walking JSON text (RFC 8259) with the library's event parser, which knows at each event how far it has
// read.

#include <cstddef>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

namespace snug::detail {

inline constexpr std::size_t kMostDepth = 64; // of objects and lists, the document itself included

// Reads octets and tells through `seen` where the next one will come from.
class Octets {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*; // NOLINT(readability-identifier-naming): names of std::iterator_traits
  using reference = char;      // NOLINT(readability-identifier-naming)
  Octets(const char* at, const char** seen) : at_(at), seen_(seen) {}
  char operator*() const { return *at_; }
  Octets& operator++() {
    *seen_ = ++at_;
    return *this;
  }
  friend bool operator==(const Octets& a, const Octets& b) { return a.at_ == b.at_; }
  friend bool operator!=(const Octets& a, const Octets& b) { return a.at_ != b.at_; }

 private:
  const char* at_;
  const char** seen_;
};

// Sends every event of `text` to `events` (nlohmann's SAX interface) until one returns false. `seen` points
// behind the last octet read: the end of a string, literal or bracket; one further after a number.
template <typename Events>
bool walk(std::string_view text, const char*& seen, Events& events) {
  seen = text.data();
  const char* end = text.data() + text.size();
  const char* unused = end;
  return nlohmann::json::sax_parse(Octets(text.data(), &seen), Octets(end, &unused), &events);
}

inline constexpr bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
// Where a number that ends at or before `seen` ends.
const char* end_of_number(std::string_view text, const char* seen);

// Where a walk stands, as a JSON Pointer (RFC 6901).
class Trail {
 public:
  void open(bool list) { steps_.push_back({list, kBefore, {}, {}}); }
  void close() { steps_.pop_back(); }
  // False when the object has had this key already.
  bool key(const std::string& key);
  // Before every value, scalar or not.
  void value() {
    if (!steps_.empty() && steps_.back().list) ++steps_.back().index;
  }
  std::size_t depth() const { return steps_.size(); }
  std::string pointer() const;

 private:
  static constexpr std::size_t kBefore = static_cast<std::size_t>(-1);
  struct Step {
    bool list;
    std::size_t index;
    std::string key;
    std::unordered_set<std::string> keys;
  };
  std::vector<Step> steps_;
};

void append_pointer(std::string& pointer, std::string_view key); // "/key" with ~ and / escaped
void append_pointer(std::string& pointer, std::size_t index);

} // namespace snug::detail
