#include "core/base/likeness.h"

#include <algorithm>
#include <vector>

namespace snug {

std::size_t letters_apart(std::string_view a, std::string_view b) {
  std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i)
    for (std::size_t j = 1; j <= b.size(); ++j) {
      d[i][j] =
          std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
    }
  return d[a.size()][b.size()];
}

std::size_t letters_forgiven(std::string_view typed) { return typed.size() < 5 ? 1 : 2; }

std::string nearest_word(std::string_view typed, std::span<const std::string> words) {
  constexpr std::size_t kLongest = 64;
  if (typed.empty() || typed.size() > kLongest) return {};
  std::size_t best = letters_forgiven(typed) + 1;
  std::string found;
  for (const std::string& word : words) {
    const std::size_t n = letters_apart(typed, word);
    if (n == 0 || n >= best) continue;
    best = n;
    found = word;
  }
  return found;
}

} // namespace snug
