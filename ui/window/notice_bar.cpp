#include "ui/window/notice_bar.h"

#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"
#include "ui/window/notice_text.h"

#include <QAccessible>
#include <QClipboard>
#include <QEvent>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr const char *kTopic = "topic", *kUntil = "until";
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
  if (auto* line = qobject_cast<QLineEdit*>(watched)) {
    if (event->type() != QEvent::KeyPress || static_cast<QKeyEvent*>(event)->key() != Qt::Key_Escape)
      return false;
    withdraw(line->parent()->property(kTopic).toString());
    return true;
  }
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

void NoticeBar::copy() const { QGuiApplication::clipboard()->setText(text()); }

void NoticeBar::show_notice(const Notice& notice, const std::vector<Choice>& choices) {
  withdraw({});
  add({}, notice, choices);
}

void NoticeBar::ask(const QString& topic, const Notice& notice, const std::vector<Choice>& choices) {
  withdraw(topic);
  add(topic, notice, choices);
}

void NoticeBar::withdraw(const QString& topic) {
  withdraw_if([&topic](const QWidget& row) { return row.property(kTopic).toString() == topic; });
}

// Questions are withdrawn by those who ask them.
void NoticeBar::outdate(Notice::Until happened) {
  withdraw_if([happened](const QWidget& row) {
    const auto until = static_cast<Notice::Until>(row.property(kUntil).toInt());
    return row.property(kTopic).toString().isEmpty() &&
           (until == happened || (happened == Notice::Until::other_lab && until != Notice::Until::never));
  });
}

void NoticeBar::withdraw_if(const std::function<bool(const QWidget& row)>& goes) {
  const int before = rows_->count();
  bool had_keyboard = false;
  for (int i = before; i-- > 0;) {
    QWidget* row = rows_->itemAt(i)->widget();
    if (!goes(*row)) continue;
    had_keyboard = had_keyboard || row->isAncestorOf(window()->focusWidget());
    rows_->removeWidget(row);
    row->hide();
    row->deleteLater();
  }
  if (rows_->count() == before) return;
  setVisible(rows_->count() > 0);
  place();
  emit changed();
  if (had_keyboard) emit left();
}

QPushButton* NoticeBar::add_button(QFrame& row, const Choice& choice, const QString& help) {
  auto* button = new QPushButton(choice.words, &row);
  button->setToolTip(help);
  connect(button, &QPushButton::clicked, this,
          [this, topic = row.property(kTopic).toString(), act = choice.act] {
            withdraw(topic);
            act();
          });
  row.layout()->addWidget(button);
  return button;
}

QFrame* NoticeBar::add(const QString& topic, const Notice& notice, const std::vector<Choice>& choices) {
  auto* row = new QFrame(this);
  row->setObjectName(QStringLiteral("notice"));
  row->setProperty(kTopic, topic);
  row->setProperty(kUntil, static_cast<int>(notice.until));
  row->setProperty("kind", kind_word(notice.kind));
  auto* box = new QHBoxLayout(row);
  box->setContentsMargins(12, 6, 8, 6);
  auto* sentence = new NoticeText(notice.text, row);
  box->addWidget(sentence, 1);
  for (const Choice& c : choices) add_button(*row, c, notice.text);
  // The keyboard comes to what can be done first.
  setTabOrder(add_button(*row, {words(text::notice_close), [] {}}, words(text::tip_close)), sentence);
  row->setAccessibleName(notice.text);
  rows_->insertWidget(0, row);
  show();
  row->show();
  place();
  emit changed();
  QAccessibleEvent said(row, QAccessible::Alert);
  QAccessible::updateAccessibility(&said);
  return row;
}

void NoticeBar::ask_line(const QString& topic, const Notice& notice, const Line& asked) {
  withdraw(topic);
  QFrame* row = add(topic, notice, {});
  auto* box = static_cast<QHBoxLayout*>(row->layout());
  auto* line = new QLineEdit(asked.text, row);
  line->setObjectName(QStringLiteral("notice_line"));
  line->setAccessibleName(asked.name);
  line->setPlaceholderText(asked.name);
  line->setToolTip(asked.help);
  line->installEventFilter(this); // Esc
  auto* accept = new QPushButton(asked.accept, row);
  accept->setToolTip(asked.help);
  box->insertWidget(1, line, 1);
  box->insertWidget(2, accept);
  setTabOrder(line, accept);
  setTabOrder(accept, qobject_cast<QWidget*>(box->itemAt(3)->widget()));
  const auto take = [this, topic, line, row, take = asked.take] {
    // What was asked may have led to another question of this topic.
    if (take(line->text()) && rows_->indexOf(row) >= 0) withdraw(topic);
  };
  connect(line, &QLineEdit::returnPressed, this, take);
  connect(accept, &QPushButton::clicked, this, take);
  line->show();
  accept->show();
  place();
  line->selectAll();
  line->setFocus(Qt::OtherFocusReason);
}

} // namespace snug
