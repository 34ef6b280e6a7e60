#pragma once
// Everything a person may change about what is selected, made from the field table (DECISIONS 3). Several
// elements of one kind are changed together; where they differ the line says so.

#include "ui/session/session.h"

#include <QWidget>

class QFormLayout;
class QLabel;
class QLineEdit;
class QVBoxLayout;

namespace snug {

class PropertyPanel : public QWidget {
  Q_OBJECT

 public:
  explicit PropertyPanel(Session& session, QWidget* parent = nullptr);
  // Of the field with this key, for the keyboard and for tests; null: none.
  QWidget* editor(std::string_view key) const;

 private:
  void rebuild();
  void refresh();
  std::vector<AnyId> subjects() const;
  void add_field(QFormLayout&, const FieldInfo&);
  QWidget* make_editor(const FieldInfo&);
  QWidget* line_editor(const FieldInfo&);
  QWidget* box_editor(const FieldInfo&);
  QWidget* choice_editor(const FieldInfo&);
  void show_value(const FieldInfo&, QWidget&);
  // The value they have in common; nothing: they differ.
  std::optional<Value> common(const FieldInfo&) const;
  void set(const FieldInfo&, const Value&);
  void judge(const FieldInfo&, QLineEdit&);

  Session& session_;
  std::vector<AnyId> subjects_;
  std::vector<std::pair<const FieldInfo*, QWidget*>> editors_;
  QVBoxLayout* outer_;
  QWidget* body_ = nullptr;
  QLabel* title_ = nullptr;
  QLabel* about_ = nullptr;
  bool filling_ = false;
};

} // namespace snug
