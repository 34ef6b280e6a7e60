#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/findings/twice_fixes.h"
#include "core/text/address_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

// Who holds an address, as a number.
std::uint64_t owner(const Context& c, const HeldAddress& h) {
  const auto number = [](Kind kind, std::uint32_t n) { return static_cast<std::uint64_t>(kind) << 32U | n; };
  switch (h.holder) {
  case Holder::card:
    return number(Kind::card, h.card);
  case Holder::pc_socket:
    return number(Kind::pc, 0);
  case Holder::translator:
    return number(Kind::segment, h.segment);
  case Holder::lan_router:
    return number(Kind::lan, c.lab.segments[h.segment].lan.number);
  }
  return 0;
}

// Two on one network with one address, a card first.
struct Twice {
  std::array<std::uint64_t, 2> owners;
  HeldAddress first, second;
  bool repeats = false;
};

void note_pair(const Context& c, const HeldAddress& a, const HeldAddress& b, std::vector<Twice>& out) {
  if (a.holder == b.holder && a.holder != Holder::card) return;
  const bool card_first = a.holder == Holder::card || b.holder != Holder::card;
  const HeldAddress &first = card_first ? a : b, &second = card_first ? b : a;
  out.push_back({{owner(c, first), owner(c, second)}, first, second});
}

// Of those with the same owners only the first: many share an IPv4 and an IPv6 address.
void drop_repeated_pairs(std::vector<Twice>& pairs) {
  std::vector<WideKey> order;
  order.reserve(pairs.size());
  for (const Twice& t : pairs)
    order.push_back({t.owners[0], t.owners[1], static_cast<std::uint32_t>(order.size()), 0});
  sort_wide_keys(order);
  for (std::size_t i = 1; i < order.size(); ++i)
    if (order[i].is_same(order[i - 1])) pairs[order[i].place].repeats = true;
  std::erase_if(pairs, [](const Twice& t) { return t.repeats; });
}

// The parts of all sentences first: they stand far apart in the lab, and the next ones are on their way while
// one is read.
void report(const Context& c, std::span<const Twice> pairs, std::vector<Finding>& out) {
  std::vector<std::array<AnyId, 2>> ids;
  ids.reserve(pairs.size());
  for (const Twice& t : pairs) ids.push_back({holder_id(c, t.first), holder_id(c, t.second)});
  std::vector<std::array<Argument, 2>> names;
  names.reserve(pairs.size());
  for (const Twice& t : pairs) names.push_back({holder_name(c, t.first), holder_name(c, t.second)});
  out.reserve(out.size() + pairs.size());
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    const HeldAddress& held = pairs[i].first;
    std::vector<AnyId> places{ids[i][0]};
    if (pairs[i].owners[0] != pairs[i].owners[1]) places.push_back(ids[i][1]);
    out.push_back(found(Severity::error,
                        say(text::address_twice, to_text(held.address), std::move(names[i][0]),
                            std::move(names[i][1]), segment_name(c, held.segment)),
                        say(text::address_twice_why), std::move(places)));
  }
}

using Run = std::vector<HeldAddress>;

// Equal addresses: each but the first of its network is noted with that first one.
void note_run(const Context& c, Run& run, std::vector<Twice>& out) {
  const auto by_domain = [](const HeldAddress& a, const HeldAddress& b) { return a.domain < b.domain; };
  if (!std::is_sorted(run.begin(), run.end(), by_domain)) std::stable_sort(run.begin(), run.end(), by_domain);
  std::size_t start = 0;
  for (std::size_t i = 1; i < run.size(); ++i) {
    if (run[i].domain != run[start].domain) start = i;
    if (i != start && run[i].domain != kNowhere) note_pair(c, run[start], run[i], out);
  }
}

