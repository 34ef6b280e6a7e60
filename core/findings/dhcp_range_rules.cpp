#include "core/addressing/plan.h"
#include "core/addressing/room.h"
#include "core/findings/dhcp_servers.h"
#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/text/address_text.h"
#include "core/text/dhcp_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

using Range = AddressesInUse::Range;

void check_fixed(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  for (const Conflicts::Inside& i : c.addresses.inside_ranges()) {
    const Range& r = c.addresses.ranges()[i.range];
    const HeldAddress& h = c.addresses.all()[i.address];
    if (h.domain != r.domain || h.domain == kNowhere || h.holder == Holder::lan_router) continue;
    std::vector<AnyId> places{holder_id(c, h)};
    if (r.server != places[0]) places.push_back(r.server);
    out.push_back(found(Severity::error,
                        say(text::address_in_dhcp, to_text(h.address), holder_name(c, h), range_text(r.range),
                            server_name(c, r.server), segment_name(c, h.segment)),
                        say(text::address_in_dhcp_why), std::move(places)));
  }
  drop_repeated(out, before);
}

std::optional<Fix> fix_fixed(const Context& c, const Finding& f) {
  if (f.places[0].kind != Kind::card) return std::nullopt;
  return move_first(c, f.places[0], [&](const HeldAddress& h) {
    if (h.segment == kNowhere) return false;
    const auto ranges = c.addresses.ranges(h.segment);
    return std::any_of(ranges.begin(), ranges.end(), [&](const Range& r) {
      return r.server == f.places.back() && r.domain == h.domain && r.range.contains(h.address);
    });
  });
}

bool is_lan(const Range& r) { return r.server.kind == Kind::lan; }

void check_overlap(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
    if (c.addresses.ranges(s).size() < 2) continue;
    std::vector<Range> sorted(c.addresses.ranges(s).begin(), c.addresses.ranges(s).end());
    std::stable_sort(sorted.begin(), sorted.end(), [](const Range& a, const Range& b) {
      return std::tie(a.domain, a.range.first) < std::tie(b.domain, b.range.first);
    });
    const Range* farthest = nullptr;
    for (const Range& r : sorted) {
      if (farthest && farthest->domain == r.domain && farthest->range.last >= r.range.first &&
          farthest->range.first.family() == r.range.first.family() && !(is_lan(*farthest) && is_lan(r))) {
        std::vector<AnyId> places{farthest->server};
        if (r.server != places[0]) places.push_back(r.server);
        const bool one = places.size() == 1;
        out.push_back(found(
            Severity::error,
            say(text::ranges_overlap, range_text(farthest->range), server_name(c, farthest->server),
                range_text(r.range), server_name(c, r.server), segment_name(c, s)),
            one ? say(text::ranges_overlap_self_why) : say(text::ranges_overlap_why), std::move(places)));
      }
      if (!farthest || farthest->domain != r.domain || farthest->range.last < r.range.last) farthest = &r;
    }
  }
  drop_repeated(out, before);
}

const std::vector<RangeRow>* rows_of(const Context& c, AnyId server) {
  const std::uint32_t place = c.index.place(server);
  if (server.kind == Kind::card) return &c.lab.cards[place].ranges;
  return server.kind == Kind::segment ? &c.lab.segments[place].ranges : nullptr;
}

std::optional<Fix> set_ranges(const Context& c, AnyId server, const std::vector<RangeRow>& rows) {
  const std::string shown =
      rows.empty() ? std::string{} : range_text({rows.front().first, rows.front().last});
  const Message label =
      rows.empty() ? say(text::fix_dhcp_off, server_name(c, server)) : say(text::fix_use_range, shown);
  const std::uint32_t place = c.index.place(server);
  if (server.kind == Kind::card) {
    Card after = c.lab.cards[place];
    after.ranges = rows;
    if (rows.empty()) after.dhcp = DhcpDuty::none;
    return change_to(label, c.lab.cards[place], after);
  }
  if (server.kind != Kind::segment) return std::nullopt;
  Segment after = c.lab.segments[place];
  after.ranges = rows;
  if (rows.empty()) after.translator_dhcp = false;
  return change_to(label, c.lab.segments[place], after);
}

// What is left of the rows of one server beside those of `other`.
std::vector<RangeRow> without(const std::vector<RangeRow>& rows, const std::vector<RangeRow>& others) {
  std::vector<RangeRow> left = rows;
  for (const RangeRow& o : others) {
    std::vector<RangeRow> next;
    for (const RangeRow& r : left) {
      if (r.first.family() != o.first.family() || o.last < r.first || r.last < o.first) {
        next.push_back(r);
        continue;
      }
      RangeRow before = r, after = r;
      if (r.first < o.first) before.last = *o.first.plus(-1), next.push_back(before);
      if (o.last < r.last) after.first = *o.last.plus(1), next.push_back(after);
    }
    left = std::move(next);
  }
  return left;
}

