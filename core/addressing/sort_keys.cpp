#include "core/addressing/sort_keys.h"

#include <algorithm>
#include <array>
#include <bit>
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

std::vector<WideKey> maybe_repeated(std::span<const std::uint64_t> values) {
  constexpr std::size_t kBitsEach = 8, kWord = 64;
  const std::size_t bits = std::bit_ceil(std::max(values.size() * kBitsEach, kWord));
  const unsigned shift = kWord - static_cast<unsigned>(std::countr_zero(bits));
  constexpr std::uint64_t kSpread = 0x9e37'79b9'7f4a'7c15; // 2^64 / golden ratio (Knuth, TAOCP 6.4)
  const auto slot = [shift](std::uint64_t v) { return (v * kSpread) >> shift; };
  struct Seen {
    std::uint64_t once = 0, again = 0;
  };
  std::vector<Seen> seen(bits / kWord);
  for (const std::uint64_t v : values) {
    if (v == 0) continue;
    Seen& word = seen[slot(v) / kWord];
    const std::uint64_t bit = std::uint64_t{1} << (slot(v) % kWord);
    word.again |= word.once & bit;
    word.once |= bit;
  }
  std::vector<WideKey> out;
  for (std::uint32_t i = 0; i < values.size(); ++i)
    if (values[i] != 0 && (seen[slot(values[i]) / kWord].again >> (slot(values[i]) % kWord) & 1U) != 0)
      out.push_back({0, values[i], i});
  return out;
}

} // namespace snug
