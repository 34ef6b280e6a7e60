#include "core/gesture/plug.h"

#include "core/addressing/plan.h"
#include "core/base/quote.h"
#include "core/gesture/fill.h"
#include "core/gesture/names.h"
#include "core/text/gesture_text.h"

#include <algorithm>

namespace snug {

namespace {

Card& card_of(Lab& lab, CardId id) {
  return *std::find_if(lab.cards.begin(), lab.cards.end(), [id](const Card& c) { return c.id == id; });
}

// "172.22.10.12", ".12", with or without "/24", as a row.
Result<CardAddress> typed_row(const Lab& lab, const Card& card, std::string_view text) {
  CardAddress row;
  if (const std::size_t slash = text.find('/'); slash != std::string_view::npos) {
    const auto both = parse_address_with_length(text);
    if (!both) return fail(both.error());
    row.address = both->address;
    row.length = both->length;
    return row;
  }
  std::string whole(text);
  if (text.starts_with('.')) {
    const Index index(lab);
    const AddressesInUse in_use(index);
    const std::uint32_t s = index.place(card.segment);
    const auto prefix = s == kNowhere ? std::nullopt : in_use.prefix4(s);
    if (prefix) {
      const std::string network = to_text(prefix->network());
      whole = network.substr(0, network.rfind('.')) + whole;
    }
  }
  const auto address = parse_address(whole);
  if (!address) return fail(address.error());
  row.address = *address;
  return row;
}

Result<CardAddress> row_from(const Lab& lab, const Card& card, std::string_view text) {
  CardAddress row;
  if (text == "dhcp" || text == "DHCP")
    row.kind = AddressKind::dhcp;
  else if (text == "slaac" || text == "SLAAC" || text == "auto")
    row.kind = AddressKind::slaac;
  else
    return typed_row(lab, card, text);
  return row;
}

} // namespace

namespace {

// By the key of its role, which never changes: passing packets on is what a router is for.
bool is_router(const Lab& lab, MachineId machine) {
  const Machine* m = find<Machine>(lab, machine);
  const Role* role = m ? find<Role>(lab, m->role) : nullptr;
  return role && role->key == "router";
}

} // namespace

Result<Added> add_card(const Lab& lab, MachineId machine, SegmentId segment) {
  Lab after = lab;
  Card card;
  card.machine = machine;
  card.segment = segment;
  card.mac_source = MacSource::derived;
  card.forwards4 = card.forwards6 = is_router(lab, machine);
  const CardId id = detail::append(after, std::move(card)).id;
  detail::suggest_for(after, id);
  return Added{detail::edit_between(lab, after,
                                    say(text::gesture_connect, name_of(lab, machine), name_of(lab, segment))),
               id};
}

Result<Added> add_cards(const Lab& lab, std::span<const MachineId> machines, SegmentId segment) {
  Lab after = lab;
  AnyId first;
  for (const MachineId m : machines) {
    auto added = add_card(after, m, segment);
    if (!added) return fail(added.error());
    if (const auto ok = detail::take_in(after, std::move(added->edit)); !ok) return fail(ok.error());
    if (!first) first = added->id;
  }
  return Added{detail::edit_between(
                   lab, after, say(text::gesture_connect, names_of(lab, machines), name_of(lab, segment))),
               first};
}

Result<Edit> plug_card(const Lab& lab, CardId id, SegmentId segment) {
  Lab after = lab;
  Card& card = card_of(after, id);
  const std::string name = name_of(lab, id);
  if (!card.trunk.empty()) return fail(text::gesture_trunk, name);
  if (card.segment == segment) return fail(text::gesture_plugged, name, name_of(lab, segment));
  card.segment = segment;
  card.addresses.clear();
  card.ranges.clear();
  if (!only_carries(card)) detail::suggest_for(after, id);
  return detail::edit_between(lab, after, say(text::gesture_plug, name, name_of(lab, segment)));
}

Result<Edit> carry_instead(const Lab& lab, CardId id, SegmentId from, SegmentId to) {
  Lab after = lab;
  Card& card = card_of(after, id);
  const std::string name = name_of(lab, id);
  const auto names = [](SegmentId s) { return [s](const SegmentTag& t) { return t.segment == s; }; };
  if (card.segment == to || std::any_of(card.carries.begin(), card.carries.end(), names(to)))
    return fail(text::gesture_plugged, name, name_of(lab, to));
  for (SegmentTag& t : card.carries)
    if (t.segment == from) t.segment = to;
  if (card.segment == from) card.segment = to;
  return detail::edit_between(lab, after, say(text::gesture_plug, name, name_of(lab, to)));
}

Edit set_socket(const Lab& lab, SegmentId segment, bool socket) {
  Edit edit = set_field(lab, segment, "pc_socket", socket);
  edit.label = say(socket ? text::gesture_socket_in : text::gesture_socket_out, name_of(lab, segment));
  return edit;
}

Result<Edit> move_socket(const Lab& lab, SegmentId from, SegmentId to) {
  if (!to) return set_socket(lab, from, false);
  if (find<Segment>(lab, to)->pc_socket) return fail(text::gesture_plugged, lab.pc.name, name_of(lab, to));
  Edit edit = set_socket(lab, to, true);
  if (!from) return edit;
  Edit both = merged(set_socket(lab, from, false), edit);
  both.label = say(text::gesture_socket_move, name_of(lab, to));
  return both;
}

Result<Edit> rename(const Lab& lab, AnyId id, std::string_view name) {
  const std::string_view bare = trimmed(name);
  if (bare.empty()) return fail(text::gesture_no_name);
  const FieldInfo* field = info_of(id.kind).field("name");
  const Value value{std::string(bare)};
  if (const auto ok = check(*field, value); !ok) return fail(ok.error());
  Edit edit = set_field(lab, id, "name", value);
  edit.label = say(text::gesture_rename, name_of(lab, id), bare);
  return edit;
}

Result<Edit> set_address(const Lab& lab, CardId id, std::size_t row, std::string_view typed) {
  Lab after = lab;
  Card& card = card_of(after, id);
  const std::string_view bare = trimmed(typed);
  const std::string name = name_of(lab, id);
  if (bare.empty()) {
    if (row < card.addresses.size())
      card.addresses.erase(card.addresses.begin() + static_cast<std::ptrdiff_t>(row));
    return detail::edit_between(lab, after, say(text::gesture_address_off, name));
  }
  auto made = row_from(lab, card, bare);
  if (!made) return fail(made.error());
  if (row < card.addresses.size()) {
    made->unknown = card.addresses[row].unknown;
    const auto& before = card.addresses[row].address;
    if (!made->length && made->address && before && before->family() == made->address->family())
      made->length = card.addresses[row].length;
    card.addresses[row] = *made;
  } else {
    card.addresses.push_back(*made);
  }
  return detail::edit_between(lab, after, say(text::gesture_address, name, bare));
}

} // namespace snug
