#include "core/base/size.h"
#include "core/findings/stores.h"
#include "core/findings/tools.h"
#include "core/text/disk_text.h"

#include <algorithm>
#include <array>
#include <map>

namespace snug {

namespace {

constexpr std::string_view kPractice = "common practice, no published source";

// Shares on a disk are promised room of it, so together they may not be larger.
void check_over(const Context& c, std::vector<Finding>& out) {
  std::map<std::uint32_t, std::vector<const Share*>> by_disk;
  for (const Share& s : c.lab.shares)
    if (const std::uint32_t d = c.index.place(s.disk); d != kNowhere) by_disk[d].push_back(&s);
  for (const auto& [place, shares] : by_disk) {
    const Disk& disk = c.lab.disks[place];
    std::int64_t offered = 0;
    std::vector<AnyId> places;
    std::vector<std::string> names;
    for (const Share* s : shares) {
      offered += s->size;
      places.push_back(s->id);
      names.push_back(share_name(c, *s));
    }
    if (offered <= disk.size) continue;
    places.push_back(disk.id);
    const Template& what = names.size() == 1 ? text::share_over_one : text::share_over;
    out.push_back(found(Severity::error, say(what, names, Mib{offered}, c.name(disk.id), Mib{disk.size}),
                        say(text::share_over_why), places));
  }
}
std::optional<Fix> fix_over(const Context& c, const Finding& f) {
  std::int64_t offered = 0;
  for (const AnyId id : f.places)
    if (id.kind == Kind::share) offered += c.lab.shares[c.index.place(id)].size;
  if (offered > kMaxMib) return std::nullopt;
  const AnyId disk = f.places.back();
  return set_one(c, say(text::fix_size, c.name(disk), Mib{offered}), disk, "size", offered);
}

void check_no_disk(const Context& c, std::vector<Finding>& out) {
  for (const Share& s : c.lab.shares)
    if (c.index.place(s.disk) == kNowhere)
      out.push_back(found(Severity::caution, say(text::share_no_disk, share_name(c, s), c.name(s.machine)),
                          say(text::share_no_disk_why), {s.id}));
}
void check_disk_elsewhere(const Context& c, std::vector<Finding>& out) {
  for (const Share& s : c.lab.shares)
    if (const Disk* d = c.index.disk(s.disk); d && d->machine != s.machine)
      out.push_back(found(Severity::error,
                          say(text::share_disk_elsewhere, share_name(c, s), c.name(s.machine), c.name(d->id)),
                          say(text::share_disk_elsewhere_why), {s.id, d->id}));
}
// The last disk of its machine when that has at most two: the first holds the system.
std::optional<Fix> fix_disk(const Context& c, const Finding& f) {
  const Share& s = c.lab.shares[c.index.place(f.places[0])];
  const std::uint32_t m = c.index.place(s.machine);
  if (m == kNowhere || c.index.disks_of(m).empty() || c.index.disks_of(m).size() > 2) return std::nullopt;
  const Disk& disk = c.lab.disks[c.index.disks_of(m).back()];
  if (disk.size < s.size) return std::nullopt;
  return set_one(c, say(text::fix_share_disk, c.name(disk.id)), s.id, "disk", AnyId(disk.id));
}

void check_card_elsewhere(const Context& c, std::vector<Finding>& out) {
  for (const Share& s : c.lab.shares)
    if (const Card* card = c.index.card(s.card); card && card->machine != s.machine)
      out.push_back(
          found(Severity::error,
                say(text::share_card_elsewhere, share_name(c, s), c.name(s.machine), c.name(card->id)),
                say(text::share_card_elsewhere_why), {s.id, card->id}));
}
std::optional<Fix> fix_card(const Context& c, const Finding& f) {
  return set_one(c, say(text::fix_card), f.places[0], "card", Value());
}

bool allows(const Share& s, MachineId id) {
  return std::find(s.clients.begin(), s.clients.end(), id) != s.clients.end();
}

void check_client(const Context& c, std::vector<Finding>& out) {
  for (const ShareUser& u : share_users(c.index)) {
    const Share& s = c.lab.shares[u.share];
    const MachineId user = c.lab.machines[u.machine].id,
                    client = c.lab.machines[opener(c.index, u.machine)].id;
    if (allows(s, user) || allows(s, client)) continue;
    out.push_back(found(Severity::error,
                        say(text::share_client, c.name(user), share_name(c, s), c.name(client)),
                        say(text::share_client_why, c.name(user)), {user, s.id}));
  }
}
std::optional<Fix> fix_client(const Context& c, const Finding& f) {
  const Share& s = c.lab.shares[c.index.place(f.places[1])];
  const MachineId client = c.lab.machines[opener(c.index, c.index.place(f.places[0]))].id;
  std::vector<MachineId> clients = s.clients;
  clients.push_back(client);
  return set_one(c, say(text::fix_client, c.name(client)), s.id, "clients", ids_value(clients));
}

void check_off(const Context& c, std::vector<Finding>& out) {
  for (const auto& [m, share] : share_users(c.index)) {
    const Share& s = c.lab.shares[share];
    const std::uint32_t server = c.index.place(s.machine);
    if (server == kNowhere || server == m) continue;
    const Trouble t = trouble(c, [user = m, server](const ExerciseBudgets& b) {
      return std::int64_t{b.running[user] != 0 && b.running[server] == 0};
    });
    if (!t) continue;
    const AnyId user = c.lab.machines[m].id;
    out.push_back(found(Severity::error,
                        say(text::store_off, c.name(user), share_name(c, s), c.name(s.machine),
                            c.name(c.lab.exercises[t.worst - 1].id)),
                        say(text::store_off_why), {user, s.id}));
    out.back().when = t.when;
  }
}
std::optional<Fix> fix_off(const Context& c, const Finding& f) {
  return switch_on(c, f.when, c.lab.shares[c.index.place(f.places[1])].machine);
}

void check_target(const Context& c, std::vector<Finding>& out) {
  for (const Share& s : c.lab.shares)
    if (s.target.empty())
      out.push_back(found(Severity::note, say(text::share_target, share_name(c, s), c.name(s.machine)),
                          say(text::share_target_why), {s.id}));
}

// Shares of one target with one unit number, the first of each group first.
void check_unit(const Context& c, std::vector<Finding>& out) {
  std::map<std::tuple<MachineId, std::string_view, std::int32_t>, std::vector<const Share*>> units;
  for (const Share& s : c.lab.shares)
    if (s.protocol == ShareProtocol::iscsi && !s.target.empty())
      units[{s.machine, s.target, s.unit}].push_back(&s);
  for (const auto& [key, shares] : units) {
    if (shares.size() < 2) continue;
    std::vector<AnyId> places;
    std::vector<std::string> names;
    for (const Share* s : shares) {
      places.push_back(s->id);
      names.push_back(share_name(c, *s));
    }
    out.push_back(found(Severity::error,
                        say(text::unit_twice, names, std::to_string(std::get<2>(key)), std::get<1>(key)),
                        say(text::unit_twice_why), places));
  }
}
std::optional<Fix> fix_unit(const Context& c, const Finding& f) {
  const Share& first = c.lab.shares[c.index.place(f.places[0])];
  std::vector<std::int32_t> taken;
  for (const Share& s : c.lab.shares)
    if (s.machine == first.machine && s.target == first.target) taken.push_back(s.unit);
  return build_fix(c, say(text::fix_unit), [&](EditBuilder& b) {
    std::int32_t next = 0;
    for (std::size_t i = 1; i < f.places.size(); ++i) {
      while (std::find(taken.begin(), taken.end(), next) != taken.end()) ++next;
      taken.push_back(next);
      b.set(f.places[i], "unit", std::int64_t{next});
    }
  });
}

} // namespace

std::span<const Rule> share_rules() {
  static const std::array list{
      Rule{"share-over", Topic::disk, Severity::error, "Shares are larger than the disk that holds them",
           "arithmetic", check_over, fix_over},
      Rule{"share-disk-elsewhere", Topic::disk, Severity::error, "A share lies on another machine's disk",
           kPractice, check_disk_elsewhere, fix_disk},
      Rule{"share-card-elsewhere", Topic::disk, Severity::error,
           "A share is carried by another machine's card", kPractice, check_card_elsewhere, fix_card},
      Rule{"share-client", Topic::disk, Severity::error, "A machine that uses a share is not allowed to",
           kPractice, check_client, fix_client},
      Rule{"store-off", Topic::disk, Severity::error,
           "A machine is on while the machine that holds its disk is off", "a disk answers before a start",
           check_off, fix_off},
      Rule{"unit-twice", Topic::disk, Severity::error, "Two shares of a target have one unit number",
           "RFC 7143 (a logical unit has one number within a target)", check_unit, fix_unit},
      Rule{"share-no-disk", Topic::disk, Severity::caution, "A share lies on no disk", kPractice,
           check_no_disk, fix_disk},
      Rule{"share-target", Topic::disk, Severity::note, "A share has no target or path", kPractice,
           check_target},
  };
  return list;
}

} // namespace snug
