#pragma once
// Sentences over the canvas: what failed and what to do, without stopping anybody.

#include "ui/session/session.h"

#include <QFrame>

#include <functional>

class QHBoxLayout;
class QLabel;

namespace snug {

class NoticeBar : public QFrame {
  Q_OBJECT

 public:
  explicit NoticeBar(QWidget* parent = nullptr);
  struct Choice {
    QString words;
    std::function<void()> act;
  };
  // What is said stays until it is closed, a choice is taken, or the next sentence.
  void show_notice(const Notice& notice, const std::vector<Choice>& choices = {});
  QString text() const;

 private:
  QLabel* words_;
  QHBoxLayout* buttons_;
};

} // namespace snug
