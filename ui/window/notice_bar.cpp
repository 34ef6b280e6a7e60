#include "ui/window/notice_bar.h"

#include "core/text/window_text.h"
#include "ui/session/words.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStyle>

namespace snug {

NoticeBar::NoticeBar(QWidget* parent) : QFrame(parent) {
  setObjectName(QStringLiteral("notice"));
  auto* box = new QHBoxLayout(this);
  box->setContentsMargins(12, 6, 8, 6);
  words_ = new QLabel(this);
  words_->setTextFormat(Qt::PlainText);
  words_->setWordWrap(true);
  words_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  box->addWidget(words_, 1);
  buttons_ = new QHBoxLayout;
  box->addLayout(buttons_);
  hide();
}

QString NoticeBar::text() const { return isHidden() ? QString() : words_->text(); }

void NoticeBar::show_notice(const Notice& notice, const std::vector<Choice>& choices) {
  words_->setText(notice.text);
  setProperty("kind", notice.kind == Notice::Kind::error     ? QStringLiteral("error")
                      : notice.kind == Notice::Kind::caution ? QStringLiteral("caution")
                                                             : QStringLiteral("told"));
  style()->unpolish(this);
  style()->polish(this);
  while (QLayoutItem* item = buttons_->takeAt(0)) {
    item->widget()->deleteLater();
    delete item;
  }
  std::vector<Choice> all = choices;
  all.push_back({words(text::notice_close), [] {}});
  for (const Choice& c : all) {
    auto* button = new QPushButton(c.words, this);
    connect(button, &QPushButton::clicked, this, [this, act = c.act] {
      hide();
      act();
    });
    buttons_->addWidget(button);
  }
  setAccessibleName(notice.text);
  show();
  QAccessibleEvent said(this, QAccessible::Alert);
  QAccessible::updateAccessibility(&said);
}

} // namespace snug
