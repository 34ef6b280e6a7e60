#include "ui/window/exercise_strip.h"

#include "core/analyse/standing.h"
#include "core/text/extras_text.h"
#include "core/text/standing_text.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"
#include "ui/window/flow_layout.h"

#include <QEvent>
#include <QHash>
#include <QHelpEvent>
#include <QPainter>
#include <QPushButton>
#include <QToolTip>

#include <algorithm>
#include <functional>
#include <optional>

namespace snug {

// A push button with a mark of how it stands: tick, triangle or octagon beside the word.
class VerdictButton : public QPushButton {
 public:
  explicit VerdictButton(QWidget* parent) : QPushButton(parent) {
    setCheckable(true);
    setProperty("role", QStringLiteral("exercise"));
    setFocusPolicy(Qt::StrongFocus);
    setIconSize({14, 14});
  }
  std::optional<std::pair<Standing, Theme>> marked; // what its icon shows
  std::optional<std::pair<QString, bool>> said;     // its words, and whether it is held at its size
  // In a drag nothing moves under the hand, and nothing is laid out again.
  void hold(bool held) {
    if (held == held_) return;
    held_ = held;
    lengths_.clear();
    around_ = sizeHint().width() - length(text());
    setMinimumSize(held ? size() : QSize(kept_, 0));
    setMaximumSize(held ? size() : QSize(QWIDGETSIZE_MAX, QWIDGETSIZE_MAX));
  }
  // Has this width at least while it is not held: other words do not move its neighbours.
  void keep_width(int width) {
    if (width == kept_) return;
    kept_ = width;
    if (!held_) setMinimumSize(kept_, 0);
  }
  // With the longest of the usual words after its name.
  int roomy_width(const QString& name_in_button, const QStringList& usual) const {
    int most = 0;
    for (const QString& word : usual) most = std::max(most, fontMetrics().horizontalAdvance(word));
    return QPushButton::sizeHint().width() - fontMetrics().horizontalAdvance(text()) +
           fontMetrics().horizontalAdvance(name_in_button) + most;
  }
  // While it is held.
  bool has_room_for(const QString& words) { return around_ + length(words) <= width(); }
  std::function<void(bool)> looked_at;  // with pointer or keyboard, and no longer
  std::function<QPoint(QPoint)> tip_at; // where the tip stands, for a pointer there

 protected:
  bool event(QEvent* e) override {
    const QEvent::Type type = e->type();
    if (type == QEvent::ToolTip && tip_at && !toolTip().isEmpty()) {
      QToolTip::showText(tip_at(static_cast<QHelpEvent*>(e)->globalPos()), toolTip(), this, rect());
      return true;
    }
    if (type == QEvent::Enter || type == QEvent::FocusIn) looked_at(true);
    if (type == QEvent::Leave || type == QEvent::FocusOut) looked_at(false);
    return QPushButton::event(e);
  }

 private:
  // Measured once: words come again as the hand moves back and forth.
  int length(const QString& words) {
    const auto known = lengths_.constFind(words);
    return known != lengths_.constEnd() ? *known
                                        : *lengths_.insert(words, fontMetrics().horizontalAdvance(words));
  }
  bool held_ = false;
  int around_ = 0; // pixels that are not words
  int kept_ = 0;
  QHash<QString, int> lengths_;
};

namespace {

constexpr int kGap = 4;

QIcon mark(Standing standing, const Palette& p) {
  constexpr int kSide = 28; // of a picture for screens of twice the density
  QPixmap picture(kSide, kSide);
  picture.fill(Qt::transparent);
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colour(p, standing == Standing::error     ? Ink::error
                                : standing == Standing::caution ? Ink::caution
                                                                : Ink::ok),
                      4));
  if (standing == Standing::good)
    painter.drawPolyline(QPolygonF({{5, 15}, {11, 21}, {23, 7}}));
  else if (standing == Standing::caution)
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

// Buttons that go lose the keyboard, which nobody hears any more.
ExerciseStrip::~ExerciseStrip() {
  for (const auto& [id, button] : buttons_) button->looked_at = [](bool) {};
}

void ExerciseStrip::set_theme(Theme theme) {
  theme_ = theme;
  refresh();
}

int ExerciseStrip::line_width() const {
  int width = add_ ? add_->sizeHint().width() + kGap : 0;
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
    if (QWidget* w = item->widget(); w && w != add_) {
      w->hide();
      w->deleteLater();
    }
    delete item;
  }
  buttons_.clear();
  for (const ExerciseId id : wanted) {
    auto* button = new VerdictButton(this);
    button->looked_at = [this, id](bool is_on) { emit looked_at(is_on ? std::optional(id) : std::nullopt); };
    button->tip_at = [this](QPoint pointer) { return below_all(pointer); };
    // Assistive technology turns a button without clicking it.
    connect(button, &QPushButton::toggled, this, [this, id](bool on) {
      if (on == (session_.exercise() == id)) return;
      session_.set_exercise(id);
      refresh();
    });
    button->setContextMenuPolicy(Qt::CustomContextMenu);
    connect(button, &QPushButton::customContextMenuRequested, this, [this, id, button](QPoint at) {
      if (id) emit menu_wanted(id, button->mapToGlobal(at));
    });
    box_->addWidget(button);
    button->show(); // at once, not in the next turn
    buttons_.emplace_back(id, button);
  }
  add_plus();
  refresh();
}

