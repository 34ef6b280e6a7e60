#include "ui/canvas/node_words.h"

#include "core/text/access_text.h"
#include "core/text/layout_text.h"
#include "ui/canvas/shapes.h"
#include "ui/session/words.h"

#include <QStringList>

#include <algorithm>

namespace snug {

namespace {

QString plugs_of(const Lab& lab, const Card& card) {
  QStringList out;
  if (card.segment) out << words(text::access_on, name_of(lab, card.segment));
  for (const SegmentTag& t : card.trunk) out << words(text::access_on, name_of(lab, t.segment));
  for (const SegmentTag& t : card.carries)
    if (t.segment != card.segment) out << words(text::access_carries, name_of(lab, t.segment));
  if (out.isEmpty()) out << words(text::access_not_plugged);
  return out.join(QStringLiteral(", "));
}

QString addresses_of(const Card& card) {
  QStringList out;
  for (const CardAddress& a : card.addresses) {
    if (a.address)
      out << as_qt(to_text(*a.address));
    else if (a.kind == AddressKind::dhcp)
      out << words(text::layout_dhcp);
    else if (a.kind == AddressKind::slaac)
      out << words(text::layout_slaac);
  }
  if (!card.connected) out << words(text::access_disconnected);
  return out.join(QStringLiteral(", "));
}

// The picture says a machine's and a segment's findings already.
QString findings_about(const Analysis& a, AnyId id, ExerciseId exercise) {
  QStringList out;
  for (const Finding& f : a.findings()) {
    if (f.accepted || !holds_in(a.lab(), f, exercise)) continue;
    if (std::find(f.places.begin(), f.places.end(), id) == f.places.end()) continue;
    const Template& said = f.severity == Severity::error     ? text::layout_error
                           : f.severity == Severity::caution ? text::layout_caution
                                                             : text::layout_note;
    out << words(said, f.message);
  }
  return out.join(QLatin1Char('\n'));
}

} // namespace

std::vector<AnyId> spoken_ids(const Lab& lab) {
  std::vector<AnyId> out{{Kind::pc, 0}};
  out.reserve(1 + lab.lans.size() + lab.machines.size() + lab.cards.size() + lab.segments.size());
  for (const Lan& l : lab.lans) out.push_back(l.id);
  for (const Machine& m : lab.machines) out.push_back(m.id);
  for (const Card& c : lab.cards) out.push_back(c.id);
  for (const Segment& s : lab.segments) out.push_back(s.id);
  return out;
}

QString spoken_name(const Analysis& a, AnyId id) {
  const Lab& lab = a.lab();
  const std::string name = id.kind == Kind::pc ? lab.pc.name : name_of(lab, id);
  switch (id.kind) {
  case Kind::pc:
    return words(text::access_pc, name);
  case Kind::lan:
    return words(text::access_lan, name);
  case Kind::segment:
    return words(text::access_segment, name);
  case Kind::machine:
    return words(
        a.index().is_hypervisor(a.index().place(id)) ? text::access_hypervisor : text::access_machine, name);
  default:
    return as_qt(name) + QLatin1Char(' ') + plugs_of(lab, *find<Card>(lab, CardId{id.number}));
  }
}

QString spoken_description(const Analysis& a, const Drawing& drawing, AnyId id, ExerciseId exercise) {
  QStringList out;
  for (const Group& g : drawing.groups) {
    if (g.of != id || g.description.empty()) continue;
    out << as_qt(g.description);
    break;
  }
  for (const AnyShape& s : drawing.shapes) // marks of what a card does for its segment
    if (const auto* t = std::get_if<TextShape>(&s);
        t && id.kind == Kind::card && t->of == id && (t->part == Part::gateway || t->part == Part::dhcp))
      out << as_qt(t->text);
  if (id.kind == Kind::card) out << addresses_of(*find<Card>(a.lab(), CardId{id.number}));
  if (id.kind == Kind::card || id.kind == Kind::pc) out << findings_about(a, id, exercise);
  out.removeAll(QString());
  return out.join(QLatin1Char('\n'));
}

Box spoken_box(const Lab& lab, const Drawing& drawing, AnyId id) {
  const Box box = box_of(drawing, id);
  if (box.w != 0 || id.kind != Kind::card) return box;
  for (const AnyShape& s : drawing.shapes)
    if (const auto* drawn = std::get_if<BoxShape>(&s); drawn && drawn->of == id) return drawn->box;
  return box_of(drawing, find<Card>(lab, CardId{id.number})->machine);
}

} // namespace snug
