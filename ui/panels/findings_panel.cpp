#include "ui/panels/findings_panel.h"

#include "core/gesture/accept.h"
#include "core/text/reach_panel_text.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/panels/fix_buttons.h"
#include "ui/panels/panel_row.h"
#include "ui/panels/severity_mark.h"
#include "ui/panels/when_seen.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace snug {

namespace {

constexpr int kMostRows = 200; // the rest is counted
constexpr int kSoon = 60;      // ms
constexpr QLatin1String kRow("finding");

QString key_of(std::string_view rule, AnyId first_place) {
  return as_qt(rule) + QLatin1Char(' ') + as_qt(to_text(first_place));
}

// Esc takes it away and leaves the focus on its row.
class ReasonLine : public QLineEdit {
 public:
  using QLineEdit::QLineEdit;

 protected:
  void keyPressEvent(QKeyEvent* event) override {
    if (event->key() != Qt::Key_Escape) return QLineEdit::keyPressEvent(event);
    parentWidget()->setFocus(Qt::OtherFocusReason);
    setObjectName({});
    hide();
    deleteLater();
  }
};

} // namespace

FindingsPanel::FindingsPanel(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setObjectName(QStringLiteral("findings"));
  auto* box = new QVBoxLayout(this);
  box->setContentsMargins(10, 6, 10, 4);
  box->setSpacing(4);
  tools_ = new QWidget(this);
  auto* top = new QHBoxLayout(tools_);
  top->setContentsMargins(0, 0, 0, 0);
  filter_ = new QLineEdit(tools_);
  filter_->setPlaceholderText(words(text::findings_filter));
  filter_->setAccessibleName(words(text::findings_filter));
  filter_->setToolTip(words(text::tip_filter));
  filter_->setClearButtonEnabled(true);
  filter_->setMaximumWidth(260);
  accepted_ = new QCheckBox(words(text::findings_accepted), tools_);
  accepted_->setToolTip(words(text::tip_accepted));
  top->addWidget(filter_);
  top->addWidget(accepted_);
  top->addStretch();
  box->addWidget(tools_);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  auto* inside = new QWidget(scroll);
  rows_ = new QVBoxLayout(inside);
  rows_->setContentsMargins(0, 0, 4, 0);
  rows_->setSpacing(2);
  scroll->setWidget(inside);
  box->addWidget(scroll);
  none_ = wrapped_text({}, "muted", inside);
  for (QToolButton*& b : headings_) {
    b = new QToolButton(inside);
    b->setProperty("role", QStringLiteral("group"));
    b->setCheckable(true);
    b->setChecked(true);
    b->setToolTip(words(text::tip_group));
    b->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    b->hide();
    connect(b, &QToolButton::toggled, this, [this] { seen_->renew(); });
  }
  fixes_ = new FixButtons(session_, this);
  seen_ = new WhenSeen(*this, [this] { fill(); });
  connect(&session_, &Session::lab_changed, this, &FindingsPanel::renew);
  connect(&session_, &Session::exercise_changed, this, &FindingsPanel::renew);
  settle_.setSingleShot(true);
  settle_.setInterval(kSoon);
  connect(&settle_, &QTimer::timeout, this, &FindingsPanel::count);
  connect(&session_, &Session::shown_changed, this, [this] {
    if (!session_.is_previewing())
      count();
    else if (!settle_.isActive())
      settle_.start();
  });
  connect(filter_, &QLineEdit::textChanged, seen_, &WhenSeen::renew);
  connect(accepted_, &QCheckBox::toggled, seen_, &WhenSeen::renew);
}

void FindingsPanel::set_theme(Theme theme) {
  if (theme == theme_) return;
  theme_ = theme;
  seen_->renew();
}

// The counts are wanted where the rows are not seen, too.
void FindingsPanel::renew() { seen_->renew(); }

