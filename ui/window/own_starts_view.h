#pragma once
// The labs that a person keeps to start from, as cards, and a sentence for each that cannot be read.

#include <QWidget>

class QVBoxLayout;

namespace snug {

// Snuglab in the desktop's folder for templates; it may be missing. Empty: the desktop names none.
QString own_starts_folder();

class OwnStartsView : public QWidget {
  Q_OBJECT

 public:
  explicit OwnStartsView(QWidget* parent = nullptr);
  void read(); // what is in the folder now; hidden where there is nothing

 signals:
  void wanted(const QString& path);

 private:
  QVBoxLayout* column_;
};

} // namespace snug
