#pragma once
// The field that finds machines, segments, addresses, findings and actions by their words, with its list.

#include "core/report/finder.h"
#include "ui/session/session.h"

#include <QAction>
#include <QLineEdit>
#include <QPointer>

#include <functional>
#include <optional>

class QListView;
class QStandardItemModel;

namespace snug {

class FindBox : public QLineEdit {
  Q_OBJECT

 public:
  struct Action {
    QPointer<QAction> action;
    QString title, detail;
  };
  // `actions` gives those that can be done now.
  FindBox(Session& session, std::function<std::vector<Action>()> actions, QWidget* parent = nullptr);
  QListView& list() const { return *list_; } // of the window, shown while something is typed

 signals:
  void chosen(const snug::FindItem& item); // all but actions, which are done
  void left();                             // the person wants back to where he was

 protected:
  void keyPressEvent(QKeyEvent*) override;
  void focusInEvent(QFocusEvent*) override;
  void focusOutEvent(QFocusEvent*) override;

 private:
  void collect();
  void look();
  void place_list();
  void choose(const QModelIndex&);
  void move(int by);
  void close_list();

  Session& session_;
  std::function<std::vector<Action>()> actions_now_;
  std::vector<Action> actions_;
  std::optional<Finder> finder_; // none: collected when it is needed
  QListView* list_;
  QStandardItemModel* found_;
};

} // namespace snug
