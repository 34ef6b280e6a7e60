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

// One that others send to. Times: how many took something before.
struct Passing {
  std::uint32_t nth = 0;
  std::uint32_t gained = 1, took = 0; // when it got more, and when it last took from its next hops
  std::uint32_t hops = 0;             // of its ways, at most
};

} // namespace

void Deliveries::add_neighbours(BitRows& rows, std::uint32_t nth) const {
  const auto row = rows.row(nth);
  const auto add = [&](Interval in) { each_word(in, [&](std::uint32_t w, Word bits) { row[w] |= bits; }); };
  for (const Step& s : ways_.steps(nth)) {
    if (s.to != kNowhere)
      for (const std::uint32_t c : ways_.columns_of(s.to))
        for (const Interval& in : ways_.intervals(s))
          if (in.first <= c && c < in.end) rows.set(nth, c);
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

// Takes over what the next hop of a step has in `from`; whether that was new.
bool Deliveries::gain(BitRows& rows, const BitRows& from, std::uint32_t nth, const Step& s) const {
  if (!feeds(s)) return false;
  const auto own = rows.row(nth);
  const auto theirs = from.row(s.to);
  Word gained = 0;
  for (const Interval& in : ways_.intervals(s))
    each_word(in, [&](std::uint32_t w, Word mask) {
      gained |= theirs[w] & mask & ~own[w];
      own[w] |= theirs[w] & mask;
    });
  return gained != 0;
}

bool Deliveries::gain(BitRows& rows, const BitRows& from, std::uint32_t nth) const {
  bool gained = false;
  for (const Step& s : ways_.steps(nth)) gained |= gain(rows, from, nth, s);
  return gained;
}

void Deliveries::spread_unsure() {
  for (bool gained = true; gained;) {
    gained = false;
    for (std::uint32_t i = 0; i < ways_.nodes(); ++i) gained |= gain(unsure_, unsure_, i);
  }
}

// Whether the hop limit may end a way: one hop a round.
bool Deliveries::has_long_ways() const {
  BitRows now = rows();
  for (std::uint32_t i = 0; i < ways_.nodes(); ++i) add_neighbours(now, i);
  bool gained = true;
  for (std::uint32_t hops = 0; gained && hops <= kMostHops; ++hops) {
    const BitRows before = now;
    gained = false;
    for (std::uint32_t i = 0; i < ways_.nodes(); ++i) gained |= gain(now, before, i);
  }
  return gained;
}

// Those who are sent to, over and over until nobody gains: what one has just gained the next one takes, so
// first those whom most send to. Whom nobody sends to once, at the end.
void Deliveries::spread() {
  std::vector<std::uint32_t> senders(ways_.nodes(), 0), place(ways_.nodes(), 0);
  for (std::uint32_t i = 0; i < ways_.nodes(); ++i)
    for (const Step& s : ways_.steps(i))
      if (feeds(s)) ++senders[s.to];
  std::vector<Passing> passing;
  for (std::uint32_t i = 0; i < ways_.nodes(); ++i)
    if (senders[i] != 0) passing.push_back({i});
  std::stable_sort(passing.begin(), passing.end(),
                   [&](const Passing& a, const Passing& b) { return senders[a.nth] > senders[b.nth]; });
  for (std::uint32_t r = 0; r < passing.size(); ++r) place[passing[r].nth] = r;
  std::uint32_t time = Passing{}.gained, hops = 0;
  for (bool any = true; any;) {
    any = false;
    for (Passing& p : passing) {
      const std::uint32_t took = std::exchange(p.took, ++time);
      for (const Step& s : ways_.steps(p.nth)) {
        if (!feeds(s)) continue;
        const Passing& next = passing[place[s.to]];
        if (next.gained <= took || !gain(out_, out_, p.nth, s)) continue;
        p.gained = time;
        p.hops = std::max(p.hops, next.hops + 1);
        any = true;
      }
      hops = std::max(hops, p.hops);
    }
  }
  for (std::uint32_t i = 0; i < ways_.nodes(); ++i)
    if (senders[i] == 0) gain(out_, out_, i);
  // A way passes nobody twice.
  if (std::min<std::size_t>(hops, passing.size()) > kMostHops && has_long_ways()) mark_unsure(true);
}

Deliveries::Deliveries(const ReachWays& ways) : ways_(ways) {
  out_ = rows();
  for (std::uint32_t i = 0; i < ways_.nodes(); ++i) add_neighbours(out_, i);
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
