#include "tests/support/random_lab.h"

#include <algorithm>

namespace snug::test {

std::uint64_t Random::next() {
  std::uint64_t z = (state_ += 0x9e3779b97f4a7c15ULL);
  z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27U)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31U);
}

std::int64_t Random::between(std::int64_t least, std::int64_t most) {
  const auto span = static_cast<std::uint64_t>(most) - static_cast<std::uint64_t>(least) + 1;
  return static_cast<std::int64_t>(static_cast<std::uint64_t>(least) + (span == 0 ? next() : next() % span));
}

namespace {

std::string random_text(Random& r, std::size_t most) {
  static constexpr std::array<std::string_view, 12> kPieces{
      "a", "deck", "-", "7", "ß", " ", "\"", "\\", "\n", "船", "\xF0\x9F\x9A\xA2", "<&>"};
  std::string out;
  for (std::size_t n = r.below(8); n > 0; --n) {
    const std::string_view piece = kPieces[r.below(kPieces.size())];
    if (out.size() + piece.size() <= most) out += piece;
  }
  return out;
}

std::vector<AnyId> candidates(const Lab& lab, KindSet set) {
  std::vector<AnyId> ids;
  for (int k = 0; k < kKindCount; ++k) {
    const Kind kind = static_cast<Kind>(k);
    if (kind == Kind::none || (set & kinds({kind})) == 0) continue;
    if (kind == Kind::outside || kind == Kind::everyone) {
      ids.push_back(AnyId{kind, 0});
      continue;
    }
    const Store& store = store_of(kind);
    for (std::size_t i = 0; i < store.count(lab); ++i)
      ids.push_back(store.table->id ? store.table->id(store.at(lab, i)) : AnyId{kind, 0});
  }
  return ids;
}

Address random_address(Random& r, const FieldInfo& f) {
  if (f.family ? *f.family == Family::v6 : r.chance(30))
    return Address::v6(0xfd00'0000'0000'0000ULL | (r.next() >> 8U), r.next());
  return Address::v4(static_cast<std::uint32_t>(r.next()));
}
Prefix random_prefix(Random& r, const FieldInfo& f) {
  const Address a = random_address(r, f);
  return Prefix::of(a, static_cast<int>(r.between(0, a.bits())));
}

bool may_be_unset(const FieldInfo& f) { return f.optional; }

Value random_scalar(Random& r, const Lab& lab, const FieldInfo& f) {
  if (f.optional && r.chance(30)) return {};
  switch (f.type) {
  case FieldType::boolean:
    return r.chance(50);
  case FieldType::integer: {
    const std::int64_t narrow = std::min(f.most, f.least + 1000);
    return r.chance(80) ? r.between(f.least, narrow) : r.between(f.least, f.most);
  }
  case FieldType::text:
    return random_text(r, f.max_length);
  case FieldType::choice:
    return std::string(f.choices[r.below(f.choices.size())]);
  case FieldType::date:
    return Date{static_cast<std::int16_t>(r.between(1, 9999)), static_cast<std::int8_t>(r.between(1, 12)),
                static_cast<std::int8_t>(r.between(1, 28))};
  case FieldType::address:
    return random_address(r, f);
  case FieldType::prefix:
    return random_prefix(r, f);
  case FieldType::mac:
    return Mac(r.next());
  default:
    break;
  }
  const auto ids = candidates(lab, f.id_kinds);
  if (ids.empty()) return {};
  return ids[r.below(ids.size())];
}

Value random_row(Random& r, const Lab& lab, const StructInfo& table) {
  RowValue row;
  for (const FieldInfo& f : table.fields) {
    row.fields.push_back(random_value(r, lab, f));
    if (!row.fields.back().is_set() && (!may_be_unset(f) || f.on_removal == OnRemoval::follow)) return {};
  }
  return Value::row(std::move(row));
}

// Fields that must not be filled at random: they make trees, or are the program's.
bool is_special(const FieldInfo& f) {
  return f.owner == Owner::program || f.key == "carrier" || f.key == "base";
}

void fill(Random& r, const Lab& lab, const StructInfo& table, void* object) {
  for (const FieldInfo& f : table.fields) {
    if (is_special(f) || r.chance(40)) continue;
    f.set(object, random_value(r, lab, f));
  }
}

// An element whose references that may not be missing are set; nothing when the lab has nothing to refer to.
std::optional<AnyElement> random_element(Random& r, const Lab& lab, Kind kind) {
  Lab scratch;
  const Store& store = store_of(kind);
  store.append(scratch);
  AnyElement e = store.take(scratch, 0);
  void* object = object_of(e);
  fill(r, lab, *store.table, object);
  for (const FieldInfo& f : store.table->fields) {
    if (f.on_removal != OnRemoval::follow || f.type != FieldType::id || f.key == "carrier") continue;
    const auto ids = candidates(lab, f.id_kinds);
    if (ids.empty()) return std::nullopt;
    f.set(object, ids[r.below(ids.size())]);
  }
  if (auto* m = std::get_if<Machine>(&e); m && !lab.machines.empty() && r.chance(40))
    m->carrier = lab.machines[r.below(lab.machines.size())].id;
  if (auto* d = std::get_if<Disk>(&e); d && !lab.disks.empty() && r.chance(20))
    d->base = lab.disks[r.below(lab.disks.size())].id;
  return e;
}

} // namespace

Value random_value(Random& r, const Lab& lab, const FieldInfo& f) {
  if (f.type != FieldType::ids && f.type != FieldType::prefixes && f.type != FieldType::rows)
    return random_scalar(r, lab, f);
  ValueList list;
  for (std::size_t n = r.below(4); n > 0; --n) {
    Value item = f.type == FieldType::rows       ? random_row(r, lab, *f.row)
                 : f.type == FieldType::prefixes ? Value(random_prefix(r, f))
                                                 : random_scalar(r, lab, f);
    if (item.is_set()) list.push_back(std::move(item));
  }
  return Value::list(std::move(list));
}

Lab random_lab(Random& r, std::size_t most) {
  Lab lab;
  lab.facts.uid = "0123456789abcdef0123456789abcdef";
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    if (!store.insert) continue;
    for (std::size_t n = r.below(most + 1); n > 0; --n) {
      auto e = random_element(r, lab, kind);
      if (!e) break;
      store.table->set_id(object_of(*e), lab.facts.next_id);
      lab.facts.next_id += static_cast<std::uint32_t>(1 + r.below(3));
      store.insert(lab, r.below(store.count(lab) + 1), *e);
    }
  }
  for (const Kind kind : kinds_in_document())
    if (!store_of(kind).insert) fill(r, lab, *store_of(kind).table, store_of(kind).at(lab, 0));
  return lab;
}

