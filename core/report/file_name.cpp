#include "core/report/escape.h"

#include "core/base/quote.h"
#include "core/report/unicode.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

void append_utf8(std::string& out, char32_t c) {
  const auto put = [&](char32_t byte) { out += static_cast<char>(static_cast<unsigned char>(byte)); };
  if (c < 0x80) return put(c);
  if (c < 0x800) {
    put(0xc0U | (c >> 6U));
  } else {
    put(0xe0U | (c >> 12U)); // file letters and folded ones lie below U+10000
    put(0x80U | ((c >> 6U) & 0x3fU));
  }
  put(0x80U | (c & 0x3fU));
}

bool is_plain(char32_t c) {
  if (c >= 0x80) return is_file_letter(c);
  const char ascii = static_cast<char>(c);
  return is_letter(ascii) || is_digit(ascii) ||
         std::string_view(" ._()+-").find(ascii) != std::string_view::npos;
}

bool is_dropped_mark(char32_t c) { return (c >= 0x300 && c <= 0x36f) || c == 0x3099 || c == 0x309a; }

std::string plain(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint c = code_point_at(text, at);
    if (c.valid && c.value == 0xdf) {
      out += "ss"; // some systems take sharp s and "ss" for the same
    } else if (c.valid && is_plain(c.value)) {
      out += text.substr(at, c.length);
    } else if (!is_dropped_mark(c.value) && !out.ends_with('-')) {
      out += '-';
    }
    at += c.length;
  }
  return out;
}

void trim_end(std::string& name) {
  const std::size_t last = name.find_last_not_of(" .-");
  name.erase(last == std::string::npos ? 0 : last + 1);
}

void cut(std::string& name, std::size_t bytes) {
  if (name.size() <= bytes) return;
  while (bytes > 0 && (static_cast<unsigned char>(name[bytes]) & 0xc0U) == 0x80) --bytes;
  name.erase(bytes);
  trim_end(name);
}

std::string folded_name(std::string_view name) {
  std::string out;
  for (std::size_t at = 0; at < name.size();) {
    const CodePoint c = code_point_at(name, at);
    append_utf8(out, folded(c.value));
    at += c.length;
  }
  return out;
}

// The part before the first dot, without spaces at its end, is what some systems take for a device.
bool is_device(std::string_view name) {
  static constexpr std::array<std::string_view, 6> kDevices{"con", "prn", "aux", "nul", "conin", "conout"};
  std::string stem = folded_name(name.substr(0, name.find('.')));
  stem.erase(stem.find_last_not_of(' ') + 1);
  if (std::find(kDevices.begin(), kDevices.end(), stem) != kDevices.end()) return true;
  return stem.size() == 4 && (stem.starts_with("com") || stem.starts_with("lpt")) && is_digit(stem[3]);
}

} // namespace

std::string FileNames::next(std::string_view text, std::string_view extension) {
  constexpr std::size_t kNumberBytes = 12; // "-" and a number
  std::string stem = plain(clean(text));
  stem.erase(0, std::min(stem.find_first_not_of(" .-"), stem.size()));
  trim_end(stem);
  if (stem.empty()) stem = "unnamed";
  if (is_device(stem)) stem.insert(0, 1, '_');
  cut(stem, kFileNameBytes - kNumberBytes - std::min<std::size_t>(extension.size(), 20));
  std::string wanted = stem + std::string(extension);
  const auto [first, is_new] = taken_.try_emplace(folded_name(wanted), 1);
  if (is_new) return wanted;
  while (true) {
    std::string name = stem + '-' + csv_number(++first->second) + std::string(extension);
    if (taken_.try_emplace(folded_name(name), 1).second) return name;
  }
}

} // namespace snug
