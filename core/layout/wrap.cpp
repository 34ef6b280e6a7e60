#include "core/base/quote.h"
#include "core/layout/text_width.h"

#include <algorithm>
#include <cassert>

namespace snug {

namespace {

// Lines filled so far; `line_` is the one being filled.
class Wrapper {
 public:
  Wrapper(int max_width, int font_size, Weight weight)
      : max_width_(max_width), font_size_(font_size), weight_(weight) {}
  void paragraph(std::string_view text);
  std::vector<std::string_view> lines() && { return std::move(lines_); }

 private:
  void word(std::string_view text);
  void part(std::string_view text);
  void characters(std::string_view text);
  void flush();
  std::string_view joined(std::string_view part) const;
  bool fits_units(std::int64_t units) const {
    return units * font_size_ <= static_cast<std::int64_t>(max_width_) * kFontUnitsPerEm;
  }
  bool fits(std::string_view text) const { return fits_units(text_units(text, weight_)); }

  int max_width_;
  int font_size_;
  Weight weight_;
  std::string_view line_;
  std::vector<std::string_view> lines_;
};

// Bytes up to and with the first hyphen (U+002D, U+2010); all where none stands.
std::size_t hyphenated(std::string_view text) {
  static constexpr std::string_view kHyphen = "\u2010";
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '-') return at + 1;
    if (text.substr(at).starts_with(kHyphen)) return at + kHyphen.size();
  }
  return text.size();
}

// From the beginning of the line to the end of `part`, which stands behind it in the same text.
std::string_view Wrapper::joined(std::string_view part) const {
  if (line_.empty()) return part;
  return {line_.data(), static_cast<std::size_t>(part.data() + part.size() - line_.data())};
}

void Wrapper::flush() {
  if (!line_.empty()) lines_.push_back(line_);
  line_ = {};
}

void Wrapper::characters(std::string_view text) {
  std::int64_t sum = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::string_view character = text.substr(at, code_point_at(text, at).length);
    const std::int64_t width = text_units(character, weight_);
    if (!line_.empty() && width > 0 && !fits_units(sum + width)) {
      flush();
      sum = 0;
    }
    line_ = joined(character);
    sum += width;
    at += character.size();
  }
}

void Wrapper::part(std::string_view text) {
  if (!fits(joined(text))) flush();
  if (fits(joined(text))) {
    line_ = joined(text);
  } else {
    characters(text);
  }
}

void Wrapper::word(std::string_view text) {
  if (!fits(joined(text))) flush();
  if (fits(joined(text))) {
    line_ = joined(text);
    return;
  }
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = hyphenated(text.substr(at));
    part(text.substr(at, length));
    at += length;
  }
}

void Wrapper::paragraph(std::string_view text) {
  const std::size_t before = lines_.size();
  for (std::size_t at = 0; (at = text.find_first_not_of(' ', at)) != std::string_view::npos;) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    word(text.substr(at, end - at));
    at = end;
  }
  flush();
  if (lines_.size() == before) lines_.emplace_back();
}

} // namespace

std::vector<std::string_view> wrap(std::string_view utf8, int max_width, int font_size, Weight weight) {
  assert(font_size >= 0);
  Wrapper wrapper(max_width, font_size, weight);
  for (std::size_t at = 0; at <= utf8.size();) {
    const std::size_t end = std::min(utf8.find('\n', at), utf8.size());
    wrapper.paragraph(utf8.substr(at, end - at));
    at = end + 1;
  }
  return std::move(wrapper).lines();
}

} // namespace snug