// In a drag those of the state after the drop, a few times a second: another number lays out all tabs.
void FindingsPanel::count() {
  settle_.stop();
  std::array<int, 3> count{};
  const Analysis& shown = session_.shown();
  for (const Finding& f : shown.findings())
    if (!f.accepted && holds_in(shown.lab(), f, session_.exercise()))
      ++count[static_cast<std::size_t>(f.severity)];
  emit counted(count[static_cast<std::size_t>(Severity::error)],
               count[static_cast<std::size_t>(Severity::caution)],
               count[static_cast<std::size_t>(Severity::note)]);
}

bool FindingsPanel::matches(const Finding& f) const {
  if (f.accepted && !accepted_->isChecked()) return false;
  if (!holds_in(session_.lab(), f, session_.exercise())) return false;
  const QString wanted = filter_->text().trimmed();
  return wanted.isEmpty() || words(f.message).contains(wanted, Qt::CaseInsensitive) ||
         words(f.reason).contains(wanted, Qt::CaseInsensitive) ||
         as_qt(f.rule->id).contains(wanted, Qt::CaseInsensitive);
}

void FindingsPanel::empty() {
  while (QLayoutItem* item = rows_->takeAt(0)) {
    QWidget* w = item->widget();
    if (w) w->hide();
    if (w && w != none_ && std::find(headings_.begin(), headings_.end(), w) == headings_.end())
      w->deleteLater();
    delete item;
  }
  for (auto& group : groups_) group.clear();
  fixes_->forget();
  shown_ = 0;
}

// The gravest first; a heading with the count folds its group away.
void FindingsPanel::fill() {
  const int focused = focused_row();
  empty();
  for (const Finding& f : session_.analysis().findings())
    if (matches(f)) groups_[static_cast<std::size_t>(f.severity)].push_back(&f);
  int matching = 0, folded = 0;
  for (const Severity s : {Severity::error, Severity::caution, Severity::note}) {
    const int n = static_cast<int>(groups_[static_cast<std::size_t>(s)].size());
    matching += n;
    if (!heading(s).isChecked()) folded += n;
    fill_group(s, n);
  }
  const int beyond = matching - folded - shown_;
  none_->setText(beyond > 0 ? words(text::findings_more, Count{beyond})
                 : matching == 0
                     ? words(filter_->text().isEmpty() ? text::findings_none : text::findings_no_match)
                     : QString());
  none_->setVisible(!none_->text().isEmpty());
  rows_->addWidget(none_);
  rows_->addStretch();
  for (auto& group : groups_) group.clear();
  if (focused >= 0) focus_row(focused);
}

int FindingsPanel::focused_row() const {
  const QWidget* now = window()->focusWidget();
  int nth = 0;
  for (int i = 0; now && i < rows_->count(); ++i) {
    const QWidget* row = rows_->itemAt(i)->widget();
    if (!row || row->objectName() != kRow) continue;
    if (row == now || row->isAncestorOf(now)) return nth;
    ++nth;
  }
  return -1;
}

// What was repaired is gone: its place has the next one, else the last.
void FindingsPanel::focus_row(int nth) {
  QWidget* found = filter_;
  for (int i = 0; i < rows_->count() && nth >= 0; ++i) {
    QWidget* row = rows_->itemAt(i)->widget();
    if (!row || row->objectName() != kRow) continue;
    found = row;
    --nth;
  }
  found->show(); // what is laid out later takes no focus now
  rows_->activate();
  found->setFocus(Qt::OtherFocusReason);
  if (auto* scroll = findChild<QScrollArea*>(); scroll && found != filter_)
    scroll->ensureWidgetVisible(found);
}

void FindingsPanel::fill_group(Severity s, int count) {
  if (count == 0) return;
  const Template& name = s == Severity::error     ? text::findings_errors
                         : s == Severity::caution ? text::findings_cautions
                                                  : text::findings_notes;
  QToolButton& top = heading(s);
  top.setText(words(name, Count{count}));
  top.setArrowType(top.isChecked() ? Qt::DownArrow : Qt::RightArrow);
  top.setAccessibleName(top.text());
  rows_->addWidget(&top);
  top.show();
  if (!top.isChecked()) return;
  for (const Finding* f : groups_[static_cast<std::size_t>(s)]) {
    if (shown_ >= kMostRows) return;
    rows_->addWidget(row(*f));
    ++shown_;
  }
}

