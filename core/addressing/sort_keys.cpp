#include "core/addressing/sort_keys.h"

#include <algorithm>
#include <array>
#include <bit>
#include <functional>
#include <optional>
#include <utility>

namespace snug {

namespace {

constexpr std::size_t kRadixFrom = 2048; // below, comparing is quicker (PERFORMANCE 1)
constexpr std::size_t kInsertUpTo = 32;
constexpr unsigned kDigitBits = 11;
constexpr std::size_t kDigits = std::size_t{1} << kDigitBits;
constexpr std::size_t kFewRuns = 4;

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
  for (std::size_t runs = 1; end != keys.end(); ++runs) {
    if (runs == kFewRuns) return false;
    const auto next = std::is_sorted_until(end, keys.end(), is_before);
    if (is_before(*(next - 1), keys.front())) { // the second as a whole stands before the first
      std::rotate(keys.begin(), end, next);
      end = next;
      continue;
    }
    const auto merged = std::merge(keys.begin(), end, end, next, scratch.begin(), is_before);
    std::copy(scratch.begin(), merged, keys.begin());
    end = next;
  }
  return true;
}

std::size_t count_runs(std::span<const WideKey> keys) {
  std::size_t runs = 1;
  for (std::size_t i = 1; i < keys.size(); ++i) runs += keys[i].is_before(keys[i - 1]) ? 1 : 0;
  return runs;
}

void insertion_sort(std::span<WideKey> keys) {
  for (std::size_t i = 1; i < keys.size(); ++i) {
    const WideKey k = keys[i];
    std::size_t to = i;
    for (; to > 0 && k.is_before(keys[to - 1]); --to) keys[to] = keys[to - 1];
    keys[to] = k;
  }
}

} // namespace

void sort_wide_keys(std::span<WideKey> keys, std::vector<WideKey>& scratch) {
  if (keys.size() <= kInsertUpTo && count_runs(keys) > kFewRuns) return insertion_sort(keys);
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

namespace {

constexpr unsigned kMostPasses = 2; // with more, sorting each group is quicker

// The bits of `low` in which keys of one group differ; nothing: they differ in `high`.
std::optional<std::uint64_t> spread(std::span<const WideKey> keys, std::uint32_t groups) {
  std::vector<std::uint32_t> first(groups, ~0U);
  std::uint64_t low = 0, high = 0;
  for (std::uint32_t i = 0; i < keys.size(); ++i) {
    std::uint32_t& f = first[keys[i].group];
    f = std::min(f, i);
    low |= keys[f].low ^ keys[i].low;
    high |= keys[f].high ^ keys[i].high;
  }
  return high == 0 ? std::optional(low) : std::nullopt;
}

// All groups at once by radix, if the keys in each differ in few places.
bool radix_groups(std::vector<WideKey>& keys, std::vector<WideKey>& scratch, std::uint32_t groups) {
  if (keys.size() < kRadixFrom) return false;
  const auto differ = spread(keys, groups);
  const auto digit_at = [&](unsigned shift) { return (*differ >> shift & (kDigits - 1)) != 0; };
  unsigned passes = 0;
  for (unsigned shift = 0; differ && shift < 64; shift += kDigitBits) passes += digit_at(shift) ? 1 : 0;
  if (!differ || passes > kMostPasses) return false;
  for (unsigned shift = 0; shift < 64; shift += kDigitBits)
    if (digit_at(shift) &&
        radix_pass(keys, scratch, [=](const WideKey& k) { return k.low >> shift & (kDigits - 1); }))
      keys.swap(scratch);
  return true;
}

} // namespace

std::vector<std::uint32_t> sort_by_group(std::vector<WideKey>& keys, std::uint32_t groups) {
  std::vector<WideKey> scratch(keys.size());
  const bool in_order = radix_groups(keys, scratch, groups);
  // One place ahead: moving keys moves each start to where it belongs.
  std::vector<std::uint32_t> start(groups + std::size_t{2}, 0);
  for (const WideKey& k : keys) ++start[k.group + 2];
  for (std::size_t g = 2; g < start.size(); ++g) start[g] += start[g - 1];
  for (const WideKey& k : keys) scratch[start[k.group + 1]++] = k;
  start.pop_back();
  keys.swap(scratch);
  for (std::uint32_t g = 0; g < groups && !in_order; ++g)
    sort_wide_keys(std::span(keys).subspan(start[g], start[g + 1] - start[g]), scratch);
  return start;
}

namespace {

// Two bits a slot: seen once, seen again.
class Sieve {
 public:
  explicit Sieve(std::size_t values)
      : shift_(kWord - static_cast<unsigned>(std::countr_zero(std::bit_ceil(std::max(values * 8, kWord))))),
        words_((std::size_t{1} << (kWord - shift_)) / kWord) {}
  void see(std::uint64_t value) {
    const std::uint64_t s = slot(value), bit = std::uint64_t{1} << (s % kWord);
    words_[s / kWord].again |= words_[s / kWord].once & bit;
    words_[s / kWord].once |= bit;
  }
  bool seen_again(std::uint64_t value) const {
    const std::uint64_t s = slot(value);
    return (words_[s / kWord].again >> (s % kWord) & 1U) != 0;
  }

 private:
  static constexpr std::size_t kWord = 64;
  struct Word {
    std::uint64_t once = 0, again = 0;
  };
  // 2^64 / golden ratio (Knuth, TAOCP 6.4)
  std::uint64_t slot(std::uint64_t value) const { return (value * 0x9e37'79b9'7f4a'7c15U) >> shift_; }
  unsigned shift_;
  std::vector<Word> words_;
};

} // namespace

namespace {

// Numbers that the program gave out one after the other.
bool is_ascending(std::span<const std::uint64_t> values) {
  return std::adjacent_find(values.begin(), values.end(), std::greater_equal<>{}) == values.end();
}

} // namespace

std::vector<WideKey> maybe_repeated(std::span<const std::uint64_t> values) {
  if (is_ascending(values)) return {};
  Sieve sieve(values.size());
  for (const std::uint64_t v : values)
    if (v != 0) sieve.see(v);
  std::vector<WideKey> out;
  for (std::uint32_t i = 0; i < values.size(); ++i)
    if (values[i] != 0 && sieve.seen_again(values[i])) out.push_back({0, values[i], i, 0});
  // The few that are left meet others in another sieve.
  constexpr std::uint64_t kOther = 0xc2b2'ae3d'27d4'eb4fU;
  Sieve second(out.size());
  for (const WideKey& k : out) second.see(k.low ^ (k.low >> 32U) * kOther);
  std::erase_if(out, [&](const WideKey& k) { return !second.seen_again(k.low ^ (k.low >> 32U) * kOther); });
  return out;
}

} // namespace snug
