#pragma once
// Dividing, allocating and joining prefixes (RFC 4632).

#include "core/net/prefix.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace snug {

inline constexpr std::int64_t kMaxSplit = 65'536;

// All networks of `length` in the prefix, lowest first. Refuses a length shorter than the prefix's or longer
// than its family has, and more than kMaxSplit networks.
Result<std::vector<Prefix>> subnets_of(const Prefix&, int length);

// The lowest network of `length` inside `block` that overlaps none of `taken` (in any order, of any family,
// inside the block or not); nothing when there is none or `length` is not one inside the block. Time
// O(n log n), O(n) when `taken` is sorted.
std::optional<Prefix> lowest_free(const Prefix& block, int length, std::span<const Prefix> taken);

// Whether both addresses of a /31 and the one of a /32 count as hosts (RFC 3021: point-to-point links only).
enum class SmallNetworks : std::uint8_t { as_hosts, avoided };

// The length of the smallest IPv4 network with at least `hosts` host addresses: 30 for 2, 24 for 254, 23 for
// 255; with SmallNetworks::as_hosts 32 for 1 and 31 for 2. Nothing when hosts < 1 or above 2^32 - 2.
std::optional<int> length_for_hosts(std::int64_t hosts, SmallNetworks = SmallNetworks::avoided);

// The fewest prefixes that hold exactly the same addresses, sorted (RFC 4632 aggregation).
std::vector<Prefix> aggregate(std::vector<Prefix>);

} // namespace snug
