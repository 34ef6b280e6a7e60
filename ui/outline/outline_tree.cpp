#include "ui/outline/outline_tree.h"

#include "core/text/outline_text.h"
#include "ui/session/words.h"

#include <QStringList>

#include <algorithm>
#include <tuple>

namespace snug {

namespace {

bool has(const std::vector<SegmentTag>& tags, SegmentId segment) {
  return std::any_of(tags.begin(), tags.end(),
                     [segment](const SegmentTag& t) { return t.segment == segment; });
}

QString address_of(const Card& card) {
  if (only_carries(card)) return words(text::outline_carries);
  QStringList out;
  for (const CardAddress& a : card.addresses) {
    if (a.address)
      out << as_qt(to_text(*a.address));
    else if (a.kind == AddressKind::dhcp)
      out << words(text::outline_dhcp);
    else if (a.kind == AddressKind::slaac)
      out << words(text::outline_slaac);
  }
  return out.isEmpty() ? words(text::outline_no_address) : out.join(QStringLiteral(", "));
}

class Grower {
 public:
  Grower(const Analysis& analysis, ExerciseId exercise)
      : analysis_(analysis), lab_(analysis.lab()), index_(analysis.index()),
        exercise_(find<Exercise>(lab_, exercise)) {}

  std::vector<OutlineNode> grow() {
    const int pc = add(-1, {Kind::pc, 0}, as_qt(lab_.pc.name), words(Mib{lab_.pc.installed}));
    add_guests(pc, kNowhere);
    add_segments();
    add_list(text::outline_outside, lab_.lans,
             [](const Lan& l) { return l.prefix4 ? as_qt(to_text(*l.prefix4)) : QString(); });
    add_list(text::outline_volumes, lab_.volumes, [](const Volume& v) { return words(Mib{v.size}); });
    add_list(text::outline_exercises, lab_.exercises,
             [](const Exercise& e) { return e.date ? as_qt(to_text(*e.date)) : QString(); });
    return std::move(nodes_);
  }

 private:
  int add(int parent, AnyId id, const QString& name, const QString& detail) {
    const int at = static_cast<int>(nodes_.size());
    OutlineNode node;
    node.id = id;
    node.parent = parent;
    node.name = name;
    node.detail = detail;
    if (parent < 0) {
      node.row = tops_++;
    } else {
      std::vector<int>& siblings = nodes_[static_cast<std::size_t>(parent)].children;
      node.row = static_cast<int>(siblings.size());
      siblings.push_back(at);
    }
    nodes_.push_back(std::move(node));
    return at;
  }

  std::vector<std::uint32_t> guests(std::uint32_t carrier) const {
    const auto inside = index_.guests_of(carrier);
    std::vector<std::uint32_t> out(inside.begin(), inside.end());
    std::stable_sort(out.begin(), out.end(), [this](std::uint32_t a, std::uint32_t b) {
      const Machine &x = lab_.machines[a], &y = lab_.machines[b];
      return std::tie(x.band, x.order) < std::tie(y.band, y.order);
    });
    return out;
  }

  void add_guests(int parent, std::uint32_t carrier) {
    for (const std::uint32_t place : guests(carrier)) {
      const Machine& m = lab_.machines[place];
      const MachineId id = m.id;
      const int at = add(parent, id, as_qt(name_of(lab_, id)), words(Mib{m.memory}));
      if (exercise_ && std::find(exercise_->on.begin(), exercise_->on.end(), id) == exercise_->on.end()) {
        OutlineNode& node = nodes_[static_cast<std::size_t>(at)];
        node.is_off = true;
        node.detail = words(text::outline_off, node.detail.toStdString());
      }
      add_guests(at, place);
      add_parts(at, place);
    }
  }

  void add_parts(int parent, std::uint32_t machine) {
    int n = 0;
    for (const std::uint32_t place : index_.cards_of(machine)) {
      const Card& c = lab_.cards[place];
      const QString name = card_name(c, ++n);
      add(parent, c.id,
          c.segment ? words(text::outline_of, name.toStdString(), name_of(lab_, c.segment)) : name,
          address_of(c));
    }
    n = 0;
    for (const std::uint32_t place : index_.disks_of(machine)) {
      const Disk& d = lab_.disks[place];
      const QString name = d.name.empty() ? words(text::outline_disk, std::to_string(++n)) : as_qt(d.name);
      add(parent, d.id, name, words(Mib{d.size}));
    }
  }

  static QString card_name(const Card& c, int n) {
    return c.name.empty() ? words(text::outline_card, std::to_string(n)) : as_qt(c.name);
  }

  void add_segments() {
    const int head = add(-1, {}, words(text::outline_segments), {});
    std::vector<const Segment*> rails;
    for (const Segment& s : lab_.segments) rails.push_back(&s);
    std::stable_sort(rails.begin(), rails.end(),
                     [](const Segment* a, const Segment* b) { return a->order < b->order; });
    for (const Segment* s : rails) {
      const auto prefix = analysis_.addresses().prefix4(index_.place(s->id));
      const int at =
          add(head, s->id, as_qt(name_of(lab_, s->id)), prefix ? as_qt(to_text(*prefix)) : QString());
      add_cards_on(at, s->id);
    }
  }

  void add_cards_on(int parent, SegmentId segment) {
    for (std::uint32_t m = 0; m < lab_.machines.size(); ++m) {
      int n = 0;
      for (const std::uint32_t place : index_.cards_of(m)) {
        const Card& c = lab_.cards[place];
        ++n;
        if (c.segment != segment && !has(c.trunk, segment) && !has(c.carries, segment)) continue;
        const std::string machine = name_of(lab_, lab_.machines[m].id);
        add(parent, c.id, words(text::outline_of, machine, card_name(c, n).toStdString()), address_of(c));
      }
    }
  }

  template <typename E, typename Detail>
  void add_list(const Template& heading, const std::vector<E>& list, const Detail& detail) {
    if (list.empty()) return;
    const int head = add(-1, {}, words(heading), {});
    for (const E& e : list) add(head, e.id, as_qt(name_of(lab_, e.id)), detail(e));
  }

  const Analysis& analysis_;
  const Lab& lab_;
  const Index& index_;
  const Exercise* exercise_;
  std::vector<OutlineNode> nodes_;
  int tops_ = 0;
};

} // namespace

std::vector<OutlineNode> outline_of(const Analysis& analysis, ExerciseId exercise) {
  return Grower(analysis, exercise).grow();
}

bool same_places(const std::vector<OutlineNode>& a, const std::vector<OutlineNode>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const OutlineNode& x, const OutlineNode& y) {
    return x.id == y.id && x.parent == y.parent;
  });
}

} // namespace snug
