#include "core/document/json_walk.h"

namespace snug::detail {

const char* end_of_number(std::string_view text, const char* seen) {
  constexpr std::string_view kNumber = "0123456789+-.eE";
  return seen > text.data() && kNumber.find(seen[-1]) == std::string_view::npos ? seen - 1 : seen;
}

bool Trail::key(const std::string& key) {
  Step& step = steps_.back();
  step.key = key;
  return step.keys.insert(key).second;
}

std::string Trail::pointer() const {
  std::string out;
  for (const Step& step : steps_) {
    if (!step.list) {
      append_pointer(out, step.key);
    } else if (step.index != kBefore) {
      append_pointer(out, step.index);
    }
  }
  return out;
}

void append_pointer(std::string& pointer, std::string_view key) {
  pointer += '/';
  for (const char c : key) {
    if (c == '~' || c == '/') {
      pointer += c == '~' ? "~0" : "~1";
    } else {
      pointer += c;
    }
  }
}

void append_pointer(std::string& pointer, std::size_t index) { (pointer += '/') += std::to_string(index); }

} // namespace snug::detail
