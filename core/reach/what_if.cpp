#include "core/reach/what_if.h"

#include "core/budget/budget.h"
#include "core/reach/pairs.h"
#include "core/reach/promises.h"

#include <algorithm>

namespace snug {

namespace {

void unplug(Card& c, SegmentId s) {
  if (c.segment == s) c.segment = {};
  const auto is_it = [s](const SegmentTag& t) { return t.segment == s; };
  std::erase_if(c.trunk, is_it);
  std::erase_if(c.carries, is_it);
}

// The lab without those cards and segments; every element stays, with its id.
Lab without(const Lab& lab, std::span<const AnyId> off) {
  Lab copy = lab;
  for (const AnyId id : off) {
    for (Card& c : copy.cards)
      if (AnyId(c.id) == id) c.connected = false;
    if (id.kind != Kind::segment) continue;
    for (Card& c : copy.cards) unplug(c, SegmentId{id.number});
    for (Segment& s : copy.segments)
      if (AnyId(s.id) == id) s.pc_socket = false, s.type = SegmentKind::isolated;
  }
  return copy;
}

class Comparison {
 public:
  Comparison(const Index& index, Reach& before, const Index& changed, Reach& after, WhatIf& out)
      : index_(index), changed_(changed), before_(before), after_(after), out_(out) {}

  void pairs() {
    const ReachPairs was(before_), is(after_);
    const auto nodes = before_.network().nodes();
    for (std::uint32_t a = 0; a < nodes.size(); ++a)
      for (std::uint32_t b = 0; b < nodes.size(); ++b) {
        if (a == b || !is_system(nodes[a].id) ||
            !(is_system(nodes[b].id) || nodes[b].id.kind == Kind::outside))
          continue;
        const std::uint32_t x = after_.network().node_of(nodes[a].id),
                            y = after_.network().node_of(nodes[b].id);
        if (x == kNowhere || y == kNowhere || !after_.network().nodes()[x].on ||
            !after_.network().nodes()[y].on)
          continue;
        const LostPair p{nodes[a].id, nodes[b].id, was.verdict(a, b), is.verdict(x, y)};
        if (p.before == Reached::reaches && p.after != Reached::reaches) out_.pairs.push_back(p);
      }
  }
  void promises(ExerciseId exercise) {
    for (const Promise& p : index_.lab().promises) {
      if (!speaks_of(p, exercise) || !judge(before_, index_, p).kept) continue;
      if (!judge(after_, changed_, p).kept) out_.promises.push_back(p.id);
    }
  }
  void needs() {
    Offerings offered(index_), left(changed_);
    for (std::uint32_t m = 0; m < index_.lab().machines.size(); ++m)
      for (const Need& n : needs_of(index_, m)) {
        const MachineId who = index_.lab().machines[m].id;
        const Judged was = judge(before_, index_, offered, who, n);
        if (!was.counts || !was.kept) continue;
        const Judged is = judge(after_, changed_, left, who, n);
        if (is.counts && !is.kept)
          out_.needs.push_back({who, n.service, was.question.to, n.strength == Strength::must});
      }
  }

 private:
  static bool is_system(AnyId id) { return id.kind == Kind::machine || id.kind == Kind::pc; }
  const Index& index_;
  const Index& changed_;
  Reach& before_;
  Reach& after_;
  WhatIf& out_;
};

} // namespace

WhatIf what_if(const Index& index, const AddressesInUse& addresses, ExerciseId exercise,
               std::span<const AnyId> off) {
  WhatIf out;
  std::vector<std::uint8_t> runs = running(index, exercise);
  for (const std::uint32_t m : index.carriers_first()) {
    const MachineId id = index.lab().machines[m].id;
    const bool named = std::find(off.begin(), off.end(), AnyId(id)) != off.end();
    const std::uint32_t carrier = index.carrier_of(m);
    const bool falls = carrier != kNowhere && runs[carrier] == 0;
    if (runs[m] == 0 || (!named && !falls)) continue;
    runs[m] = 0;
    out.off.push_back(id);
  }
  std::sort(out.off.begin(), out.off.end(),
            [&](MachineId a, MachineId b) { return index.place(a) < index.place(b); });
  const Lab lab = without(index.lab(), off);
  const Index changed(lab);
  const AddressesInUse held(changed);
  Reach before(index, addresses, exercise), after(changed, held, runs);
  Comparison c(index, before, changed, after, out);
  c.pairs();
  c.promises(exercise);
  c.needs();
  return out;
}

} // namespace snug
