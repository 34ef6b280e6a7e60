#pragma once
// Everything a person may change about what is selected, made from the field table (DECISIONS 3). Several
// elements of one kind are changed together; where they differ the line says so.

#include "core/layout/palette.h"
#include "core/reach/can_reach.h"
#include "ui/session/session.h"

#include <QWidget>

class QFormLayout;
class QLabel;
class QScrollArea;
class QVBoxLayout;

namespace snug {

class FieldEditor;
class MemorySlider;
class RowList;
class TickList;

class PropertyPanel : public QWidget {
  Q_OBJECT

 public:
  explicit PropertyPanel(Session& session, QWidget* parent = nullptr);
  void set_theme(Theme theme);
  // Of the field with this key, for the keyboard and for tests; null: none.
  QWidget* editor(std::string_view key) const;
  // Puts the hand into that field, as soon as it is there.
  void edit(std::string_view key);

 signals:
  void ask_wanted(const snug::ReachQuestion& question);

 private:
  void rebuild();
  void show_again();
  std::vector<bool> used() const; // of each field of its kind: says something, or is set
  bool is_used_here(const FieldInfo&) const;
  void take_wanted();
  void refresh();
  std::vector<AnyId> subjects() const;
  void add_fields(QVBoxLayout&);
  void add_rare(QVBoxLayout&);
  bool is_folded(const FieldInfo&) const;
  void add_field(QFormLayout&, const FieldInfo&);
  void add_ticks(QVBoxLayout&, const FieldInfo&);
  void tick(const FieldInfo&, AnyId, bool on);
  void add_lists(QVBoxLayout&);
  void add_parts(QVBoxLayout&);
  void fill_parts();
  void add_group(const Template& title, Kind, const Template& noun);
  void add_part(AnyId);
  void add_can_reach(MachineId);
  void add_ways(QVBoxLayout&);
  void add_link(QVBoxLayout&, const char* name, const QString& title, AnyId to);
  // The value they have in common; nothing: they differ.
  std::optional<Value> common_in_force(const FieldInfo&) const;
  std::optional<Value> common(const FieldInfo& f) const;
  void set(const FieldInfo&, const Value&);

  Session& session_;
  std::vector<AnyId> subjects_;
  std::vector<bool> used_; // as used() was when it was built
  Theme theme_ = Theme::light;
  bool other_ = true; // what is chosen, or the lab, is another than was built for
  std::vector<FieldEditor*> editors_;
  std::vector<std::pair<const FieldInfo*, RowList*>> lists_;
  std::vector<std::pair<const FieldInfo*, TickList*>> ticks_;
  std::string_view wanted_; // the field that edit() asked for
  bool more_ = false;       // rare fields are unfolded
  QScrollArea* scroll_;
  QVBoxLayout* outer_;
  QWidget* body_ = nullptr;
  QWidget* parts_ = nullptr; // cards, disks, shares; volumes, LANs, places; exercises
  MemorySlider* slider_ = nullptr;
  QLabel* title_ = nullptr;
  QLabel* about_ = nullptr;
};

} // namespace snug
