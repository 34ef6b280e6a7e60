#pragma once
// The keys of every action in the menus: as built, and as a person wants them.

#include "ui/window/settings.h"

#include <QKeySequence>
#include <QList>
#include <QObject>

#include <functional>
#include <vector>

class QAction;
class QMainWindow;
class QMenu;

namespace snug {

class ShortcutTable : public QObject {
  Q_OBJECT

 public:
  struct Row {
    QAction* action = nullptr;
    QString menu, title;       // "Edit", "Tidy"
    QList<QKeySequence> built; // as at first; there is a place for each of them, one at least
    int places() const { return std::max(1, static_cast<int>(built.size())); }
  };
  // All actions of the menu bar that have an object name, once they are made. `kept` is told how keeping a
  // change in the settings went.
  ShortcutTable(QMainWindow& window, Settings& settings, std::function<void(const Result<void>&)> kept);

  const std::vector<Row>& rows() const { return rows_; }
  QKeySequence keys(const Row&, int place) const; // empty: none
  bool is_changed(const Row&) const;
  // Why an action may not have these keys; nothing: it may. One press of a key, with Ctrl, Alt or Meta unless
  // it is one that nobody types.
  std::optional<Message> refusal(const QKeySequence&) const;
  // Who else has them; nullptr: nobody.
  const Row* holder(const QKeySequence&, const Row& but) const;

  // Keys that are not refused; empty: none. Who had them goes without.
  void change(const Row&, int place, const QKeySequence&);
  void restore(const Row&); // whoever has its keys goes without
  void restore_all();
  // What the settings say. Rows whose keys there are refused or had twice stay as built and are returned.
  QStringList take();

 signals:
  void changed();

 private:
  void collect(const QMenu& menu, const QString& in);
  void give(const Row&, QList<QKeySequence> keys);
  void withdraw(const QKeySequence&, const Row& from);
  void keep();

  QMainWindow& window_;
  Settings& settings_;
  std::function<void(const Result<void>&)> kept_;
  std::vector<Row> rows_;
};

} // namespace snug
