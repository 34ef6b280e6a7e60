// What belongs to a machine beside its fields: its cards and disks, each a line that leads to all of it.

#include "core/base/size.h"
#include "core/gesture/extras.h"
#include "core/gesture/rows.h"
#include "core/reach/explain.h"
#include "core/text/extras_text.h"
#include "core/text/outline_text.h"
#include "core/text/promise_text.h"
#include "core/text/reach_panel_text.h"
#include "core/text/reach_text.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/panels/panel_row.h"
#include "ui/panels/property_panel.h"
#include "ui/panels/verdict_mark.h"
#include "ui/session/words.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr AnyId kThePc{Kind::pc, 0}, kTheLab{Kind::lab, 0};

MachineId machine_of(const Lab& lab, AnyId id) {
  if (const Card* c = find<Card>(lab, CardId{id.kind == Kind::card ? id.number : 0})) return c->machine;
  if (const Disk* d = find<Disk>(lab, DiskId{id.kind == Kind::disk ? id.number : 0})) return d->machine;
  if (const Share* s = find<Share>(lab, ShareId{id.kind == Kind::share ? id.number : 0})) return s->machine;
  return {};
}

QString addresses_of(const Card& c) {
  QStringList out;
  for (const CardAddress& row : c.addresses)
    out << (row.address                      ? as_qt(to_text(*row.address))
            : row.kind == AddressKind::dhcp  ? words(text::outline_dhcp)
            : row.kind == AddressKind::slaac ? words(text::outline_slaac)
                                             : words(text::outline_no_address));
  return out.join(QStringLiteral(", "));
}

QString name_or_none(const Lab& lab, AnyId id) {
  return id ? as_qt(name_of(lab, id)) : words(text::property_none);
}

// Of what the PC or the lab has a list of.
QString detail_of_list(const Lab& lab, AnyId id) {
  if (id.kind == Kind::volume) return size_words(find<Volume>(lab, VolumeId{id.number})->size);
  if (id.kind == Kind::lan) {
    const Lan& lan = *find<Lan>(lab, LanId{id.number});
    return lan.prefix4 ? as_qt(to_text(*lan.prefix4)) : QString();
  }
  if (id.kind == Kind::exercise) {
    const Exercise& e = *find<Exercise>(lab, ExerciseId{id.number});
    return e.date ? as_qt(to_text(*e.date)) : QString();
  }
  return {};
}

// "Steering", "172.22.10.31"; "60 GiB", "nvme"; "cargo-bay", "200 GiB".
std::pair<QString, QString> words_of_part(const Lab& lab, AnyId id) {
  if (const Card* c = find<Card>(lab, CardId{id.kind == Kind::card ? id.number : 0})) {
    const QString addresses = addresses_of(*c);
    return {name_or_none(lab, c->segment), !addresses.isEmpty() ? addresses
                                           : c->carries.empty() ? words(text::outline_no_address)
                                                                : words(text::outline_carries)};
  }
  if (const Disk* d = find<Disk>(lab, DiskId{id.kind == Kind::disk ? id.number : 0}))
    return {size_words(d->size), name_or_none(lab, d->store)};
  if (const Share* s = find<Share>(lab, ShareId{id.kind == Kind::share ? id.number : 0}))
    return {as_qt(s->name), size_words(s->size)};
  return {as_qt(name_of(lab, id)), detail_of_list(lab, id)};
}

} // namespace

void PropertyPanel::add_link(QVBoxLayout& column, const char* name, const QString& title, AnyId to) {
  auto* link = new QPushButton(title, body_);
  link->setObjectName(QLatin1String(name));
  link->setProperty("role", QStringLiteral("link"));
  link->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed); // a long one makes nothing wider
  link->setToolTip(title);
  connect(link, &QPushButton::clicked, this,
          [this, to] { session_.select(to == kThePc ? std::vector<AnyId>{} : std::vector<AnyId>{to}); });
  column.addWidget(link);
}

