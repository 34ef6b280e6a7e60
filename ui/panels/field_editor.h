#pragma once
// The widget with which one value of the field table is edited: a line that is judged while it is typed, a
// choice, or a box to tick.

#include "ui/session/session.h"

#include <QPointer>
#include <QWidget>

#include <functional>

class QFormLayout;
class QLabel;
class QLineEdit;

namespace snug {

class FieldEditor : public QObject {
 public:
  using Set = std::function<void(const Value&)>; // of a value that may stand in the field
  // `field` must live as long as the widget, which is a child of `parent`.
  FieldEditor(Session& session, const FieldInfo& field, QWidget* parent, Set set);

  const FieldInfo& field() const { return field_; }
  QWidget* widget() const { return widget_; }
  // A row of its own: names of elements need the whole width, so their label stands above them.
  void add_to(QFormLayout&, QLabel&);
  // Nothing: several elements differ. What is being typed stays. `in_force`: what holds where the value is
  // none.
  void show(const std::optional<Value>& value, const std::optional<Value>& in_force = std::nullopt);

 protected:
  bool eventFilter(QObject* of, QEvent* event) override;

 private:
  void make_box(QWidget* parent);
  void make_choice(QWidget* parent);
  void make_line(QWidget* parent);
  QString shown_text(const Value&) const;
  QString placeholder() const;
  void show_again() { show(shown_, in_force_); }
  void judge(QLineEdit&);
  QString help() const; // of the field, its label where it has none
  void echo(const QString& told, bool bad);

  Session& session_;
  const FieldInfo& field_;
  Set set_;
  QWidget* widget_ = nullptr;
  QPointer<QFormLayout> form_;
  QPointer<QLabel> echo_; // what is wrong with what is being typed, or how its size is understood
  std::optional<Value> shown_, in_force_;
  bool filling_ = false;
};

} // namespace snug
