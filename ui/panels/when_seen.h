#pragma once
// Fills a widget when somebody sees it: what is hidden is not kept up to date, and the first picture of a
// window does not wait for what its panels hold.

#include <QObject>

#include <functional>

class QWidget;

namespace snug {

class WhenSeen : public QObject {
 public:
  // `fill` is called after the first picture of `widget`, later at once, or when it is shown again.
  WhenSeen(QWidget& widget, std::function<void()> fill);
  ~WhenSeen() override;
  // What the widget holds has changed.
  void renew();
  // How many widgets that are visible have yet to be filled, in the whole program.
  static int waiting();

 protected:
  bool eventFilter(QObject* of, QEvent* event) override;

 private:
  void fill_now();
  QWidget& widget_;
  std::function<void()> fill_;
  bool stale_ = true;
  bool was_seen_ = false;
};

} // namespace snug
