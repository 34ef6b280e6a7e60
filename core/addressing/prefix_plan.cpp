#include "core/addressing/prefix_plan.h"

#include "core/model/facts.h"
#include "core/model/store.h"
#include "core/text/plan_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr Prefix v4(std::uint32_t network, int length) { return Prefix::of(Address::v4(network), length); }

constexpr std::array kUsualDefaults{
    v4(0x0a000000, 16), // 10.0.0.0/16: home routers, VPNs
    v4(0x0a010000, 16), // 10.1.0.0/16: home routers
    v4(0x0a080000, 16), // 10.8.0.0/16: VPNs
    v4(0x0a0a0000, 16), // 10.10.0.0/16: offices, VPNs
    v4(0xac100000, 16), // 172.16.0.0/16: offices
    v4(0xac110000, 16), // 172.17.0.0/16 and the next: programs that make networks of their own
    v4(0xac120000, 16), v4(0xac140000, 16), // 172.20.0.0/16: telephones that share their line
    v4(0xc0a80000, 22),                     // 192.168.0.0 to 192.168.3.255: home routers
    v4(0xc0a80800, 24),                     // 192.168.8.0/24: mobile routers
    v4(0xc0a80a00, 23),                     // 192.168.10.0/24, 192.168.11.0/24: home routers
    v4(0xc0a82b00, 24),                     // 192.168.43.0/24: telephones that share their line
    v4(0xc0a86400, 24),                     // 192.168.100.0/24: modems
    v4(0xc0a87a00, 24),                     // 192.168.122.0/24: programs that make networks of their own
    v4(0xc0a88900, 24),                     // 192.168.137.0/24: PCs that share their line
    v4(0xc0a8b200, 24),                     // 192.168.178.0/24: home routers
    v4(0xc0a8fe00, 23),                     // 192.168.254.0/23: home routers, modems
};

// The order in which blocks are tried: the middle of 172.16.0.0/12 first, where few networks are.
std::vector<Prefix> block_candidates() {
  std::vector<Prefix> out;
  for (std::uint32_t second = 22; second < 32; ++second) out.push_back(v4(0xac000000U | (second << 16U), 16));
  for (std::uint32_t second = 19; second < 22; ++second) out.push_back(v4(0xac000000U | (second << 16U), 16));
  for (std::uint32_t i = 0; i < 256; ++i) out.push_back(v4(0x0a000000U | (((i + 77) % 256) << 16U), 16));
  return out;
}

bool wants_prefix4(const Segment& s) { return s.type != SegmentKind::bridged && !s.prefix4; }

bool meets_any(const Prefix& p, std::span<const Prefix> others) {
  return std::any_of(others.begin(), others.end(), [&p](const Prefix& o) { return o.overlaps(p); });
}

struct Wish {
  std::size_t segment = 0;
  std::int64_t hosts = 0;
};

// Segments to serve, in the order in which they choose.
std::vector<Wish> wishes(const Lab& lab, bool by_need) {
  std::vector<Wish> out;
  const std::vector<std::int64_t> need = by_need ? hosts_needed(lab) : std::vector<std::int64_t>{};
  for (std::size_t s = 0; s < lab.segments.size(); ++s)
    if (wants_prefix4(lab.segments[s])) out.push_back({s, by_need ? need[s] : 0});
  std::stable_sort(out.begin(), out.end(), [](const Wish& a, const Wish& b) { return a.hosts > b.hosts; });
  return out;
}

std::optional<Prefix> by_number(const Prefix& block, int length, std::int64_t number,
                                std::span<const Prefix> taken) {
  if (length < block.length()) return std::nullopt;
  const std::int64_t step = Prefix::of(Address{}, length).size();
  const auto network = block.network().plus(number * step);
  if (!network || !block.contains(*network)) return std::nullopt;
  const Prefix p = Prefix::of(*network, length);
  return meets_any(p, taken) ? std::nullopt : std::optional(p);
}

// What people typed on a segment's cards, and its gateway: a prefix has to hold it.
std::vector<Address> typed_on(const Lab& lab, const Segment& s) {
  std::vector<Address> out;
  for (const Card& c : lab.cards)
    for (const CardAddress& a : c.addresses)
      if (c.segment == s.id && a.kind == AddressKind::typed && a.address && a.address->is_v4())
        out.push_back(*a.address);
  if (s.gateway4 && !out.empty()) out.push_back(*s.gateway4);
  return out;
}

// The smallest prefix of at most `length` that has all of them as hosts and is free; none where they lie too
// far apart or in a network that is taken.
std::optional<Prefix> around(std::span<const Address> typed, int length, std::span<const Prefix> taken) {
  constexpr int kWidest = 16;
  for (int l = std::min(length, 30); !typed.empty() && l >= kWidest; --l) {
    const Prefix p = Prefix::of(typed.front(), l);
    const auto holds = [&p](const Address& a) { return p.contains(a) && !p.is_reserved(a); };
    if (!std::all_of(typed.begin(), typed.end(), holds)) continue;
    return meets_any(p, taken) ? std::nullopt : std::optional(p);
  }
  return std::nullopt;
}