// From a part to what it belongs to; from the PC to the lab and from there on.
void PropertyPanel::add_ways(QVBoxLayout& column) {
  if (subjects_.size() != 1) return;
  const Lab& lab = session_.lab();
  const AnyId of = subjects_.front();
  const auto back = [&](AnyId to) { add_link(column, "back", words(text::rows_back, name_of(lab, to)), to); };
  switch (of.kind) {
  case Kind::card:
  case Kind::disk:
  case Kind::share:
    return back(machine_of(lab, of));
  case Kind::volume:
  case Kind::lan:
  case Kind::place:
    return back(kThePc);
  case Kind::exercise:
  case Kind::numbering:
  case Kind::rules:
    return back(kTheLab);
  case Kind::pc:
    return add_link(column, "to_lab", words(text::to_lab), kTheLab);
  case Kind::lab:
    back(kThePc);
    add_link(column, "to_numbering", words(text::to_numbering), {Kind::numbering, 0});
    return add_link(column, "to_rules", words(text::to_rules), {Kind::rules, 0});
  default:
    return;
  }
}

void PropertyPanel::add_parts(QVBoxLayout& column) {
  constexpr std::array kWithParts{Kind::machine, Kind::pc, Kind::lab};
  if (subjects_.size() != 1 ||
      std::find(kWithParts.begin(), kWithParts.end(), subjects_.front().kind) == kWithParts.end())
    return;
  parts_ = new QWidget(body_);
  auto* box = new QVBoxLayout(parts_);
  box->setContentsMargins(0, 0, 0, 0);
  box->setSpacing(5);
  column.addWidget(parts_);
}

void PropertyPanel::fill_parts() {
  if (!parts_) return;
  while (QLayoutItem* item = parts_->layout()->takeAt(0)) {
    if (item->widget()) {
      item->widget()->hide();
      item->widget()->deleteLater();
    }
    delete item;
  }
  const Lab& lab = session_.lab();
  const auto list = [this](const Template& title, Kind kind, const auto& elements) {
    add_group(title, kind, text::rows_add);
    for (const auto& e : elements) add_part(e.id);
  };
  if (subjects_.front().kind == Kind::lab)
    return list(text::outline_exercises, Kind::exercise, lab.exercises);
  if (subjects_.front().kind == Kind::pc) {
    list(text::extras_volumes, Kind::volume, lab.volumes);
    list(text::extras_lans, Kind::lan, lab.lans);
    return list(text::extras_places, Kind::place, lab.places);
  }
  const MachineId machine{subjects_.front().number};
  add_group(text::rows_cards, Kind::card, text::rows_add);
  for (const Card& c : session_.lab().cards)
    if (c.machine == machine) add_part(c.id);
  add_group(text::rows_disks, Kind::disk, text::rows_add);
  for (const Disk& d : session_.lab().disks)
    if (d.machine == machine) add_part(d.id);
  add_group(text::rows_shares, Kind::share, text::rows_add);
  for (const Share& s : session_.lab().shares)
    if (s.machine == machine) add_part(s.id);
  add_can_reach(machine);
}

namespace {

Mark mark_of(CanReach::State state) {
  constexpr std::array<Mark, 5> kMarks{Mark::yes, Mark::no, Mark::chance, Mark::one_way, Mark::none};
  return kMarks[static_cast<std::size_t>(state)];
}

const Template& word_of(CanReach::State state) {
  constexpr std::array<const Template*, 5> kWords{&text::answer_reaches, &text::answer_no,
                                                  &text::answer_unreliable, &text::answer_one_way,
                                                  &text::promise_not_judged};
  return *kWords[static_cast<std::size_t>(state)];
}

} // namespace

