#include "core/document/locate.h"

#include "core/document/json_walk.h"

#include <algorithm>

namespace snug::detail {

namespace {

using Json = nlohmann::json;

// Stops at the value or key that a pointer names. Goes on where nothing else can be told apart: equal keys.
class Finder {
 public:
  Finder(std::string_view text, const char*& seen, std::string_view pointer, Part part, int occurrence)
      : text_(text), seen_(seen), before_(text.data()), pointer_(pointer), part_(part), left_(occurrence),
        depth_(static_cast<std::size_t>(std::count(pointer.begin(), pointer.end(), '/'))) {}

  bool null() { return scalar(false); }
  bool boolean(bool) { return scalar(false); }
  bool number_integer(Json::number_integer_t) { return scalar(true); }
  bool number_unsigned(Json::number_unsigned_t) { return scalar(true); }
  bool number_float(Json::number_float_t, const std::string&) { return scalar(true); }
  bool string(std::string&) { return scalar(false); }
  bool binary(Json::binary_t&) { return scalar(false); }
  bool start_object(std::size_t) { return open(false); }
  bool start_array(std::size_t) { return open(true); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(std::string& k) {
    trail_.key(k);
    if (part_ == Part::key && is_here() && --left_ == 0) return stop();
    before_ = seen_;
    return true;
  }
  bool parse_error(std::size_t, const std::string&, const nlohmann::detail::exception&) { return false; }
  std::optional<std::size_t> found() const { return found_; }

 private:
  bool is_here() const { return trail_.depth() == depth_ && trail_.pointer() == pointer_; }
  bool stop() {
    while (is_blank(*before_) || *before_ == ',' || *before_ == ':') ++before_;
    found_ = static_cast<std::size_t>(before_ - text_.data());
    return false;
  }
  bool at_value() {
    trail_.value();
    return part_ == Part::value && is_here() && --left_ == 0;
  }
  bool scalar(bool number) {
    if (at_value()) return stop();
    before_ = number ? end_of_number(text_, seen_) : seen_;
    return true;
  }
  bool open(bool list) {
    if (at_value()) return stop();
    if (trail_.depth() == kMostDepth) return false;
    trail_.open(list);
    before_ = seen_;
    return true;
  }
  bool close() {
    trail_.close();
    before_ = seen_;
    return true;
  }

  std::string_view text_;
  const char*& seen_;
  const char* before_; // end of the last event
  std::string_view pointer_;
  Part part_;
  int left_;
  std::size_t depth_;
  Trail trail_;
  std::optional<std::size_t> found_;
};

} // namespace

TextPlace place_at(std::string_view text, std::size_t offset) {
  TextPlace place{1, 1};
  for (std::size_t i = 0; i < offset && i < text.size(); ++i) {
    const bool lone_cr = text[i] == '\r' && (i + 1 == text.size() || text[i + 1] != '\n');
    if (text[i] == '\n' || lone_cr) {
      ++place.line;
      place.column = 1;
    } else if ((static_cast<unsigned char>(text[i]) & 0xc0U) != 0x80) {
      ++place.column;
    }
  }
  return place;
}

std::optional<std::size_t> find_pointer(std::string_view text, std::string_view pointer, Part part,
                                        int occurrence) {
  const char* seen = nullptr;
  Finder finder(text, seen, pointer, part, occurrence);
  walk(text, seen, finder);
  return finder.found();
}

} // namespace snug::detail
