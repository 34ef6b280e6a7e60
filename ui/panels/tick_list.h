#pragma once
// A list of references as a box to tick for each element there is: which machines an exercise has on, who may
// use a share.

#include "core/model/field.h"
#include "ui/session/session.h"

#include <QWidget>

#include <functional>

class QCheckBox;
class QVBoxLayout;

namespace snug {

class TickList : public QWidget {
  Q_OBJECT

 public:
  using Tick = std::function<void(AnyId id, bool on)>;
  using StateOf = std::function<Qt::CheckState(AnyId id)>;
  TickList(Session&, const FieldInfo& list, QWidget* parent, Tick);
  // Ticked, not ticked, or in some of what is chosen.
  void show_list(const StateOf&);

  // More elements than this are a list of rows.
  static constexpr std::size_t kMost = 300;
  // Whether a list is one of references to few enough elements.
  static bool fits(const Lab&, const FieldInfo& list);

 private:
  void rebuild(const Lab&);

  Session& session_;
  const FieldInfo& list_;
  Tick tick_;
  QVBoxLayout* boxes_;
  std::vector<std::pair<AnyId, QCheckBox*>> ticks_;
};

} // namespace snug
