#include "ui/panels/tick_list.h"

#include "core/model/store.h"
#include "ui/panels/panel_row.h"
#include "ui/session/words.h"

#include <QCheckBox>
#include <QLabel>
#include <QVBoxLayout>

namespace snug {

namespace {

constexpr int kIndent = 16;

struct Choosable {
  AnyId id;
  int depth = 0;
};

void add_guests(const Lab& lab, MachineId carrier, int depth, std::vector<Choosable>& out) {
  for (const Machine& m : lab.machines) {
    if (m.carrier != carrier) continue;
    out.push_back({m.id, depth});
    add_guests(lab, m.id, depth + 1, out);
  }
}

// Machines stand below what carries them.
std::vector<Choosable> choosable(const Lab& lab, KindSet set) {
  std::vector<Choosable> out;
  for (const Kind kind : kinds_in_document()) {
    if ((set & kinds({kind})) == 0) continue;
    if (kind == Kind::machine) {
      add_guests(lab, {}, 0, out);
      continue;
    }
    const Store& store = store_of(kind);
    for (std::size_t i = 0; i < store.count(lab); ++i) out.push_back({store.table->id(store.at(lab, i)), 0});
  }
  return out;
}

} // namespace

bool TickList::fits(const Lab& lab, const FieldInfo& list) {
  if (list.type != FieldType::ids) return false;
  std::size_t count = 0;
  for (const Kind kind : kinds_in_document())
    if ((list.id_kinds & kinds({kind})) != 0) count += store_of(kind).count(lab);
  return count <= kMost;
}

TickList::TickList(Session& session, const FieldInfo& list, QWidget* parent, Tick tick)
    : QWidget(parent), session_(session), list_(list), tick_(std::move(tick)) {
  setObjectName(QStringLiteral("list_") + as_qt(list.key));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 6, 0, 0);
  column->setSpacing(5);
  column->addWidget(heading(words(list.label), this));
  if (!list.help.text.empty()) column->addWidget(wrapped_text(words(list.help), "muted", this));
  boxes_ = new QVBoxLayout;
  boxes_->setSpacing(4);
  column->addLayout(boxes_);
  rebuild(session.lab());
}

void TickList::rebuild(const Lab& lab) {
  for (const auto& [id, box] : ticks_) {
    box->hide();
    box->deleteLater();
  }
  ticks_.clear();
  for (const Choosable& c : choosable(lab, list_.id_kinds)) {
    auto* box = new QCheckBox(this);
    box->setObjectName(as_qt(list_.key) + u'_' + as_qt(to_text(c.id)));
    box->setContentsMargins(0, 0, 0, 0);
    auto* line = new QHBoxLayout;
    line->addSpacing(c.depth * kIndent);
    line->addWidget(box, 1);
    boxes_->addLayout(line);
    connect(box, &QCheckBox::clicked, this, [this, id = c.id, box] {
      box->setTristate(false);
      tick_(id, box->checkState() != Qt::Unchecked);
    });
    ticks_.emplace_back(c.id, box);
  }
}

void TickList::show_list(const StateOf& state_of) {
  const Lab& lab = session_.lab();
  const std::vector<Choosable> now = choosable(lab, list_.id_kinds);
  const bool same = now.size() == ticks_.size() &&
                    std::equal(now.begin(), now.end(), ticks_.begin(),
                               [](const Choosable& c, const auto& tick) { return c.id == tick.first; });
  if (!same) rebuild(lab);
  for (const auto& [id, box] : ticks_) {
    const QString name = as_qt(name_of(lab, id));
    box->setText(QString(name).replace(u'&', QStringLiteral("&&")));
    box->setAccessibleName(name);
    box->setToolTip(name);
    const Qt::CheckState state = state_of(id);
    box->setTristate(state == Qt::PartiallyChecked);
    box->setCheckState(state);
  }
}

} // namespace snug
