#include "core/gesture/rows.h"

#include "core/addressing/plan.h"
#include "core/gesture/fill.h"
#include "core/text/gesture_text.h"

#include <algorithm>

namespace snug {

namespace {

Value row_value(const StructInfo& table, const void* row) {
  RowValue value;
  for (const FieldInfo& f : table.fields) value.fields.push_back(f.get(row));
  return Value::row(std::move(value));
}

template <typename R>
Value value_of(const R& row) {
  return row_value(info<R>(), &row);
}

// The first element of the kinds that a field may name and `held` does not.
AnyId unnamed(const Lab& lab, KindSet allowed, const std::vector<AnyId>& held) {
  for (const Kind kind : kinds_in_document()) {
    if ((allowed & kinds({kind})) == 0) continue;
    const Store& store = store_of(kind);
    for (std::size_t i = 0; i < store.count(lab); ++i) {
      const AnyId id = store.table->id ? store.table->id(store.at(lab, i)) : AnyId{kind, 0};
      if (std::find(held.begin(), held.end(), id) == held.end()) return id;
    }
  }
  return {};
}

std::vector<AnyId> named_in(const Lab& lab, AnyId owner, const FieldInfo& list) {
  std::vector<AnyId> out;
  each_id(list, list.get(object_at(lab, owner)), [&](const FieldInfo&, AnyId id) { out.push_back(id); });
  return out;
}

struct World {
  explicit World(const Lab& lab) : index(lab), in_use(index) {}
  Index index;
  AddressesInUse in_use;
};

CardAddress address_row(const Lab& lab, const Card& card) {
  CardAddress row;
  if (!card.segment) return row;
  const World world(lab);
  row.address = next_free(world.index, world.in_use, card.segment, card.machine);
  if (!row.address) row.address = next_free6(world.index, world.in_use, card.segment, card.machine);
  if (row.address) row.kind = AddressKind::suggested;
  return row;
}

RangeRow range_row(const Lab& lab, SegmentId segment) {
  RangeRow row;
  if (!segment) return row;
  const World world(lab);
  const auto range = scheme_range(world.index, world.in_use, world.index.place(segment));
  if (range) {
    row.first = range->first;
    row.last = range->last;
  }
  return row;
}

Route route_row(const Lab& lab, MachineId machine) {
  Route row;
  const World world(lab);
  for (const Card& c : lab.cards) {
    if (c.machine != machine || !c.segment) continue;
    const auto gateway = world.in_use.gateway4(world.index.place(c.segment));
    if (row.card && !gateway) continue;
    row.card = c.id;
    row.via = gateway;
    if (gateway) break;
  }
  return row;
}

std::int32_t free_port(const Segment& s) {
  std::int32_t port = 8080;
  const auto taken = [&](const PortForward& f) { return f.port == port; };
  while (port < 65535 && std::any_of(s.forwards.begin(), s.forwards.end(), taken)) ++port;
  return port;
}

Result<Value> segment_row(const Lab& lab, AnyId owner, const FieldInfo& list) {
  std::vector<AnyId> held = named_in(lab, owner, list);
  const Card& card = *find<Card>(lab, CardId{owner.number});
  if (list.key == "trunk") held.emplace_back(card.segment);
  SegmentTag row;
  row.segment = SegmentId{unnamed(lab, kinds({Kind::segment}), held).number};
  if (!row.segment) return fail(text::gesture_no_more, list.label, name_of(lab, owner));
  const std::int32_t vlan = find<Segment>(lab, row.segment)->vlan;
  row.vlan = list.key == "trunk" && vlan == 0 ? 1 : vlan;
  return value_of(row);
}

Result<Value> item_of_list(const Lab& lab, AnyId owner, const FieldInfo& list) {
  if (list.type == FieldType::prefixes) return Value(Prefix::of(Address::v4(0xc0a80000U), 24)); // 192.168.0.0
  const AnyId id = unnamed(lab, list.id_kinds, named_in(lab, owner, list));
  if (!id) return fail(text::gesture_no_more, list.label, name_of(lab, owner));
  return Value(id);
}

} // namespace

Result<Value> new_item(const Lab& lab, AnyId owner, const FieldInfo& list) {
  if (!list.row) return item_of_list(lab, owner, list);
  const Card* card = find<Card>(lab, CardId{owner.kind == Kind::card ? owner.number : 0});
  const Segment* segment = find<Segment>(lab, SegmentId{owner.kind == Kind::segment ? owner.number : 0});
  if (list.row == &info<SegmentTag>() && card) return segment_row(lab, owner, list);
  if (list.row == &info<CardAddress>() && card) return value_of(address_row(lab, *card));
  if (list.row == &info<RangeRow>() && (card || segment))
    return value_of(range_row(lab, card ? card->segment : segment->id));
  if (list.row == &info<Route>()) return value_of(route_row(lab, MachineId{owner.number}));
  if (list.row == &info<PortForward>() && segment) {
    PortForward row;
    row.machine = lab.machines.empty() ? MachineId{} : lab.machines.front().id;
    if (!row.machine) return fail(text::gesture_no_more, list.label, name_of(lab, owner));
    row.port = free_port(*segment);
    row.to_port = 80;
    return value_of(row);
  }
  return row_value(*list.row, list.row->blank);
}

Added add_disk(const Lab& lab, MachineId machine) {
  Lab after = lab;
  Disk disk;
  disk.machine = machine;
  const MachineId carrier = find<Machine>(lab, machine)->carrier;
  for (const Disk& d : lab.disks) {
    if (!disk.store && carrier && d.machine == carrier) disk.store = d.id;
    if (d.machine == machine && d.store) {
      disk.store = d.store;
      break;
    }
  }
  if (!disk.store && !carrier && !lab.volumes.empty()) disk.store = lab.volumes.front().id;
  const DiskId id = detail::append(after, std::move(disk)).id;
  return {detail::edit_between(lab, after, say(text::gesture_add_disk, name_of(lab, machine))), id};
}

Added add_loose_card(const Lab& lab, MachineId machine) {
  Lab after = lab;
  Card card;
  card.machine = machine;
  card.mac_source = MacSource::derived;
  const CardId id = detail::append(after, std::move(card)).id;
  detail::suggest_for(after, id);
  return {detail::edit_between(lab, after, say(text::gesture_add_card, name_of(lab, machine))), id};
}

Added add_share(const Lab& lab, MachineId machine) {
  Lab after = lab;
  Share share;
  share.machine = machine;
  const auto disk = std::find_if(lab.disks.begin(), lab.disks.end(),
                                 [machine](const Disk& d) { return d.machine == machine; });
  std::int64_t used = 0, names = 1;
  for (const Share& s : lab.shares) {
    if (s.machine == machine) ++names;
    if (disk != lab.disks.end() && s.disk == disk->id) used += s.size;
  }
  share.name = english(say(text::gesture_share_name, Count{names}));
  if (disk != lab.disks.end()) {
    share.disk = disk->id;
    share.size = std::max<std::int64_t>(0, disk->size - used);
  }
  const ShareId id = detail::append(after, std::move(share)).id;
  return {detail::edit_between(lab, after, say(text::gesture_add_share, name_of(lab, machine))), id};
}

} // namespace snug
