#pragma once
// A list field of an element in the property panel: its rows or items, each with what can be edited of it, a
// button that takes it away, and one that adds another.

#include "ui/panels/field_editor.h"

class QVBoxLayout;

namespace snug {

// Whether the panel shows it: lists of rows, of ids and of prefixes that a person may change.
bool is_row_list(const FieldInfo&);

class RowList : public QWidget {
 public:
  // `owner` says what a new row may name; `set` takes the whole list.
  RowList(Session& session, AnyId owner, const FieldInfo& list, QWidget* parent, FieldEditor::Set set);
  // Nothing: several elements differ.
  void show_list(const std::optional<Value>& list);

 private:
  void rebuild();
  void add_row(std::size_t at);
  void add_field(std::size_t row, const FieldInfo& field, std::size_t place, QWidget& frame);
  void change(std::size_t row, std::size_t place, const Value& value);
  void add();
  void remove(std::size_t at);

  Session& session_;
  AnyId owner_;
  const FieldInfo& list_;
  FieldInfo item_; // of lists without rows
  FieldEditor::Set set_;
  ValueList items_;
  bool differ_ = false;
  QWidget* body_ = nullptr;
  std::vector<std::vector<FieldEditor*>> editors_; // by row, by field
};

} // namespace snug
