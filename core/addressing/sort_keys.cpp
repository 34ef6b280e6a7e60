#include "core/addressing/sort_keys.h"

#include <algorithm>
#include <array>
#include <bit>
#include <utility>

namespace snug {

namespace {

constexpr std::size_t kRadixFrom = 2048; // below, comparing is quicker (PERFORMANCE 1)
constexpr unsigned kDigitBits = 11;
constexpr std::size_t kDigits = std::size_t{1} << kDigitBits;
constexpr int kFewRuns = 4;

bool is_before(const WideKey& a, const WideKey& b) { return a.is_before(b); }

// One pass from one list into the other; nothing moves when all keys have the same digit.
template <typename Digit>
bool radix_pass(std::span<const WideKey> from, std::span<WideKey> to, Digit digit) {
  std::array<std::uint32_t, kDigits> start{};
  for (const WideKey& k : from) ++start[digit(k)];
  if (start[digit(from.front())] == from.size()) return false;
  std::uint32_t at = 0;
  for (std::uint32_t& s : start) at += std::exchange(s, at);
  for (const WideKey& k : from) to[start[digit(k)]++] = k;
  return true;
}

void radix_sort(std::span<WideKey> keys, std::span<WideKey> scratch) {
  std::span<WideKey> from = keys, to = scratch;
  for (std::uint64_t WideKey::*word : {&WideKey::low, &WideKey::high})
    for (unsigned shift = 0; shift < 64; shift += kDigitBits)
      if (radix_pass(from, to, [=](const WideKey& k) { return (k.*word >> shift) & (kDigits - 1); }))
        std::swap(from, to);
  if (from.data() != keys.data()) std::copy(from.begin(), from.end(), keys.begin());
}

// Lists mostly are in order, or a few such lists one after the other: merges those. False: there are more.
bool merge_runs(std::span<WideKey> keys, std::span<WideKey> scratch) {
  auto end = std::is_sorted_until(keys.begin(), keys.end(), is_before);
  for (int runs = 1; end != keys.end(); ++runs) {
    if (runs == kFewRuns) return false;
    const auto next = std::is_sorted_until(end, keys.end(), is_before);
    const auto merged = std::merge(keys.begin(), end, end, next, scratch.begin(), is_before);
    std::copy(scratch.begin(), merged, keys.begin());
    end = next;
  }
  return true;
}

} // namespace

void sort_wide_keys(std::span<WideKey> keys, std::vector<WideKey>& scratch) {
  if (scratch.size() < keys.size()) scratch.resize(keys.size());
  const std::span<WideKey> other = std::span(scratch).first(keys.size());
  if (merge_runs(keys, other)) return;
  if (keys.size() < kRadixFrom)
    std::stable_sort(keys.begin(), keys.end(), is_before);
  else
    radix_sort(keys, other);
}

void sort_wide_keys(std::vector<WideKey>& keys) {
  std::vector<WideKey> scratch;
  sort_wide_keys(keys, scratch);
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
      out.push_back({0, values[i], i, 0});
  return out;
}

} // namespace snug
