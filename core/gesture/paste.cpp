// Putting machines of one lab into another.

#include "core/addressing/plan.h"
#include "core/edit/build.h"
#include "core/gesture/clip.h"
#include "core/gesture/fill.h"
#include "core/gesture/names.h"
#include "core/net/host_name.h"
#include "core/roles/catalogue.h"
#include "core/text/clip_text.h"

#include <algorithm>
#include <map>

namespace snug {

namespace {

class Paste {
 public:
  Paste(const Lab& into, const Lab& from, MachineId carrier) : lab_(into), from_(from), carrier_(carrier) {}

  void run();
  Lab& lab() { return lab_; }
  std::vector<MachineId> outer() const { return outer_; }
  std::vector<Message> changed() { return std::move(changed_); }

 private:
  template <typename M, typename I>
  static I at(const M& map, I id) {
    const auto it = map.find(id);
    return it == map.end() ? I{} : it->second;
  }
  template <typename E>
  E& made(Id<E::kind> id) {
    auto& list = list_of<E>(lab_);
    return *std::find_if(list.begin(), list.end(), [id](const E& e) { return e.id == id; });
  }

  void roles();
  void segment(const Segment& s);
  LanId lan(LanId id);
  void machine(const Machine& m);
  void disk(const Disk& d);
  void share(const Share& s);
  void card(const Card& c);
  AnyId store_left(const Disk& original) const;
  void join();
  std::optional<std::string> holder(const Index& index, const AddressesInUse& in_use, SegmentId segment,
                                    const Address& a) const;
  void addresses(const Card& original, CardId id);
  void tell_and_replace(Card& c, const Address& address, const std::string& who, const std::string& owner,
                        const std::vector<CardAddress>& suggested);
  void duties(CardId id);