// What it uses and whether it gets there; a line leads to the whole way.
void PropertyPanel::add_can_reach(MachineId machine) {
  const Analysis& a = session_.analysis();
  Reach reach(a.index(), a.addresses(), session_.exercise());
  auto* title = new QLabel(words(text::can_title), parts_);
  title->setProperty("tone", QStringLiteral("heading"));
  title->setContentsMargins(0, 6, 0, 0);
  parts_->layout()->addWidget(title);
  title->show();
  for (const CanReach& line : can_reach(reach, a.index(), machine)) {
    const QString to = !line.to                        ? as_qt(line.service)
                       : line.to.kind == Kind::segment ? as_qt(subject_name(a.lab(), line.to))
                                                       : words(node_called(a.lab(), line.to));
    const QString name =
        line.to && !line.service.empty() ? words(text::can_line, to.toStdString(), line.service) : to;
    const QString why = words(line.words);
    auto* row = new PanelRow(parts_, QStringLiteral("can_reach"), [this, q = line.question] {
      if (q.to) emit ask_wanted(q);
    });
    auto* across = new QHBoxLayout(row);
    across->setContentsMargins(4, 2, 4, 2);
    across->setSpacing(6);
    across->addWidget(
        new VerdictMark(mark_of(line.state), words(word_of(line.state)), snug::palette(theme_), row));
    auto* column = new QVBoxLayout;
    column->setSpacing(0);
    column->addWidget(wrapped_text(name, "", row));
    column->addWidget(wrapped_text(why, "muted", row));
    across->addLayout(column, 1);
    row->setAccessibleName(name + QStringLiteral(": ") + words(word_of(line.state)) + QStringLiteral(", ") +
                           why);
    row->setToolTip(words(text::can_ask));
    parts_->layout()->addWidget(row);
    row->show();
  }
}

namespace {

Added new_part(const Lab& lab, Kind kind, MachineId machine, ExerciseId current) {
  switch (kind) {
  case Kind::card:
    return add_loose_card(lab, machine);
  case Kind::disk:
    return add_disk(lab, machine);
  case Kind::share:
    return add_share(lab, machine);
  case Kind::volume:
    return add_volume(lab);
  case Kind::lan:
    return add_lan(lab);
  case Kind::place:
    return add_place(lab);
  default:
    return add_exercise(lab, current);
  }
}

} // namespace

void PropertyPanel::add_group(const Template& title, Kind kind, const Template& button_words) {
  auto* row = new QWidget(parts_);
  auto* top = new QHBoxLayout(row);
  top->setContentsMargins(0, 6, 0, 0);
  auto* label = new QLabel(words(title), row);
  label->setProperty("tone", QStringLiteral("heading"));
  top->addWidget(label, 1);
  auto* add = new QPushButton(words(button_words, info_of(kind).noun), row);
  add->setProperty("role", QStringLiteral("small"));
  add->setToolTip(words(text::tip_add));
  add->setObjectName(QStringLiteral("add_") + as_qt(std::string(info_of(kind).noun)));
  connect(add, &QPushButton::clicked, this, [this, kind] {
    Added added = new_part(session_.lab(), kind, MachineId{subjects_.front().number}, session_.exercise());
    session_.seal();
    if (session_.perform(std::move(added.edit))) session_.select({added.id});
  });
  top->addWidget(add);
  parts_->layout()->addWidget(row);
  row->show();
}

void PropertyPanel::add_part(AnyId id) {
  auto* frame = new QFrame(parts_);
  frame->setObjectName(QStringLiteral("row"));
  auto* lines = new QVBoxLayout(frame);
  lines->setContentsMargins(8, 4, 8, 6);
  lines->setSpacing(2);
  const auto [first, second] = words_of_part(session_.lab(), id);
  auto* open = new QPushButton(QString(first).replace(QLatin1Char('&'), QStringLiteral("&&")), frame);
  open->setAccessibleName(
      second.isEmpty() ? first : words(text::outline_of, first.toStdString(), second.toStdString()));
  open->setProperty("role", QStringLiteral("link"));
  open->setObjectName(QStringLiteral("open_") + as_qt(to_text(id)));
  open->setToolTip(words(text::rows_open));
  connect(open, &QPushButton::clicked, this, [this, id] { session_.select({id}); });
  auto* gone = new QPushButton(words(text::rows_remove), frame);
  gone->setProperty("role", QStringLiteral("small"));
  gone->setToolTip(words(text::tip_remove, first.toStdString()));
  gone->setObjectName(QStringLiteral("remove_") + as_qt(to_text(id)));
  connect(gone, &QPushButton::clicked, this, [this, id] {
    session_.seal();
    session_.perform(remove_elements(session_.lab(), std::vector<AnyId>{id}));
  });
  open->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed); // a long name makes nothing wider
  lines->addWidget(open);
  auto* below = new QHBoxLayout;
  below->addWidget(wrapped_text(second, "muted", frame), 1);
  below->addWidget(gone, 0, Qt::AlignBottom);
  lines->addLayout(below);
  parts_->layout()->addWidget(frame);
  frame->show();
}

} // namespace snug
