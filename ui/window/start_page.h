#pragma once
// What an empty window offers: a sample, a blank PC, a file.

#include "ui/window/settings.h"

#include <QWidget>

class QVBoxLayout;

namespace snug {

class StartPage : public QWidget {
  Q_OBJECT

 public:
  explicit StartPage(Settings& settings, QWidget* parent = nullptr);
  void refresh(); // the recent files

 signals:
  void sample_wanted(const QString& name);
  void blank_wanted(bool this_computer);
  void open_wanted();
  void file_wanted(const QString& path);
  void forget_wanted(); // the recent files

 protected:
  void showEvent(QShowEvent*) override;

 private:
  QWidget* samples();
  QVBoxLayout* samples_;
  Settings& settings_;
  QVBoxLayout* recent_;
};

} // namespace snug
