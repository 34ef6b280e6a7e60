#include "core/addressing/renumber.h"
#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/text/address_text.h"
#include "core/text/segment_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

struct Owned {
  Prefix prefix;
  std::uint32_t owner = 0; // place of a segment, LAN or place
};

bool by_prefix(const Owned& a, const Owned& b) {
  return std::tie(a.prefix, a.owner) < std::tie(b.prefix, b.owner);
}

std::vector<Owned> prefixes_of_segments(const Context& c) {
  std::vector<Owned> all;
  all.reserve(2 * c.lab.segments.size());
  for (const Family f : {Family::v4, Family::v6})
    for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s)
      if (const auto& p = c.addresses.prefix(s, f)) all.push_back({*p, s});
  if (!std::is_sorted(all.begin(), all.end(), by_prefix)) std::sort(all.begin(), all.end(), by_prefix);
  return all;
}

const Lan* lan_of(const Context& c, std::uint32_t segment) {
  const Segment& s = c.lab.segments[segment];
  return s.type == SegmentKind::bridged ? c.index.lan(s.lan) : nullptr;
}

void report_overlap(const Context& c, const Owned& a, const Owned& b, std::vector<Finding>& out) {
  const Owned& first = a.owner < b.owner ? a : b;
  const Owned& second = a.owner < b.owner ? b : a;
  out.push_back(found(Severity::error,
                      say(text::segments_overlap, segment_name(c, first.owner), to_text(first.prefix),
                          segment_name(c, second.owner), to_text(second.prefix)),
                      say(text::segments_overlap_why),
                      {c.lab.segments[first.owner].id, c.lab.segments[second.owner].id}));
}

// Networks nest or are apart, so those around the present one are a stack.
void check_overlap(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  std::vector<Owned> around;
  for (const Owned& p : prefixes_of_segments(c)) {
    while (!around.empty() && !around.back().prefix.contains(p.prefix)) around.pop_back();
    const Lan* lan = lan_of(c, p.owner);
    const auto other = std::find_if(around.rbegin(), around.rend(), [&](const Owned& o) {
      return o.owner != p.owner && (!lan || lan_of(c, o.owner) != lan);
    });
    if (other != around.rend()) report_overlap(c, *other, p, out);
    around.push_back(p);
  }
  drop_repeated(out, before);
}

std::optional<Fix> move_segment(const Context& c, std::uint32_t segment, Family family) {
  const auto to = lan_of(c, segment) ? std::nullopt : other_prefix(c.lab, segment, family);
  if (!to) return std::nullopt;
  Lab after = c.lab;
  renumber(after, c.index, c.addresses, segment, *to);
  Fix fix{say(text::fix_use_prefix, to_text(*to), segment_name(c, segment)), difference(c.lab, after)};
  fix.edit.label = fix.label;
  return fix;
}

std::optional<Family> overlapping_family(const Context& c, std::uint32_t a, std::uint32_t b) {
  for (const Family f : {Family::v4, Family::v6}) {
    const auto p = c.addresses.prefix(a, f), q = c.addresses.prefix(b, f);
    if (p && q && p->overlaps(*q)) return f;
  }
  return std::nullopt;
}

std::optional<Fix> fix_overlap(const Context& c, const Finding& f) {
  const std::uint32_t a = c.index.place(f.places[0]), b = c.index.place(f.places[1]);
  const auto family = overlapping_family(c, a, b);
  if (!family) return std::nullopt;
  return move_segment(c, lan_of(c, b) ? a : b, *family);
}

// The first of `others` (sorted) that overlaps: one around `p`, else one inside it.
const Owned* overlapping(const std::vector<Owned>& others, const Prefix& p) {
  for (int length = 0; length <= p.length(); ++length) {
    const Owned wanted{Prefix::of(p.network(), length), 0};
    const auto it = std::lower_bound(others.begin(), others.end(), wanted, by_prefix);
    if (it != others.end() && it->prefix == wanted.prefix) return &*it;
  }
  const auto it = std::lower_bound(others.begin(), others.end(), Owned{p, 0}, by_prefix);
  return it != others.end() && p.contains(it->prefix) ? &*it : nullptr;
}

