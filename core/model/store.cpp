#include "core/model/store.h"

#include "core/model/promise_name.h"

#include <array>

namespace snug {

template <>
std::vector<Volume>& list_of<Volume>(Lab& lab) {
  return lab.volumes;
}
template <>
std::vector<Lan>& list_of<Lan>(Lab& lab) {
  return lab.lans;
}
template <>
std::vector<Place>& list_of<Place>(Lab& lab) {
  return lab.places;
}
template <>
std::vector<Role>& list_of<Role>(Lab& lab) {
  return lab.roles;
}
template <>
std::vector<Segment>& list_of<Segment>(Lab& lab) {
  return lab.segments;
}
template <>
std::vector<Machine>& list_of<Machine>(Lab& lab) {
  return lab.machines;
}
template <>
std::vector<Card>& list_of<Card>(Lab& lab) {
  return lab.cards;
}
template <>
std::vector<Disk>& list_of<Disk>(Lab& lab) {
  return lab.disks;
}
template <>
std::vector<Share>& list_of<Share>(Lab& lab) {
  return lab.shares;
}
template <>
std::vector<Exercise>& list_of<Exercise>(Lab& lab) {
  return lab.exercises;
}
template <>
std::vector<Promise>& list_of<Promise>(Lab& lab) {
  return lab.promises;
}
template <>
std::vector<Accepted>& list_of<Accepted>(Lab& lab) {
  return lab.accepted;
}

namespace {

template <typename S, auto Member>
Store singleton() {
  Store s;
  s.table = &info<S>();
  s.count = [](const Lab&) -> std::size_t { return 1; };
  s.at_ = [](Lab& lab, std::size_t) -> void* { return &(lab.*Member); };
  return s;
}

template <typename E>
Store elements() {
  using Distance = typename std::vector<E>::difference_type;
  Store s;
  s.table = &info<E>();
  s.count = [](const Lab& lab) { return list_of<E>(lab).size(); };
  s.at_ = [](Lab& lab, std::size_t place) -> void* { return &list_of<E>(lab)[place]; };
  s.insert = [](Lab& lab, std::size_t place, const AnyElement& e) {
    auto& list = list_of<E>(lab);
    list.insert(list.begin() + static_cast<Distance>(place), std::get<E>(e));
  };
  s.erase = [](Lab& lab, std::size_t place) {
    auto& list = list_of<E>(lab);
    list.erase(list.begin() + static_cast<Distance>(place));
  };
  s.take = [](const Lab& lab, std::size_t place) -> AnyElement { return list_of<E>(lab)[place]; };
  s.append = [](Lab& lab) -> void* { return &list_of<E>(lab).emplace_back(); };
  s.reserve = [](Lab& lab, std::size_t n) { list_of<E>(lab).reserve(n); };
  return s;
}

std::array<Store, kKindCount> make_stores() {
  std::array<Store, kKindCount> all;
  const auto put = [&all](Kind k, const Store& s) { all[static_cast<std::size_t>(k)] = s; };
  put(Kind::lab, singleton<LabFacts, &Lab::facts>());
  put(Kind::pc, singleton<Pc, &Lab::pc>());
  put(Kind::numbering, singleton<Numbering, &Lab::numbering>());
  put(Kind::rules, singleton<Rules, &Lab::rules>());
  put(Kind::volume, elements<Volume>());
  put(Kind::lan, elements<Lan>());
  put(Kind::place, elements<Place>());
  put(Kind::role, elements<Role>());
  put(Kind::segment, elements<Segment>());
  put(Kind::machine, elements<Machine>());
  put(Kind::card, elements<Card>());
  put(Kind::disk, elements<Disk>());
  put(Kind::share, elements<Share>());
  put(Kind::exercise, elements<Exercise>());
  put(Kind::promise, elements<Promise>());
  put(Kind::accepted, elements<Accepted>());
  return all;
}

template <typename E>
std::optional<std::size_t> place_in(const std::vector<E>& list, std::uint32_t number) {
  for (std::size_t i = 0; i < list.size(); ++i)
    if (list[i].id.number == number) return i;
  return std::nullopt;
}

// "2 of deck-a": the place among its siblings and the machine's name.
template <typename E>
std::string part_name(const Lab& lab, const E& part, std::string_view noun) {
  int place = 0;
  for (const E& e : list_of<E>(lab)) {
    if (e.machine != part.machine) continue;
    ++place;
    if (e.id == part.id) break;
  }
  const std::string owner = part.machine ? name_of(lab, part.machine) : "no machine";
  const std::string own = part.name.empty() ? std::string(noun) + " " + std::to_string(place) : part.name;
  return owner + " " + own;
}

} // namespace

const Store& store_of(Kind kind) {
  static const std::array<Store, kKindCount> kStores = make_stores();
  return kStores[static_cast<std::size_t>(kind)];
}

Kind kind_of(const AnyElement& e) {
  return std::visit([](const auto& x) { return std::decay_t<decltype(x)>::kind; }, e);
}
AnyId id_of(const AnyElement& e) {
  return std::visit([](const auto& x) { return AnyId(x.id); }, e);
}
const void* object_of(const AnyElement& e) {
  return std::visit([](const auto& x) -> const void* { return &x; }, e);
}
void* object_of(AnyElement& e) {
  return std::visit([](auto& x) -> void* { return &x; }, e);
}

std::optional<std::size_t> place_of(const Lab& lab, AnyId id) {
  switch (id.kind) {
  case Kind::lab:
  case Kind::pc:
  case Kind::numbering:
  case Kind::rules:
    return 0;
  case Kind::volume:
    return place_in(lab.volumes, id.number);
  case Kind::lan:
    return place_in(lab.lans, id.number);
  case Kind::place:
    return place_in(lab.places, id.number);
  case Kind::role:
    return place_in(lab.roles, id.number);
  case Kind::segment:
    return place_in(lab.segments, id.number);
  case Kind::machine:
    return place_in(lab.machines, id.number);
  case Kind::card:
    return place_in(lab.cards, id.number);
  case Kind::disk:
    return place_in(lab.disks, id.number);
  case Kind::share:
    return place_in(lab.shares, id.number);
  case Kind::exercise:
    return place_in(lab.exercises, id.number);
  case Kind::promise:
    return place_in(lab.promises, id.number);
  case Kind::accepted:
    return place_in(lab.accepted, id.number);
  default:
    return std::nullopt;
  }
}

void* object_at(Lab& lab, AnyId id) {
  const auto place = place_of(lab, id);
  return place ? store_of(id.kind).at(lab, *place) : nullptr;
}
const void* object_at(const Lab& lab, AnyId id) { return object_at(const_cast<Lab&>(lab), id); }

bool exists(const Lab& lab, AnyId id) {
  return id.kind == Kind::outside || id.kind == Kind::everyone || place_of(lab, id).has_value();
}

std::string name_of(const Lab& lab, AnyId id) {
  const void* object = object_at(lab, id);
  if (!object) return to_text(id);
  if (id.kind == Kind::card) return part_name(lab, *static_cast<const Card*>(object), "card");
  if (id.kind == Kind::disk) return part_name(lab, *static_cast<const Disk*>(object), "disk");
  if (id.kind == Kind::share) return part_name(lab, *static_cast<const Share*>(object), "share");
  if (id.kind == Kind::promise) return english(promise_name(lab, *static_cast<const Promise*>(object)));
  const StructInfo& table = info_of(id.kind);
  for (const std::string_view key : {"name", "title", "rule"}) {
    const FieldInfo* f = table.field(key);
    if (!f) continue;
    const Value v = f->get(object);
    const std::string* s = v.as<std::string>();
    if (s && !s->empty()) return *s;
  }
  if (letter_of(id.kind) == 0) return "the " + std::string(table.noun);
  return std::string(table.noun) + " " + to_text(id);
}

void each_id(const FieldInfo& field, const Value& value,
             const std::function<void(const FieldInfo&, AnyId)>& use) {
  if (const AnyId* id = value.as<AnyId>()) {
    use(field, *id);
  } else if (const ValueList* list = value.as_list()) {
    for (const Value& item : *list) each_id(field, item, use);
  } else if (const RowValue* row = value.as_row()) {
    for (std::size_t i = 0; i < row->fields.size(); ++i) each_id(field.row->fields[i], row->fields[i], use);
  }
}

} // namespace snug