// Segments that are one network outside: bridged to one LAN.
std::vector<std::vector<std::uint32_t>> joined_segments(const Context& c) {
  const std::size_t segments = c.lab.segments.size();
  std::vector<std::uint32_t> first_of(c.addresses.domains().count(), kNowhere);
  std::vector<std::vector<std::uint32_t>> joined;
  std::vector<std::uint32_t> group_of(c.addresses.domains().count(), kNowhere);
  for (std::uint32_t s = 0; s < segments; ++s) {
    const std::uint32_t d = c.addresses.domains().outside(s);
    if (first_of[d] == kNowhere) {
      first_of[d] = s;
      continue;
    }
    if (group_of[d] == kNowhere) {
      group_of[d] = static_cast<std::uint32_t>(joined.size());
      joined.push_back({first_of[d]});
    }
    joined[group_of[d]].push_back(s);
  }
  return joined;
}

// Looks at all addresses of several segments together.
void note_joined(const Context& c, const std::vector<std::uint32_t>& segments, std::vector<Twice>& out) {
  std::vector<HeldAddress> all;
  std::vector<WideKey> keys;
  for (const std::uint32_t s : segments)
    for (const HeldAddress& h : c.addresses.on(s)) {
      keys.push_back({h.address.high(), h.address.low(), static_cast<std::uint32_t>(all.size()),
                      h.address.is_v4() ? 0U : 1U});
      all.push_back(h);
    }
  Run run;
  for (const Conflicts::Run& r : find_conflicts(keys, 2, {}).equal) {
    run.clear();
    for (std::size_t i = r.first; i < r.first + r.count; ++i) run.push_back(all[keys[i].place]);
    note_run(c, run, out);
  }
}

void check_twice(const Context& c, std::vector<Finding>& out) {
  std::vector<Twice> pairs;
  std::vector<bool> is_joined(c.lab.segments.size(), false);
  for (const auto& group : joined_segments(c)) {
    note_joined(c, group, pairs);
    for (const std::uint32_t s : group) is_joined[s] = true;
  }
  Run run;
  for (const Conflicts::Run& r : c.addresses.equal()) {
    const auto held = c.addresses.all().part(r.first, r.count);
    run.assign(held.begin(), held.end());
    const std::uint32_t s = run.front().segment;
    if (s == kNowhere || is_joined[s]) continue;
    note_run(c, run, pairs);
  }
  drop_repeated_pairs(pairs);
  report(c, pairs, out);
}

template <typename Report>
void each_marked(const Context& c, std::uint8_t mark, Report report) {
  if ((c.addresses.any_mark() & mark) == 0) return;
  for (const HeldAddress& h : c.addresses.all())
    if ((h.marks & mark) != 0 && h.segment != kNowhere) report(h);
}

// Which no host can use anywhere; they have a finding of their own.
bool is_unusable(const Address& a) {
  const SpecialBlock* block = special_block(a);
  return block && !is_link_local(a) && (block->reserved_by_protocol || is_multicast(a));
}

void check_outside(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_marked(c, HeldMark::outside, [&](const HeldAddress& h) {
    if (is_unusable(h.address)) return;
    const std::string name = segment_name(c, h.segment);
    const Prefix prefix = *c.addresses.prefix(h.segment, h.address.family());
    out.push_back(
        found(Severity::error,
              say(text::address_outside, to_text(h.address), holder_name(c, h), name, to_text(prefix)),
              say(text::address_outside_why, name), {holder_id(c, h)}));
    const AnyId segment = c.lab.segments[h.segment].id;
    if (out.back().places[0] != segment) out.back().places.push_back(segment);
  });
  drop_repeated(out, before);
}

// With two of them on one card, or a prefix of the other family, a move would not mend it.
std::optional<Fix> fix_outside(const Context& c, const Finding& f) {
  int outside = 0;
  each_marked(c, HeldMark::outside, [&](const HeldAddress& h) {
    if (holder_id(c, h) != f.places[0]) return;
    const Family family = h.address.family();
    outside += c.addresses.prefix(h.segment, family)->family() == family ? 1 : 2;
  });
  if (outside != 1) return std::nullopt;
  return move_first(c, f.places[0], [](const HeldAddress& h) { return (h.marks & HeldMark::outside) != 0; });
}