Edit random_edit(Random& r, const Lab& lab) {
  EditBuilder b(lab);
  for (std::size_t n = 1 + r.below(3); n > 0; --n) {
    const auto all = kinds_in_document();
    const Kind kind = all[r.below(all.size())];
    const Store& store = store_of(kind);
    const std::size_t count = store.count(b.lab());
    const std::size_t choice = r.below(10);
    if (store.insert && (choice < 3 || count == 0)) {
      if (auto e = random_element(r, b.lab(), kind)) b.add_element(std::move(*e), r.below(count + 1));
      continue;
    }
    const std::size_t place = r.below(count);
    const AnyId id = store.table->id ? store.table->id(store.at(b.lab(), place)) : AnyId{kind, 0};
    if (store.insert && choice == 3) {
      b.remove(id);
    } else if (store.insert && choice == 4) {
      b.move_to(id, r.below(count));
    } else {
      const FieldInfo& f = store.table->fields[r.below(store.table->fields.size())];
      Value v = random_value(r, b.lab(), f);
      const bool loose = f.on_removal == OnRemoval::follow && f.type == FieldType::id && !v.is_set();
      if (!is_special(f) && !loose) b.set(id, f.key, std::move(v));
    }
  }
  return std::move(b).take({});
}

namespace {

void add_cards(Random& r, Lab& lab, const Machine& m, std::size_t count) {
  for (std::size_t i = 0; i < count && !lab.segments.empty(); ++i) {
    const Segment& s = lab.segments[r.below(lab.segments.size())];
    Card c;
    c.id.number = lab.facts.next_id++;
    c.machine = m.id;
    c.segment = s.id;
    if (r.chance(90) && s.prefix4)
      c.addresses.push_back(
          {{}, AddressKind::typed, s.prefix4->network().plus(r.between(2, 250)), std::nullopt});
    if (r.chance(30) && s.prefix6)
      c.addresses.push_back(
          {{}, AddressKind::typed, s.prefix6->network().plus(r.between(2, 250)), std::nullopt});
    if (m.expose_virtualization) c.carries.push_back({{}, s.id, 0});
    c.mac = Mac(0x0200'0000'0000ULL | (r.next() & 0xffff'ffffULL));
    c.mac_source = MacSource::derived;
    lab.cards.push_back(c);
  }
}

} // namespace

Lab plausible_lab(Random& r, std::size_t machines, std::size_t segments) {
  Lab lab;
  lab.facts.uid = "00112233445566778899aabbccddeeff";
  lab.pc.installed = 65536;
  const auto next = [&lab] { return lab.facts.next_id++; };
  lab.volumes.push_back({});
  lab.volumes.back().id.number = next();
  lab.volumes.back().size = lab.volumes.back().free = 4'000'000;
  for (std::size_t i = 0; i < segments; ++i) {
    Segment s;
    s.id.number = next();
    s.name = "net-" + std::to_string(i + 1);
    const auto n = static_cast<std::uint32_t>(i);
    s.prefix4 = Prefix::of(Address::v4(0x0a00'0000U | (n << 8U)), 24);
    s.prefix6 = Prefix::of(Address::v6(0xfd12'3456'789a'0000ULL | n, 0), 64);
    lab.segments.push_back(s);
  }
  for (std::size_t i = 0; i < machines; ++i) {
    Machine m;
    m.id.number = next();
    m.name = "host-" + std::to_string(i + 1);
    m.memory = 256 * r.between(2, 32);
    m.processors = static_cast<std::int32_t>(r.between(1, 4));
    m.expose_virtualization = i % 10 == 0;
    m.order = static_cast<std::int32_t>(i);
    if (i % 10 != 0 && r.chance(70)) m.carrier = lab.machines[i - i % 10].id;
    lab.machines.push_back(m);
    add_cards(r, lab, m, 2);
    Disk d;
    d.id.number = next();
    d.machine = m.id;
    d.store = lab.volumes.front().id;
    lab.disks.push_back(d);
  }
  Exercise e;
  e.id.number = next();
  e.name = "half";
  for (const Machine& m : lab.machines)
    if (r.chance(50)) e.on.push_back(m.id);
  lab.exercises.push_back(e);
  return lab;
}

} // namespace snug::test
