#include "core/addressing/sort_keys.h"

#include <algorithm>
#include <array>
#include <tuple>

namespace snug {

namespace {

constexpr std::size_t kRadixFrom = 2048; // below, std::sort is quicker (PERFORMANCE 1)
constexpr unsigned kDigitBits = 11;
constexpr std::size_t kDigits = std::size_t{1} << kDigitBits;

// One pass; nothing moves when all keys have the same digit.
template <typename Key, typename Digit>
void radix_pass(std::vector<Key>& keys, std::vector<Key>& scratch, Digit digit) {
  std::array<std::uint32_t, kDigits> start{};
  for (const Key& k : keys) ++start[digit(k)];
  if (start[digit(keys.front())] == keys.size()) return;
  std::uint32_t at = 0;
  for (std::uint32_t& s : start) {
    const std::uint32_t n = s;
    s = at;
    at += n;
  }
  for (const Key& k : keys) scratch[start[digit(k)]++] = k;
  keys.swap(scratch);
}

template <typename Key, typename Word>
void radix_word(std::vector<Key>& keys, std::vector<Key>& scratch, unsigned from_bit, Word word) {
  for (unsigned shift = from_bit; shift < 64; shift += kDigitBits)
    radix_pass(keys, scratch,
               [&](const Key& k) { return static_cast<std::size_t>(word(k) >> shift) & (kDigits - 1); });
}

} // namespace

void sort_by_upper_half(std::vector<std::uint64_t>& keys) {
  if (keys.size() < kRadixFrom) {
    std::sort(keys.begin(), keys.end());
    return;
  }
  std::vector<std::uint64_t> scratch(keys.size());
  radix_word(keys, scratch, 32, [](std::uint64_t k) { return k; });
}

void sort_wide_keys(std::vector<WideKey>& keys) {
  if (keys.size() < kRadixFrom) {
    std::sort(keys.begin(), keys.end(), [](const WideKey& a, const WideKey& b) {
      return std::tie(a.high, a.low, a.place) < std::tie(b.high, b.low, b.place);
    });
    return;
  }
  std::vector<WideKey> scratch(keys.size());
  radix_word(keys, scratch, 0, [](const WideKey& k) { return k.low; });
  radix_word(keys, scratch, 0, [](const WideKey& k) { return k.high; });
}

} // namespace snug