QPoint ExerciseStrip::below_all(QPoint pointer) const {
  if (!kept_clear_) return pointer;
  constexpr int kDrop = 16; // of a tip below the point that it is shown at
  return {pointer.x(), kept_clear_->mapToGlobal(kept_clear_->rect().bottomLeft()).y() - kDrop};
}

void ExerciseStrip::add_plus() {
  if (!add_) {
    add_ = new QPushButton(QStringLiteral("+"), this);
    add_->setObjectName(QStringLiteral("add_to_exercises"));
    add_->setProperty("role", QStringLiteral("exercise"));
    add_->setToolTip(words(text::exercise_add_help));
    add_->setAccessibleName(words(text::act_add_exercise).remove(QLatin1Char('&')));
    connect(add_, &QPushButton::clicked, this, &ExerciseStrip::add_wanted);
  }
  box_->addWidget(add_);
  add_->show();
}

void ExerciseStrip::refresh() {
  const Analysis& a = session_.shown();
  for (const ExerciseStanding& s : standings(a)) {
    const auto at =
        std::find_if(buttons_.begin(), buttons_.end(), [&s](const auto& b) { return b.first == s.exercise; });
    if (at != buttons_.end()) show(s, *at->second);
  }
  if (!session_.is_previewing()) keep_widths();
}

// Where there is room in one line: what comes and goes with every step moves nothing then.
void ExerciseStrip::keep_widths() {
  const QStringList usual{words(text::standing_fits), words(text::standing_tight), words(text::standing_over),
                          words(text::standing_errors, Count{9}), words(text::standing_cautions, Count{9})};
  int line = add_->sizeHint().width();
  std::vector<int> roomy;
  for (const auto& [id, button] : buttons_) {
    roomy.push_back(button->roomy_width(name_in_button(id), usual));
    line += roomy.back() + kGap;
  }
  const bool fits = line <= width();
  for (std::size_t i = 0; i < roomy.size(); ++i) buttons_[i].second->keep_width(fits ? roomy[i] : 0);
}

void ExerciseStrip::resizeEvent(QResizeEvent*) {
  if (!session_.is_previewing()) keep_widths();
}

QString ExerciseStrip::name_in_button(ExerciseId id) const {
  const QString name = id ? as_qt(name_of(session_.shown().lab(), id)) : words(text::exercise_all_on);
  return QString(name).replace(QLatin1Char('&'), QStringLiteral("&&")) + QStringLiteral(" · ");
}

void ExerciseStrip::show(const ExerciseStanding& s, VerdictButton& button) {
  // Equal words are not set again: the whole window would be laid out anew, at every move of a drag.
  say(button, name_in_button(s.exercise), words(s.word));
  if (const auto wanted = std::pair(s.standing, theme_); button.marked != wanted) {
    button.marked = wanted;
    button.setIcon(mark(s.standing, snug::palette(theme_)));
  }
  button.setChecked(s.exercise == session_.exercise());
  QStringList why;
  for (const Message& m : s.why) why << words(m);
  if (const QString tip = why.join(QLatin1Char('\n')); tip != button.toolTip()) {
    button.setToolTip(tip);
    button.setAccessibleDescription(tip);
  }
}

void ExerciseStrip::say(VerdictButton& button, const QString& name_in_button, const QString& word) {
  const QString words_of = name_in_button + word;
  const bool held = session_.is_previewing();
  const std::optional now = std::pair(words_of, held);
  if (button.said == now) return;
  button.said = now;
  button.hold(held);
  // Where "2 errors" has no room, the number has; of "disk over" the verdict.
  const int kept = word.front().isDigit() ? 0 : -1;
  const QString shown = held && !button.has_room_for(words_of)
                            ? name_in_button + word.section(QLatin1Char(' '), kept, kept)
                            : words_of;
  if (button.text() != shown) button.setText(shown);
}

} // namespace snug