template <typename Report>
void each_overlap(const Context& c, std::vector<Owned> others, Report report) {
  if (others.empty()) return;
  std::sort(others.begin(), others.end(), by_prefix);
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    if (c.lab.segments[s].type == SegmentKind::bridged) continue;
    for (const auto& p : {c.addresses.prefix4(s), c.addresses.prefix6(s)})
      if (const Owned* o = p ? overlapping(others, *p) : nullptr) report(s, *p, *o);
  }
}

void check_lans(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  std::vector<Owned> lans;
  for (std::uint32_t l = 0; l < c.lab.lans.size(); ++l)
    for (const auto& p : {c.lab.lans[l].prefix4, c.lab.lans[l].prefix6})
      if (p) lans.push_back({*p, l});
  each_overlap(c, std::move(lans), [&](std::uint32_t s, const Prefix& p, const Owned& o) {
    const AnyId lan = c.lab.lans[o.owner].id;
    out.push_back(
        found(Severity::error,
              say(text::segment_lan_overlap, segment_name(c, s), to_text(p), c.name(lan), to_text(o.prefix)),
              say(text::segment_place_overlap_why), {c.lab.segments[s].id, lan}));
  });
  drop_repeated(out, before);
}

void check_place(const Context& c, std::uint32_t place, std::vector<Finding>& out) {
  std::vector<Owned> prefixes;
  for (const Prefix& p : c.lab.places[place].prefixes) prefixes.push_back({p, place});
  each_overlap(c, std::move(prefixes), [&](std::uint32_t s, const Prefix& p, const Owned& o) {
    const AnyId id = c.lab.places[place].id;
    out.push_back(
        found(Severity::caution,
              say(text::segment_place_overlap, segment_name(c, s), to_text(p), c.name(id), to_text(o.prefix)),
              say(text::segment_place_overlap_why), {c.lab.segments[s].id, id}));
  });
}

void check_places(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  for (std::uint32_t p = 0; p < c.lab.places.size(); ++p) check_place(c, p, out);
  drop_repeated(out, before);
}

bool meets_world(const Context& c, AnyId world, const Prefix& p) {
  const std::uint32_t w = c.index.place(world);
  const auto overlaps = [&p](const Prefix& o) { return o.overlaps(p); };
  if (world.kind == Kind::place)
    return std::any_of(c.lab.places[w].prefixes.begin(), c.lab.places[w].prefixes.end(), overlaps);
  const Lan& lan = c.lab.lans[w];
  return (lan.prefix4 && overlaps(*lan.prefix4)) || (lan.prefix6 && overlaps(*lan.prefix6));
}

std::optional<Fix> fix_world(const Context& c, const Finding& f) {
  const std::uint32_t s = c.index.place(f.places[0]);
  for (const Family family : {Family::v4, Family::v6})
    if (const auto p = c.addresses.prefix(s, family); p && meets_world(c, f.places[1], *p))
      return move_segment(c, s, family);
  return std::nullopt;
}

// Prefixes that are the lab's own choice: not those of a LAN.
template <typename Report>
void each_own_prefix(const Context& c, Report report) {
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    if (lan_of(c, s)) continue;
    for (const auto* p : {&c.lab.segments[s].prefix4, &c.lab.segments[s].prefix6})
      if (*p) report(s, **p);
  }
}

bool is_private_prefix(const Prefix& p) { return is_private(p.network()) && is_private(p.last()); }
const SpecialBlock* special_of(const Prefix& p) {
  const SpecialBlock* block = special_block(p.network());
  return block && block->prefix.contains(p) ? block : nullptr;
}

void check_special(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_own_prefix(c, [&](std::uint32_t s, const Prefix& p) {
    const SpecialBlock* block = is_private_prefix(p) ? nullptr : special_of(p);
    if (!block || block->globally_reachable) return;
    const bool unusable = block->reserved_by_protocol || is_multicast(p.network());
    out.push_back(found(
        unusable ? Severity::error : Severity::caution,
        say(text::address_special, segment_name(c, s), to_text(p), block->name, block->source),
        unusable ? say(text::address_unusable_why) : say(text::address_special_why), {c.lab.segments[s].id}));
  });
  drop_repeated(out, before);
}

