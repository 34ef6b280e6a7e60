#include "core/base/message.h"

#include "core/base/result.h"
#include "core/base/tongue.h"

namespace snug {

std::string show_tenths(std::int64_t n, std::int64_t unit) {
  const bool negative = n < 0;
  const std::uint64_t magnitude =
      negative ? 0U - static_cast<std::uint64_t>(n) : static_cast<std::uint64_t>(n);
  const auto u = static_cast<std::uint64_t>(unit);
  const std::uint64_t rounded = (magnitude / u) * 10 + ((magnitude % u) * 10 + u / 2) / u;
  std::string out = negative && rounded != 0 ? "-" : "";
  return out + std::to_string(rounded / 10) + "." + std::to_string(rounded % 10);
}

std::string show_mib(std::int64_t mib) {
  if (mib > -kShowGibFrom && mib < kShowGibFrom) return std::to_string(mib) + " MiB";
  return show_tenths(mib, kShowGibFrom) + " GiB";
}

std::string english(const Argument& a) { return Tongue().say(a); }
std::string english(const Message& m) { return Tongue().say(m); }
std::string sentence(const Message& m) { return Tongue().sentence(m); }

std::string english(const Problem& p) { return place_of(p) + english(p.message); }

std::string place_of(const Problem& p) {
  std::string out = p.file;
  if (p.line > 0) {
    if (!out.empty()) out += ':';
    out += std::to_string(p.line) + ":" + std::to_string(p.column);
  }
  if (!out.empty()) out += ": ";
  if (!p.path.empty()) out += p.path + ": ";
  return out;
}

} // namespace snug