  Lab lab_;
  const Lab& from_;
  MachineId carrier_;
  std::map<RoleId, RoleId> roles_;
  std::map<SegmentId, SegmentId> segments_;
  std::map<MachineId, MachineId> machines_;
  std::map<DiskId, DiskId> disks_;
  std::map<CardId, CardId> cards_;
  std::map<AnyId, AnyId> stores_;
  std::vector<MachineId> outer_;
  std::vector<Message> changed_;
};

void Paste::run() {
  roles();
  for (const Segment& s : from_.segments) segment(s);
  for (const Machine& m : from_.machines) machine(m);
  for (const Disk& d : from_.disks) disk(d);
  for (const Card& c : from_.cards) card(c);
  for (const Share& s : from_.shares) share(s);
  join();
  for (const auto& [from, to] : cards_) addresses(*find<Card>(from_, from), to);
}

void Paste::roles() {
  for (const Role& r : from_.roles) {
    EditBuilder edit(lab_);
    roles_[r.id] = use_role(edit, r);
    static_cast<void>(apply(lab_, std::move(edit).take({})));
  }
}

void Paste::segment(const Segment& s) {
  for (const Segment& own : lab_.segments)
    if (same_name(own.name, s.name)) {
      segments_[s.id] = own.id;
      return;
    }
  Segment copy = s;
  copy.forwards.clear();
  copy.lan = lan(s.lan);
  copy.order = 0;
  for (const Segment& other : lab_.segments) copy.order = std::max(copy.order, other.order + 1);
  segments_[s.id] = detail::append(lab_, std::move(copy)).id;
  changed_.push_back(say(text::clip_segment, s.name));
}

LanId Paste::lan(LanId id) {
  const Lan* known = find<Lan>(from_, id);
  if (!known) return {};
  for (const Lan& own : lab_.lans)
    if (same_name(own.name, known->name)) return own.id;
  return detail::append(lab_, Lan(*known)).id;
}

void Paste::machine(const Machine& m) {
  Machine copy = m;
  copy.name = free_name(lab_, Kind::machine, m.name);
  if (copy.name != m.name) {
    changed_.push_back(say(text::clip_renamed, m.name, copy.name));
    copy.host_name.clear();
    copy.initiator_name.clear();
  }
  copy.role = at(roles_, m.role);
  machines_[m.id] = detail::append(lab_, std::move(copy)).id;
  if (!m.carrier) outer_.push_back(machines_[m.id]);
}

void Paste::disk(const Disk& d) {
  Disk copy = d;
  copy.machine = at(machines_, d.machine);
  disks_[d.id] = detail::append(lab_, std::move(copy)).id;
  stores_[d.id] = disks_[d.id];
}

void Paste::share(const Share& s) {
  Share copy = s;
  copy.machine = at(machines_, s.machine);
  copy.disk = at(disks_, s.disk);
  copy.card = at(cards_, s.card);
  for (MachineId& client : copy.clients) client = at(machines_, client);
  stores_[s.id] = detail::append(lab_, std::move(copy)).id;
}

void Paste::card(const Card& c) {
  Card copy = c;
  copy.machine = at(machines_, c.machine);
  copy.segment = at(segments_, c.segment);
  for (auto* tags : {&copy.trunk, &copy.carries})
    for (SegmentTag& t : *tags) t.segment = at(segments_, t.segment);
  copy.addresses.clear();
  copy.mac.reset();
  copy.mac_source = MacSource::derived;
  cards_[c.id] = detail::append(lab_, std::move(copy)).id;
}

// Where a disk lies whose store did not come along: with its machine, as a new one would.
AnyId Paste::store_left(const Disk& original) const {
  const MachineId inside = find<Machine>(from_, original.machine)->carrier;
  if (!inside) return detail::store_for(lab_, carrier_);
  for (const Disk& d : from_.disks)
    if (d.machine == inside) return at(disks_, d.id);
  return {};
}

// References among what came along.
void Paste::join() {
  for (const auto& [from, to] : machines_) {
    const Machine& original = *find<Machine>(from_, from);
    Machine& m = made<Machine>(to);
    m.carrier = original.carrier ? at(machines_, original.carrier) : MachineId{};
    for (Route& r : m.routes) r.card = at(cards_, r.card);
    for (Need& n : m.needs) n.from = at(machines_, n.from);
  }
  for (const auto& [from, to] : disks_) {
    Disk& d = made<Disk>(to);
    d.base = at(disks_, d.base);
    const AnyId wanted = at(stores_, d.store);
    d.store = wanted ? wanted : store_left(*find<Disk>(from_, from));
  }
}

// Who holds an address on a segment; nothing: nobody.
std::optional<std::string> Paste::holder(const Index& index, const AddressesInUse& in_use, SegmentId segment,
                                         const Address& a) const {
  for (const HeldAddress& h : in_use.with(index.place(segment), a))
    return h.card == kNowhere ? name_of(lab_, segment) : name_of(lab_, lab_.cards[h.card].machine);
  return std::nullopt;
}

void Paste::addresses(const Card& original, CardId id) {
  const SegmentId segment = made<Card>(id).segment;
  duties(id);
  const std::string owner = name_of(lab_, made<Card>(id).machine);
  std::vector<CardAddress> rows;
  std::vector<std::pair<Address, std::string>> taken;
  {
    const Index index(lab_);
    const AddressesInUse in_use(index);
    for (const CardAddress& row : original.addresses) {
      const auto held = row.address && segment ? holder(index, in_use, segment, *row.address) : std::nullopt;
      if (held)
        taken.emplace_back(*row.address, *held);
      else
        rows.push_back(row);
    }
  }
  detail::suggest_for(lab_, id); // the MAC, and addresses where they can be suggested
  Card& c = made<Card>(id);
  std::vector<CardAddress> suggested = std::move(c.addresses);
  c.addresses = std::move(rows);
  for (const auto& [address, who] : taken) tell_and_replace(c, address, who, owner, suggested);
}

void Paste::tell_and_replace(Card& c, const Address& address, const std::string& who,
                             const std::string& owner, const std::vector<CardAddress>& suggested) {
  const std::string segment = name_of(lab_, c.segment);
  for (const CardAddress& s : suggested)
    if (s.address->family() == address.family()) {
      c.addresses.push_back(s);
      changed_.push_back(say(text::clip_moved, to_text(address), segment, who, owner, to_text(*s.address)));
      return;
    }
  changed_.push_back(say(text::clip_dropped, to_text(address), segment, who, owner));
}

// One DHCP server on a segment.
void Paste::duties(CardId id) {
  Card& c = made<Card>(id);
  if (c.dhcp != DhcpDuty::server) return;
  for (const Card& other : lab_.cards)
    if (other.id != id && other.segment == c.segment && other.dhcp == DhcpDuty::server && c.segment) {
      changed_.push_back(say(text::clip_dhcp, name_of(lab_, other.machine), name_of(lab_, c.segment),
                             name_of(lab_, c.machine)));
      c.dhcp = DhcpDuty::none;
      c.ranges.clear();
      return;
    }
}

} // namespace

namespace detail {

Result<Pasted> paste_lab(const Lab& lab, const Lab& copied, MachineId carrier, ExerciseId current) {
  Paste paste(lab, copied, carrier);
  paste.run();
  const std::vector<MachineId> outer = paste.outer();
  if (const auto ok = take_in(paste.lab(), move_machines(paste.lab(), outer, {carrier, 0, {}})); !ok)
    return fail(ok.error());
  if (current)
    if (const auto ok = take_in(paste.lab(), set_power(paste.lab(), current, outer, true)); !ok)
      return fail(ok.error());
  Pasted out;
  out.edit = edit_between(lab, paste.lab(), say(text::clip_paste, names_of(paste.lab(), outer)));
  for (const MachineId m : outer) out.made.emplace_back(m);
  out.changed = paste.changed();
  return out;
}

} // namespace detail

} // namespace snug
