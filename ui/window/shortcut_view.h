#pragma once
// The list of every action with its keys, in which a person changes them.

#include "ui/window/shortcut_table.h"

#include <QDialog>
#include <QKeySequenceEdit>

class QFrame;
class QLabel;
class QLineEdit;
class QPushButton;
class QVBoxLayout;

namespace snug {

// Takes one press of keys. Esc and Tab do what they do everywhere, Backspace takes the keys away.
class KeyField : public QKeySequenceEdit {
  Q_OBJECT

 public:
  explicit KeyField(QWidget* parent);
  void show_keys(const QKeySequence&);

 signals:
  void pressed(const QKeySequence&); // empty: none are wanted
  void left();

 protected:
  bool event(QEvent*) override;
  void keyPressEvent(QKeyEvent*) override;
  void focusOutEvent(QFocusEvent*) override;

 private:
  QKeySequence shown_;
};

class ShortcutView : public QDialog {
  Q_OBJECT

 public:
  ShortcutView(ShortcutTable& table, QWidget* parent);
  ~ShortcutView() override;
  ShortcutView(const ShortcutView&) = delete;
  ShortcutView& operator=(const ShortcutView&) = delete;
  QString said() const; // below the list; empty: nothing

 private:
  struct Line {
    const ShortcutTable::Row* row = nullptr;
    QWidget* widget = nullptr;
    std::vector<KeyField*> fields;
    QPushButton* restore = nullptr;
  };
  QWidget* make_line(const ShortcutTable::Row& row, QWidget* parent);
  QWidget* make_said();
  void refresh();
  void find(const QString& typed);
  void wanted(const ShortcutTable::Row& row, int place, const QKeySequence& keys);
  void ask(const Message& sentence, const ShortcutTable::Row& holder, const QKeySequence& keys,
           std::function<void()> take);
  void restore(const ShortcutTable::Row& row);
  void tell(const QString& sentence);
  void answer(bool take);

  ShortcutTable& table_;
  std::vector<Line> lines_;
  QLineEdit* filter_ = nullptr;
  QLabel* none_ = nullptr;
  QFrame* said_ = nullptr;
  QLabel* sentence_ = nullptr;
  QPushButton *take_ = nullptr, *leave_ = nullptr;
  std::function<void()> pending_;
};

} // namespace snug
