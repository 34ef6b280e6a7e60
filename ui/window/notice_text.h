#pragma once
// The sentence of a notice, which can be copied: what is marked in it, else all of it.

#include <QLabel>

namespace snug {

class NoticeText : public QLabel {
  Q_OBJECT

 public:
  explicit NoticeText(const QString& sentence, QWidget* parent = nullptr);
  void copy() const; // onto the clipboard, as plain text

 protected:
  bool event(QEvent*) override;
  void contextMenuEvent(QContextMenuEvent*) override;
};

} // namespace snug