void check_public(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_own_prefix(c, [&](std::uint32_t s, const Prefix& p) {
    if (is_private_prefix(p)) return;
    const SpecialBlock* block = special_of(p);
    if (block && !block->globally_reachable) return;
    out.push_back(found(Severity::caution, say(text::address_public, segment_name(c, s), to_text(p)),
                        say(text::address_public_why), {c.lab.segments[s].id}));
  });
  drop_repeated(out, before);
}

// One family at a time; none where the plan's own block is public, or both prefixes are.
std::optional<Fix> fix_not_private(const Context& c, const Finding& f) {
  const std::uint32_t s = c.index.place(f.places[0]);
  const auto is_public = [&](Family family) {
    const auto p = c.addresses.prefix(s, family);
    return p && !is_private_prefix(*p);
  };
  const Family family = is_public(Family::v4) ? Family::v4 : Family::v6;
  const auto& block = family == Family::v4 ? c.lab.numbering.block : c.lab.facts.local_prefix6;
  if (!is_public(family) || (family == Family::v4 && is_public(Family::v6))) return std::nullopt;
  if (block && !is_private_prefix(*block)) return std::nullopt;
  return move_segment(c, s, family);
}

void check_slaac(const Context& c, std::vector<Finding>& out) {
  constexpr int kSlaacLength = 64; // RFC 4291 2.5.1, RFC 4862 5.5.3
  std::vector<std::uint8_t> wanted(c.lab.segments.size(), 0);
  const NetworkFacts& facts = c.addresses.facts();
  const auto want = [&](std::uint32_t card) {
    if (facts.card_segment[card] != kNowhere) wanted[facts.card_segment[card]] = 1;
  };
  facts.each_card(CardMark::slaac, want);
  facts.each_card(CardMark::advertises, want);
  for (std::uint32_t s = 0; s < wanted.size(); ++s) {
    const auto p = c.addresses.prefix6(s);
    if (!wanted[s] || !p || p->length() == kSlaacLength) continue;
    out.push_back(found(Severity::error, say(text::slaac_prefix, segment_name(c, s), to_text(*p)),
                        say(text::slaac_prefix_why), {c.lab.segments[s].id}));
  }
}

void check_kept(const Context& c, std::vector<Finding>& out) {
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s)
    for (const RangeRow& r : c.lab.segments[s].kept) {
      if (is_formed(r)) continue;
      out.push_back(found(Severity::error,
                          say(text::kept_form, segment_name(c, s), to_text(r.first), to_text(r.last)),
                          say(text::kept_form_why), {c.lab.segments[s].id}));
      break;
    }
}

std::optional<Fix> fix_kept(const Context& c, const Finding& f) {
  const Segment& before = c.lab.segments[c.index.place(f.places[0])];
  Segment after = before;
  std::string shown;
  for (RangeRow& r : after.kept) {
    const bool wrong = !is_formed(r);
    const auto meant = formed(r);
    if (!meant) return std::nullopt;
    r = *meant;
    if (wrong && shown.empty()) shown = range_text({r.first, r.last});
  }
  return change_to(say(text::fix_keep, shown), before, after);
}

constexpr std::array kRules{
    Rule{"segments-overlap", Topic::addresses, Severity::error, "Two segments have overlapping prefixes",
         "RFC 4632", check_overlap, fix_overlap},
    Rule{"segment-lan-overlap", Topic::addresses, Severity::error, "A segment collides with a physical LAN",
         kPracticeSource, check_lans, fix_world},
    Rule{"segment-place-overlap", Topic::addresses, Severity::caution,
         "A segment collides with a place the PC is taken to", kPracticeSource, check_places, fix_world},
    Rule{"address-special", Topic::addresses, Severity::caution,
         "A segment has a prefix that is kept for something else", "RFC 6890", check_special,
         fix_not_private},
    Rule{"address-public", Topic::addresses, Severity::caution, "A segment has public addresses", "RFC 1918",
         check_public, fix_not_private},
    Rule{"slaac-prefix", Topic::addresses, Severity::error,
         "IPv6 autoconfiguration on a prefix that is not a /64", "RFC 4291 2.5.1, RFC 4862", check_slaac},
    Rule{"kept-form", Topic::addresses, Severity::error, "Kept addresses that are no range", kPracticeSource,
         check_kept, fix_kept},
};

} // namespace

std::span<const Rule> prefix_rules() { return kRules; }

} // namespace snug
