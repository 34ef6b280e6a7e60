#include "core/findings/tools.h"
#include "core/text/lab_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr std::string_view kEntered = "a limit that the person entered";
constexpr AnyId kPc{Kind::pc, 0};

// Only guests on the PC are guests of that program; inner guests are those of their hypervisor.
void check_cards(const Context& c, std::vector<Finding>& out) {
  if (!c.lab.pc.max_cards_per_guest) return;
  const std::int64_t most = *c.lab.pc.max_cards_per_guest;
  for (const std::uint32_t m : c.index.guests_of(kNowhere)) {
    const auto cards = static_cast<std::int64_t>(c.index.cards_of(m).size());
    if (cards <= most) continue;
    const AnyId id = c.lab.machines[m].id;
    out.push_back(found(Severity::error, say(text::limit_cards, Count{cards}, c.name(id), Count{most}),
                        say(text::limit_why, c.name(kPc)), {id}));
  }
}

void check_segments(const Context& c, std::vector<Finding>& out) {
  const auto count = static_cast<std::int64_t>(c.lab.segments.size());
  if (!c.lab.pc.max_segments || count <= *c.lab.pc.max_segments) return;
  out.push_back(found(Severity::error, say(text::limit_segments, Count{count}, Count{*c.lab.pc.max_segments}),
                      say(text::limit_why, c.name(kPc)), {kPc}));
}

void check_nat(const Context& c, std::vector<Finding>& out) {
  if (!c.lab.pc.max_nat_segments) return;
  const std::int64_t count = std::count_if(c.lab.segments.begin(), c.lab.segments.end(),
                                           [](const Segment& s) { return s.type == SegmentKind::nat; });
  if (count <= *c.lab.pc.max_nat_segments) return;
  out.push_back(found(Severity::error, say(text::limit_nat, Count{count}, Count{*c.lab.pc.max_nat_segments}),
                      say(text::limit_why, c.name(kPc)), {kPc}));
}

void check_macs(const Context& c, std::vector<Finding>& out) {
  if (c.lab.pc.typed_macs_allowed != Known::no) return;
  for (const std::uint32_t m : c.index.guests_of(kNowhere))
    for (const std::uint32_t p : c.index.cards_of(m)) {
      const Card& card = c.lab.cards[p];
      if (!card.mac || card.mac_source == MacSource::program) continue;
      out.push_back(found(Severity::error, say(text::limit_macs, c.name(card.id)),
                          say(text::limit_why, c.name(kPc)), {card.id}));
    }
}
std::optional<Fix> fix_macs(const Context& c, const Finding& f) {
  return build_fix(c, say(text::fix_mac), [&](EditBuilder& b) {
    b.set(f.places[0], "mac", Value());
    b.set(f.places[0], "mac_source", "program");
  });
}

} // namespace

std::span<const Rule> limit_rules() {
  static const std::array list{
      Rule{"limit-cards", Topic::plan, Severity::error, "A guest has more cards than the program allows",
           kEntered, check_cards},
      Rule{"limit-segments", Topic::plan, Severity::error, "More segments than the program allows", kEntered,
           check_segments},
      Rule{"limit-nat", Topic::plan, Severity::error, "More NAT segments than the program allows", kEntered,
           check_nat},
      Rule{"limit-macs", Topic::plan, Severity::error, "A MAC of the plan where the program chooses its own",
           kEntered, check_macs, fix_macs},
  };
  return list;
}

} // namespace snug
