#include "core/gesture/clip.h"

#include "core/base/quote.h"
#include "core/document/read.h"
#include "core/document/write.h"
#include "core/text/clip_text.h"
#include "core/text/keep_text.h"

#include <algorithm>
#include <set>

namespace snug {

namespace {

constexpr std::string_view kHead = "{\"format\": \"snuglab-machines\", \"lab\":\n";
constexpr std::string_view kTail = "}\n";

template <typename E, typename Keep>
void keep_only(std::vector<E>& list, Keep keep) {
  std::erase_if(list, [&](const E& e) { return !keep(e); });
}

// The machines and everything inside them.
std::set<MachineId> with_guests(const Lab& lab, std::span<const MachineId> ids) {
  std::set<MachineId> all(ids.begin(), ids.end());
  std::vector<MachineId> open(ids.begin(), ids.end());
  while (!open.empty()) {
    const MachineId carrier = open.back();
    open.pop_back();
    for (const Machine& m : lab.machines)
      if (m.carrier == carrier && all.insert(m.id).second) open.push_back(m.id);
  }
  return all;
}

std::set<SegmentId> segments_of(const std::vector<Card>& cards) {
  std::set<SegmentId> out;
  for (const Card& c : cards) {
    out.insert(c.segment);
    for (const SegmentTag& t : c.trunk) out.insert(t.segment);
    for (const SegmentTag& t : c.carries) out.insert(t.segment);
  }
  return out;
}

// What remains must name nothing that does not come along.
void cut_loose(Lab& lab, const std::set<MachineId>& machines) {
  const auto gone = [&](MachineId m) { return !machines.contains(m); };
  std::set<AnyId> held;
  for (const Disk& d : lab.disks) held.insert(d.id);
  for (const Share& s : lab.shares) held.insert(s.id);
  for (const Volume& v : lab.volumes) held.insert(v.id);
  for (Machine& m : lab.machines) {
    if (gone(m.carrier)) m.carrier = {};
    for (Need& n : m.needs)
      if (gone(n.from)) n.from = {};
  }
  for (Disk& d : lab.disks) {
    if (!held.contains(d.store)) d.store = {};
    if (!held.contains(AnyId(d.base))) d.base = {};
  }
  for (Share& s : lab.shares) std::erase_if(s.clients, gone);
  for (Segment& s : lab.segments)
    std::erase_if(s.forwards, [&](const PortForward& f) { return gone(f.machine); });
}

Lab reduced(const Lab& from, const std::set<MachineId>& machines) {
  Lab lab = from;
  const auto of_ours = [&](const auto& e) { return machines.contains(e.machine); };
  keep_only(lab.machines, [&](const Machine& m) { return machines.contains(m.id); });
  keep_only(lab.cards, of_ours);
  keep_only(lab.disks, of_ours);
  keep_only(lab.shares, of_ours);
  const std::set<SegmentId> used = segments_of(lab.cards);
  keep_only(lab.segments, [&](const Segment& s) { return used.contains(s.id); });
  keep_only(lab.roles, [&](const Role& r) {
    return std::any_of(lab.machines.begin(), lab.machines.end(),
                       [&](const Machine& m) { return m.role == r.id; });
  });
  keep_only(lab.lans, [&](const Lan& l) {
    return std::any_of(lab.segments.begin(), lab.segments.end(),
                       [&](const Segment& s) { return s.lan == l.id; });
  });
  lab.exercises.clear();
  lab.promises.clear();
  lab.accepted.clear();
  lab.places.clear();
  lab.pc.place = {};
  cut_loose(lab, machines);
  return lab;
}

} // namespace

Result<std::string> copy_machines(const Lab& lab, std::span<const AnyId> ids) {
  const std::vector<MachineId> chosen = outermost(lab, ids);
  if (chosen.empty()) return fail(text::clip_nothing);
  return std::string(kHead) + write_lab(detail::copied_lab(lab, ids)) + std::string(kTail);
}

Lab detail::copied_lab(const Lab& lab, std::span<const AnyId> ids) {
  return reduced(lab, with_guests(lab, outermost(lab, ids)));
}

bool is_copied_machines(std::string_view text) {
  return trimmed(text).starts_with(kHead.substr(0, kHead.size() - 1));
}

Result<Lab> read_copied(std::string_view text) {
  const std::string_view whole = trimmed(text);
  const std::string_view head = kHead.substr(0, kHead.size() - 1);
  if (!is_copied_machines(text) || !whole.ends_with('}')) return fail(text::clip_foreign);
  return read_lab(whole.substr(head.size(), whole.size() - head.size() - 1),
                  english(say(text::clipboard_name)));
}

bool copies_machine(std::string_view text, const Lab& lab, MachineId id) {
  const auto copied = read_copied(text);
  return copied && copied->facts.uid == lab.facts.uid && find<Machine>(*copied, id);
}

Result<Pasted> paste_machines(const Lab& lab, std::string_view text, MachineId carrier, ExerciseId current) {
  const auto copied = read_copied(text);
  if (!copied) return fail(copied.error());
  if (copied->machines.empty()) return fail(text::clip_empty);
  return detail::paste_lab(lab, *copied, carrier, current);
}

} // namespace snug
