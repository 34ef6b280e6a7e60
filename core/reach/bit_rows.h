#pragma once
// Rows of bits, and columns that lie side by side in them.

#include <cstdint>
#include <span>
#include <vector>

namespace snug {

class BitRows {
 public:
  using Word = std::uint64_t;
  static constexpr std::uint32_t kBits = 64;
  BitRows() = default;
  BitRows(std::uint32_t rows, std::uint32_t bits)
      : words_((bits + kBits - 1) / kBits), data_(std::size_t{rows} * words_) {}
  bool empty() const { return data_.empty(); }
  std::uint32_t words() const { return words_; }
  std::span<Word> row(std::uint32_t r) { return std::span(data_).subspan(std::size_t{r} * words_, words_); }
  std::span<const Word> row(std::uint32_t r) const {
    return std::span(data_).subspan(std::size_t{r} * words_, words_);
  }
  bool test(std::uint32_t r, std::uint32_t bit) const {
    return (row(r)[bit / kBits] >> (bit % kBits) & 1U) != 0;
  }
  void set(std::uint32_t r, std::uint32_t bit) { row(r)[bit / kBits] |= Word{1} << (bit % kBits); }

 private:
  std::uint32_t words_ = 0;
  std::vector<Word> data_;
};

// Columns first … end-1.
struct Interval {
  std::uint32_t first = 0, end = 0;
};

// Calls use(word, mask) for the words of an interval.
template <typename Use>
void each_word(Interval i, Use use) {
  constexpr std::uint32_t kBits = BitRows::kBits;
  constexpr BitRows::Word kAll = ~BitRows::Word{0};
  if (i.first >= i.end) return;
  const std::uint32_t first = i.first / kBits, last = (i.end - 1) / kBits;
  const BitRows::Word from = kAll << (i.first % kBits), to = kAll >> (kBits - 1 - (i.end - 1) % kBits);
  if (first == last) return use(first, from & to);
  use(first, from);
  for (std::uint32_t w = first + 1; w < last; ++w) use(w, kAll);
  use(last, to);
}

} // namespace snug
