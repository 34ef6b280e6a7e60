#include "ui/window/notice_bar.h"

#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"

#include <QAccessible>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr const char* kTopic = "topic";
constexpr int kWidest = 980, kMargin = 20;

QString kind_word(Notice::Kind kind) {
  return kind == Notice::Kind::error     ? QStringLiteral("error")
         : kind == Notice::Kind::caution ? QStringLiteral("caution")
                                         : QStringLiteral("told");
}

} // namespace

NoticeBar::NoticeBar(QWidget* parent) : QWidget(parent) {
  rows_ = new QVBoxLayout(this);
  rows_->setContentsMargins(0, 0, 0, 0);
  rows_->setSpacing(4);
  hide();
}

void NoticeBar::float_above(std::vector<QWidget*> feet) {
  feet_ = std::move(feet);
  parentWidget()->installEventFilter(this);
  for (QWidget* foot : feet_) foot->installEventFilter(this);
}

bool NoticeBar::eventFilter(QObject* watched, QEvent* event) {
  constexpr std::array kMoves{QEvent::Resize, QEvent::Move, QEvent::Show, QEvent::Hide};
  if (std::find(kMoves.begin(), kMoves.end(), event->type()) != kMoves.end()) place();
  return QWidget::eventFilter(watched, event);
}

void NoticeBar::place() {
  if (rows_->count() == 0) return;
  const auto foot = std::find_if(feet_.begin(), feet_.end(), [](const QWidget* w) { return w->isVisible(); });
  if (foot == feet_.end()) return;
  const QRect below((*foot)->mapTo(parentWidget(), QPoint(0, 0)), (*foot)->size());
  const int width = std::min(kWidest, below.width() - 2 * kMargin);
  rows_->activate();
  const int height = rows_->hasHeightForWidth() ? rows_->heightForWidth(width) : sizeHint().height();
  setGeometry(below.center().x() - width / 2, below.top() - kMargin / 2 - height, width, height);
  raise();
}

QString NoticeBar::text() const {
  QStringList all;
  for (int i = 0; i < rows_->count(); ++i) all << rows_->itemAt(i)->widget()->accessibleName();
  return all.join(QLatin1Char('\n'));
}

void NoticeBar::show_notice(const Notice& notice, const std::vector<Choice>& choices) {
  withdraw({});
  add({}, notice, choices);
}

void NoticeBar::ask(const QString& topic, const Notice& notice, const std::vector<Choice>& choices) {
  withdraw(topic);
  add(topic, notice, choices);
}

void NoticeBar::withdraw(const QString& topic) {
  for (int i = rows_->count(); i-- > 0;) {
    QWidget* row = rows_->itemAt(i)->widget();
    if (row->property(kTopic).toString() != topic) continue;
    rows_->removeWidget(row);
    row->hide();
    row->deleteLater();
  }
  setVisible(rows_->count() > 0);
  place();
}

void NoticeBar::add(const QString& topic, const Notice& notice, std::vector<Choice> choices) {
  auto* row = new QFrame(this);
  row->setObjectName(QStringLiteral("notice"));
  row->setProperty(kTopic, topic);
  row->setProperty("kind", kind_word(notice.kind));
  auto* box = new QHBoxLayout(row);
  box->setContentsMargins(12, 6, 8, 6);
  auto* label = new QLabel(notice.text, row);
  label->setTextFormat(Qt::PlainText);
  label->setWordWrap(true);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  box->addWidget(label, 1);
  choices.push_back({words(text::notice_close), [] {}});
  for (const Choice& c : choices) {
    auto* button = new QPushButton(c.words, row);
    button->setToolTip(&c == &choices.back() ? words(text::tip_close) : notice.text);
    connect(button, &QPushButton::clicked, this, [this, topic, act = c.act] {
      withdraw(topic);
      act();
    });
    box->addWidget(button);
  }
  row->setAccessibleName(notice.text);
  rows_->insertWidget(0, row);
  show();
  row->show();
  place();
  QAccessibleEvent said(row, QAccessible::Alert);
  QAccessible::updateAccessibility(&said);
}

} // namespace snug