void check_length(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_marked(c, HeldMark::other_length, [&](const HeldAddress& h) {
    const Prefix prefix = *c.addresses.prefix(h.segment, h.address.family());
    out.push_back(
        found(Severity::error,
              say(text::address_length, to_text(h.address), holder_name(c, h), std::to_string(h.length),
                  segment_name(c, h.segment), std::to_string(prefix.length())),
              say(text::address_length_why), {holder_id(c, h), c.lab.segments[h.segment].id}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_length(const Context& c, const Finding& f) {
  const std::uint32_t place = c.index.place(f.places[0]);
  const std::uint32_t segment = c.index.place(f.places[1]);
  const Card& card = c.lab.cards[place];
  Card after = card;
  int length = 0;
  for (const HeldAddress& h : c.addresses.on(segment)) {
    if (h.card != place || (h.marks & HeldMark::other_length) == 0) continue;
    after.addresses[h.row].length.reset();
    length = c.addresses.prefix(segment, h.address.family())->length();
  }
  return change_to(say(text::fix_use_length, std::to_string(length), machine_name(c, place)), card, after);
}

void check_reserved(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_marked(c, HeldMark::reserved, [&](const HeldAddress& h) {
    const Prefix prefix = *c.addresses.prefix4(h.segment);
    const bool network = h.address == prefix.network();
    out.push_back(found(Severity::error,
                        say(network ? text::address_network : text::address_broadcast, to_text(h.address),
                            holder_name(c, h), segment_name(c, h.segment), to_text(prefix)),
                        say(text::address_broadcast_why), {holder_id(c, h)}));
    const AnyId segment = c.lab.segments[h.segment].id;
    if (out.back().places[0] != segment) out.back().places.push_back(segment);
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_reserved(const Context& c, const Finding& f) {
  return move_first(c, f.places[0], [](const HeldAddress& h) { return (h.marks & HeldMark::reserved) != 0; });
}

void check_unusable(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_marked(c, HeldMark::outside | HeldMark::no_prefix, [&](const HeldAddress& h) {
    if (!is_unusable(h.address)) return;
    const SpecialBlock* block = special_block(h.address);
    out.push_back(
        found(Severity::error,
              say(text::address_unusable, to_text(h.address), holder_name(c, h), block->name, block->source),
              say(text::address_unusable_why), {holder_id(c, h)}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_unusable(const Context& c, const Finding& f) {
  return move_first(c, f.places[0], [](const HeldAddress& h) {
    return (h.marks & (HeldMark::outside | HeldMark::no_prefix)) != 0 && is_unusable(h.address);
  });
}

constexpr std::array kRules{
    Rule{"address-twice", Topic::addresses, Severity::error, "An address belongs to two on one network",
         "RFC 5227", check_twice, fix_twice, other_fix_twice},
    Rule{"address-outside", Topic::addresses, Severity::error,
         "An address does not lie in its segment's prefix", "RFC 4632, RFC 1122 3.3.1.1", check_outside,
         fix_outside},
    Rule{"address-length", Topic::addresses, Severity::error,
         "An address has another prefix length than its segment", "RFC 950, RFC 4632", check_length,
         fix_length},
    Rule{"address-broadcast", Topic::addresses, Severity::error, "A host has a network or broadcast address",
         "RFC 1122 3.2.1.3, RFC 3021", check_reserved, fix_reserved},
    Rule{"address-unusable", Topic::addresses, Severity::error, "An address that no host can use",
         "RFC 6890, RFC 5771, RFC 4291 2.7", check_unusable, fix_unusable},
};

} // namespace

std::span<const Rule> address_conflict_rules() { return kRules; }

} // namespace snug
