#pragma once
// A person's own parts in the list of parts: placed as the others, renamed and removed where they stand.

#include "core/roles/own_parts.h"
#include "ui/canvas/canvas.h"

#include <QWidget>

class QAction;
class QLineEdit;
class QMenu;
class QVBoxLayout;

namespace snug {

class PartButton;

class OwnPartsView : public QWidget {
  Q_OBJECT

 public:
  OwnPartsView(Session& session, Canvas& canvas, QWidget* parent = nullptr);

  const std::vector<OwnPart>& parts() const { return parts_; }
  // Why some are left out.
  const std::vector<Problem>& problems() const { return problems_; }
  // Asks for the name in a new row; Enter keeps the part, Esc leaves it.
  void keep(Lab part);
  // What can be done with each of them, a menu a part.
  void fill(QMenu& menu);
  void bring_back(const OwnPart&);

 signals:
  void kept(const QString& name);
  void removed(const snug::OwnPart&); // may be brought back

 protected:
  bool eventFilter(QObject* of, QEvent* event) override;

 private:
  void read();
  void rebuild();
  QWidget* make_row(std::size_t at);
  void fill_one(QMenu& menu, const std::string& file);
  const OwnPart* part(const std::string& file) const;
  PartButton* button(const std::string& file) const;
  void place(const std::string& file);
  void rename(const std::string& file);
  void remove(const std::string& file);
  // In the place of `instead` (none: a new row at the end).
  void type_name(const std::string& name, QWidget* instead);
  void take_name();
  void leave_name();

  Session& session_;
  Canvas& canvas_;
  std::string folder_;
  std::vector<OwnPart> parts_;
  std::vector<Problem> problems_;
  QVBoxLayout* box_;
  QWidget* body_ = nullptr;
  QLineEdit* line_ = nullptr;  // while a name is typed
  std::optional<Lab> keeping_; // whose name is typed; none: the name of …
  std::string renaming_;       // … the part in this file
  bool taking_ = false;
};

} // namespace snug
