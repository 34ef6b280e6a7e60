#include "core/layout/metrics.h"

#include "core/base/quote.h"

namespace snug::layout {

std::string fitted(std::string_view text, int size, Weight weight, int most) {
  if (width_of(text, size, weight) <= most) return std::string(text);
  constexpr std::string_view kEllipsis = "…";
  const std::int64_t room = std::int64_t{most} * kFontUnitsPerEm / size - text_units(kEllipsis, weight);
  std::int64_t used = 0;
  std::size_t at = 0;
  while (at < text.size()) {
    const CodePoint c = code_point_at(text, at);
    used += text_units(text.substr(at, c.length), weight);
    if (used > room) break;
    at += c.length;
  }
  while (at > 0 && text[at - 1] == ' ') --at;
  return std::string(text.substr(0, at)) + std::string(kEllipsis);
}

} // namespace snug::layout
