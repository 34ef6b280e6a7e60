#include "core/model/names.h"
#include "core/report/tables.h"
#include "core/text/table_text.h"

#include <algorithm>

namespace snug {

namespace {

constexpr std::array<TableColumn, 16> kColumns{{{"machine", "Machine"},
                                                {"host_name", "Host name"},
                                                {"role", "Role"},
                                                {"runs_in", "Runs in"},
                                                {"card", "Card"},
                                                {"segment", "Segment"},
                                                {"vlan", "VLAN"},
                                                {"address", "Address"},
                                                {"length", "Length"},
                                                {"mask", "Mask"},
                                                {"set", "Set"},
                                                {"gateway", "Gateway"},
                                                {"names", "Name server"},
                                                {"mac", "MAC"},
                                                {"mtu", "MTU"},
                                                {"findings", "Findings"}}};

// In place of an address that somebody else gives; as it is typed there.
std::string_view given_by(const CardAddress& row) {
  return row.kind == AddressKind::dhcp ? "DHCP" : row.kind == AddressKind::slaac ? "SLAAC" : "";
}

std::string_view how_set(AddressKind kind) {
  switch (kind) {
  case AddressKind::typed:
    return "fixed";
  case AddressKind::suggested:
    return "suggested";
  case AddressKind::dhcp:
    return "by DHCP";
  case AddressKind::slaac:
    return "from router advertisements";
  case AddressKind::none:
    return "none";
  }
  return {};
}

bool counts(const Finding& f) { return !f.accepted && f.severity != Severity::note; }

bool is_about(const Finding& f, AnyId place) {
  return std::find(f.places.begin(), f.places.end(), place) != f.places.end();
}

struct Builder {
  const Analysis& a;
  Table table{};
  std::vector<MachineId> name_machines{}; // who offers names

  const Lab& lab() const { return a.lab(); }
  static Cell text(std::string s) { return s.empty() ? Cell() : Cell(std::move(s)); }

  // The gravest finding about a place that is not accepted.
  std::string worst(AnyId place) const {
    for (const Finding& f : a.findings())
      if (counts(f) && is_about(f, place)) return english(f.message);
    return {};
  }

  std::string gateway(const Card& c, std::uint32_t segment, Family family) const {
    const Machine* m = a.index().machine(c.machine);
    if (m)
      for (const Route& r : m->routes)
        if (r.to.length() == 0 && r.to.family() == family && r.via && (!r.card || r.card == c.id))
          return segment_holds(segment, *r.via) || r.card == c.id ? to_text(*r.via) : std::string();
    return {};
  }
  bool segment_holds(std::uint32_t segment, const Address& via) const {
    if (segment == kNowhere) return false;
    const auto prefix = a.addresses().prefix(segment, via.family());
    return prefix && prefix->contains(via);
  }

  // Who on a segment answers about names: a machine, else the translator. Not the card's own machine.
  std::string name_server_on(MachineId asker, std::uint32_t segment) const;
  // Whom the card's machine asks about names, by this card or another one, or why nobody.
  std::string name_servers(const Card& c, std::uint32_t segment) const;
  // A machine elsewhere that answers about names; empty: none does.
  std::string name_server_beyond(MachineId asker) const;

