#include "ui/window/notice_text.h"

#include "core/text/clip_text.h"
#include "ui/session/words.h"

#include <QClipboard>
#include <QContextMenuEvent>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QMenu>

namespace snug {

NoticeText::NoticeText(const QString& sentence, QWidget* parent) : QLabel(sentence, parent) {
  setTextFormat(Qt::PlainText);
  setWordWrap(true);
  setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  setFocusPolicy(Qt::StrongFocus);
  setToolTip(words(text::notice_copy_help));
}

void NoticeText::copy() const {
  QGuiApplication::clipboard()->setText(hasSelectedText() ? selectedText() : text());
}

// The keys for copying are those of the window's machines else.
bool NoticeText::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride || event->type() == QEvent::KeyPress) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Copy)) {
      event->accept();
      if (event->type() == QEvent::KeyPress) copy();
      return true;
    }
  }
  return QLabel::event(event);
}

void NoticeText::contextMenuEvent(QContextMenuEvent* event) {
  QMenu menu(this);
  menu.setAccessibleName(text());
  menu.addAction(words(text::act_copy), this, &NoticeText::copy);
  menu.exec(event->globalPos());
}

} // namespace snug
