#include "ui/window/exercise_strip.h"

#include "core/budget/verdict.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"
#include "ui/window/flow_layout.h"

#include <QPainter>
#include <QPushButton>

#include <optional>

namespace snug {

// A push button with a mark of the verdict: tick, triangle or octagon beside the word.
class VerdictButton : public QPushButton {
 public:
  explicit VerdictButton(QWidget* parent) : QPushButton(parent) {
    setCheckable(true);
    setFocusPolicy(Qt::StrongFocus);
    setIconSize({14, 14});
  }
  std::optional<std::pair<Verdict, Theme>> marked; // what its icon shows
};

namespace {

constexpr int kGap = 6;

QIcon mark(Verdict verdict, const Palette& p) {
  constexpr int kSide = 28; // of a picture for screens of twice the density
  QPixmap picture(kSide, kSide);
  picture.fill(Qt::transparent);
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colour(p, verdict == Verdict::over    ? Ink::error
                                : verdict == Verdict::tight ? Ink::caution
                                                            : Ink::ok),
                      4));
  if (verdict == Verdict::fits)
    painter.drawPolyline(QPolygonF({{5, 15}, {11, 21}, {23, 7}}));
  else if (verdict == Verdict::tight)
    painter.drawPolygon(QPolygonF({{14, 5}, {24, 23}, {4, 23}}));
  else
    painter.drawLines(QList<QLineF>{{6, 6, 22, 22}, {22, 6, 6, 22}});
  return picture;
}

} // namespace

ExerciseStrip::ExerciseStrip(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setObjectName(QStringLiteral("exercises"));
  box_ = new FlowLayout(this, kGap);
  connect(&session_, &Session::shown_changed, this, &ExerciseStrip::refresh);
  connect(&session_, &Session::lab_changed, this, &ExerciseStrip::fill);
  connect(&session_, &Session::exercise_changed, this, &ExerciseStrip::refresh);
  fill();
}

void ExerciseStrip::set_theme(Theme theme) {
  theme_ = theme;
  refresh();
}

int ExerciseStrip::line_width() const {
  int width = 0;
  for (const auto& [id, button] : buttons_) width += button->sizeHint().width() + kGap;
  return width;
}

void ExerciseStrip::fill() {
  std::vector<ExerciseId> wanted{ExerciseId{}};
  for (const Exercise& e : session_.lab().exercises) wanted.push_back(e.id);
  std::vector<ExerciseId> now;
  for (const auto& [id, button] : buttons_) now.push_back(id);
  if (wanted == now) return refresh();
  while (QLayoutItem* item = box_->takeAt(0)) {
    if (item->widget()) item->widget()->deleteLater();
    delete item;
  }
  buttons_.clear();
  for (const ExerciseId id : wanted) {
    auto* button = new VerdictButton(this);
    connect(button, &QPushButton::clicked, this, [this, id] {
      session_.set_exercise(id);
      refresh();
    });
    box_->addWidget(button);
    buttons_.emplace_back(id, button);
  }
  refresh();
}

void ExerciseStrip::refresh() {
  const Analysis& a = session_.shown();
  for (const auto& [id, button] : buttons_) {
    if (id && !exists(a.lab(), id)) continue;
    const ExerciseVerdict v = verdict_of(a.budgets(id));
    const QString name = id ? as_qt(name_of(a.lab(), id)) : words(text::exercise_all_on);
    const QString word = words(v.verdict == Verdict::over    ? text::verdict_over
                               : v.verdict == Verdict::tight ? text::verdict_tight
                                                             : text::verdict_fits);
    // Equal words are not set again: the whole window would be laid out anew, at every move of a drag.
    const QString words_of = name + QStringLiteral(" · ") + word;
    if (button->text() != words_of) button->setText(words_of);
    if (const auto wanted = std::pair(v.verdict, theme_); button->marked != wanted) {
      button->marked = wanted;
      button->setIcon(mark(v.verdict, snug::palette(theme_)));
    }
    button->setChecked(id == session_.exercise());
    QStringList where;
    for (const AnyId place : v.where) where << as_qt(name_of(a.lab(), place));
    button->setToolTip(where.isEmpty() ? word
                                       : words(say(text::verdict_where, word.toStdString(),
                                                   where.join(QStringLiteral(", ")).toStdString())));
  }
}

} // namespace snug
