#include "core/net/subnets.h"

#include "core/text/net_text.h"

#include <algorithm>

namespace snug {

namespace {

std::optional<Prefix> next_of_length(const Address& last_used, int length) {
  const auto next = last_used.plus(1);
  if (!next) return std::nullopt;
  return Prefix::of(*next, length);
}

bool are_halves(const Prefix& low, const Prefix& high) {
  return low.family() == high.family() && low.length() == high.length() && low.length() > 0 && low != high &&
         Prefix::of(low.network(), low.length() - 1).contains(high);
}

} // namespace

Result<std::vector<Prefix>> subnets_of(const Prefix& p, int length) {
  const int bits = p.network().bits();
  if (length > bits || length < 0)
    return fail(text::split_length, std::to_string(length), p.is_v4() ? "IPv4" : "IPv6",
                std::to_string(bits));
  if (length < p.length()) return fail(text::split_shorter, to_text(p), std::to_string(length));
  const int more = length - p.length();
  if (more > 16) return fail(text::split_many, to_text(p), std::to_string(length), Count{kMaxSplit});
  std::vector<Prefix> out;
  out.reserve(std::size_t{1} << static_cast<unsigned>(more));
  for (std::optional<Prefix> at = Prefix::of(p.network(), length); at && p.contains(*at);
       at = next_of_length(at->last(), length))
    out.push_back(*at);
  return out;
}

std::optional<Prefix> lowest_free(const Prefix& block, int length, std::span<const Prefix> taken) {
  if (length < block.length() || length > block.network().bits()) return std::nullopt;
  std::vector<Prefix> sorted;
  if (!std::is_sorted(taken.begin(), taken.end())) {
    sorted.assign(taken.begin(), taken.end());
    std::sort(sorted.begin(), sorted.end());
    taken = sorted;
  }
  std::optional<Prefix> at = Prefix::of(block.network(), length);
  for (const Prefix& t : taken) {
    if (t.family() != block.family() || t.last() < at->network()) continue;
    if (at->last() < t.network()) break;
    at = next_of_length(std::max(t.last(), at->last()), length);
    if (!at || !block.contains(*at)) return std::nullopt;
  }
  return at;
}

std::optional<int> length_for_hosts(std::int64_t hosts, SmallNetworks small) {
  if (hosts < 1) return std::nullopt;
  for (int length = small == SmallNetworks::as_hosts ? 32 : 30; length >= 0; --length)
    if (Prefix::of(Address{}, length).host_count() >= hosts) return length;
  return std::nullopt;
}

std::vector<Prefix> aggregate(std::vector<Prefix> prefixes) {
  std::sort(prefixes.begin(), prefixes.end());
  std::vector<Prefix> out;
  for (const Prefix& p : prefixes) {
    if (!out.empty() && out.back().contains(p)) continue;
    out.push_back(p);
    while (out.size() > 1 && are_halves(out[out.size() - 2], out.back())) {
      out.pop_back();
      out.back() = Prefix::of(out.back().network(), out.back().length() - 1);
    }
  }
  return out;
}

} // namespace snug