std::optional<Fix> fix_overlap(const Context& c, const Finding& f) {
  const std::vector<RangeRow>* rows = rows_of(c, f.places.back());
  if (!rows) return std::nullopt;
  if (f.places.size() == 2) {
    const AnyId other = f.places[0];
    const std::vector<RangeRow>* others =
        other.kind == Kind::lan ? &c.index.lan(LanId{other.number})->pool : rows_of(c, other);
    return set_ranges(c, f.places.back(), without(*rows, *others));
  }
  std::vector<RangeRow> apart;
  for (const RangeRow& r : *rows)
    for (const RangeRow& piece : without({r}, apart)) apart.push_back(piece);
  return set_ranges(c, f.places.back(), apart);
}

// Calls use(server, segment, row) for every range row in the plan's hands.
template <typename Use>
void each_row(const Context& c, Use use) {
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s)
    for (const RangeRow& r : c.lab.segments[s].ranges) use(c.lab.segments[s].id, s, r);
  c.addresses.facts().each_card(CardMark::has_ranges | CardMark::server, [&](std::uint32_t card) {
    const std::uint32_t s = served_segment(c, card);
    if (s == kNowhere) return;
    for (const RangeRow& r : c.lab.cards[card].ranges) use(c.lab.cards[card].id, s, r);
  });
}

bool leaves(const Context& c, std::uint32_t s, const RangeRow& r) {
  const auto p = c.addresses.prefix(s, r.first.family());
  if (!is_formed(r) || !p) return false;
  return !p->contains(r.first) || !p->contains(r.last) || p->is_reserved(r.first) || p->is_reserved(r.last);
}

void check_outside(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_row(c, [&](AnyId server, std::uint32_t s, const RangeRow& r) {
    if (!leaves(c, s, r)) return;
    std::vector<AnyId> places{server};
    if (server != AnyId(c.lab.segments[s].id)) places.emplace_back(c.lab.segments[s].id);
    out.push_back(found(Severity::error,
                        say(text::range_outside, range_text({r.first, r.last}), server_name(c, server),
                            segment_name(c, s), to_text(*c.addresses.prefix(s, r.first.family()))),
                        say(text::range_outside_why), std::move(places)));
  });
  drop_repeated(out, before);
}

// The part inside the prefix; where there is none, the scheme's range.
std::optional<Fix> fix_outside(const Context& c, const Finding& f) {
  const std::uint32_t s = c.index.place(f.places.back());
  std::vector<RangeRow> rows;
  for (const RangeRow& r : *rows_of(c, f.places[0])) {
    if (!leaves(c, s, r)) {
      rows.push_back(r);
      continue;
    }
    const Prefix p = *c.addresses.prefix(s, r.first.family());
    RangeRow cut = r;
    cut.first = std::max(r.first, p.first_host());
    cut.last = std::min(r.last, p.last_host());
    if (cut.first <= cut.last) rows.push_back(cut);
  }
  if (rows.empty()) {
    const auto range = scheme_range(c.index, c.addresses, s);
    if (!range) return std::nullopt;
    rows.emplace_back();
    rows[0].first = range->first;
    rows[0].last = range->last;
  }
  return set_ranges(c, f.places[0], rows);
}

