#include "core/gesture/addresses.h"

#include "core/base/quote.h"
#include "core/gesture/fill.h"
#include "core/gesture/plug.h"
#include "core/model/index.h"
#include "core/text/clip_text.h"
#include "core/text/gesture_text.h"

#include <algorithm>
#include <set>

namespace snug {

namespace {

Message label(std::span<const AddressCell> cells) {
  return say(text::gesture_addresses, Count{static_cast<std::int64_t>(cells.size())});
}

const CardAddress* address_in(const Lab& lab, const AddressCell& cell) {
  const Card& card = *find<Card>(lab, cell.card);
  return cell.row < card.addresses.size() ? &card.addresses[cell.row] : nullptr;
}

// What cards that are not among the cells hold on a segment.
std::set<Address> others_on(const Lab& lab, SegmentId segment, std::span<const AddressCell> cells) {
  std::set<Address> out;
  for (const Card& c : lab.cards)
    for (std::size_t row = 0; row < c.addresses.size(); ++row)
      if (c.segment == segment && c.addresses[row].address &&
          std::find(cells.begin(), cells.end(), AddressCell{c.id, row}) == cells.end())
        out.insert(*c.addresses[row].address);
  const Segment* s = find<Segment>(lab, segment);
  if (s && s->gateway4) out.insert(*s->gateway4);
  return out;
}

} // namespace

std::vector<std::string> pasted_addresses(std::string_view text) {
  std::vector<std::string> out;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    std::string_view line = trimmed(text.substr(0, end));
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
    if (line.empty()) continue;
    std::string_view wanted = line;
    for (std::string_view rest = line; !rest.empty();) {
      const std::size_t cut = rest.find_first_of("\t;,");
      const std::string_view part = trimmed(rest.substr(0, cut));
      if (parse_address(part.substr(0, part.find('/')))) {
        wanted = part;
        break;
      }
      rest = cut == std::string_view::npos ? std::string_view{} : rest.substr(cut + 1);
    }
    out.emplace_back(wanted);
  }
  return out;
}

Result<Edit> set_addresses(const Lab& lab, std::span<const AddressCell> cells,
                           std::span<const std::string> typed) {
  Lab after = lab;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const auto one = set_address(after, cells[i].card, cells[i].row, typed[i]);
    if (!one)
      return fail(text::paste_line, Count{static_cast<std::int64_t>(i) + 1}, name_of(lab, cells[i].card),
                  one.error().message);
    if (const auto ok = detail::take_in(after, one); !ok) return fail(ok.error());
  }
  return detail::edit_between(lab, after, label(cells));
}

Result<Edit> number_on(const Lab& lab, std::span<const AddressCell> cells) {
  const CardAddress* first = cells.empty() ? nullptr : address_in(lab, cells.front());
  if (!first || !first->address) return fail(text::number_on_first);
  const SegmentId segment = find<Card>(lab, cells.front().card)->segment;
  const std::set<Address> taken = others_on(lab, segment, cells);
  const Segment* s = find<Segment>(lab, segment);
  const std::optional<Prefix> prefix = !s ? std::nullopt : first->address->is_v4() ? s->prefix4 : s->prefix6;
  std::vector<std::string> typed{to_text(*first->address)};
  std::optional<Address> next = first->address;
  while (typed.size() < cells.size()) {
    next = next->plus(1);
    if (!next || (prefix && !prefix->contains(*next)))
      return fail(text::number_on_end, to_text(*first->address),
                  Count{static_cast<std::int64_t>(typed.size())});
    if (taken.contains(*next) || (prefix && prefix->is_reserved(*next))) continue;
    typed.push_back(to_text(*next));
  }
  return set_addresses(lab, cells.subspan(1), std::span(typed).subspan(1));
}

Edit suggest_again(const Lab& lab, std::span<const AddressCell> cells) {
  Lab after = lab;
  std::set<CardId> cards;
  for (const AddressCell& cell : cells) cards.insert(cell.card);
  for (Card& c : after.cards)
    if (cards.contains(c.id)) c.addresses.clear();
  for (const CardId id : cards) detail::suggest_for(after, id);
  return detail::edit_between(lab, after, label(cells));
}

} // namespace snug