void insert_sorted(std::vector<Prefix>& list, const Prefix& p) {
  list.insert(std::lower_bound(list.begin(), list.end(), p), p);
}

} // namespace

std::span<const Prefix> usual_defaults() { return kUsualDefaults; }

std::vector<Prefix> prefixes_in_the_way(const Lab& lab) {
  std::vector<Prefix> out;
  const auto add = [&out](const std::optional<Prefix>& p) {
    if (p) out.push_back(*p);
  };
  for (const Segment& s : lab.segments) {
    add(s.prefix4);
    add(s.prefix6);
  }
  for (const Lan& l : lab.lans) {
    add(l.prefix4);
    add(l.prefix6);
  }
  for (const Place& p : lab.places) out.insert(out.end(), p.prefixes.begin(), p.prefixes.end());
  std::sort(out.begin(), out.end());
  return out;
}

std::optional<Prefix> suggested_block(std::span<const Prefix> in_the_way) {
  for (const Prefix& candidate : block_candidates())
    if (!meets_any(candidate, in_the_way) && !meets_any(candidate, kUsualDefaults)) return candidate;
  return std::nullopt;
}

std::vector<std::int64_t> hosts_needed(const Lab& lab) {
  const Index index(lab);
  std::vector<std::int64_t> need(lab.segments.size(), 0);
  std::vector<bool> has_router(lab.segments.size(), false);
  for (const Card& c : lab.cards) {
    const std::uint32_t s = index.place(c.segment);
    if (s == kNowhere || (only_carries(c) && c.addresses.empty())) continue;
    ++need[s];
    if (c.forwards4) has_router[s] = true;
  }
  for (std::size_t s = 0; s < need.size(); ++s) {
    const Segment& segment = lab.segments[s];
    const bool nat = segment.type == SegmentKind::nat;
    const bool gateway_apart = segment.gateway4 && !nat && !has_router[s];
    need[s] += (nat ? 1 : 0) + (gateway_apart ? 1 : 0) + (segment.pc_socket ? 1 : 0);
    need[s] = std::max<std::int64_t>(2, need[s]);
  }
  return need;
}

std::int64_t number_in_scheme(const Lab& lab, std::size_t segment_place) {
  const std::int32_t number = lab.segments[segment_place].number;
  return number > 0 ? number : static_cast<std::int64_t>(segment_place) + 1;
}

Result<void> plan_prefixes4(Lab& lab, bool by_need) {
  const std::vector<Wish> all = wishes(lab, by_need);
  if (all.empty()) return {};
  std::vector<Prefix> taken = prefixes_in_the_way(lab);
  if (!lab.numbering.block) lab.numbering.block = suggested_block(taken);
  if (!lab.numbering.block) return fail(text::plan_no_block);
  const Prefix block = *lab.numbering.block;
  if (!block.is_v4()) return fail(text::plan_block_family, to_text(block));
  for (const Wish& w : all) {
    const std::string name = name_of(lab, lab.segments[w.segment].id);
    const auto fitting = by_need ? length_for_hosts(w.hosts) : std::optional(lab.numbering.segment_length);
    if (!fitting) return fail(text::plan_need_large, name, Count{w.hosts});
    std::optional<Prefix> p = around(typed_on(lab, lab.segments[w.segment]), *fitting, taken);
    if (!p && !by_need) p = by_number(block, *fitting, number_in_scheme(lab, w.segment), taken);
    if (!p) p = lowest_free(block, *fitting, taken);
    if (!p) return fail(text::plan_block_full, to_text(block), std::to_string(*fitting), name);
    lab.segments[w.segment].prefix4 = p;
    insert_sorted(taken, *p);
  }
  return {};
}

Result<void> plan_prefixes6(Lab& lab) {
  constexpr int kLength = 64; // RFC 4291 2.5.4
  std::vector<Prefix> taken = prefixes_in_the_way(lab);
  for (std::size_t s = 0; s < lab.segments.size(); ++s) {
    Segment& segment = lab.segments[s];
    if (segment.type != SegmentKind::isolated || segment.prefix6) continue;
    const auto& block = lab.facts.local_prefix6;
    if (!block || block->is_v4() || block->length() > kLength) return fail(text::plan_no_prefix6);
    const auto number = static_cast<std::uint64_t>(number_in_scheme(lab, s));
    const Prefix wanted =
        Prefix::of(Address::v6(block->network().high() | number, block->network().low()), kLength);
    const bool fits = block->contains(wanted) && !meets_any(wanted, taken);
    const auto p = fits ? std::optional(wanted) : lowest_free(*block, kLength, taken);
    if (!p)
      return fail(text::plan_block_full, to_text(*block), std::to_string(kLength), name_of(lab, segment.id));
    segment.prefix6 = p;
    insert_sorted(taken, *p);
  }
  return {};
}

} // namespace snug
