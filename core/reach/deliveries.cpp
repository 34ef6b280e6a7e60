#include "core/reach/deliveries.h"

#include <algorithm>
#include <array>
#include <utility>

namespace snug {

namespace {

using Word = BitRows::Word;
using Step = ReachWays::Step;
constexpr std::uint32_t kBits = BitRows::kBits;
constexpr std::uint32_t kMostHops = 60; // less than the hop limit: it never ends a way

// Bit (r, c) of 64 words becomes bit (c, r) (Warren, Hacker's Delight 7-3).
void transpose(std::array<Word, kBits>& block) {
  Word mask = 0x0000'0000'ffff'ffffU;
  for (std::uint32_t step = 32; step != 0; step >>= 1U, mask ^= mask << step)
    for (std::uint32_t k = 0; k < kBits; k = (k + step + 1) & ~step) {
      const Word t = (block[k] >> step ^ block[k + step]) & mask;
      block[k] ^= t << step;
      block[k + step] ^= t;
    }
}

bool feeds(const Step& s) { return s.to != kNowhere && s.passes && !s.unsure; }

} // namespace

void Deliveries::add_neighbours(std::uint32_t nth) {
  const auto row = out_.row(nth);
  const auto add = [&](Interval in) { each_word(in, [&](std::uint32_t w, Word bits) { row[w] |= bits; }); };
  for (const Step& s : ways_.steps(nth)) {
    if (s.to != kNowhere)
      for (const std::uint32_t c : ways_.columns_of(s.to))
        for (const Interval& in : ways_.intervals(s))
          if (in.first <= c && c < in.end) out_.set(nth, c);
    if (s.root == kNowhere) continue;
    const auto held = ways_.held_in(s.root);
    for (const Interval& in : ways_.intervals(s)) {
      auto h = std::partition_point(held.begin(), held.end(),
                                    [&](const Interval& i) { return i.end <= in.first; });
      for (; h != held.end() && h->first < in.end; ++h)
        add({std::max(h->first, in.first), std::min(h->end, in.end)});
    }
  }
}

// What nobody can say from here: everything of an odd node, of odd addresses, behind unsure steps.
void Deliveries::mark_unsure(bool all) {
  unsure_ = rows();
  for (std::uint32_t nth = 0; nth < ways_.nodes(); ++nth) {
    const auto row = unsure_.row(nth);
    const auto mark = [&](Interval in) {
      each_word(in, [&](std::uint32_t w, Word bits) { row[w] |= bits; });
    };
    if (all || ways_.is_odd(nth)) {
      mark({0, ways_.columns()});
      continue;
    }
    for (const Step& s : ways_.steps(nth))
      if (s.unsure)
        for (const Interval& in : ways_.intervals(s)) mark(in);
    for (std::uint32_t c = 0; c < ways_.columns(); ++c)
      if (ways_.is_odd_column(c)) mark({c, c + 1});
  }
}

// Takes over what its next hops have; whether that was new.
bool Deliveries::take(BitRows& rows, std::uint32_t nth) const {
  const auto own = rows.row(nth);
  Word gained = 0;
  for (const Step& s : ways_.steps(nth)) {
    if (!feeds(s)) continue;
    const auto theirs = std::as_const(rows).row(s.to);
    for (const Interval& in : ways_.intervals(s))
      each_word(in, [&](std::uint32_t w, Word mask) {
        gained |= theirs[w] & mask & ~own[w];
        own[w] |= theirs[w] & mask;
      });
  }
  return gained != 0;
}

void Deliveries::spread_unsure() {
  for (bool gained = true; gained;) {
    gained = false;
    for (std::uint32_t i = 0; i < ways_.nodes(); ++i) gained |= take(unsure_, i);
  }
}

// In rounds of one hop each, with what the round before brought; those nobody sends to at the end.
void Deliveries::spread() {
  std::vector<std::uint32_t> row_of(ways_.nodes(), kNowhere); // of those who are sent to
  std::vector<std::uint32_t> passing;
  for (std::uint32_t i = 0; i < ways_.nodes(); ++i)
    for (const Step& s : ways_.steps(i))
      if (feeds(s) && row_of[s.to] == kNowhere) {
        row_of[s.to] = static_cast<std::uint32_t>(passing.size());
        passing.push_back(s.to);
      }
  const auto count = static_cast<std::uint32_t>(passing.size());
  BitRows fresh(count, ways_.columns()), next = fresh;
  std::vector<std::uint8_t> has(count, 1), gets(count, 0);
  for (std::uint32_t r = 0; r < count; ++r)
    std::copy(out_.row(passing[r]).begin(), out_.row(passing[r]).end(), fresh.row(r).begin());
  bool any = count != 0;
  for (std::uint32_t hops = 1; any && hops <= kMostHops; ++hops) {
    any = false;
    for (std::uint32_t r = 0; r < count; ++r) {
      const auto own = out_.row(passing[r]), gained = next.row(r);
      Word got = 0;
      for (const Step& s : ways_.steps(passing[r])) {
        if (!feeds(s) || has[row_of[s.to]] == 0) continue;
        const auto theirs = std::as_const(fresh).row(row_of[s.to]);
        for (const Interval& in : ways_.intervals(s))
          each_word(in, [&](std::uint32_t w, Word mask) {
            const Word more = theirs[w] & mask & ~own[w];
            if (more == 0) return;
            own[w] |= more;
            gained[w] |= more;
            got |= more;
          });
      }
      gets[r] = got != 0 ? 1 : 0;
      any |= got != 0;
    }
    for (std::uint32_t r = 0; r < count; ++r)
      if (has[r] != 0) std::fill(fresh.row(r).begin(), fresh.row(r).end(), 0);
    std::swap(fresh, next);
    std::swap(has, gets);
  }
  for (std::uint32_t i = 0; i < ways_.nodes(); ++i)
    if (row_of[i] == kNowhere) take(out_, i);
  if (any) mark_unsure(true); // a way of so many hops: the limit may end it
}

Deliveries::Deliveries(const ReachWays& ways) : ways_(ways) {
  out_ = rows();
  for (std::uint32_t i = 0; i < ways_.nodes(); ++i) add_neighbours(i);
  if (ways_.any_odd()) {
    mark_unsure(false);
    spread_unsure();
  }
  spread();
}

// Row c, bit t: whether the node that has address t gets packets to address c.
BitRows Deliveries::turned(const BitRows& rows) const {
  const std::uint32_t count = ways_.columns();
  BitRows out(rows.words() * kBits, count);
  std::array<Word, kBits> block{};
  for (std::uint32_t t = 0; t < count; t += kBits)
    for (std::uint32_t w = 0; w < rows.words(); ++w) {
      for (std::uint32_t k = 0; k < kBits; ++k)
        block[k] = t + k < count ? rows.row(ways_.owner(t + k))[w] : 0;
      transpose(block);
      for (std::uint32_t k = 0; k < kBits; ++k) out.row(w * kBits + k)[t / kBits] = block[k];
    }
  return out;
}

void Deliveries::find_answers() {
  const BitRows back = turned(out_);
  const BitRows doubt = unsure_.empty() ? BitRows() : turned(unsure_);
  answered_ = rows();
  for (std::uint32_t nth = 0; nth < ways_.nodes(); ++nth) {
    const auto sent = out_.row(nth), answered = answered_.row(nth);
    for (const Step& s : ways_.steps(nth))
      for (const Interval& in : ways_.intervals(s))
        each_word(in, [&](std::uint32_t w, Word mask) {
          if (s.source == kNowhere) {
            sent[w] &= ~mask; // nothing to send from
            return;
          }
          answered[w] |= mask & sent[w] & back.row(s.source)[w];
          if (!doubt.empty()) unsure_.row(nth)[w] |= mask & sent[w] & doubt.row(s.source)[w];
        });
  }
}

} // namespace snug