  void card_rows(std::uint32_t place);
  void card_row(std::uint32_t place, const CardAddress* row);
  void holder_row(const HeldAddress& h);
};

// Its name, else its place among the machine's cards: "card 2".
std::string card_name(const Index& index, std::uint32_t place) {
  const Card& c = index.lab().cards[place];
  if (!c.name.empty()) return c.name;
  const std::uint32_t machine = index.place(c.machine);
  if (machine == kNowhere) return to_text(c.id);
  const auto cards = index.cards_of(machine);
  return "card " + std::to_string(std::find(cards.begin(), cards.end(), place) - cards.begin() + 1);
}

bool offers_names(const Index& index, std::uint32_t machine) {
  const Machine& m = index.lab().machines[machine];
  const auto named = [](const Offer& o) { return o.service == "names"; };
  const Role* role = index.role(m.role);
  return std::any_of(m.offers.begin(), m.offers.end(), named) ||
         (role && std::any_of(role->offers.begin(), role->offers.end(), named));
}

std::string Builder::name_server_on(MachineId asker, std::uint32_t segment) const {
  if (segment == kNowhere) return {};
  std::string out;
  for (const HeldAddress& h : a.addresses().on(segment)) {
    if (h.holder == Holder::translator && lab().segments[segment].translator_names) out = to_text(h.address);
    if (h.holder != Holder::card || lab().cards[h.card].machine == asker) continue;
    const std::uint32_t machine = a.addresses().facts().card_machine[h.card];
    if (machine != kNowhere && offers_names(a.index(), machine)) return to_text(h.address);
  }
  return out;
}

std::string Builder::name_server_beyond(MachineId asker) const {
  for (const MachineId server : name_machines) {
    if (server == asker) continue;
    ReachQuestion q;
    q.from = asker;
    q.to = server;
    q.transport = Transport::udp; // by the port that it offers
    const ReachAnswer answer = a.reach(ExerciseId{}).ask(q);
    if (answer.verdict == Reached::reaches && answer.target) return to_text(*answer.target);
  }
  return {};
}

std::string Builder::name_servers(const Card& c, std::uint32_t segment) const {
  if (std::string here = name_server_on(c.machine, segment); !here.empty()) return here;
  const std::uint32_t machine = a.index().place(c.machine);
  if (machine == kNowhere) return {};
  for (const std::uint32_t other : a.index().cards_of(machine)) {
    const std::uint32_t there = a.addresses().facts().card_segment[other];
    const std::string server = there == segment ? std::string() : name_server_on(c.machine, there);
    if (!server.empty())
      return english(say(text::table_names_by, server, name_of(lab(), lab().segments[there].id)));
  }
  if (offers_names(a.index(), machine)) return english(say(text::table_names_itself));
  const std::string beyond = name_server_beyond(c.machine);
  return english(beyond.empty() ? say(text::table_names_nobody) : say(text::table_names_routed, beyond));
}

void Builder::card_row(std::uint32_t place, const CardAddress* row) {
  const Card& c = lab().cards[place];
  const Index& index = a.index();
  const Machine* m = index.machine(c.machine);
  const bool has_address = row && row->address;
  const std::uint32_t own = a.addresses().facts().card_segment[place];
  const std::uint32_t segment = has_address ? a.addresses().segment_for(index, place, *row->address) : own;
  const std::uint32_t shown = segment != kNowhere ? segment : own;
  const Segment* s = shown != kNowhere ? &lab().segments[shown] : nullptr;
  TableRow r{c.id, {}};
  r.cells.push_back(text(m ? name_of(lab(), m->id) : ""));
  r.cells.push_back(text(m ? (c.published ? full_name_of(lab(), *m) : host_name_of(*m)) : ""));
  const Role* role = m ? index.role(m->role) : nullptr;
  r.cells.push_back(text(role ? role->title : ""));
  r.cells.push_back(text(m ? (m->carrier ? name_of(lab(), m->carrier) : lab().pc.name) : ""));
  r.cells.push_back(text(card_name(index, place)));
  r.cells.push_back(text(s ? name_of(lab(), s->id) : ""));
  r.cells.push_back(s && s->vlan > 0 ? Cell(std::int64_t{s->vlan}) : Cell());
  std::optional<int> length;
  if (has_address) {
    if (row->length) length = *row->length;
    const auto prefix =
        shown != kNowhere ? a.addresses().prefix(shown, row->address->family()) : std::nullopt;
    if (!length && prefix) length = prefix->length();
  }
  r.cells.push_back(text(has_address ? to_text(*row->address) : row ? std::string(given_by(*row)) : ""));
  r.cells.push_back(length ? Cell(std::int64_t{*length}) : Cell());
  r.cells.push_back(
      text(has_address && length && row->address->is_v4() && *length <= 32 ? mask_text(*length) : ""));
  const bool carries_only = !row && !c.carries.empty();
  r.cells.push_back(text(carries_only ? "carries its guests only"
                         : row        ? std::string(how_set(row->kind))
                                      : "none yet"));
  r.cells.push_back(text(has_address ? gateway(c, shown, row->address->family()) : ""));
  r.cells.push_back(text(has_address                             ? name_servers(c, shown)
                         : row && row->kind == AddressKind::dhcp ? english(say(text::table_names_dhcp))
                                                                 : std::string()));
  r.cells.push_back(text(c.mac                                ? to_text(*c.mac)
                         : c.mac_source == MacSource::program ? "chosen when built"
                                                              : ""));
  r.cells.emplace_back(std::int64_t{c.mtu ? *c.mtu : s ? s->mtu : 1500});
  r.cells.push_back(text(worst(c.id)));
  table.rows.push_back(std::move(r));
}

void Builder::card_rows(std::uint32_t place) {
  const Card& c = lab().cards[place];
  if (c.addresses.empty()) card_row(place, nullptr);
  for (const CardAddress& row : c.addresses) card_row(place, &row);
}

void Builder::holder_row(const HeldAddress& h) {
  const Segment& s = lab().segments[h.segment];
  const Lan* lan = a.index().lan(s.lan);
  TableRow r{s.id, std::vector<Cell>(kColumns.size())};
  const std::string who = h.holder == Holder::pc_socket    ? lab().pc.name
                          : h.holder == Holder::translator ? "translator of " + name_of(lab(), s.id)
                          : lan && !lan->router.empty()    ? lan->router
                                                           : "router of " + name_of(lab(), s.lan);
  r.cells[0] = who;
  r.cells[2] = h.holder == Holder::pc_socket    ? "PC socket"
               : h.holder == Holder::translator ? "NAT translator"
                                                : "router outside";
  r.cells[5] = name_of(lab(), s.id);
  if (s.vlan > 0) r.cells[6] = std::int64_t{s.vlan};
  r.cells[7] = to_text(h.address);
  if (h.length > 0) r.cells[8] = std::int64_t{h.length};
  if (h.length > 0 && h.address.is_v4()) r.cells[9] = mask_text(h.length);
  r.cells[10] = std::string(how_set(h.kind));
  r.cells[14] = std::int64_t{s.mtu};
  table.rows.push_back(std::move(r));
}

} // namespace

Table address_table(const Analysis& a) {
  Builder b{a};
  const Lab& lab = a.lab();
  b.table.title = lab.facts.title.empty() ? "Addresses" : lab.facts.title + ": addresses";
  b.table.columns.assign(kColumns.begin(), kColumns.end());
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m)
    if (offers_names(a.index(), m)) b.name_machines.push_back(lab.machines[m].id);
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m)
    for (const std::uint32_t c : a.index().cards_of(m)) b.card_rows(c);
  for (std::uint32_t c = 0; c < lab.cards.size(); ++c)
    if (a.addresses().facts().card_machine[c] == kNowhere) b.card_rows(c);
  for (const HeldAddress& h : a.addresses().all())
    if (h.holder != Holder::card && h.segment != kNowhere) b.holder_row(h);
  return std::move(b.table);
}

namespace {

bool names_it(const Finding& f, std::string_view address) {
  return std::any_of(f.message.args.begin(), f.message.args.end(), [address](const Argument& arg) {
    const auto* text = std::get_if<std::string>(&arg);
    return text && *text == address;
  });
}

// Another address of the same holder, which the finding names.
bool names_another(const Analysis& a, const Finding& f, AnyId place, std::string_view address) {
  const Card* c = place.kind == Kind::card ? a.index().card(CardId{place.number}) : nullptr;
  return c && std::any_of(c->addresses.begin(), c->addresses.end(), [&](const CardAddress& row) {
           return row.address && to_text(*row.address) != address && names_it(f, to_text(*row.address));
         });
}

} // namespace

std::optional<AddressFault> address_fault(const Analysis& a, AnyId place, std::string_view address) {
  for (const Finding& f : a.findings()) {
    if (!counts(f) || f.rule->topic != Topic::addresses || !is_about(f, place)) continue;
    const bool of_the_cell = f.rule->id.starts_with("address-") && !names_another(a, f, place, address);
    if (of_the_cell || names_it(f, address)) return AddressFault{f.severity, f.message};
  }
  return std::nullopt;
}

} // namespace snug