QWidget* FindingsPanel::row(const Finding& f) {
  const std::vector<AnyId> places = f.places;
  auto* frame = new PanelRow(rows_->parentWidget(), kRow, [this, places] {
    session_.select(places);
    for (const AnyId id : places) {
      if (id.kind == Kind::pc || id.kind == Kind::lab) continue;
      emit place_wanted(id);
      return;
    }
  });
  auto* across = new QHBoxLayout(frame);
  across->setContentsMargins(10, 4, 10, 4);
  across->addWidget(new SeverityMark(f.severity, snug::palette(theme_), frame), 0, Qt::AlignTop);
  auto* texts = new QVBoxLayout;
  texts->setSpacing(2);
  texts->addWidget(wrapped_text(whole_words(f.message), "heading", frame));
  const QString why =
      f.accepted ? words(text::findings_accepted_because, f.accepted->reason) : whole_words(f.reason);
  texts->addWidget(wrapped_text(why, "muted", frame));
  across->addLayout(texts, 1);
  frame->setAccessibleName(words(f.message));
  frame->setAccessibleDescription(why);
  frame->setToolTip(words(text::tip_go));
  if (!places.empty()) frame->setProperty("key", key_of(f.rule->id, places.front()));
  if (!places.empty() && places.front().kind == Kind::promise) {
    auto* button = new QPushButton(words(text::finding_promise), frame);
    button->setObjectName(QStringLiteral("to_promise"));
    button->setToolTip(words(text::tip_to_promise));
    connect(button, &QPushButton::clicked, this,
            [this, id = PromiseId{places.front().number}] { emit promise_wanted(id); });
    across->addWidget(button, 0, Qt::AlignVCenter);
  }
  if (!f.accepted) {
    auto* take = new QPushButton(words(text::findings_accept), frame);
    take->setToolTip(words(text::findings_accept_help));
    connect(take, &QPushButton::clicked, this, [this, frame, f] { ask_reason(frame, f); });
    across->addWidget(take, 0, Qt::AlignVCenter);
    if (f.rule->fix) fixes_->want(frame, take, f);
  }
  return frame;
}

// Whatever is folded away or filtered out.
void FindingsPanel::show_finding(const QString& rule, AnyId place) {
  for (const Finding& f : session_.analysis().findings()) {
    if (f.places.empty() || f.places.front() != place || as_qt(f.rule->id) != rule) continue;
    filter_->clear();
    if (f.accepted) accepted_->setChecked(true);
    heading(f.severity).setChecked(true);
    const QString key = key_of(f.rule->id, place);
    for (int i = 0; i < rows_->count(); ++i) {
      QWidget* row = rows_->itemAt(i)->widget();
      if (!row || row->property("key").toString() != key) continue;
      row->show(); // what is laid out later takes no focus now
      rows_->activate();
      row->setFocus(Qt::ShortcutFocusReason);
      if (auto* scroll = findChild<QScrollArea*>()) scroll->ensureWidgetVisible(row);
      return;
    }
    filter_->setText(words(f.message)); // beyond the rows that are shown, or of another exercise
    return;
  }
}

// In the row itself: a line for the reason; Esc takes it away.
void FindingsPanel::ask_reason(QWidget* row, const Finding& f) {
  if (auto* open = row->findChild<QLineEdit*>(QStringLiteral("reason"))) return open->setFocus();
  auto* line = new ReasonLine(row);
  line->setObjectName(QStringLiteral("reason"));
  line->setPlaceholderText(words(text::findings_reason));
  line->setAccessibleName(words(text::findings_reason));
  line->setToolTip(words(text::tip_reason));
  line->setMinimumWidth(280);
  row->layout()->addWidget(line);
  line->setFocus();
  const std::string rule(f.rule->id);
  connect(line, &QLineEdit::returnPressed, this, [this, line, rule, places = f.places] {
    session_.seal();
    session_.perform(accept_finding(session_.lab(), rule, places, line->text().toStdString()));
  });
}

} // namespace snug