void check_form(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_row(c, [&](AnyId server, std::uint32_t, const RangeRow& r) {
    if (is_formed(r)) return;
    out.push_back(found(Severity::error,
                        say(text::range_form, server_name(c, server), to_text(r.first), to_text(r.last)),
                        say(text::range_form_why), {server}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_form(const Context& c, const Finding& f) {
  std::vector<RangeRow> rows = *rows_of(c, f.places[0]);
  for (RangeRow& r : rows) {
    const auto meant = formed(r);
    if (!meant) return std::nullopt;
    r = *meant;
  }
  return set_ranges(c, f.places[0], rows);
}

void check_missing(const Context& c, std::vector<Finding>& out) {
  for (const DhcpServer& d : dhcp_servers(c)) {
    if (c.lab.segments[d.segment].type == SegmentKind::bridged || !rows_of(c, d.id)->empty()) continue;
    std::vector<AnyId> places{d.id};
    if (d.id.kind == Kind::card) places.emplace_back(c.lab.segments[d.segment].id);
    out.push_back(found(d.id.kind == Kind::card ? Severity::caution : Severity::note,
                        say(text::dhcp_no_range, server_name(c, d.id), segment_name(c, d.segment)),
                        say(text::dhcp_no_range_why), std::move(places)));
  }
}

std::optional<Fix> fix_missing(const Context& c, const Finding& f) {
  const auto range = scheme_range(c.index, c.addresses, c.index.place(f.places.back()));
  if (!range) return std::nullopt;
  std::vector<RangeRow> rows(1);
  rows[0].first = range->first;
  rows[0].last = range->last;
  return set_ranges(c, f.places[0], rows);
}

// A network with DHCP where more cards ask than addresses are given out.
struct SmallPool {
  std::uint32_t segment = kNowhere, domain = kNowhere;
  std::int64_t asking = 0, given = 0;
};

std::vector<SmallPool> small_pools(const Context& c) {
  std::vector<SmallPool> out;
  if ((c.addresses.facts().any_card & CardMark::asks_dhcp) == 0) return out;
  out.resize(c.addresses.domains().count());
  c.addresses.facts().each_card(CardMark::asks_dhcp | CardMark::connected, [&](std::uint32_t card) {
    const std::uint32_t d = c.addresses.domains().of_card(card);
    if (d != kNowhere) ++out[d].asking;
  });
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s)
    for (const Range& r : c.addresses.ranges(s)) {
      if (r.domain == kNowhere || is_lan(r) || !r.range.first.is_v4()) continue;
      SmallPool& pool = out[r.domain];
      pool.given += r.range.size();
      pool.domain = r.domain;
      pool.segment = s;
    }
  std::erase_if(out, [&](const SmallPool& p) {
    return p.segment == kNowhere || p.given >= p.asking ||
           c.lab.segments[p.segment].type == SegmentKind::bridged;
  });
  return out;
}

void check_small(const Context& c, std::vector<Finding>& out) {
  for (const SmallPool& p : small_pools(c))
    out.push_back(
        found(Severity::error,
              say(text::dhcp_small, Count{p.asking}, segment_name(c, p.segment), std::to_string(p.given)),
              say(text::dhcp_small_why), {c.lab.segments[p.segment].id}));
}

// By the free addresses behind a range, then by those before it; none where that is not enough.
std::optional<Fix> fix_small(const Context& c, const Finding& f) {
  const std::uint32_t s = c.index.place(f.places[0]);
  const Room room(c.index, c.addresses, s);
  for (const SmallPool& p : small_pools(c)) {
    if (p.segment != s) continue;
    for (const Range& r : c.addresses.ranges(s)) {
      if (r.domain != p.domain || !rows_of(c, r.server)) continue;
      const auto first = room.host_of(r.range.first), last = room.host_of(r.range.last);
      if (!first || !last) continue;
      std::int64_t from = *first, to = *last, missing = p.asking - p.given;
      for (; missing > 0 && to + 1 < room.size() && room.is_free(to + 1); --missing) ++to;
      for (; missing > 0 && from > 0 && room.is_free(from - 1); --missing) --from;
      if (missing > 0) continue;
      std::vector<RangeRow> rows = *rows_of(c, r.server);
      for (RangeRow& row : rows) {
        if (row.first != r.range.first || row.last != r.range.last) continue;
        row.first = room.address(from);
        row.last = room.address(to);
      }
      return set_ranges(c, r.server, rows);
    }
  }
  return std::nullopt;
}

constexpr std::array kRules{
    Rule{"address-in-dhcp", Topic::addresses, Severity::error, "A fixed address lies in a DHCP range",
         kPracticeSource, check_fixed, fix_fixed},
    Rule{"ranges-overlap", Topic::addresses, Severity::error, "DHCP ranges overlap", "RFC 2131",
         check_overlap, fix_overlap},
    Rule{"range-outside", Topic::addresses, Severity::error, "A DHCP range leaves the segment's prefix",
         "RFC 2131, RFC 4632", check_outside, fix_outside},
    Rule{"range-form", Topic::addresses, Severity::error, "A DHCP range that is none", kPracticeSource,
         check_form, fix_form},
    Rule{"dhcp-no-range", Topic::addresses, Severity::caution, "A DHCP server without a range",
         kPracticeSource, check_missing, fix_missing},
    Rule{"dhcp-small", Topic::addresses, Severity::error, "More cards ask DHCP than it has addresses",
         "RFC 2131", check_small, fix_small},
};

} // namespace

std::span<const Rule> dhcp_range_rules() { return kRules; }

} // namespace snug
