#pragma once
// What an empty window offers: labs of a person's own to start from, a sample, a blank PC, a file.

#include "ui/window/settings.h"

#include <QWidget>

class QVBoxLayout;

namespace snug {

class OwnStartsView;

class StartPage : public QWidget {
  Q_OBJECT

 public:
  explicit StartPage(Settings& settings, QWidget* parent = nullptr);
  void refresh(); // the recent files

 signals:
  void sample_wanted(const QString& name);
  void own_wanted(const QString& path);
  void blank_wanted(bool this_computer);
  void open_wanted();
  void file_wanted(const QString& path);
  void forget_wanted(); // the recent files

 protected:
  void showEvent(QShowEvent*) override;

 private:
  QWidget* samples();
  void order_tabs(); // as the page is read
  OwnStartsView* own_;
  QVBoxLayout* samples_;
  Settings& settings_;
  QVBoxLayout* recent_;
};

} // namespace snug
